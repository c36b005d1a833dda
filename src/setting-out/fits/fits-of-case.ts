import { FIT_LIMITS } from '../../materials/index.ts';
import type { BackIn } from '../case/back.ts';
import type { CasePanels } from '../case/case-panels.ts';
import type { CaseFrame } from '../case/frame-of-case.ts';
import type { CaseEdging } from '../case/front-edging.ts';
import type { FrameSide } from '../case/mitred-frame.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Joint } from '../joints/joint.ts';
import { axisOf } from '../place.ts';
import type { ClosedSpaces } from '../spaces/closed-spaces.ts';
import type { Parting } from '../spaces/openings.ts';
import { theName } from '../the-name.ts';
import { betweenOf, ClearLoops } from './clear-loops.ts';
import { alike } from './cut-alike.ts';
import { addFit, cut, type FitMember, setBy, thick } from './fit.ts';
import { fitsOfDoors } from './fits-of-doors.ts';
import { fitsOfSliding } from './fits-of-sliding.ts';

/** What a case is made of, for its fits. */
export interface Fitted {
  readonly frame: CaseFrame;
  readonly panels: CasePanels;
  readonly closed: ClosedSpaces;
  readonly partings: readonly Parting[];
  readonly backs: readonly BackIn[];
  readonly frames: readonly ReadonlyMap<FrameSide, DraftPart>[];
  readonly edging: CaseEdging;
  readonly joints: readonly Joint[];
}

/** Every fit of a case: doors, panels between panels, what is let in, the back, and mitred frames. */
export function fitsOfCase(draft: Draft, parts: Fitted): void {
  const loops = new ClearLoops(draft, parts.closed);
  fitsOfDoors(draft, parts.frame.doors, parts.closed, loops);
  fitsOfSliding(draft, parts.frame, parts.closed, loops);
  for (const p of parts.partings) {
    betweenPanels(draft, p, loops);
    const edged = parts.edging.strips.find(([strip, panel]) => panel === p.part && strip.between);
    if (edged) edgingBetween(draft, p, edged[0], loops);
  }
  letIn(draft, parts.joints, loops);
  alike(draft, [parts.panels.left, parts.panels.right]);
  const { bottom, lid } = parts.panels;
  if (bottom.between && lid?.between) lidLikeBottom(draft, parts.panels, lid);
  for (const back of parts.backs) fitOfBack(draft, parts, back, loops);
  for (const frame of parts.frames) fitsOfFrame(draft, frame);
}

/** A shelf or a divider between what it stands between: as long as the clear distance and what goes into dados. */
function betweenPanels(draft: Draft, { part, from, to, upright, space }: Parting, loops: ClearLoops): void {
  const size = upright ? 'height' : 'width';
  const clear = loops.of(betweenOf(size, space), part);
  const l = draft.ledger;
  const tongues = [
    [part.tongues.start, from],
    [part.tongues.end, to],
  ] as const;
  const deep = tongues.flatMap(([tongue, mate]) =>
    tongue === undefined || !mate
      ? []
      : [setBy('router', `depth of the ${mate.name}’s channel for the ${part.name}`, tongue, 1, mate.id)],
  );
  addFit(draft, {
    id: `${part.id}/length`,
    kind: upright ? 'divider' : 'shelf',
    name: `${theName(part)} between what it stands between`,
    gap: l.less(
      'room endways',
      l.sum('clear distance and what goes in', space.size[upright ? 2 : 0], ...deep.map((m) => m.length)),
      part.length,
    ),
    least: l.times('what it may be too long by, less than nothing', l.row(FIT_LIMITS.tooLong), -1),
    most: l.row(FIT_LIMITS.tooShort),
    loop: [...clear, ...deep, cut(draft, part, 'length', -1)],
    toFit: part.id,
  });
}

/** The strip on the front of what goes into its neighbours: cut to length beforehand, it ends beside them. */
function edgingBetween(draft: Draft, { upright, space }: Parting, strip: DraftPart, loops: ClearLoops): void {
  const l = draft.ledger;
  addFit(draft, {
    id: `${strip.id}/length`,
    kind: upright ? 'divider' : 'shelf',
    name: `the ${strip.name} beside its neighbours`,
    gap: l.less('room beside the neighbours', space.size[upright ? 2 : 0], strip.length),
    least: l.times('what it may be too long by, less than nothing', l.row(FIT_LIMITS.tooLong), -1),
    most: l.row(FIT_LIMITS.tooShort),
    loop: [...loops.of(betweenOf(upright ? 'height' : 'width', space)), cut(draft, strip, 'length', -1)],
    toFit: strip.id,
  });
}

