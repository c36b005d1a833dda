import { type Traced, toMm } from '../measure/index.ts';
import type { Hole, Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { CAUTION } from './cautions.ts';
import { markLine } from './hole-places.ts';
import { placesOnFace } from './places-on-face.ts';
import { measuredFrom, referenceFor, sideWords } from './words.ts';

/** Twist drills are sold up to about this width, mm (common practice); wider holes are bored with a Forstner bit. */
const TWIST_MOST = 13;

/** A row of holes that the maker asked for, all of one width and depth: for pegs, hooks or what else goes in; or holes for the sleeves of levellers. */
export function rowHoles(bench: Bench, batch: readonly [Part, ...Part[]], row: readonly Hole[]): void {
  const [part] = batch;
  const first = row[0]!;
  const l = bench.ledger;
  const face = first.side as 'show' | 'under';
  const marks = batch.map((p) => p.mark);
  const ref = referenceFor(part, 'near');
  const side = referenceFor(part, 'start');
  const places = placesOnFace(bench, part, row, 'marking', side);
  const { middle } = places;
  const depth =
    first.depth === undefined
      ? undefined
      : bench.set('drill', first.depth, first.use === 'leveller' ? 'up' : 'down');
  const bit = bitFor(bench, first);
  const lengths: Traced[] = [first.diameter, ...(depth === undefined ? [] : [depth])];
  const end = measuredFrom(part, ref.from, face);
  const lines = places.lines(lengths);
  const purposes = [...new Set(row.map((h) => h.purpose))].join('; ');
  bench.settings.push({
    id: `${part.mark}/drill-${face}-${first.use}-${l.ticks(first.diameter)}${depth === undefined ? '' : `-${l.ticks(depth)}`}${middle.map((run) => `-mid-${run}`).join('')}`,
    kind: 'drill',
    what: `${row.length > 1 ? 'Holes' : 'Hole'} ${depth === undefined ? 'through' : `in the ${sideWords(part, face)} of`}`,
    parts: batch,
    purpose: purposes,
    does: {
      act: 'drill',
      workpieces: marks,
      side: face,
      from: ref.from,
      ...(side.turned ? { acrossFrom: 'far' as const } : {}),
      at: places.at,
      ...(middle.length > 0 ? { middle } : {}),
      diameter: first.diameter,
      ...(depth === undefined ? {} : { depth }),
      ...(bit === 'twist' ? {} : { bit }),
      // A sleeve fills its hole.
      ...(first.use === 'row' ? { open: true } : {}),
    },
    tool: 'drill',
    times: row.length,
    faceUp: `${sideWords(part, face)} up${depth === undefined ? ', a waste board clamped tight under it' : ''}`,
    reference: `${end} and the ${sideWords(part, side.from)}`,
    lines: [
      ...places.found,
      markLine(row.length),
      ...lines,
      HOW[bit](depth !== undefined),
      ...(first.use === 'row' && bit !== 'twist' ? [rimLine(depth !== undefined)] : []),
    ],
    lengths,
    cautions: [CAUTION.drill],
  });
}

/** Fingers and cords go through wide holes. */
function rimLine(blind: boolean): string {
  return blind
    ? 'Ease the rim with sandpaper round a dowel.'
    : 'Round both rims well over with a half-round file, and sand them round a dowel: fingers and cords go through, and an arris cuts.';
}

type RowBit = 'twist' | 'forstner' | 'hole-saw';

/** A bit of the rack of just that width, or the kind that such a hole is bored with; no saw leaves a floor. */
function bitFor(bench: Bench, hole: Hole): RowBit {
  const width = bench.ledger.ticks(hole.diameter);
  const kinds: readonly RowBit[] =
    hole.depth === undefined ? ['twist', 'forstner', 'hole-saw'] : ['twist', 'forstner'];
  const owned = kinds.find((k) =>
    bench.job.shop.rack.bits.some((b) => b.kind === k && bench.ticksOf(b.diameter) === width),
  );
  return owned ?? (toMm(width) <= TWIST_MOST ? 'twist' : 'forstner');
}

const HOW: Readonly<Record<RowBit, (blind: boolean) => string>> = {
  twist: (blind) =>
    blind
      ? 'Drill {0}, {1} deep and no deeper: a flag of tape on the bit shows it.'
      : 'Drill {0} right through into the waste board.',
  forstner: (blind) =>
    blind
      ? 'Forstner bit of {0}, {1} deep and no deeper: try it on an offcut of the same board, and set the stop by that.'
      : 'Forstner bit of {0}, slowly, through into the waste board: so the far face stays clean.',
  'hole-saw': () =>
    'Hole saw of {0}, slowly, until its pilot bit comes through, then from the other face, so that both stay clean.',
};
