import fc from 'fast-check';
import { type JobDocument, treeOf } from '../../src/job/index.ts';
import type { SetOut } from '../../src/setting-out/index.ts';

type Field = Readonly<Record<string, unknown>>;

/** A thing to be held, small enough for most openings: in which one, how many, and its sizes. */
export interface ThingWish {
  readonly which: number;
  readonly count: number;
  readonly size: string;
}

/** Now and then some. */
export function thingWishes(
  text: (from: number, to: number) => fc.Arbitrary<string>,
): fc.Arbitrary<ThingWish | undefined> {
  return fc.oneof(
    { weight: 6, arbitrary: fc.constant(undefined) },
    {
      weight: 1,
      arbitrary: fc.record({ which: fc.nat(), count: fc.integer({ min: 1, max: 3 }), size: text(20, 45) }),
    },
  );
}

/** The records with something in one of the openings that aren’t split. */
export function withThings(list: readonly Field[], wish: ThingWish | undefined): readonly Field[] {
  const open = list.filter((r) => r.kind === 'opening' && r.split === undefined);
  const chosen = wish && open[wish.which % open.length];
  if (!wish || !chosen) return list;
  const { count, size } = wish;
  const thing = { kind: 'thing', parent: chosen.id, name: 'A box', width: size, height: size, depth: size };
  return [...list, { ...thing, id: 'held', count, mass: '2 kg', clear: '1 mm' }];
}

/** Things that have no room, or weigh on nothing, by sizes and masses added up here. */
export function thingFaults(job: JobDocument, piece: SetOut): readonly string[] {
  return treeOf(job)
    .all('thing')
    .flatMap((thing) => {
      const { ledger } = piece;
      const opening = piece.openings.find((o) => o.id === thing.parent);
      if (!opening) return [`${thing.id} stands nowhere`];
      const own = ledger.ticks(piece.dimensions.get(`${thing.id}.width`)!);
      const wide = own * thing.count! + 3200 * (thing.count! + 1);
      const faults: string[] = [];
      if (wide > ledger.ticks(opening.width)) faults.push(`${thing.id} is wider than its opening`);
      if (own > ledger.ticks(opening.depth)) faults.push(`${thing.id} is deeper than its opening`);
      // Nothing else is loaded with as much in kilograms by chance: some surface carries at least these.
      if (!piece.surfaces.some((s) => (s.loadKg ?? 0) >= 2 * thing.count!))
        faults.push(`${thing.id} weighs on nothing`);
      return faults;
    });
}
