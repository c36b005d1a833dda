import type { RecordOf } from '../../job/index.ts';
import { SETTING_OUT } from '../../materials/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { BackIn } from '../case/back.ts';
import { holdByButtons } from '../case/buttons.ts';
import type { CasePanels } from '../case/case-panels.ts';
import { isMitred, runsThrough } from '../case/corners.ts';
import type { CaseFrame } from '../case/frame-of-case.ts';
import type { CaseEdging } from '../case/front-edging.ts';
import { joinMitres } from '../case/mitred-corners.ts';
import type { FrameSide } from '../case/mitred-frame.ts';
import { hasSlidBack } from '../case/slid-back.ts';
import type { Top } from '../case/top.ts';
import { screwTopToLid } from '../case/tops-over-cases.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { axisOf, boxTicks } from '../place.ts';
import { sharedBox } from '../same-space.ts';
import type { Parting } from '../spaces/openings.ts';
import { backJoint } from './back-joint.ts';
import { baseUnderBottom } from './base-joint.ts';
import type { Bores } from './bores.ts';
import { closingOrder } from './closing-order.ts';
import { contactBox, overlapAlong, sideLooking } from './contact.ts';
import { type FaceJointSpec, faceJoint, facesWood } from './face-joint.ts';
import { hasJig, isOutOfReach, joinPanels, pegsOf, screwsThrough, throughInstead } from './panel-joint.ts';
import { plugWish } from './plug-choice.ts';
import { findsWood, type PocketJointSpec, pocketJoint } from './pocket-joint.ts';
import { standingPanels } from './standing-panels.ts';
import { stepsClose } from './steps-close.ts';
import { glueStrip, glueTop, mitre, mitreCorners } from './strip-joints.ts';

/** Everything of a case that is to be joined. */
export interface Joinable {
  readonly frame: CaseFrame;
  readonly panels: CasePanels;
  readonly partings: readonly Parting[];
  /** The one back of all of it; undefined where its bays have their own, or nothing closes it. */
  readonly back: DraftPart | undefined;
  readonly backs: readonly BackIn[];
  readonly top: Top | undefined;
  readonly base: ReadonlyMap<FrameSide, DraftPart>;
  readonly edging: CaseEdging;
  /** What stands behind the sides that it shares with its neighbours. */
  readonly beyond: readonly DraftPart[];
  /** Rails that go in before a back that slides in behind them, and so before what closes the case above. */
  readonly rails: readonly DraftPart[];
  /** A fixed front under a lid, joined already. */
  readonly front: Parting | undefined;
}

