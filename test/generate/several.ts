import fc from 'fast-check';
import type { RecordOf } from '../../src/job/index.ts';
import { optional, withoutAbsent } from './optional.ts';

type Field = Readonly<Record<string, unknown>>;

/** Fields of a record that name other records. */
const REFERENCES = ['oneStrip', 'id', 'parent', 'over', 'in', 'about'];

/** A length as typed, with what it means in ticks. */
interface Typed {
  readonly text: string;
  readonly ticks: number;
}
interface Sizes {
  readonly width: Typed;
  readonly height: Typed;
  readonly depth: Typed;
}

/** A case by what it wishes, or several that stand together; `place` is what it says of its place in its group. */
type Stand<W> =
  | { readonly place: Field; readonly wish: W }
  | {
      readonly place: Field;
      readonly lay: 'across' | 'up';
      readonly members: readonly Stand<W>[];
      /** What stands at its two ends, towards the walls. */
      readonly ends?: readonly [Field | undefined, Field | undefined];
      /** What one top over all of them says. */
      readonly top?: Field | undefined;
      /** What one base under all of them says. */
      readonly base?: Field | undefined;
    };

/** Records of a design, and what must come out. */
interface Records {
  readonly list: readonly Field[];
  readonly asked: Readonly<Record<string, number>>;
}

/** What stands round a case, as far as its neighbours mind it. */
interface Trimmed {
  readonly top: Field | undefined;
  readonly base: Field | undefined;
  readonly edged: boolean;
  readonly cables: readonly unknown[];
  readonly joints: string | undefined;
  readonly back: 'rabbet' | 'groove' | 'applied' | undefined;
  readonly bottom: RecordOf<'case'>['bottom'];
  readonly lid: RecordOf<'case'>['lid'];
}

/** A case among others: nothing of its top stands over its neighbours, only what stands on the floor has a base, and no hole meets the next case. */
function amongOthers<W extends Trimmed>(wish: W, onFloor: boolean, topped: boolean): W {
  const { overhangSides: _, edging: __, edgedSides: ___, ...top } = wish.top ?? {};
  return {
    ...wish,
    top: topped ? undefined : wish.top && top,
    base: onFloor ? wish.base : undefined,
    cables: [],
  };
}

/** Dowels, biscuits and mitres close in one go, so nothing is built on to them. */
function builtOn(joints: unknown): never {
  return (['dowels', 'biscuits', 'mitre'].includes(String(joints)) ? undefined : joints) as never;
}

/** Two neighbours that close on one side: what both must have in common there is the earlier one’s. */
function sharing<W extends Trimmed>(
  members: readonly Stand<W>[],
  wanted: readonly ('no' | 'left' | 'right')[],
): readonly Stand<W>[] {
  const made = [...members];
  wanted.forEach((side, i) => {
    const [before, after] = [made[i]!, made[i + 1]!];
    if (side === 'no' || 'lay' in before || 'lay' in after) return;
    const { height, depth } = before.place;
    const { height: _, depth: __, ...own } = after.place;
    const closed = (wish: W, away: 'left' | 'right'): W => ({
      ...wish,
      top: undefined,
      // What runs through can do so at its other side alone.
      bottom: wish.bottom?.endsWith(away) ? wish.bottom : undefined,
      lid: wish.lid?.endsWith(away) ? wish.lid : undefined,
      joints: builtOn(before.wish.joints),
      back: wish.back === undefined ? undefined : before.wish.back === 'groove' ? 'groove' : 'rabbet',
    });
    made[i] = {
      wish: closed(before.wish, 'left'),
      place: { ...before.place, ...(side === 'right' ? { rightSide: 'shared' } : {}) },
    };
    made[i + 1] = {
      // At one level, what is let in on one face leaves screws from the other no wood.
      wish: {
        ...closed(after.wish, 'right'),
        base: before.wish.base,
        edged: before.wish.edged,
      },
      place: withoutAbsent({ ...own, height, depth, ...(side === 'left' ? { leftSide: 'shared' } : {}) }),
    };
  });
  return made;
}

/** What a generated piece of several cases is drawn with. */
export interface Drawing<W> {
  /** A length between two sizes in mm. */
  readonly length: (fromMm: number, toMm: number) => fc.Arbitrary<Typed>;
  /** What a case of about these sizes may wish. */
  readonly wishes: (sizes: Sizes) => fc.Arbitrary<W>;
  /** The records of a case that stands alone. */
  readonly records: (wish: W) => Records;
}

