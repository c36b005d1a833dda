import type { Traced } from '../measure/index.ts';
import type { Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import type { PegsIn } from './operation.ts';
import type { Standing } from './seating.ts';
import { listWords } from './words.ts';

/**
 * The dowels or biscuits between a part and those that stand there, and what its card says of them. Their sizes are
 * added to the card's lengths.
 */
export function pegsIn(
  bench: Bench,
  standing: Standing,
  part: Part,
  lengths: Traced[],
): { readonly pegs: readonly PegsIn[]; readonly lines: readonly string[] } {
  const pegs: PegsIn[] = [];
  let biscuits = false;
  let mitred = false;
  for (const peg of bench.setOut.pegs) {
    const [one, other] = peg.parts;
    const mate = one === part.id ? other : other === part.id ? one : undefined;
    const there = mate === undefined ? undefined : standing.get(mate)?.part.mark;
    if (there === undefined) continue;
    biscuits ||= peg.kind === 'biscuit';
    mitred ||= peg.direction === undefined;
    const same = pegs.findIndex((p) => p.with === there && p.fixing === peg.fixing);
    const { fixing, across, wide } = peg;
    if (same < 0) pegs.push({ with: there, fixing, count: 1, across, wide });
    else pegs[same] = { ...pegs[same]!, count: pegs[same]!.count + 1 };
  }
  const [first] = pegs;
  if (!first) return { pegs, lines: [] };
  const counts = pegs.map((p) => `${p.count} to ${p.with}`);
  const kinds = new Map(pegs.map((p) => [p.fixing, p]));
  const sizes = [...kinds.values()].map(({ fixing, across, wide }) => {
    const name = bench.job.shop.rack.fixings?.find((f) => f.id === fixing)?.name ?? fixing;
    const n = lengths.push(wide, across) - 2;
    return biscuits
      ? `${name}, {${n}} long and {${n + 1}} wide`
      : `${name}, {${n}} thick and {${n + 1}} long`;
  });
  const what = biscuits ? 'biscuits' : 'dowels';
  const holes = biscuits ? 'slots' : 'holes';
  return {
    pegs,
    lines: [
      `${biscuits ? 'Biscuits' : 'Dowels'}: ${listWords(counts)}; ${sizes.join('; ')}. Glue in the ${holes} of both parts; the ${what} go into the one that lies still.`,
      biscuits
        ? `Biscuits swell with the glue within minutes: ${mitred ? 'every corner must be closed' : 'bring the joint to its marks and clamp it'} before that.`
        : 'Push it on straight, all dowels at once, and draw it up with clamps: what is hammered home on one end jams on the other.',
      `The ${what} say where it comes; distances are there to check it by.`,
    ],
  };
}
