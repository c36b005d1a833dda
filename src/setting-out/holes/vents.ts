import { type RecordOf, readPower } from '../../job/index.ts';
import { freeArea, HOLES, SETTING_OUT, VENTS, WARMER_BY } from '../../materials/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { Draft, DraftPart, Triple } from '../draft.ts';
import type { Bores } from '../joints/bores.ts';
import { type Axis, axisOf, type TracedBox } from '../place.ts';
import { boreThrough, holeThrough, inPanel, isClear, middleOn, panelsOf, regionOf } from './panel-holes.ts';

type Vent = RecordOf<'vent'>;

/** One opening of a vent: its size beside the next and along its run, and its free area in mm2. */
interface Cell {
  readonly beside: Traced;
  readonly along: Traced;
  readonly area: number;
}

/** Cuts all vents: openings enough for the heat behind them, side by side in as few rows as the width allows. */
export function cutVents(draft: Draft, bores: Bores): void {
  for (const record of draft.tree.all('vent')) {
    const cell = record.form === 'slots' ? slotOf(draft, record) : holeOf(draft, record);
    for (const part of panelsOf(draft, record)) {
      const region = regionOf(draft, record, part);
      if (region) cutOne(draft, bores, record, part, cell, region);
    }
  }
}

/** As wide as the widest straight bit of the shop that keeps fingers out. */
function slotOf(draft: Draft, record: Vent): Cell {
  const l = draft.ledger;
  const beside = widestBit(draft, ['straight'], VENTS.slotWidest) ?? l.row(VENTS.slotBit);
  const along = record.opening === undefined ? l.row(VENTS.slotLength) : draft.field(record, 'opening');
  const [w, long] = [toMm(l.ticks(beside)), toMm(l.ticks(along))];
  return { beside, along, area: w * (long - w) + (Math.PI * w * w) / 4 };
}

function holeOf(draft: Draft, record: Vent): Cell {
  const l = draft.ledger;
  const across =
    record.opening === undefined
      ? (widestBit(draft, ['forstner', 'hole-saw'], VENTS.holeWidest) ?? l.row(VENTS.hole))
      : draft.field(record, 'opening');
  return { beside: across, along: across, area: (Math.PI * toMm(l.ticks(across)) ** 2) / 4 };
}

function widestBit(
  draft: Draft,
  kinds: readonly string[],
  most: (typeof VENTS)['holeWidest'],
): Traced | undefined {
  const l = draft.ledger;
  return draft.job.shop.rack.bits
    .filter((b) => kinds.includes(b.kind))
    .map((b) => draft.typed(`shop/rack/bits/${b.id}/diameter`, b.diameter))
    .filter((d) => l.ticks(d) <= most.value)
    .sort((a, b) => l.ticks(b) - l.ticks(a))[0];
}