/** Joins a case: its panels in the way that it asks for, screws through the back, glue at edging and mitres; clear of what is bored already. */
export function joinCase(draft: Draft, bores: Bores, parts: Joinable): void {
  const { panels, top, beyond } = parts;
  const { frame } = parts;
  const before = draft.joints.length;
  for (const { part, record, left, right } of parts.backs)
    if (record.fitting === 'groove')
      for (const side of [left, right])
        bores.hollow(side.id, sharedBox(boxTicks(draft.ledger, part.box), boxTicks(draft.ledger, side.box)));
  const box = [panels.left, panels.right, panels.bottom, ...(panels.lid ? [panels.lid] : [])];
  const around = [...box, ...beyond];
  const through = runsThrough(frame);
  // A lid comes down on panels at the back of a space, so they stand before it; dividers for trays slide in under it, but not where
  // they are closed in behind.
  const behind = [
    ...parts.partings
      .filter((p) => p.behind || (p.thin && (p.to !== panels.lid || isClosedIn(draft, parts, p.part))))
      .map((p) => p.part),
    ...parts.rails,
    // So do shelves over and under trays where a back slides in before a lid is laid over it, and that back.
    ...(panels.lid && !panels.lid.between && hasSlidBack(frame)
      ? parts.partings.flatMap((p) =>
          p.thin ? [p.from, ...(p.to && p.to !== panels.lid ? [p.to] : [])] : [],
        )
      : []),
    ...(panels.lid && !panels.lid.between
      ? parts.backs.filter((b) => b.record.fitting === 'groove').map((b) => b.part)
      : []),
  ];
  for (const [flat, runs, edge] of [
    [panels.bottom, through.bottom, 'start'],
    [panels.lid, through.lid, 'end'],
  ] as const) {
    if (!flat || isMitred(frame)) continue;
    const standing = flat === panels.lid ? [...around, ...behind] : around;
    for (const [hand, end] of [
      ['left', 'start'],
      ['right', 'end'],
    ] as const)
      joinPanels(
        draft,
        bores,
        frame,
        runs[hand]
          ? { part: panels[hand], edge, mate: flat, standing }
          : { part: flat, edge: end, mate: panels[hand], standing },
      );
  }
  // Panels at the back of a space stand as well before shelves come.
  const uprights = parts.partings.filter((p) => p.upright || p.behind).map((p) => p.part);
  if (isMitred(frame)) joinMitres(draft, bores, frame.box, panels);
  // What goes into dados first: screws of the others keep clear of these, on the far face of an upright as well.
  const inDados = ({ part }: Parting) => part.tongues.start !== undefined || part.tongues.end !== undefined;
  // A lid over one side is pegged on before the other side comes, and a back in grooves stands before that.
  const shut =
    pegsOf(frame) && through.lid.left !== through.lid.right && hasSlidBack(frame)
      ? parts.backs.filter((b) => b.record.fitting === 'groove').map((b) => b.part)
      : [];
  const all = parts.partings.map((p) => p.part);
  const trays = parts.partings.filter((p) => p.thin);
  for (const { part, upright, from, to } of [
    ...parts.partings.filter(inDados),
    ...parts.partings.filter((p) => !inDados(p)),
  ]) {
    const before = all.slice(0, all.indexOf(part));
    const slideIn = trays.filter((p) => p.from === part || p.to === part).map((p) => p.part);
    const isAcross = axisOf(part.place.thickness).axis === 1;
    const standing = around
      .concat(before, upright ? [] : uprights, isAcross ? shut : [])
      .filter((p) => p !== part && !slideIn.includes(p));
    const shutIn = isAcross && isMitred(frame) && hasSlidBack(frame);
    joinPanels(draft, bores, frame, { part, edge: 'start', mate: from, standing, shutIn });
    // Whatever closes a case above comes when panels at the back of its spaces stand.
    const atLast = to === panels.lid ? [...standing, ...behind.filter((p) => p !== part)] : standing;
    if (to) joinPanels(draft, bores, frame, { part, edge: 'end', mate: to, standing: atLast, shutIn });
  }
  // What joins its own panels to one another has only come now.
  const own = draft.joints.slice(before);
  if (!closingOrder(own, [...box, ...all])) cannotClose(draft, frame);
  stepsClose(draft, parts);
  if (top && panels.lid)
    screwTopToLid(draft, bores, frame.top!, top.board, panels.lid, [
      ...box.filter((p) => p !== panels.lid),
      ...parts.partings.map((p) => p.part),
      ...(parts.back ? [parts.back] : []),
    ]);
  else if (top && !frame.top?.hinged) topOnUprights(draft, bores, parts, top.board);
  baseUnderBottom(draft, bores, parts);
  for (const back of parts.backs) fixBack(draft, bores, parts, back);
  for (const [strip, panel] of parts.edging.strips) glueStrip(draft, strip, panel);
  for (const [strip, next] of parts.edging.corners) mitre(draft, strip, next);
  if (top) glueTop(draft, top);
  for (const frame of [parts.base, top?.strips]) if (frame) mitreCorners(draft, frame);
}

