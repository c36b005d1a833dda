import fc from 'fast-check';
import { type Edged, edgedFront, edgingRecord } from './edged-fronts.ts';
import { optional, withoutAbsent } from './optional.ts';
import { type SlidingWish, slidingRecord, slidingWish } from './sliding-wish.ts';

type Field = Readonly<Record<string, unknown>>;

/** Hinged doors: all alike, before everything, before each bay, or one before the first two. */
interface HingedWish {
  readonly before: 'all' | 'each' | 'neighbours';
  readonly hang: 'inset' | 'overlay';
  readonly count?: number | undefined;
  readonly hand?: string | undefined;
  readonly gap?: string | undefined;
  readonly hinge?: string | undefined;
  readonly edged?: Edged | undefined;
}

/** Doors that hang or slide. */
export type DoorWish = HingedWish | SlidingWish;

/** Doors in many ways; `text` draws a length between two sizes in mm. */
export function doorWish(text: (from: number, to: number) => fc.Arbitrary<string>): fc.Arbitrary<DoorWish> {
  return fc.oneof(
    fc.record({
      before: fc.constantFrom('all' as const, 'each' as const, 'neighbours' as const),
      hang: fc.constantFrom('inset' as const, 'overlay' as const),
      count: optional(fc.constantFrom(1, 2)),
      hand: optional(fc.constantFrom('left', 'right')),
      gap: optional(text(1, 4)),
      edged: edgedFront,
    }),
    fc.record({
      before: fc.constantFrom('all' as const, 'each' as const, 'neighbours' as const),
      hang: fc.constant('inset' as const),
      hand: fc.constantFrom('above', 'below'),
      gap: optional(text(1, 4)),
      edged: edgedFront,
    }),
    slidingWish,
  );
}

/** The records of a wish, before bays that stand side by side or one above the other. */
export function doorRecords(
  wish: DoorWish,
  bays: readonly string[],
  across: boolean,
  low: boolean,
): readonly Field[] {
  if ('closes' in wish) return [slidingRecord(wish, bays, across)];
  const { before, hand, edged, ...door } = wish;
  // What is high is too heavy to be lifted.
  const flap = low && door.hang === 'inset' && door.count !== 2;
  const hung = hand === 'left' || hand === 'right' || flap ? hand : undefined;
  const closes =
    before === 'all' ? [['inside']] : before === 'neighbours' ? [bays.slice(0, 2)] : bays.map((id) => [id]);
  const doors = closes.map((over, i) => ({
    id: `door.${i + 1}`,
    kind: 'door',
    parent: 'case',
    board: 'board',
    over,
    ...withoutAbsent({ ...door, hand: hung }),
  }));
  return edged ? doors.flatMap((d) => [d, edgingRecord(d.id, edged)]) : doors;
}
