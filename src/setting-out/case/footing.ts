import { BASES } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Bores } from '../joints/bores.ts';
import { faceJoint, facesWood } from '../joints/face-joint.ts';
import type { Joinable } from '../joints/joints.ts';
import { joinPanels } from '../joints/panel-joint.ts';
import { plugWish } from '../joints/plug-choice.ts';
import { standingPanels } from '../joints/standing-panels.ts';
import type { Bounded, Parting } from '../spaces/openings.ts';
import { joinBehindBack } from './behind-back.ts';
import { bevelledCleat } from './bevelled-cleat.ts';
import type { CasePanels } from './case-panels.ts';
import { isMitred } from './corners.ts';
import { takesFeetFirst } from './feet-first.ts';
import type { CaseFrame } from './frame-of-case.ts';
import { screwUpRail } from './screw-up-rail.ts';
import { skirting } from './skirting.ts';
import { hasSlidBack } from './slid-back.ts';

/** What a case stands on or hangs by, other than a mitred frame. */
export interface Footing {
  /** The kick board and the rails: each between two uprights. */
  readonly between: readonly Parting[];
  readonly feet: readonly DraftPart[];
  /** Strips that lie on the back of the case, by which it hangs. */
  readonly behind: readonly DraftPart[];
}

/** Makes the kick board, the feet or the rails of a case, and notches its sides where they meet a skirting. */
export function footing(
  draft: Draft,
  frame: CaseFrame,
  panels: CasePanels,
  partings: readonly Parting[],
  spaces: readonly Bounded[],
): Footing {
  skirting(draft, frame, panels);
  const form = frame.base?.form;
  const between = (part: DraftPart, from: DraftPart, to: DraftPart): Parting[] => {
    const space = spaces.find((s) => s.left === from && s.right === to);
    return space ? [{ part, upright: false, behind: true, from, to, space }] : [];
  };
  const hanging = draft.tree.childOf(frame.box.id, 'hanging');
  const cleat = hanging?.by === 'cleat' ? bevelledCleat(draft, frame, panels, hanging) : undefined;
  // Behind a back in grooves the strip goes between the sides.
  const inRecess = frame.back?.fitting === 'groove';
  return {
    between: [
      ...(form === 'toe-kick' ? between(kickBoard(draft, frame, panels), panels.left, panels.right) : []),
      ...(cleat && inRecess ? between(cleat.strip, panels.left, panels.right) : []),
      ...hangingRails(draft, frame, panels, partings).flatMap(({ part, from, to }) =>
        between(part, from, to),
      ),
    ],
    feet: form === 'feet' ? blocks(draft, frame) : [],
    behind: cleat && !inRecess ? [cleat.strip, ...(cleat.spacer ? [cleat.spacer] : [])] : [],
  };
}

/** A board set back between the sides, from the floor to the bottom. */
function kickBoard(draft: Draft, frame: CaseFrame, panels: CasePanels): DraftPart {
  const l = draft.ledger;
  const base = frame.base!;
  const lot = draft.lot(base.board!);
  const front = l.sum('front of the kick board', frame.front, draft.field(base, 'setback'));
  return draft.panel({
    record: base.id,
    role: 'kick',
    name: 'kick board',
    family: 'base',
    lot,
    at: [panels.inside.left, front, frame.foot],
    size: [panels.inside.width, draft.thickness(lot), draft.field(base, 'height')],
    length: '+x',
    // The show face looks to the front.
    width: '+z',
    between: true,
  });
}

/** Blocks of strip on edge under the bottom: a pair at either end, and more between where the case is long. */
function blocks(draft: Draft, frame: CaseFrame): readonly DraftPart[] {
  const l = draft.ledger;
  const base = frame.base!;
  const lot = draft.lot(base.strip!);
  const [thick, high] = [draft.thickness(lot), draft.typed(`shop/rack/lots/${lot.id}/width`, lot.width!)];
  const third = l.ratio('a third of the case', frame.width, BASES.footShare);
  const long = l.least('no longer than a third of the case', l.row(BASES.footLength), third);
  const setback = base.setback === undefined ? l.row(BASES.footSetback) : draft.field(base, 'setback');
  const behind = base.setbackBack === undefined ? setback : draft.field(base, 'setbackBack');
  const first = l.sum('left end of the first foot', frame.left, setback);
  const travel = l.less('from the first foot to the last', frame.width, setback, setback, long);
  const front = l.sum('front of the feet', frame.front, setback);
  const depth = l.less('from the front feet to those behind', frame.depth, setback, behind, thick);
  if (l.ticks(travel) < l.ticks(long) || l.ticks(depth) < l.ticks(thick)) {
    draft.stop('base.no-room', base, 'setback', 'The feet are set back so far that they meet.', {
      says: 'Set them back less.',
      edits: [{ record: base.id, field: 'setback', value: '25 mm' }],
    });
    return [];
  }
  const gaps = Math.ceil(l.ticks(travel) / l.ticks(l.row(BASES.footApart)));
  const even = Array.from({ length: gaps }, () => 1);
  const rear = l.sum('front of the feet behind', front, depth);
  let x = first;
  return Array.from({ length: gaps + 1 }, (_, i) => {
    if (i > 0) x = l.sum('left end of the next foot', x, l.share('an equal share', travel, even, i - 1));
    const at = x;
    return [['front', front] as const, ['back', rear] as const].map(([side, y]) =>
      draft.panel({
        record: base.id,
        role: `${side}-foot:${i + 1}`,
        name: `${side} foot ${i + 1}`,
        family: 'base',
        lot,
        at: [at, y, frame.site.floor],
        size: [long, thick, high],
        length: '+x',
        width: '+z',
      }),
    );
  }).flat();
}

