import type { RecordOf } from '../../job/index.ts';
import type { Traced } from '../../measure/index.ts';
import { sideDepth } from '../case/case-panels.ts';
import type { CaseFrame } from '../case/frame-of-case.ts';
import type { Draft, DraftPart, Tongues, Triple } from '../draft.ts';
import { intoDado, lengthened } from '../joints/let-in.ts';
import type { ClearSizes } from './clear-sizes.ts';
import type { ClosedSpaces } from './closed-spaces.ts';
import { splitDepth } from './hidden-space.ts';

/** A clear space with what bounds it on each side. */
export interface Bounded {
  readonly at: Triple;
  readonly size: Triple;
  readonly left: DraftPart;
  readonly right: DraftPart;
  readonly below: DraftPart;
  /** Absent under an applied top, whose parts come later. */
  readonly above: DraftPart | undefined;
  /** True where a panel stands before it. */
  readonly behind?: boolean;
}

/** A clear space that a record of the document asks for. */
export interface Space extends Bounded {
  readonly record: RecordOf<'opening'>;
}

/** A panel that parts two openings, with what it stands or lies between. */
export interface Parting {
  readonly part: DraftPart;
  readonly upright: boolean;
  /** True for what parts places for trays: no screw goes into its edges. */
  readonly thin?: boolean;
  /** True for a panel parallel to the back, and for what is hidden behind one: nothing of it comes to the front. */
  readonly behind: boolean;
  /** What its start and its end meet; the end of an upright under an applied top meets that. */
  readonly from: DraftPart;
  readonly to: DraftPart | undefined;
  /** The space that it parts; no opening’s where the case has none. */
  readonly space: Bounded & Partial<Pick<Space, 'record'>>;
}

/**
 * Divides a space by its record's split, down to the last opening. Returns the openings that aren't split any
 * further; dividers are added to the draft and to `partings` on the way.
 */
export function divideSpace(
  draft: Draft,
  frame: CaseFrame,
  clear: ClearSizes,
  whole: Space,
  partings: Parting[],
  closed: ClosedSpaces,
): readonly Space[] {
  const { record } = whole;
  closed.note(whole);
  const space = closed.behindDoor(whole);
  if (!space) return [];
  draft.opening(record.id, space.at, space.size);
  if (!record.split) return [space];
  if (record.split === 'back') {
    const depths = clear.parted(record.id);
    const parts = depths ? splitDepth(draft, frame, space, depths, partings) : [];
    return parts.flatMap((part, i) => {
      const inside: Parting[] = [];
      const leaves = divideSpace(draft, frame, clear, part, inside, closed);
      partings.push(...inside.map((p) => (i === 0 ? p : { ...p, behind: true })));
      return leaves.map((leaf) => (i === 0 ? leaf : { behind: true, ...leaf }));
    });
  }
  const across = record.split === 'across';
  const axis = across ? 0 : 2;
  const openings = draft.tree.childrenOf(record.id, 'opening');
  const named = draft.tree.childrenOf(record.id, 'divider');
  const lots = openings.slice(1).map((_, i) => draft.lot(named[i]?.board ?? frame.box.board));
  const thicknesses = lots.map((lot) => draft.thickness(lot));
  const sizes = clear.parted(record.id);
  if (!sizes) return [];
  const l = draft.ledger;
  const leaves: Space[] = [];
  let at = space.at;
  let before = across ? space.left : space.below;
  openings.forEach((opening, i) => {
    const size = replaced(space.size, axis, sizes[i]!);
    const thickness = thicknesses[i];
    let after = across ? space.right : space.above;
    let next = at;
    if (thickness !== undefined) {
      const place = replaced(
        at,
        axis,
        l.sum(across ? 'left face of the divider' : 'underside of the divider', at[axis], sizes[i]!),
      );
      // What takes the backs of bays runs on as far back as the sides.
      const deep =
        across && frame.back?.fitting !== 'applied' && takesBacks(frame, opening.id, openings[i + 1]!.id)
          ? upToBackEdges(draft, frame, at[1])
          : space.size[1];
      const back = closed.behindOneDoor(opening.id, openings[i + 1]!.id);
      const tongues = across
        ? { start: intoDado(draft, frame, space.below), end: intoDado(draft, frame, space.above) }
        : { start: intoDado(draft, frame, space.left), end: intoDado(draft, frame, space.right) };
      const box = lengthened(
        draft,
        back ? [place[0], back.front(place[1]), place[2]] : place,
        replaced([space.size[0], back ? back.depth(deep) : deep, space.size[2]], axis, thickness),
        across ? 2 : 0,
        tongues,
      );
      const divider = dividerPart(draft, record, named[i], i, lots[i]!, box, tongues, across, frame.alone);
      partings.push(
        across
          ? { part: divider, upright: true, behind: false, from: space.below, to: space.above, space }
          : { part: divider, upright: false, behind: false, from: space.left, to: space.right, space },
      );
      if (!across)
        loadSurface(draft, divider, space.size[0], divider.width, named[i]?.load, named[i] ?? record);
      next = replaced(
        at,
        axis,
        l.sum(across ? 'right face of the divider' : 'upper face of the divider', place[axis], thickness),
      );
      after = divider;
    }
    const sub: Space = across
      ? { ...space, record: opening, at, size, left: before, right: after! }
      : { ...space, record: opening, at, size, below: before, above: after };
    leaves.push(...divideSpace(draft, frame, clear, sub, partings, closed));
    at = next;
    if (after) before = after;
  });
  return leaves;
}

