import { type RecordOf, walledEnds } from '../../job/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { fitsOfFrame } from '../fits/fits-of-case.ts';
import type { Bores } from '../joints/bores.ts';
import { glueTop, mitreCorners } from '../joints/strip-joints.ts';
import type { MadeCase } from './case-in-full.ts';
import type { Cases } from './cases.ts';
import { type ConnectingSpec, connectingScrews } from './connecting-screws.ts';
import { movementOfTop, roomToMove } from './free-top.ts';
import { type ScribedTop, topReachesWalls } from './scribed-top.ts';
import { type Top, topWithEdging } from './top.ts';
import { edgingInside, fixedInside, overlaps } from './where-cases-meet.ts';

/** One top over all cases of a group. */
export interface TopOverCases {
  readonly record: RecordOf<'top'>;
  readonly top: Top;
  /** The cases whose lids it lies on. */
  readonly carriers: readonly Carrier[];
}

interface Carrier {
  readonly made: MadeCase;
  readonly lid: DraftPart;
}

/** Makes the tops that lie over several cases. */
export function topsOverCases(draft: Draft, cases: Cases, all: readonly MadeCase[]): readonly TopOverCases[] {
  return cases.tops.flatMap((record) => {
    const { left, front, width, depth } = cases.placeOf(record);
    const under = cases.underTop(record);
    const of = ` of ${record.parent}`;
    const ends = record.scribe === undefined ? [] : walledEnds(record, draft.tree);
    const scribe = ends.length > 0 ? draft.field(record, 'scribe') : undefined;
    const longer = scribe && draft.ledger.times('at all its walls', scribe, ends.length);
    const top = topWithEdging(draft, { record, of, left, front, under, width, depth, longer });
    if (!top) return [];
    if (scribe !== undefined) {
      const scribed: ScribedTop = {
        part: top.board.id,
        strips: [...top.strips.values()].map((s) => s.id),
        ends: ends.map((end) => (end === 'left' ? 'start' : 'end')),
        scribe,
      };
      draft.scribedTops.push(scribed);
      topReachesWalls(draft, record, scribed);
    }
    return [{ record, top, carriers: carriersOf(draft, top.board, all) }];
  });
}

function carriersOf(draft: Draft, board: DraftPart, all: readonly MadeCase[]): readonly Carrier[] {
  const l = draft.ledger;
  const under = l.ticks(board.box.min[2]);
  return all.flatMap((made) => {
    const { lid } = made.panels;
    return lid && l.ticks(lid.box.max[2]) === under && overlaps(draft, lid, board, 2) ? [{ made, lid }] : [];
  });
}

/** Screws a top to the lids that it lies on, up through them from inside, and glues its edging. */
export function joinTopOverCases(draft: Draft, bores: Bores, { record, top, carriers }: TopOverCases): void {
  const l = draft.ledger;
  const { board } = top;
  let held = false;
  carriers.forEach(({ made, lid }, i) => {
    const between = i > 0 && i < carriers.length - 1;
    held = connectingScrews(draft, bores, {
      part: lid,
      mate: board,
      towards: '+z',
      avoid: fixedInside(made).filter((p) => p !== lid),
      edging: edgingInside(made),
      oneWay: true,
      ...freely(draft, record),
      // It must be held at both ends, and by every other case at least.
      mayFail: between && held,
    });
  });
  glueTop(draft, top);
  mitreCorners(draft, top.strips);
  fitsOfFrame(draft, top.strips);
  const spans = carriers.map(({ made }) => made.panels.inside.width);
  if (spans.length > 0) loadTop(draft, record, board, l.greatest('widest case under the top', ...spans));
}

/** How a top of solid wood is screwed to a lid, so that it can move. */
function freely(draft: Draft, top: RecordOf<'top'>): Pick<ConnectingSpec, 'room'> {
  const movement = movementOfTop(draft, top);
  return movement ? { room: (screw, behind) => roomToMove(draft, top, movement, screw, behind) } : {};
}

/** Screws the top of one case to its lid, from inside. */
export function screwTopToLid(
  draft: Draft,
  bores: Bores,
  top: RecordOf<'top'>,
  board: DraftPart,
  lid: DraftPart,
  avoid: readonly DraftPart[],
): void {
  connectingScrews(draft, bores, {
    part: lid,
    mate: board,
    towards: '+z',
    avoid,
    oneWay: true,
    ...freely(draft, top),
  });
}

/** What is laid on the top lies all over it, so that a case has its share by its width. */
function loadTop(draft: Draft, record: RecordOf<'top'>, board: DraftPart, span: Traced): void {
  const l = draft.ledger;
  const whole = draft.mass(record.load);
  const share = toMm(l.ticks(span)) / toMm(l.ticks(board.length));
  draft.surfaces.push({
    part: board.id,
    span,
    depth: board.width,
    ends: 'screwed',
    ...(whole === undefined ? {} : { loadKg: Math.round(whole * share * 1000) / 1000 }),
    record: record.id,
  });
}
