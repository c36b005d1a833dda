import { FROM_SIDES, type RecordOf } from '../../job/index.ts';
import { HOLES, SETTING_OUT } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart, Triple } from '../draft.ts';
import { outerBox } from '../edging/outer-box.ts';
import type { Hole } from '../feature.ts';
import type { Bore, Bores } from '../joints/bores.ts';
import { inPart, planeOf } from '../joints/contact.ts';
import { type Axis, axisOf, type TracedBox } from '../place.ts';

/** A record of something that goes through a panel. */
export type OnPanel = RecordOf<'cable' | 'vent' | 'holes'>;

/** The panels that a record's hole goes through: one, or every shelf of its kind. */
export function panelsOf(draft: Draft, record: OnPanel, panel = record.panel): readonly DraftPart[] {
  const parent = draft.tree.get(record.parent)!;
  const roles = parent.kind === 'case' ? [panel] : parent.kind === 'top' ? ['top', 'lid'] : undefined;
  const panels = draft.parts.filter(
    (p) => p.record === parent.id && (roles?.includes(p.role as never) ?? true),
  );
  if (panels.length === 0 && draft.snags.length === 0)
    draft.stop(
      'holes.no-panel',
      record,
      record.panel === undefined ? 'parent' : 'panel',
      `“${record.id}” is to go through a panel that isn’t made.`,
      {
        says:
          panel === 'lid'
            ? 'An applied top lies in its place: let the hole belong to that.'
            : 'Name a panel that is there.',
      },
    );
  return panels;
}

/** The stretch of a panel that a record's place is measured in; undefined where a stop says why there is none. */
export function regionOf(draft: Draft, record: OnPanel, part: DraftPart): TracedBox | undefined {
  const through = axisOf(part.place.thickness).axis;
  const astray = FROM_SIDES[through].find((field) => record[field] !== undefined);
  if (astray !== undefined) {
    draft.stop(
      'holes.wrong-way',
      record,
      astray,
      `The ${part.name} has no width from ${FACES[through]}, so “${astray}” says nothing of where “${record.id}” goes.`,
      { says: `Take “${astray}” out.` },
    );
    return undefined;
  }
  // An opening that wasn't made is told elsewhere.
  return record.in === undefined
    ? seen(draft, part, outerBox(draft, part))
    : draft.openings.find((o) => o.id === record.in)?.box;
}

const FACES = ['left to right', 'front to back', 'below to above'] as const;

/** The middle of what goes through a panel, at the face it is made from. */
export function middleOn(draft: Draft, record: OnPanel, part: DraftPart, region: TracedBox): Triple {
  const through = axisOf(part.place.thickness).axis;
  return ([0, 1, 2] as const).map((axis) =>
    axis === through ? planeOf(part, 'show') : middleAlong(draft, record, region, axis),
  ) as unknown as Triple;
}

/** The two sides that a place along an axis is measured from, lower first; exchanged from left to right in a mirror. */
export function sidesAlong(axis: Axis, mirrored: boolean): (typeof FROM_SIDES)[number] {
  const sides = FROM_SIDES[axis];
  return mirrored && axis === 0 ? ([sides[1], sides[0]] as never) : sides;
}

/** The middle along one axis of the piece: so far from a side, or half way of that, or of what it is about. */
export function middleAlong(
  draft: Draft,
  record: OnPanel,
  { min, max }: TracedBox,
  axis: Axis,
  mirrored = false,
  { min: low, max: high }: TracedBox = { min, max },
): Traced {
  const l = draft.ledger;
  const [from, to] = sidesAlong(axis, mirrored);
  if (record[from] !== undefined) return l.sum('middle of the hole', min[axis], draft.field(record, from));
  if (record[to] !== undefined) return l.less('middle of the hole', max[axis], draft.field(record, to));
  const half = l.ratio('half way', l.less('from side to side', high[axis], low[axis]), SETTING_OUT.half);
  return l.sum('middle of the hole, half way', low[axis], half);
}

/** A panel without what goes into its neighbours. */
function seen(draft: Draft, part: DraftPart, box: TracedBox): TracedBox {
  const l = draft.ledger;
  const { axis } = axisOf(part.place.length);
  const { start, end } = part.tongues;
  const min = [...box.min] as [Traced, Traced, Traced];
  const max = [...box.max] as [Traced, Traced, Traced];
  if (start !== undefined) min[axis] = l.sum('where the panel is seen to begin', min[axis], start);
  if (end !== undefined) max[axis] = l.less('where the panel is seen to end', max[axis], end);
  return { min, max };
}

/** What is taken out of a panel: how far from its middle it goes along each axis, in ticks, and what bores it is made by. */
export interface Taken {
  readonly at: Triple;
  readonly half: readonly [number, number, number];
  readonly round: boolean;
  /** The stretch of the panel's thickness that it takes, in ticks; all of it when absent. */
  readonly deep?: readonly [from: number, to: number];
  readonly bores: readonly Bore[];
}

