import type { Traced } from '../measure/index.ts';
import type { Part, Peg } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import type { PegsIn, SplineIn } from './pegs-of-act.ts';
import type { Standing } from './seating.ts';
import { listWords } from './words.ts';

/** What goes half into a part that is set and half into those that stand there, and what its card says of it. */
export interface PegsOfPart {
  readonly pegs: readonly PegsIn[];
  readonly splines: readonly SplineIn[];
  readonly lines: readonly string[];
}

/**
 * The dowels, biscuits and splines between a part and those that stand there. Their sizes are added to the card's lengths.
 */
export function pegsIn(bench: Bench, standing: Standing, part: Part, lengths: Traced[]): PegsOfPart {
  const splines = splinesIn(bench, standing, part, lengths);
  const { pegs, lines } = fixingsIn(bench, standing, part, lengths);
  return { pegs, splines: splines.splines, lines: [...lines, ...splines.lines] };
}

function splinesIn(
  bench: Bench,
  standing: Standing,
  part: Part,
  lengths: Traced[],
): Pick<PegsOfPart, 'splines' | 'lines'> {
  const splines: SplineIn[] = [];
  const lines: string[] = [];
  for (const peg of bench.setOut.pegs) {
    if (peg.kind !== 'spline') continue;
    const mate = mateOf(peg, part, standing);
    const strip = bench.setOut.splines.find((s) => s.id === peg.strip)!;
    if (mate === undefined) continue;
    const behind = bench.set('marking', peg.behind);
    const { length, width } = strip.cut;
    splines.push({ with: mate, strip: strip.mark, length, width, behind });
    const n = lengths.push(length, width, behind) - 3;
    const level = bench.ledger.ticks(behind) === 0;
    lines.push(
      `Spline ${strip.mark}, {${n}} long and {${n + 1}} wide: glue thinly in both grooves, then push it into the groove of ${mate}, ${level ? 'its end level with the front edge' : `its end {${n + 2}} behind the front edge`}.`,
    );
  }
  return splines.length === 0
    ? { splines, lines }
    : {
        splines,
        lines: [...lines, 'A spline needs no force: where one jams, plane it rather than hammer it.'],
      };
}

/** The mark of the part that stands there and has the other half of a peg. */
function mateOf({ parts: [one, other] }: Peg, part: Part, standing: Standing): string | undefined {
  const mate = one === part.id ? other : other === part.id ? one : undefined;
  return mate === undefined ? undefined : standing.get(mate)?.part.mark;
}

function fixingsIn(
  bench: Bench,
  standing: Standing,
  part: Part,
  lengths: Traced[],
): Pick<PegsOfPart, 'pegs' | 'lines'> {
  const pegs: PegsIn[] = [];
  let biscuits = false;
  let mitred = false;
  for (const peg of bench.setOut.pegs) {
    const there = mateOf(peg, part, standing);
    if (peg.kind === 'spline' || there === undefined) continue;
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
