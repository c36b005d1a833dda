import type { RecordOf } from '../../job/index.ts';
import { SETTING_OUT } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { outerBox } from '../edging/outer-box.ts';
import type { TracedBox } from '../place.ts';
import { extentOf } from '../spaces/extent-of.ts';
import { ordinal } from '../spaces/openings.ts';
import { placesOn, rowOn } from './places-on-front.ts';

/** Something that is opened by hand: a door or a drawer front, and the edge that opens, where it has one. */
export interface FrontPart {
  readonly part: DraftPart;
  readonly opens?: 'left' | 'right' | 'upper' | 'lower';
  /** How far it laps those beside it, where it slides. */
  readonly overlap?: Traced;
  /** Set on the right one of a pair of doors. */
  readonly mirrored?: boolean;
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
    const mirrored = part.role === 'right-door';
    return opens ? [{ part, opens, mirrored }] : slides ? [{ part, ...slides }] : [];
  });
}

/** The middles of the handles or pulls on a front, from left to right and upward, as they are marked; rows in their order. */
export function middlesOn(
  draft: Draft,
  record: OnFront,
  front: FrontPart,
): readonly (readonly [x: Traced, z: Traced])[] {
  const l = draft.ledger;
  const { min, max } = outerBox(draft, front.part);
  const extent = record.about === undefined ? undefined : extentOf(draft, record.about);
  // What isn't made is told elsewhere.
  if (record.about !== undefined && !extent) return [];
  const along = (way: 'across' | 'up') => {
    const k = way === 'across' ? 0 : 2;
    const whole = l.less(way === 'up' ? 'its height' : 'its width', max[k], min[k]);
    const about = extent && halfWayTo(draft, extent, min[k], k);
    return placesOn(draft, record, { ...front, about }, way, whole).map(({ from, off }) =>
      from === 'low'
        ? l.sum('middle of the handle', min[k], off)
        : l.less('middle of the handle', max[k], off),
    );
  };
  const [xs, zs] = [along('across'), along('up')];
  return xs.flatMap((x) => zs.map((z) => [x, z] as const));
}

/** From the low side of a front to the middle of something in its case. */
function halfWayTo(draft: Draft, { min, max }: TracedBox, from: Traced, k: 0 | 2): Traced {
  const l = draft.ledger;
  const half = l.ratio('half of that', l.less('how far it reaches', max[k], min[k]), SETTING_OUT.half);
  return l.less('to the middle of what it stands about', l.sum('its middle', min[k], half), from);
}

/** What tells one of several on a front from the others: `left`, `upper`, `second`; nothing where it is alone. */
export function whichOf(record: OnFront, front: FrontPart, i: number): string {
  const count = record.count ?? 1;
  if (count === 1) return '';
  if (count > 2) return `${ordinal(i + 1)} `;
  return `${(rowOn(record, front) === 'across' ? ['left', 'right'] : ['lower', 'upper'])[i]} `;
}