/** Two or three cases in a row or a stack, now and then with a stack in the row or a row in the stack. */
export function severalCases<W extends Trimmed>({
  length,
  wishes,
  records,
}: Drawing<W>): fc.Arbitrary<Records & { readonly overall: Sizes }> {
  const text = (from: number, to: number) => length(from, to).map((t) => t.text);
  // Only the outermost row has room for a top that stands out beyond it.
  const topOver = (lay: 'across' | 'up', under: boolean, levels: number): fc.Arbitrary<Field | undefined> =>
    lay === 'up' || under
      ? fc.constant(undefined)
      : fc.option(
          fc
            .record({
              overhangFront: optional(text(0, 30)),
              overhangSides: levels > 0 ? optional(text(0, 30)) : fc.constant(undefined),
              overhangBack: optional(text(0, 15)),
              edging: levels > 0 ? optional(fc.constant('strip')) : fc.constant(undefined),
              load: optional(fc.constant('60 kg')),
            })
            .map(withoutAbsent),
          { nil: undefined, freq: 3 },
        );
  const about = (mm: number): Typed => ({ text: `${mm} mm`, ticks: mm * 3200 });
  const group = (
    lay: 'across' | 'up',
    whole: Sizes,
    onFloor: boolean,
    levels: number,
    most: number,
    under = false,
  ): fc.Arbitrary<Stand<W>> =>
    fc.tuple(fc.integer({ min: 2, max: most }), topOver(lay, under, levels)).chain(([count, top]) => {
      const topped = under || top !== undefined;
      const along = lay === 'across' ? 'width' : 'height';
      const each = Math.floor(whole[along].ticks / 3200 / count);
      const fixed = length(0.8 * each, each).map((t) => t.text);
      const shared = fc.constantFrom(undefined, 'equal', '1 share', '1.5 shares');
      // A top that stands out leaves its cases less.
      const deep = whole.depth.ticks / 3200 - (topped ? 50 : 0);
      const high = whole.height.ticks / 3200;
      const smaller = (mm: number, least: number) =>
        // Wide enough for a sixteenth of an inch to lie between.
        mm - 32 > least
          ? fc.option(
              length(least, mm - 30).map((t) => t.text),
              { nil: undefined, freq: 2 },
            )
          : fc.constant(undefined);
      const member = (i: number): fc.Arbitrary<Stand<W>> =>
        fc
          .record({
            size: i === 0 ? shared : fc.oneof(shared, fixed),
            depth: i === 0 ? fc.constant(undefined) : smaller(deep, 180),
            height: i === 0 || lay === 'up' ? fc.constant(undefined) : smaller(high, 800),
            nested:
              levels > 0 && each >= 400 && whole[lay === 'across' ? 'height' : 'width'].ticks >= 800 * 3200
                ? fc.integer({ min: 0, max: 2 }).map((n) => n === 0)
                : fc.constant(false),
          })
          .chain(({ nested, ...rest }) => {
            // A group's own cases are drawn as high and deep as the whole.
            const asked = nested ? { size: rest.size } : rest;
            const place = Object.fromEntries(Object.entries(asked).filter(([, v]) => v !== undefined));
            const sizes = { ...whole, [along]: about(each) };
            const floor = onFloor && (lay === 'across' || i === 0);
            return nested
              ? group(lay === 'across' ? 'up' : 'across', sizes, floor, levels - 1, 2, topped).map((g) => ({
                  ...g,
                  place,
                }))
              : wishes(sizes).map((wish) => ({ place, wish: amongOthers(wish, floor, topped) }));
          });
      return fc
        .tuple(
          fc.tuple(...Array.from({ length: count }, (_, i) => member(i))),
          fc.tuple(
            ...Array.from({ length: lay === 'across' ? count - 1 : 0 }, () =>
              fc.constantFrom<'no' | 'left' | 'right'>('no', 'left', 'right'),
            ),
          ),
        )
        .map(([members, shared]) => ({ place: {}, lay, members: sharing(members, shared), top }));
    });
  return fc.constantFrom<'across' | 'up'>('across', 'across', 'up').chain((lay) =>
    fc
      .record({
        width: lay === 'across' ? length(1100, 2700) : length(400, 1400),
        height: lay === 'across' ? length(400, 1800) : length(1100, 2200),
        depth: length(220, 650),
      })
      .chain((overall) =>
        fc
          .tuple(
            group(lay, overall, true, 1, 3),
            lay === 'across' ? fc.tuple(fillers(text), fillers(text)) : fc.constant(undefined),
            fc.option(fc.record({ height: text(60, 100), setback: text(27, 40) }), {
              nil: undefined,
              freq: 4,
            }),
          )
          .map(([row, ends, base]) => ({ stand: onBase(row, base), ends }))
          .map(({ stand, ends }) => ({
            overall,
            ...recordsOfStand('lay' in stand && ends ? { ...stand, ends } : stand, records),
          })),
      ),
  );
}