function cutOne(
  draft: Draft,
  bores: Bores,
  record: Vent,
  part: DraftPart,
  cell: Cell,
  region: TracedBox,
): void {
  const l = draft.ledger;
  const through = axisOf(part.place.thickness).axis;
  const [beside, run] = ([0, 1, 2] as const).filter((k) => k !== through) as [Axis, Axis];
  const wall = l.greatest('wood left between the openings', cell.beside, l.row(VENTS.wall));
  const pitch = (size: Traced) => l.sum('from opening to opening', size, wall);
  const wide = l.ticks(region.max[beside]) - l.ticks(region.min[beside]) - 2 * l.ticks(l.row(HOLES.edge));
  const most = Math.floor((wide + l.ticks(wall)) / l.ticks(pitch(cell.beside)));
  const count = countOf(draft, record, cell, through === 2 ? insideOf(draft, record, region) : region);
  const rows = record.rows ?? Math.ceil(count / Math.max(most, 1));
  const columns = Math.ceil(count / rows);
  const at = middleOn(draft, record, part, region);
  const across = row(draft, at[beside], pitch(cell.beside), columns);
  const up = row(draft, at[run], pitch(cell.along), rows);
  const reach = (places: readonly Traced[], size: Traced) =>
    (l.ticks(places.at(-1)!) - l.ticks(places[0]!) + l.ticks(size)) / 2;
  const half: [number, number, number] = [0, 0, 0];
  half[beside] = reach(across, cell.beside);
  half[run] = reach(up, cell.along);
  const room = l.ticks(region.max[run]) - l.ticks(region.min[run]) - 2 * l.ticks(l.row(HOLES.edge));
  if (columns > most || 2 * half[run] > room) {
    noRoom(draft, record, part, columns * rows);
    return;
  }
  const middles = up.flatMap((z) =>
    across.map((x): Triple => {
      const middle: [Traced, Traced, Traced] = [...at];
      middle[beside] = x;
      middle[run] = z;
      return middle;
    }),
  );
  const probes = middles.map((m) => boreThrough(draft, part, m, l.ticks(cell.beside) / 2));
  if (!isClear(draft, bores, record, part, { at, half, round: false, bores: probes })) return;
  middles.forEach((middle, i) => {
    const cause = { id: `${part.id}#${record.id}:${i + 1}`, purpose: 'for air' };
    if (record.form === 'holes')
      part.features.push(holeThrough(draft, part, middle, cell.beside, { use: 'vent', ...cause }));
    else
      part.features.push({
        kind: 'slot',
        use: 'vent',
        ...cause,
        face: 'show',
        run: axisOf(part.place.length).axis === run ? 'length' : 'width',
        at: inPanel(draft, part, middle),
        length: cell.along,
        width: cell.beside,
      });
  });
  // Screws keep out of the whole block.
  const tick = (x: Traced) => l.ticks(x);
  const low: number[] = part.box.min.map(tick);
  const high: number[] = part.box.max.map(tick);
  for (const k of [beside, run]) {
    low[k] = tick(at[k]) - half[k];
    high[k] = tick(at[k]) + half[k];
  }
  bores.hollow(part.id, { min: low as never, max: high as never });
}

/** What a panel that lies is above or below: a panel alone says nothing of how far the air rises. */
function insideOf(draft: Draft, record: Vent, region: TracedBox): TracedBox {
  if (record.in !== undefined) return region;
  const box = draft.tree.caseOf(record.id);
  const root = box && draft.tree.childOf(box.id, 'opening');
  const [first] = draft.openings;
  return (draft.openings.find((o) => o.id === root?.id) ?? first)?.box ?? region;
}

/** As many as were asked for, or as the heat takes. */
function countOf(draft: Draft, record: Vent, cell: Cell, region: TracedBox): number {
  if (record.count !== undefined) return record.count;
  const watts = readPower(record.heat!)!;
  const apart =
    record.apart === undefined
      ? toMm(draft.ledger.ticks(region.max[2]) - draft.ledger.ticks(region.min[2])) / 2
      : toMm(draft.ledger.ticks(draft.field(record, 'apart')));
  const needed = freeArea(watts, WARMER_BY, apart);
  return Math.min(Math.max(1, Math.ceil(needed / cell.area - 1e-6)), MOST);
}

/** No vent has more openings: what would need them needs a fan. */
const MOST = 1000;

/** Places on both sides of a middle, equally far apart. */
function row(draft: Draft, middle: Traced, pitch: Traced, count: number): readonly Traced[] {
  const l = draft.ledger;
  if (count === 1) return [middle];
  const whole = l.times('from the first to the last', pitch, count - 1);
  const first = l.less('first opening', middle, l.ratio('half of it', whole, SETTING_OUT.half));
  return Array.from({ length: count }, (_, i) =>
    i === 0 ? first : l.sum('next opening', first, l.times('so many further', pitch, i)),
  );
}

function noRoom(draft: Draft, record: Vent, part: DraftPart, count: number): void {
  draft.stop(
    'vents.no-room',
    record,
    'form',
    `The ${count} openings of “${record.id}” don’t fit on their place in the ${part.name}.`,
    {
      says: 'Give them more room, fewer of them, longer slots or wider holes; or part the heat among several vents.',
    },
  );
}
