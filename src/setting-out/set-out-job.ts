import type { JobDocument } from '../job/index.ts';
import { backPanel } from './back.ts';
import { baseFrame } from './base.ts';
import { Bores } from './bores.ts';
import { casePanels } from './case-panels.ts';
import { ClearSizes } from './clear-sizes.ts';
import { ClosedSpaces } from './closed-spaces.ts';
import { nameDimensions } from './dimension-names.ts';
import { hangDoors } from './doors.ts';
import { Draft, type DraftPart } from './draft.ts';
import { formulasHold } from './formulas.ts';
import { type CaseFrame, frameOfCase } from './frame-of-case.ts';
import { frontEdging } from './front-edging.ts';
import { joinCase } from './joints.ts';
import { measuredInVain } from './measured-in-vain.ts';
import { divideSpace, loadSurface, type Parting, type Space } from './openings.ts';
import type { Part } from './part.ts';
import { pairKey, partsInTheSameSpace } from './same-space.ts';
import type { SetOut } from './set-out.ts';
import { fixedShelves } from './shelves.ts';
import { appliedTop } from './top.ts';

/**
 * Sets out a job: every part, joint and screw, each number traced to what was typed, measured or taken from a
 * table. What can't be made is told as snags, with the record to change; the parts are then incomplete.
 */
export function setOut(job: JobDocument): SetOut {
  const draft = new Draft(job);
  const frame = frameOfCase(draft);
  const clear = new ClearSizes(draft, frame);
  draft.clearSize = (opening, size) => clear.of(opening, size);
  if (formulasHold(draft) && fitsItsFrame(draft, frame)) caseInFull(draft, frame, clear);
  checkSpace(draft, frame);
  nameDimensions(draft, frame.outside);
  measuredInVain(draft);
  return {
    ledger: draft.ledger,
    parts: inOrderOfMarks(draft.parts),
    joints: draft.joints,
    fasteners: draft.fasteners,
    openings: draft.openings,
    surfaces: draft.surfaces,
    doors: draft.doors,
    overall: frame.outside,
    joinery: frame.joinery,
    dimensions: draft.dimensions,
    snags: draft.snags,
  };
}

function inOrderOfMarks(parts: readonly DraftPart[]): readonly Part[] {
  const key = (p: Part) => [p.mark.charCodeAt(0), Number(p.mark.slice(1))] as const;
  return parts
    .map(({ box: _, tongues: __, ...part }) => part)
    .sort((a, b) => key(a)[0] - key(b)[0] || key(a)[1] - key(b)[1]);
}

function caseInFull(draft: Draft, frame: CaseFrame, clear: ClearSizes): void {
  const panels = casePanels(draft, frame);
  if (!positive(draft, panels.left, panels.bottom) || !draft.isSome(panels.inside.height)) {
    draft.stop(
      'case.no-inside',
      frame.box,
      'board',
      'The case is so small that its panels leave no space inside.',
      {
        says: 'Make the piece larger.',
      },
    );
    return;
  }
  const partings: Parting[] = [];
  const closed = new ClosedSpaces(draft);
  const root = draft.tree.childOf(frame.box.id, 'opening');
  if (root) {
    const space: Space = {
      record: root,
      at: [panels.inside.left, frame.panelFront, panels.inside.floor],
      size: [panels.inside.width, frame.insideDepth, panels.inside.height],
      left: panels.left,
      right: panels.right,
      below: panels.bottom,
      above: panels.lid,
    };
    for (const leaf of divideSpace(draft, frame, clear, space, partings, closed))
      fixedShelves(draft, frame, leaf, partings);
  }
  const edging = frontEdging(draft, frame, [
    panels.left,
    panels.right,
    panels.bottom,
    ...(panels.lid ? [panels.lid] : []),
    ...partings.map((p) => p.part),
  ]);
  const back = backPanel(draft, frame, panels);
  const top = appliedTop(draft, frame);
  const base = baseFrame(draft, frame);
  const bores = new Bores();
  hangDoors(draft, bores, { frame, panels, closed, partings });
  joinCase(draft, bores, { frame, panels, partings, back, top, base, edging });
  loadTopAndBottom(draft, frame, panels.bottom, top?.board ?? panels.lid);
  const mitred = new Set(draft.joints.filter((j) => j.kind === 'mitre').map((j) => pairKey(j.part, j.mate)));
  for (const [a, b] of partsInTheSameSpace(draft.ledger, draft.parts, mitred))
    draft.snags.push({
      code: 'parts.same-space',
      level: 'stop',
      where: { path: `design/records/${b.record}`, part: b.id, record: b.record },
      sentence: `The ${a.name} and the ${b.name} would stand in the same place.`,
      cures: [{ says: `Move one of them: see “${b.record}”.` }],
    });
}