/** Panels in their dados, sideways: a channel is a little wider than the stock that goes in. */
function letIn(draft: Draft, joints: readonly Joint[], loops: ClearLoops): void {
  const l = draft.ledger;
  for (const j of joints) {
    if (!j.letIn || j.kind === 'rabbet') continue;
    const [part, mate] = [draft.part(j.part), draft.part(j.mate)];
    const ids = j.letIn.channel ? [j.letIn.channel] : [`${mate.id}#${part.id}`, `${mate.id}#${part.record}`];
    const channel = mate.features.find((f) => ids.includes(f.id));
    if (channel?.kind !== 'groove') continue;
    addFit(draft, {
      id: `${j.id}/thickness`,
      kind: j.duty === 'back' ? 'back' : axisOf(part.place.length).axis === 2 ? 'divider' : 'shelf',
      name: `${theName(part)} in its ${j.kind} in the ${mate.name}`,
      gap: j.letIn.sideways,
      least: draft.nothing,
      most: l.row(FIT_LIMITS.dadoLoose),
      loop: [
        // It is tried with a piece of the very stock, so it is off as the stock is.
        {
          name: `width of the ${j.kind} in the ${mate.name}`,
          length: channel.width,
          printed: loops.routed(mate).get(channel.id)!.width,
          sign: 1,
          made: { by: 'lot', lot: part.lot },
          part: mate.id,
        },
        thick(part, -1),
        ...besideTongue(part, mate),
      ],
    });
  }
}

/** What a rabbet takes off a panel's end, where only a tongue of it goes in. */
function besideTongue(part: DraftPart, mate: DraftPart): readonly FitMember[] {
  const cut = part.features.find((f) => f.kind === 'rabbet' && f.id === `${part.id}#${mate.id}`);
  return cut?.kind === 'rabbet'
    ? [setBy('router', `depth of the rabbet beside the tongue of the ${part.name}`, cut.depth, 1, part.id)]
    : [];
}

/** Bottom and lid of one length: else the sides lean. */
function lidLikeBottom(draft: Draft, { bottom }: CasePanels, lid: DraftPart): void {
  const l = draft.ledger;
  addFit(draft, {
    id: `${lid.id}/length`,
    kind: 'panel',
    name: `the ${lid.name} between the sides, as far apart as the ${bottom.name} sets them`,
    gap: l.less('how much shorter the lid is than the bottom', bottom.length, lid.length),
    least: l.times('what it may be too long by, less than nothing', l.row(FIT_LIMITS.tooLong), -1),
    most: l.row(FIT_LIMITS.tooShort),
    loop: [cut(draft, bottom, 'length', 1), cut(draft, lid, 'length', -1)],
    toFit: lid.id,
  });
}

/** A back let in, from the bottom of one channel to the bottom of the other: it goes in, and can't fall out of one. */
function fitOfBack(
  draft: Draft,
  { panels, joints, frame }: Fitted,
  { part: back, record, left, right }: BackIn,
  loops: ClearLoops,
): void {
  const l = draft.ledger;
  const channels = joints.flatMap((j) =>
    j.part === back.id && j.letIn ? [{ mate: draft.part(j.mate), depth: j.letIn.depth, kind: j.kind }] : [],
  );
  const first = channels[0];
  if (!first) return;
  const size = axisOf(back.place.length).axis === 0 ? 'length' : 'width';
  addFit(draft, {
    id: `${back.id}/${size}`,
    kind: 'back',
    name: `the ${back.name} in its ${first.kind}s, from side to side`,
    gap: l.less(
      'room from side to side',
      l.sum(
        'width between the channels',
        record.parent === frame.box.id
          ? panels.inside.width
          : l.less('clear width of the bay', right.box.min[0], left.box.max[0]),
        ...channels.map((c) => c.depth),
      ),
      back[size],
    ),
    least: draft.nothing,
    most: first.depth,
    loop: [
      ...loops.of({ size: 'width', from: left, to: right, along: panels.bottom }),
      ...channels.map((c) =>
        setBy('router', `depth of the ${c.kind} in the ${c.mate.name}`, c.depth, 1, c.mate.id),
      ),
      cut(draft, back, size, -1),
    ],
    toFit: back.id,
  });
}

/** Opposite strips of a mitred frame are of one length, or its corners open. */
export function fitsOfFrame(draft: Draft, frame: ReadonlyMap<FrameSide, DraftPart>): void {
  // Where one side is missing, the strips beside it end square and are trimmed there.
  if (frame.size < 4) return;
  const l = draft.ledger;
  for (const [a, b] of [
    ['front', 'back'],
    ['left', 'right'],
  ] as const) {
    const [one, other] = [frame.get(a), frame.get(b)];
    if (!one || !other) continue;
    addFit(draft, {
      id: `${other.id}/length`,
      kind: 'frame',
      name: `the ${one.name} and the one opposite`,
      gap: l.less('how much longer one is', one.length, other.length),
      least: l.times('what it may be too long by, less than nothing', l.row(FIT_LIMITS.mitre), -1),
      most: l.row(FIT_LIMITS.mitre),
      loop: [cut(draft, one, 'length', 1), cut(draft, other, 'length', -1)],
      toFit: other.id,
    });
  }
}