/** Rails under the top between the uprights that reach it, before the back. */
function hangingRails(
  draft: Draft,
  frame: CaseFrame,
  panels: CasePanels,
  partings: readonly Parting[],
): readonly { readonly part: DraftPart; readonly from: DraftPart; readonly to: DraftPart }[] {
  const record = draft.tree.childOf(frame.box.id, 'hanging');
  if (!record || record.by === 'cleat') return [];
  const l = draft.ledger;
  const lot = draft.lot(record.board);
  const thick = draft.thickness(lot);
  const high = record.height === undefined ? l.row(BASES.railHeight) : draft.field(record, 'height');
  const t = (x: Traced) => l.ticks(x);
  const reach = partings
    .filter((p) => p.upright && !p.thin && (p.to === undefined || p.to === panels.lid))
    .map((p) => p.part)
    .sort((a, b) => t(a.box.min[0]) - t(b.box.min[0]));
  const uprights = [panels.left, ...reach, panels.right];
  const top = panels.lid ? panels.lid.box.min[2] : frame.head;
  const y = l.less(
    'front of the rail',
    l.sum('back of the panels inside', frame.panelFront, frame.insideDepth),
    thick,
  );
  return uprights.slice(1).map((to, i) => {
    const from = uprights[i]!;
    const x = from.box.max[0];
    const part = draft.panel({
      record: record.id,
      role: `rail:${i + 1}`,
      name: uprights.length > 2 ? `hanging rail ${i + 1}` : 'hanging rail',
      family: 'rail',
      lot,
      at: [x, y, l.less('underside of the rail', top, high)],
      size: [l.less('between the uprights', to.box.min[0], x), thick, high],
      length: '+x',
      width: '+z',
      between: true,
    });
    return { part, from, to };
  });
}

/** Rails that are screwed from behind before a back slides in there, which it does before a case is closed from above. */
export function railsBeforeBack(
  draft: Draft,
  frame: CaseFrame,
  panels: Pick<CasePanels, 'lid'>,
  { between }: Footing,
): readonly DraftPart[] {
  return hasSlidBack(frame) && !closesAtOnce(frame) && !panels.lid?.between
    ? between
        .map(({ part }) => part)
        .filter((part) => part.record !== frame.base?.id && !isCleat(draft, part))
    : [];
}

/** True for the strip of a cleat, which is behind the back. */
function isCleat(draft: Draft, part: DraftPart): boolean {
  return draft.cleats.some((c) => c.onCase === part.id);
}

/** True where a back in grooves is shut in as the panels are glued together, before any rail can be screwed. */
function closesAtOnce(frame: CaseFrame): boolean {
  return isMitred(frame) || frame.joints === 'dowels' || frame.joints === 'biscuits';
}

/** Joins a kick board to the sides, feet to the bottom, rails to their uprights. */
export function joinFooting(
  draft: Draft,
  bores: Bores,
  { frame, panels, partings, backs, top, beyond }: Omit<Joinable, 'rails'>,
  { between, feet, behind }: Footing,
): void {
  // A back in grooves slides in before what is laid on the case.
  const slid = backs.filter((b) => b.record.fitting === 'groove').map((b) => b.part);
  const stands = standingPanels(frame, panels, partings);
  // Feet come before shelves that are screwed in last.
  const standing = [...stands, ...slid];
  const first = takesFeetFirst(panels.bottom);
  for (const { part, from, to } of between) {
    const isRail = part.record !== frame.base?.id;
    // A cleat is behind the back.
    const face = isRail && !isCleat(draft, part) && slid.length > 0 && closesAtOnce(frame) ? 'show' : 'under';
    // Rails go in from the right, and what stands in a neighbour may do so behind a side that they share.
    const after = between.slice(between.findIndex((p) => p.part === part) + 1).map((p) => p.part);
    const standing = [...stands, ...beyond, ...(isRail ? after : [])];
    joinPanels(draft, bores, frame, { part, edge: 'start', mate: from, standing, face });
    joinPanels(draft, bores, frame, { part, edge: 'end', mate: to!, standing, face });
    if (isRail) screwUpRail(draft, bores, { frame, panels, top }, part, [...stands, ...slid]);
  }
  joinBehindBack(draft, bores, { frame, panels, top, backs }, behind);
  for (const foot of feet) {
    const spec = {
      part: foot,
      edge: 'far',
      mate: panels.bottom,
      duty: 'foot',
      glued: true,
      standing,
      plugs: plugWish(draft, frame.box),
    } as const;
    if (facesWood(draft, spec)) {
      // Where no driver would reach them then, they go under the bottom while it lies loose.
      if (!first) faceJoint(draft, bores, spec);
      else if (!faceJoint(draft, bores, { ...spec, besides: true }))
        faceJoint(draft, bores, { ...spec, standing: [], loose: true });
    } else if (!draft.snags.some((s) => s.code === 'base.under-side' && s.where.record === foot.record))
      draft.stop(
        'base.under-side',
        frame.base!,
        'setback',
        'A foot stands where no screw from inside would find it.',
        {
          says: 'Set the feet back by at least the thickness of a side.',
          edits: [{ record: frame.base!.id, field: 'setback', value: '40 mm' }],
        },
      );
  }
}