/** True where a divider for trays can’t slide in from behind when the panels round it stand: another panel, or a back, is there by then. */
function isClosedIn(draft: Draft, { panels, partings, backs }: Joinable, tray: DraftPart): boolean {
  const t = (x: Traced) => draft.ledger.ticks(x);
  // A back in grooves slides in before a lid is laid over it.
  const slid = panels.lid && !panels.lid.between ? backs.filter((b) => b.record.fitting === 'groove') : [];
  const there = [...partings.filter((p) => p.behind).map((p) => p.part), ...slid.map((b) => b.part)];
  return there.some(
    ({ box }) =>
      t(box.min[1]) >= t(tray.box.max[1]) &&
      ([0, 2] as const).every(
        (k) => t(box.min[k]) < t(tray.box.max[k]) && t(box.max[k]) > t(tray.box.min[k]),
      ),
  );
}

/** A side under the strips that edge its top: it may stand as far in as they are thick, or have none over it. */
function underEdging(draft: Draft, top: RecordOf<'top'>, upright: DraftPart): void {
  const flush = top.fit === 'flush';
  const strip = top.edging === undefined ? undefined : draft.thickness(draft.lot(top.edging));
  const out = strip && `${Math.ceil(toMm(draft.ledger.ticks(strip)))} mm`;
  draft.stop(
    'top.edging-over-side',
    top,
    flush ? 'fit' : 'overhangSides',
    `The ${upright.name} stands under the top’s edging, where a screw would not find the board.`,
    {
      says: 'Let the top stand out further at the sides, or use narrower edging.',
      edits: [
        ...(flush ? [{ record: top.id, field: 'fit' }] : []),
        ...(out === undefined ? [] : [{ record: top.id, field: 'overhangSides', value: out }]),
      ],
    },
    { says: 'Edge its front alone.', edits: [{ record: top.id, field: 'edgedSides', value: 'front' }] },
  );
}

/** Dowels or biscuits that point two ways at once, whichever panel is put in last. */
function cannotClose(draft: Draft, { box }: CaseFrame): void {
  draft.stop(
    'joints.cannot-close',
    box,
    'joints',
    'The panels can’t be put together one after the other: whichever comes last has dowels or biscuits that point two ways.',
    { says: 'Let the panels into dados.', edits: [{ record: box.id, field: 'joints', value: 'dado' }] },
    {
      says: 'Screw them.',
      edits: [{ record: box.id, field: 'joints', value: hasJig(draft) ? 'pocket-screws' : 'face-screws' }],
    },
  );
}

/**
 * The top is held from inside, by pockets at the upper end of every upright that reaches it; where there is no jig for
 * pockets, by screws through the top.
 */
function topOnUprights(draft: Draft, bores: Bores, parts: Joinable, board: DraftPart): void {
  const uprights = [
    parts.panels.left,
    ...parts.partings.filter((p) => p.upright && !p.to).map((p) => p.part),
    parts.panels.right,
  ];
  const { panels, partings, frame, backs } = parts;
  const standing = [
    ...standingPanels(frame, panels, partings),
    ...backs.filter((b) => b.record.fitting === 'groove').map((b) => b.part),
    ...parts.rails,
  ];
  const onButtons = frame.top?.moves === 'buttons';
  const foremost = onButtons ? { foremost: true as const } : {};
  for (const upright of uprights) {
    // One that stands across would hold all of a top that moves.
    if (onButtons && axisOf(upright.place.thickness).axis !== 0) continue;
    const spec: PocketJointSpec = {
      part: upright,
      edge: 'end',
      face: 'under',
      mate: board,
      duty: 'carries',
      standing,
      ...foremost,
    };
    const away = hasJig(draft) && isOutOfReach(draft, frame, spec);
    const through = away || (screwsThrough(draft, frame) && !hasJig(draft));
    const down: FaceJointSpec = {
      part: upright,
      edge: 'end',
      mate: board,
      duty: 'carries',
      glued: false,
      plugs: plugWish(draft, parts.frame.box),
      standing: [],
      ...foremost,
    };
    if (!(through ? facesWood(draft, down) : findsWood(draft, spec))) {
      underEdging(draft, parts.frame.top!, upright);
      continue;
    }
    if (away) throughInstead(draft, spec);
    if (through) faceJoint(draft, bores, down);
    else pocketJoint(draft, bores, spec);
  }
  if (onButtons)
    holdByButtons(draft, bores, {
      frame,
      board,
      uprights,
      standing: [
        panels.left,
        panels.right,
        panels.bottom,
        ...partings.map((p) => p.part),
        ...backs.map((b) => b.part),
        ...parts.rails,
      ],
    });
}

