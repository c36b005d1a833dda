import { MACHINE_RULES } from '../materials/index.ts';
import type { Traced } from '../measure/index.ts';
import type { Fastener, Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { driverFor } from './driver-for.ts';

/** The driver that screws need where a drill finds no room in a straight line; materials name it so. */
const ANGLED = 'angled head';

const NO_ROOM = 'A drill finds no room behind';

/**
 * What the card of screws says where a drill finds no room behind some of them among what stands in their assembly: an
 * angled head, and how far its bit stands out. Lengths are added to those of the card.
 */
export function angledHeadLines(
  bench: Bench,
  into: string,
  fasteners: readonly Fastener[],
  lengths: Traced[],
): readonly string[] {
  const l = bench.ledger;
  const standing = partsIn(bench, into);
  const bits = fasteners.flatMap((f) => {
    const found = driverFor(bench, f, standing);
    return found?.driver === ANGLED ? [found.bit] : [];
  });
  if (bits.length === 0) return [];
  const longest = bits.reduce((a, b) => (b.value > a.value ? b : a));
  const bit = l.row(longest);
  const n =
    lengths.push(
      bench.job.shop.units === 'in'
        ? l.round('about so long', bit, l.row(MACHINE_RULES.aboutInches), 'nearest')
        : bit,
    ) - 1;
  const some = bits.length === 1 ? 'one of them' : `${bits.length} of them`;
  const which = bits.length < fasteners.length ? some : bits.length === 1 ? 'it' : 'them';
  return [
    `${NO_ROOM} ${which}: an angled head on it, its bit standing out about {${n}}, or a short screwdriver.`,
  ];
}

/** Adds the angled head to what is gathered, where a card asks for it. */
export function gatherAngledHead({ operations }: Bench): void {
  const at = operations.findIndex((o) => o.kind === 'gather');
  const gathered = operations[at];
  const asked = operations.some(
    (o) => o.does.act === 'screw' && o.lines.some((line) => line.startsWith(NO_ROOM)),
  );
  if (!gathered || !asked) return;
  operations[at] = {
    ...gathered,
    lines: [
      ...gathered.lines,
      'An angled head for the drill, or a short screwdriver: a drill finds no room behind some screws.',
    ],
  };
}

/** Everything that is set in an assembly so far, what came in groups as well. */
function partsIn(bench: Bench, into: string): readonly Part[] {
  return bench.operations.flatMap(({ does }): readonly Part[] => {
    if (does.act !== 'set' || does.into !== into || does.workpiece === into) return [];
    const part = bench.setOut.parts.find((p) => p.mark === does.workpiece);
    return part ? [part] : partsIn(bench, does.workpiece);
  });
}