/** One base under a row of cases, which are then all as high and deep as it. */
function onBase<W>(stand: Stand<W>, base: Field | undefined): Stand<W> {
  if (!base || !('lay' in stand) || stand.lay !== 'across') return stand;
  if (stand.members.some((m) => 'lay' in m)) return stand;
  const members = stand.members.map((m) => {
    const { height: _, depth: __, ...place } = m.place;
    return { ...m, place };
  });
  return { ...stand, base, members };
}

/** A filler towards a wall, or none. */
function fillers(text: (from: number, to: number) => fc.Arbitrary<string>): fc.Arbitrary<Field | undefined> {
  return fc.option(
    fc
      .record({ size: text(25, 70), scribe: optional(text(5, 20)), setback: optional(text(0, 12)) })
      .map(withoutAbsent),
    { nil: undefined, freq: 2 },
  );
}

/** The records of several cases, each case’s own behind a prefix; `caseRecords` gives those of one that stands alone. */
function recordsOfStand<W>(stand: Stand<W>, caseRecords: (wish: W) => Records): Records {
  const list: Field[] = [];
  const asked: Record<string, number> = {};
  const add = (s: Stand<W>, id: string, parent: string, based = false) => {
    if ('lay' in s) {
      list.push({ id, kind: 'group', parent, lay: s.lay, ...s.place });
      if (s.top)
        list.push({
          id: `${id}.over`,
          kind: 'top',
          parent: id,
          board: s.top.edging ? 'board' : 'other',
          ...(s.ends?.some((end) => end) ? toItsWalls(s.top, s.ends) : s.top),
        });
      if (s.base) list.push({ id: `${id}.under`, kind: 'base', parent: id, board: 'board', ...s.base });
      const [before, behind] = s.ends ?? [];
      if (before) list.push({ id: `${id}.before`, kind: 'filler', parent: id, board: 'other', ...before });
      s.members.forEach((m, i) => {
        add(m, `${id}.${i + 1}`, id, s.base !== undefined);
      });
      if (behind) list.push({ id: `${id}.behind`, kind: 'filler', parent: id, board: 'board', ...behind });
      return;
    }
    const own = caseRecords(s.wish);
    const inside = own.list.filter(
      (r) =>
        r.kind !== 'piece' && r.kind !== 'size' && !(based && (r.kind === 'base' || r.kind === 'hanging')),
    );
    for (const r of inside)
      list.push(r.kind === 'case' ? { ...renamed(r, id), parent, ...s.place } : renamed(r, id));
    for (const [name, ticks] of Object.entries(own.asked)) asked[`${id}.${name}`] = ticks;
  };
  add(stand, 'g', 'piece');
  return { list, asked };
}

/** A top over fillers: as a rule scribed to the walls as they are. */
function toItsWalls(top: Field, ends: readonly (Field | undefined)[]): Field {
  if (top.overhangBack === undefined) return top;
  const { overhangSides: _, ...own } = top;
  const scribe = ends.find((end) => end?.scribe !== undefined)?.scribe ?? '12 mm';
  return { ...own, scribe, ...(own.edging === undefined ? {} : { edgedSides: 'front' }) };
}

function renamed(record: Field, prefix: string): Field {
  return Object.fromEntries(
    Object.entries(record).map(([field, value]) => {
      if (!REFERENCES.includes(field)) return [field, value];
      return [field, Array.isArray(value) ? value.map((v) => `${prefix}.${v}`) : `${prefix}.${value}`];
    }),
  );
}