/** A round hole through a panel. */
export function roundHole(draft: Draft, part: DraftPart, at: Triple, diameter: Traced): Taken {
  const r = draft.ledger.ticks(diameter) / 2;
  return { at, half: [r, r, r], round: true, bores: [boreThrough(draft, part, at, r)] };
}

/** Whether what is taken out leaves wood at the panel's edges and meets no other part, hole or channel; stops say what it meets. */
export function isClear(draft: Draft, bores: Bores, record: OnPanel, part: DraftPart, taken: Taken): boolean {
  const l = draft.ledger;
  const t = (x: Traced) => l.ticks(x);
  const { at, half } = taken;
  const through = axisOf(part.place.thickness).axis;
  const { min, max } = seen(draft, part, part.box);
  const across = ([0, 1, 2] as const).filter((k) => k !== through);
  const edge = t(l.row(HOLES.edge));
  if (across.some((k) => t(at[k]) - half[k] - edge < t(min[k]) || t(at[k]) + half[k] + edge > t(max[k]))) {
    draft.stop(
      'holes.off-panel',
      record,
      'parent',
      `“${record.id}” leaves too little wood at the edge of the ${part.name}.`,
      { says: 'Move it further in, by a place from one of the sides, or make it smaller.' },
    );
    return false;
  }
  if (meets(draft, record, part, taken, draft.parts)) return false;
  if (!taken.bores.some((b) => bores.meets(b))) {
    draft.takenOut.push({ record, part, taken });
    return true;
  }
  draft.stop(
    'holes.meet',
    record,
    'parent',
    `“${record.id}” comes too near another hole in the ${part.name}.`,
    { says: 'Move one of the two.' },
  );
  return false;
}

/** Stops for what was taken out of panels where parts that came since stand against it, as sliding doors do. */
export function clearOfLaterParts(draft: Draft, later: readonly Pick<DraftPart, 'name' | 'box'>[]): void {
  for (const { record, part, taken } of draft.takenOut) meets(draft, record, part, taken, later);
}

/** Whether what is taken out of a panel would come out against one of some parts; a stop says against which. */
function meets(
  draft: Draft,
  record: OnPanel,
  part: DraftPart,
  { at, half, round, deep }: Taken,
  others: readonly Pick<DraftPart, 'name' | 'box'>[],
): boolean {
  const t = (x: Traced) => draft.ledger.ticks(x);
  const through = axisOf(part.place.thickness).axis;
  const across = ([0, 1, 2] as const).filter((k) => k !== through);
  const [from, to] = deep ?? [t(part.box.min[through]), t(part.box.max[through])];
  const clear = t(draft.ledger.row(HOLES.beside)) + (round ? half[across[0]!] : 0);
  const met = others.find((other) => {
    if (other === part) return false;
    const { min: low, max: high } = other.box;
    if (t(high[through]) < from || t(low[through]) > to) return false;
    const off = across.map((k) => {
      const reach = round ? 0 : half[k];
      return Math.max(t(low[k]) - t(at[k]) - reach, 0, t(at[k]) - reach - t(high[k]));
    });
    return off[0]! * off[0]! + off[1]! * off[1]! < clear * clear;
  });
  if (!met) return false;
  draft.stop(
    'holes.meets-part',
    record,
    'parent',
    deep
      ? `“${record.id}”, in the ${part.name}, would open against the ${met.name}.`
      : `“${record.id}”, through the ${part.name}, would come out against the ${met.name}.`,
    { says: 'Move it aside, by a place from one of the sides.' },
  );
  return true;
}

/** A round hole right through a panel, from its show face. */
export function holeThrough(
  draft: Draft,
  part: DraftPart,
  at: Triple,
  diameter: Traced,
  hole: Pick<Hole, 'id' | 'purpose' | 'use'>,
): Hole {
  return { kind: 'hole', ...hole, side: 'show', at: inPanel(draft, part, at), diameter };
}

/** A place on a panel by its own measures: along its length and across its width. */
export function inPanel(draft: Draft, part: DraftPart, at: Triple): readonly [Traced, Traced] {
  const [long, wide] = [axisOf(part.place.length).axis, axisOf(part.place.width).axis];
  return [
    inPart(draft, part, long, at[long], 'hole along the panel'),
    inPart(draft, part, wide, at[wide], 'hole across the panel'),
  ];
}

/** A bore right through a panel, of a radius in ticks. */
export function boreThrough(draft: Draft, part: DraftPart, at: Triple, radius: number): Bore {
  const l = draft.ledger;
  const from: readonly [number, number, number] = [l.ticks(at[0]), l.ticks(at[1]), l.ticks(at[2])];
  const to: [number, number, number] = [...from];
  to[axisOf(part.place.thickness).axis] = l.ticks(planeOf(part, 'under'));
  return { parts: [part.id], from, to, radius };
}