/** The bottom spans its widest bay (or, on a base, front to back); the top spans between uprights. */
function loadTopAndBottom(
  draft: Draft,
  frame: CaseFrame,
  bottom: DraftPart,
  top: DraftPart | undefined,
): void {
  const l = draft.ledger;
  const root = draft.tree.childOf(frame.box.id, 'opening');
  const bays =
    root?.split === 'across'
      ? draft.tree.childrenOf(root.id, 'opening').map((o) => o.id)
      : root
        ? [root.id]
        : [];
  const widths = draft.openings.filter((o) => bays.includes(o.id)).map((o) => o.width);
  const span = widths.length ? l.greatest('widest bay', ...widths) : bottom.length;
  // A base carries the bottom at front and back, so there it spans its depth.
  loadSurface(
    draft,
    bottom,
    frame.base ? frame.insideDepth : span,
    frame.base ? span : frame.insideDepth,
    frame.box.load,
    frame.box,
  );
  if (top) loadSurface(draft, top, span, frame.depth, frame.top?.load, frame.top ?? frame.box);
}

function fitsItsFrame(draft: Draft, frame: CaseFrame): boolean {
  const faults: readonly [boolean, string, string, string][] = [
    [
      draft.isSome(frame.width),
      'width',
      'The top’s overhang is wider than the piece.',
      'Make the piece wider, or the overhang smaller.',
    ],
    [
      draft.isSome(frame.insideDepth),
      'depth',
      'Overhang, edging and back take up the whole depth.',
      'Make the piece deeper.',
    ],
    [
      draft.isSome(frame.uprightHeight),
      'height',
      'Base and top take up the whole height.',
      'Make the piece higher, or the base lower.',
    ],
  ];
  for (const [fine, field, sentence, cure] of faults)
    if (!fine) draft.stop('case.no-inside', frame.piece, field, sentence, { says: cure });
  return faults.every(([fine]) => fine);
}

function positive(draft: Draft, ...parts: readonly DraftPart[]): boolean {
  return parts.every((p) => [p.length, p.width, p.thickness].every((t) => draft.isSome(t)));
}

/** A piece larger than the place it is meant for. */
function checkSpace(draft: Draft, frame: CaseFrame): void {
  const wanted = [
    ['width', 'spaceWidth', 'wide'],
    ['height', 'spaceHeight', 'high'],
    ['depth', 'spaceDepth', 'deep'],
  ] as const;
  for (const [size, space, word] of wanted) {
    const typed = frame.piece[space];
    if (typed === undefined) continue;
    const free = draft.ledger.ticks(draft.field(frame.piece, space));
    const asked = draft.ledger.ticks(frame.overall[size]);
    if (asked <= free) continue;
    draft.stop(
      'piece.too-large-for-its-place',
      frame.piece,
      size,
      `The piece is ${frame.piece[size]} ${word}, but its place only ${typed}.`,
      {
        says: `Make it at most ${typed} ${word}.`,
        edits: [{ record: frame.piece.id, field: size, value: typed }],
      },
    );
  }
}
