import type { RecordOf } from '../../job/index.ts';
import { HANDLES, SETTING_OUT } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { outerBox } from '../edging/outer-box.ts';
import { fromEdge, sizeAcross } from './from-edge.ts';

/** Something that is opened by hand: a door or a drawer front, and the edge that opens, where it has one. */
export interface FrontPart {
  readonly part: DraftPart;
  readonly opens?: 'left' | 'right' | 'upper' | 'lower';
  /** How far it laps those beside it, where it slides. */
  readonly overlap?: Traced;
}

/** The edge that opens, away from the hinges. */
const OPENS = { left: 'right', right: 'left', above: 'lower', below: 'upper' } as const;

type OnFront = RecordOf<'handle' | 'pull'>;

/** The doors or drawer fronts of the record that something is screwed to, in the order of their marks. */
export function frontParts(draft: Draft, record: OnFront): readonly FrontPart[] {
  const faces = new Set(draft.drawers.map((d) => d.parts.face));
  const leaves = new Map(draft.doors.map((d) => [d.part, OPENS[d.hung]] as const));
  const sliding = new Map(
    draft.sliding.flatMap(({ leaves: all, overlap }) =>
      all.map((leaf) => [leaf.part, { opens: leaf.inSight, overlap }] as const),
    ),
  );
  return draft.parts.flatMap((part): FrontPart[] => {
    if (part.record !== record.parent) return [];
    if (faces.has(part.id)) return [{ part }];
    const opens = leaves.get(part.id);
    const slides = sliding.get(part.id);
    return opens ? [{ part, opens }] : slides ? [{ part, ...slides }] : [];
  });
}

/** Which way it runs: as asked, else upward on a door, and across on a drawer or on what opens upward or downward. */
export function layOn(record: OnFront, { opens }: FrontPart): 'across' | 'up' {
  return record.lay ?? (opens === 'left' || opens === 'right' ? 'up' : 'across');
}

/** The middle of a handle or a pull on its front, from left to right and upward, as it is marked. */
export function middleOn(draft: Draft, record: OnFront, front: FrontPart): readonly [x: Traced, z: Traced] {
  const l = draft.ledger;
  const { part, opens } = front;
  const { min, max } = outerBox(draft, part);
  const step = l.row(SETTING_OUT.setStep);
  const marked = (t: Traced) => l.round('as it is marked', t, step, 'nearest');
  const half = (t: Traced, why: string) => marked(l.ratio(why, t, SETTING_OUT.half));
  const aside =
    record.kind === 'handle'
      ? fromEdge(draft, record, sizeAcross(draft, record, layOn(record, front)), front.overlap)
      : record.fromEdge === undefined
        ? l.row(HANDLES.fromEdge)
        : draft.field(record, 'fromEdge');
  const x =
    opens !== 'left' && opens !== 'right'
      ? l.sum('half way across', min[0], half(l.less('its width', max[0], min[0]), 'half its width'))
      : opens === 'left'
        ? l.sum('middle of the handle', min[0], aside)
        : l.less('middle of the handle', max[0], aside);
  const z =
    record.fromBelow !== undefined
      ? l.sum('middle of the handle', min[2], draft.field(record, 'fromBelow'))
      : record.fromAbove !== undefined
        ? l.less('middle of the handle', max[2], draft.field(record, 'fromAbove'))
        : opens === 'lower'
          ? l.sum('middle of the handle', min[2], aside)
          : opens === 'upper'
            ? l.less('middle of the handle', max[2], aside)
            : l.sum('half way up', min[2], half(l.less('its height', max[2], min[2]), 'half its height'));
  return [x, z];
}
