import type { RecordOf } from '../../job/index.ts';
import { LOOSE_SHELVES } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Bore, Bores } from '../joints/bores.ts';
import { inPart, sideLooking } from '../joints/contact.ts';
import { axisOf } from '../place.ts';
import type { Space } from '../spaces/openings.ts';
import type { ChosenPin } from './pin-choice.ts';
import { edgeOf } from './shelf-edging.ts';

/** Rows of holes in the two uprights of an opening, as they were bored. */
export interface PinRows {
  /** Where the front and the back row stand in the piece. */
  readonly rows: readonly [Traced, Traced];
  /** Heights in the piece at which there are four holes, lowest first. */
  readonly levels: readonly Traced[];
}

/** Rows are moved inward by so many steps at most. */
const MOST_STEPS = 5;

/**
 * Bores rows of holes for pins into both uprights of an opening. Rows that would meet what is bored already are moved
 * inward; where that doesn't free every level, the levels that are not free are left out.
 */
export function pinHoles(
  draft: Draft,
  bores: Bores,
  space: Space,
  record: RecordOf<'pins'>,
  pin: ChosenPin,
): PinRows | undefined {
  const l = draft.ledger;
  const levels = levelsOf(draft, space, record, pin);
  const rows = rowsOf(draft, space, record);
  if (levels.length === 0 || !rows) {
    draft.stop(
      'pins.no-room',
      record,
      levels.length === 0 ? 'below' : 'front',
      `“${space.record.id}” is too ${levels.length === 0 ? 'low' : 'shallow'} for the holes of “${record.id}”.`,
      { says: 'Let the rows begin closer to its edges, or give it fixed shelves.' },
    );
    return undefined;
  }
  const step = l.ticks(l.row(LOOSE_SHELVES.aside));
  const apart = l.ticks(rows[1]) - l.ticks(rows[0]) - l.ticks(l.row(LOOSE_SHELVES.rowsApart));
  const freeAt = (steps: number) => {
    const at = [l.ticks(rows[0]) + steps * step, l.ticks(rows[1]) - steps * step];
    return levels.filter((z) =>
      at.every((y) => boresAt(draft, space, pin, y, l.ticks(z)).every((b) => !bores.meets(b))),
    );
  };
  const tries = Array.from({ length: MOST_STEPS + 1 }, (_, n) => n)
    .filter((n) => 2 * n * step <= apart)
    .filter((n) => carries(draft, space, record, l.ticks(rows[0]) + n * step, l.ticks(rows[1]) - n * step))
    .map((n) => ({ n, free: freeAt(n) }));
  const best = tries.reduce((a, b) => (b.free.length > a.free.length ? b : a));
  const moved = best.n === 0 ? rows : movedInward(draft, rows, best.n);
  for (const post of [space.left, space.right]) boreRow(draft, space, record, pin, moved, best.free, post);
  for (const z of best.free)
    for (const y of moved) for (const b of boresAt(draft, space, pin, l.ticks(y), l.ticks(z))) bores.add(b);
  return { rows: moved, levels: best.free };
}

/** All heights of holes in an opening, lowest first. */
function levelsOf(draft: Draft, space: Space, record: RecordOf<'pins'>, pin: ChosenPin): readonly Traced[] {
  const l = draft.ledger;
  const high = space.size[2];
  const margin = () =>
    l.round(
      'as fine as the drill is set',
      l.least(
        'from the ends of the opening to the outermost holes',
        l.row(LOOSE_SHELVES.margin),
        l.ratio('a quarter of its height', high, LOOSE_SHELVES.marginShare),
      ),
      draft.stepOf('drill'),
      'nearest',
    );
  const below = record.below === undefined ? margin() : draft.field(record, 'below');
  const above = record.above === undefined ? margin() : draft.field(record, 'above');
  const pitch = pitchOf(draft, record);
  const run = l.ticks(high) - l.ticks(below) - l.ticks(above);
  if (run < 0 || l.ticks(pitch) < 2 * l.ticks(pin.diameter)) return [];
  const lowest = l.sum('height of the lowest hole', space.at[2], below);
  return Array.from({ length: Math.floor(run / l.ticks(pitch)) + 1 }, (_, i) =>
    i === 0 ? lowest : l.sum('height of the hole', lowest, l.times('holes up to here', pitch, i)),
  );
}