/**
 * The back is screwed to the edges it covers; half of one, where two backs meet, is too narrow for that. In the rabbets of the sides it is glued: the ledge there is too narrow
 * for a screw that is to stand in the middle of the side. In their grooves it is held as it is.
 */
function fixBack(
  draft: Draft,
  bores: Bores,
  parts: Joinable,
  { part: back, record, head, ...between }: BackIn,
): void {
  const { panels } = parts;
  const shelves = [between.below, between.above].flatMap((p) => p ?? []);
  for (const side of [between.left, between.right])
    if (record.fitting !== 'applied') letBackIn(draft, back, side, record.fitting, head.id);
    else if (isBehind(draft, back, side, 0)) backJoint(draft, bores, back, side);
  for (const flat of [between.below ?? panels.bottom, between.above ?? panels.lid])
    if (flat && covers(draft, back, flat) && (!shelves.includes(flat) || isBehind(draft, back, flat, 2)))
      backJoint(draft, bores, back, flat);
  // What stands before a hidden space doesn’t reach the back, nor what stands in another bay.
  for (const p of parts.partings)
    if (
      p.upright &&
      !p.thin &&
      p.part !== between.left &&
      p.part !== between.right &&
      covers(draft, back, p.part) &&
      isBehind(draft, back, p.part, 0) &&
      reaches(draft, back, p.part)
    )
      backJoint(draft, bores, back, p.part);
}

/** True where a back reaches over all of a panel’s thickness, along an axis; but for what keeps it clear of what is above. */
function isBehind(draft: Draft, back: DraftPart, panel: DraftPart, axis: 0 | 2): boolean {
  const t = (x: DraftPart['length']): number => draft.ledger.ticks(x);
  const clear = axis === 2 ? t(draft.ledger.row(SETTING_OUT.backClear)) : 0;
  return (
    t(back.box.min[axis]) <= t(panel.box.min[axis]) && t(back.box.max[axis]) + clear >= t(panel.box.max[axis])
  );
}

/** True where a back and an upright stand at one height. */
function reaches(draft: Draft, back: DraftPart, upright: DraftPart): boolean {
  const [low, high] = overlapAlong(draft, back, upright, 2);
  return draft.ledger.ticks(low) < draft.ledger.ticks(high);
}

/** True when the back lies on a panel's back edge; a panel that runs through under a back let in runs past it. */
function covers(draft: Draft, back: DraftPart, panel: DraftPart): boolean {
  return draft.ledger.ticks(panel.box.max[1]) === draft.ledger.ticks(back.box.min[1]);
}

function letBackIn(
  draft: Draft,
  back: DraftPart,
  side: DraftPart,
  kind: 'rabbet' | 'groove',
  head: string,
): void {
  const l = draft.ledger;
  const channel = side.features.find((f) => f.kind === kind && f.id === `${side.id}#${head}`);
  if (channel?.kind !== 'rabbet' && channel?.kind !== 'groove') throw new Error(`${side.id} has no ${kind}`);
  draft.joints.push({
    id: `${back.id}>${side.id}`,
    kind,
    letIn: {
      depth: channel.depth,
      sideways: l.less('how much wider the channel is than the back', channel.width, back.thickness),
      endways: l.row(SETTING_OUT.backClear),
      channel: channel.id,
    },
    duty: 'back',
    hold: 'glue',
    part: back.id,
    side: 'show',
    mate: side.id,
    mateSide: sideLooking(side.place, '+y'),
    contact: contactBox(draft, back, 'show', side),
    fasteners: [],
  });
}