/** How deep something is that begins there and runs on to the back edges of the sides. */
function upToBackEdges(draft: Draft, frame: CaseFrame, front: Traced): Traced {
  const l = draft.ledger;
  const depth = sideDepth(draft, frame);
  const rear = l.sum('back edges of the sides', frame.panelFront, depth);
  return l.ticks(front) === l.ticks(frame.panelFront) ? depth : l.less('depth up to there', rear, front);
}

/** True where either of two neighbouring bays has a back of its own. */
function takesBacks(frame: CaseFrame, ...bays: readonly string[]): boolean {
  return frame.backs.some((b) => bays.includes(b.parent));
}

/** Notes that a part carries something over a free span. */
export function loadSurface(
  draft: Draft,
  part: DraftPart,
  span: Traced,
  depth: Traced,
  load: string | undefined,
  record: { readonly id: string },
): void {
  const loadKg = draft.mass(load);
  draft.surfaces.push({
    part: part.id,
    span,
    depth,
    ends: 'screwed',
    ...(loadKg === undefined ? {} : { loadKg }),
    record: record.id,
  });
}

function dividerPart(
  draft: Draft,
  split: RecordOf<'opening'>,
  record: RecordOf<'divider'> | undefined,
  index: number,
  lot: Parameters<Draft['panel']>[0]['lot'],
  box: { readonly at: Triple; readonly size: Triple },
  tongues: Tongues,
  upright: boolean,
  alone: boolean,
): DraftPart {
  const which = ordinal(index + 1);
  return draft.panel({
    record: record?.id ?? split.id,
    role: record ? 'divider' : `divider:${index + 1}`,
    name: `${which} ${upright ? 'divider' : 'fixed shelf'}${alone && draft.tree.get(split.parent)?.kind === 'case' ? '' : ` of ${split.id}`}`,
    family: upright ? 'divider' : 'shelf',
    lot,
    ...box,
    tongues,
    length: upright ? '+z' : '+x',
    width: '+y',
    between: true,
  });
}

function replaced(triple: Triple, axis: 0 | 2, value: Traced): Triple {
  return axis === 0 ? [value, triple[1], triple[2]] : [triple[0], triple[1], value];
}

const ORDINALS = [
  'first',
  'second',
  'third',
  'fourth',
  'fifth',
  'sixth',
  'seventh',
  'eighth',
  'ninth',
  'tenth',
];

/** `first`, `second`, and from the eleventh on `11th`. */
export function ordinal(n: number): string {
  return ORDINALS[n - 1] ?? `${n}th`;
}