function pitchOf(draft: Draft, record: RecordOf<'pins'>): Traced {
  const usual = draft.job.shop.units === 'in' ? LOOSE_SHELVES.pitchInches : LOOSE_SHELVES.pitch;
  const pitch = record.pitch === undefined ? draft.ledger.row(usual) : draft.field(record, 'pitch');
  return draft.ledger.round('as fine as the drill is set', pitch, draft.stepOf('drill'), 'nearest');
}

/** Where the rows stand; undefined where they would be too close to each other. */
function rowsOf(draft: Draft, space: Space, record: RecordOf<'pins'>): readonly [Traced, Traced] | undefined {
  const l = draft.ledger;
  const from = (field: 'front' | 'back') =>
    record[field] === undefined ? l.row(LOOSE_SHELVES.row) : draft.field(record, field);
  const front = l.sum('front row of holes', space.at[1], from('front'));
  const back = l.less(
    'back row of holes',
    l.sum('back of the opening', space.at[1], space.size[1]),
    from('back'),
  );
  const apart = l.ticks(back) - l.ticks(front);
  return carries(draft, space, record, l.ticks(front), l.ticks(back)) &&
    apart >= l.ticks(l.row(LOOSE_SHELVES.rowsApart))
    ? [front, back]
    : undefined;
}

/** A shelf lies on both rows only where the middle of its board, behind its edging, is between them. */
function carries(draft: Draft, space: Space, record: RecordOf<'pins'>, front: number, back: number): boolean {
  const l = draft.ledger;
  const edge = edgeOf(draft, record);
  const before = l.ticks(draft.field(record, 'setback')) + (edge ? l.ticks(edge.thickness) : 0);
  const middle =
    l.ticks(space.at[1]) + (before + l.ticks(space.size[1]) - l.ticks(l.row(LOOSE_SHELVES.behind))) / 2;
  const radius = l.ticks(l.row(LOOSE_SHELVES.aside)) / 2;
  return front + radius < middle && middle < back - radius;
}

function movedInward(
  draft: Draft,
  [front, back]: readonly [Traced, Traced],
  steps: number,
): readonly [Traced, Traced] {
  const l = draft.ledger;
  const by = l.times('steps inward', l.row(LOOSE_SHELVES.aside), steps);
  const why = 'row of holes, moved clear of others';
  return [l.sum(why, front, by), l.less(why, back, by)];
}

/** The holes of one level and row, in both uprights. */
function boresAt(draft: Draft, space: Space, pin: ChosenPin, y: number, z: number): readonly Bore[] {
  const l = draft.ledger;
  const [deep, radius] = [l.ticks(pin.deep), l.ticks(pin.diameter) / 2];
  const left = l.ticks(space.left.box.max[0]);
  const right = l.ticks(space.right.box.min[0]);
  return [
    { parts: [space.left.id], from: [left, y, z], to: [left - deep, y, z], radius },
    { parts: [space.right.id], from: [right, y, z], to: [right + deep, y, z], radius },
  ];
}

function boreRow(
  draft: Draft,
  space: Space,
  record: RecordOf<'pins'>,
  pin: ChosenPin,
  rows: PinRows['rows'],
  levels: readonly Traced[],
  post: DraftPart,
): void {
  const side = sideLooking(post.place, post === space.left ? '+x' : '-x');
  const upright = axisOf(post.place.length).axis;
  const across = rows.map((y) =>
    inPart(draft, post, axisOf(post.place.width).axis, y, 'row of holes across the upright'),
  );
  levels.forEach((z, i) => {
    const along = inPart(draft, post, upright, z, 'hole for a pin along the upright');
    (['front', 'back'] as const).forEach((row, k) => {
      post.features.push({
        kind: 'hole',
        use: 'pin',
        id: `${post.id}#${record.id}:${i + 1}:${row}`,
        purpose: `pins for the shelves of ${space.record.id}`,
        side,
        at: [along, across[k]!],
        diameter: pin.diameter,
        depth: pin.deep,
      });
    });
  });
}
