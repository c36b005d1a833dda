import { FROM_SIDES, type RecordOf } from '../job/index.ts';
import { HOLES, SETTING_OUT } from '../materials/index.ts';
import type { Traced } from '../measure/index.ts';
import type { Bore, Bores } from './bores.ts';
import { inPart, planeOf } from './contact.ts';
import type { Draft, DraftPart, Triple } from './draft.ts';
import type { Hole } from './feature.ts';
import { type Axis, axisOf, type TracedBox } from './place.ts';

/** A record of something that goes through a panel. */
type OnPanel = RecordOf<'cable'>;

/** The panels that a record's hole goes through: one, or every shelf of its kind. */
export function panelsOf(draft: Draft, record: OnPanel): readonly DraftPart[] {
  const parent = draft.tree.get(record.parent)!;
  const role = parent.kind === 'case' ? record.panel : parent.kind === 'top' ? 'top' : undefined;
  const panels = draft.parts.filter((p) => p.record === parent.id && (role === undefined || p.role === role));
  if (panels.length === 0 && draft.snags.length === 0)
    draft.stop(
      'holes.no-panel',
      record,
      record.panel === undefined ? 'parent' : 'panel',
      `“${record.id}” is to go through a panel that isn’t made.`,
      {
        says:
          role === 'lid'
            ? 'An applied top lies in its place: let the hole belong to that.'
            : 'Name a panel that is there.',
      },
    );
  return panels;
}

/** The middle of a hole on its panel, at the face it is bored from; undefined where a stop says why. */
export function standsOn(draft: Draft, record: OnPanel, part: DraftPart): Triple | undefined {
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
  const within = record.in === undefined ? undefined : draft.openings.find((o) => o.id === record.in);
  // An opening that wasn't made is told elsewhere.
  if (record.in !== undefined && !within) return undefined;
  const region = within?.box ?? seen(draft, part);
  return ([0, 1, 2] as const).map((axis) =>
    axis === through ? planeOf(part, 'show') : middleAlong(draft, record, region, axis),
  ) as unknown as Triple;
}

const FACES = ['left to right', 'front to back', 'below to above'] as const;

function middleAlong(draft: Draft, record: OnPanel, { min, max }: TracedBox, axis: Axis): Traced {
  const l = draft.ledger;
  const [low, high] = FROM_SIDES[axis];
  if (record[low] !== undefined) return l.sum('middle of the hole', min[axis], draft.field(record, low));
  if (record[high] !== undefined) return l.less('middle of the hole', max[axis], draft.field(record, high));
  const half = l.ratio('half way', l.less('from side to side', max[axis], min[axis]), SETTING_OUT.half);
  return l.sum('middle of the hole, half way', min[axis], half);
}

/** A panel without what goes into its neighbours. */
function seen(draft: Draft, part: DraftPart): TracedBox {
  const l = draft.ledger;
  const { axis } = axisOf(part.place.length);
  const { start, end } = part.tongues;
  const min = [...part.box.min] as [Traced, Traced, Traced];
  const max = [...part.box.max] as [Traced, Traced, Traced];
  if (start !== undefined) min[axis] = l.sum('where the panel is seen to begin', min[axis], start);
  if (end !== undefined) max[axis] = l.less('where the panel is seen to end', max[axis], end);
  return { min, max };
}

/** Whether a hole leaves wood at the panel's edges and meets no other part, hole or channel; stops say what it meets. */
export function isClear(
  draft: Draft,
  bores: Bores,
  record: OnPanel,
  part: DraftPart,
  at: Triple,
  diameter: Traced,
): boolean {
  const l = draft.ledger;
  const t = (x: Traced) => l.ticks(x);
  const through = axisOf(part.place.thickness).axis;
  const radius = t(diameter) / 2;
  const { min, max } = seen(draft, part);
  const across = ([0, 1, 2] as const).filter((k) => k !== through);
  const edge = radius + t(l.row(HOLES.edge));
  if (across.some((k) => t(at[k]) - edge < t(min[k]) || t(at[k]) + edge > t(max[k]))) {
    draft.stop(
      'holes.off-panel',
      record,
      'parent',
      `“${record.id}” leaves too little wood at the edge of the ${part.name}.`,
      { says: 'Move it further in, by a place from one of the sides, or use a smaller plug.' },
    );
    return false;
  }
  const clear = radius + t(l.row(HOLES.beside));
  const met = draft.parts.find((other) => {
    if (other === part) return false;
    const { min: low, max: high } = other.box;
    if (t(high[through]) < t(part.box.min[through]) || t(low[through]) > t(part.box.max[through]))
      return false;
    const off = across.map((k) => Math.max(t(low[k]) - t(at[k]), 0, t(at[k]) - t(high[k])));
    return off[0]! * off[0]! + off[1]! * off[1]! < clear * clear;
  });
  if (met) {
    draft.stop(
      'holes.meets-part',
      record,
      'parent',
      `“${record.id}”, through the ${part.name}, would come out against the ${met.name}.`,
      { says: 'Move it aside, by a place from one of the sides.' },
    );
    return false;
  }
  if (!bores.meets(boreOf(draft, part, at, diameter))) return true;
  draft.stop(
    'holes.meet',
    record,
    'parent',
    `“${record.id}” comes too near another hole in the ${part.name}.`,
    { says: 'Move one of the two.' },
  );
  return false;
}

/** Bores a hole through a panel, from its show face. */
export function boreThrough(
  draft: Draft,
  bores: Bores,
  part: DraftPart,
  at: Triple,
  diameter: Traced,
  hole: Pick<Hole, 'id' | 'purpose' | 'use'>,
): void {
  const [long, wide] = [axisOf(part.place.length).axis, axisOf(part.place.width).axis];
  part.features.push({
    kind: 'hole',
    ...hole,
    side: 'show',
    at: [
      inPart(draft, part, long, at[long], 'hole along the panel'),
      inPart(draft, part, wide, at[wide], 'hole across the panel'),
    ],
    diameter,
  });
  bores.add(boreOf(draft, part, at, diameter));
}

function boreOf(draft: Draft, part: DraftPart, at: Triple, diameter: Traced): Bore {
  const l = draft.ledger;
  const from: readonly [number, number, number] = [l.ticks(at[0]), l.ticks(at[1]), l.ticks(at[2])];
  const to: [number, number, number] = [...from];
  to[axisOf(part.place.thickness).axis] = l.ticks(planeOf(part, 'under'));
  return { parts: [part.id], from, to, radius: l.ticks(diameter) / 2 };
}
