import type { Snag } from '../snag/index.ts';
import { badBackOfBay } from './check-backs.ts';
import { badBase, baseUnderCases, hungOnBase } from './check-bases.ts';
import { badDoors } from './check-doors.ts';
import { badEdging } from './check-edging.ts';
import { badFiller, badRoom } from './check-fillers.ts';
import { badFillings } from './check-fillings.ts';
import { badGroup, baseUponCase, sizeAlone } from './check-groups.ts';
import { badHandle } from './check-handles.ts';
import { badCleat } from './check-hanging.ts';
import { badFront, badLid } from './check-lids.ts';
import { badMitres, closedOnShared } from './check-mitres.ts';
import { badPlaces } from './check-places.ts';
import { badScribe } from './check-scribed-tops.ts';
import { badSharedSides } from './check-shared-sides.ts';
import { badFit, badGlueUp, badMoves, topOverCases } from './check-tops.ts';
import type { JobDocument } from './document.ts';
import { type ChildRecord, type DesignRecord, isChild, type RecordKind } from './records/design-record.ts';
import { RecordTree } from './tree.ts';

/** What each kind of record may belong to. */
const MAY_BELONG: Record<ChildRecord['kind'], readonly RecordKind[]> = {
  group: ['piece', 'group'],
  case: ['piece', 'group'],
  opening: ['case', 'opening'],
  divider: ['opening'],
  shelf: ['opening'],
  pins: ['opening'],
  drawers: ['opening'],
  trays: ['opening'],
  thing: ['opening'],
  back: ['case', 'opening'],
  top: ['case', 'group'],
  base: ['case', 'group'],
  edging: ['case', 'pins', 'door', 'drawers'],
  cable: ['back', 'divider', 'shelf', 'top', 'case'],
  vent: ['back', 'divider', 'shelf', 'top', 'case'],
  holes: ['back', 'divider', 'shelf', 'top', 'case', 'door'],
  handle: ['door', 'sliding-doors', 'drawers'],
  pull: ['door', 'drawers'],
  front: ['case'],
  hanging: ['case'],
  door: ['case'],
  'sliding-doors': ['case'],
  filler: ['group'],
};

/** How many of a kind a record may have. */
const AT_MOST_ONE: readonly (readonly [parent: RecordKind, child: RecordKind])[] = [
  ['case', 'opening'],
  ['case', 'back'],
  ['opening', 'back'],
  ['case', 'top'],
  ['case', 'base'],
  ['case', 'hanging'],
  ['case', 'edging'],
  ['pins', 'edging'],
  ['door', 'edging'],
  ['drawers', 'edging'],
  ['case', 'front'],
  ['door', 'handle'],
  ['door', 'pull'],
  ['drawers', 'pull'],
  ['sliding-doors', 'handle'],
  ['drawers', 'handle'],
  ['group', 'top'],
  ['group', 'base'],
];

/** Openings of one split. */
const MOST_OPENINGS = 60;

/** The shape of the design: one piece, one case or a group of them, and splits whose openings and dividers alternate. */
export function checkStructure(job: JobDocument): readonly Snag[] {
  const tree = new RecordTree(job.design.records);
  const snags: Snag[] = [];
  const pieces = job.design.records.filter((r) => r.kind === 'piece');
  if (pieces.length !== 1)
    snags.push(
      fault(
        'design.one-piece',
        'design/records',
        undefined,
        `A design has one piece; this has ${pieces.length}.`,
        'Keep one record of kind “piece”.',
      ),
    );
  const piece = pieces[0];
  if (piece && tree.membersOf(piece.id).length === 0)
    snags.push(
      fault(
        'design.no-case',
        `design/records/${piece.id}`,
        piece.id,
        `“${piece.id}” has no case.`,
        `Add a record of kind “case” with parent “${piece.id}”.`,
      ),
    );
  if (piece && tree.membersOf(piece.id).length > 1)
    snags.push(
      fault(
        'design.too-many',
        `design/records/${piece.id}`,
        piece.id,
        `“${piece.id}” has more than one case that stands by itself.`,
        'Keep one of them, or let them stand in a record of kind “group” that says how they stand together.',
      ),
    );
  for (const r of job.design.records) {
    if (isChild(r)) snags.push(...wrongParent(r, tree));
    snags.push(...tooMany(r, tree));
    if (r.kind === 'opening') snags.push(...badSplit(r, tree));
    if (r.kind === 'case' && r.lid !== undefined && tree.childOf(r.id, 'top'))
      snags.push(
        fault(
          'design.lid-and-top',
          `design/records/${r.id}/lid`,
          r.id,
          `“${r.id}” says how its lid lies, but a top takes the place of a lid.`,
          'Leave out “lid”, or the top.',
        ),
      );
    if (r.kind === 'top')
      snags.push(
        ...badFit(r, tree),
        ...badGlueUp(r, job.shop.rack),
        ...badMoves(r, tree, job.shop.rack),
        ...topOverCases(r, tree),
        ...badScribe(r, tree),
      );
    if (r.kind === 'case') snags.push(...badSharedSides(r, tree));
    if (r.kind === 'filler') snags.push(...badFiller(r, tree));
    if (r.kind === 'room') snags.push(...badRoom(r, tree));
    if (r.kind === 'case') snags.push(...badMitres(job, r, tree), ...closedOnShared(r, tree));
    if (r.kind === 'base')
      snags.push(...baseUponCase(r, tree), ...badBase(r, tree), ...baseUnderCases(r, tree));
    if (r.kind === 'edging') snags.push(...badEdging(r, tree));
    if (r.kind === 'hanging') snags.push(...hungOnBase(r, tree), ...badCleat(r, tree));
    if (r.kind === 'back') snags.push(...badBackOfBay(r, tree));
    if (r.kind === 'group') snags.push(...badGroup(r, tree));
    if (r.kind === 'group' || r.kind === 'case') snags.push(...sizeAlone(r, tree));
    if (r.kind === 'opening') snags.push(...badFillings(r, tree));
    if (r.kind === 'door' || r.kind === 'sliding-doors') snags.push(...badDoors(r, tree));
    if (r.kind === 'top') snags.push(...badLid(r, tree));
    if (r.kind === 'front') snags.push(...badFront(r, tree));
    if (r.kind === 'handle' || r.kind === 'pull') snags.push(...badHandle(r, tree));
    if (r.kind === 'cable' || r.kind === 'vent' || r.kind === 'holes') snags.push(...badPlaces(r, tree));
    if (r.kind === 'shelf' && r.at !== undefined && (r.count ?? 1) > 1)
      snags.push(
        fault(
          'design.shelf-at-and-count',
          `design/records/${r.id}/at`,
          r.id,
          `“${r.id}” asks for ${r.count} shelves at one height.`,
          'Give each shelf a record of its own, or leave “at” out to space them equally.',
        ),
      );
  }
  return snags;
}

function wrongParent(r: ChildRecord, tree: RecordTree): readonly Snag[] {
  const parent = tree.get(r.parent);
  if (!parent || MAY_BELONG[r.kind].includes(parent.kind)) return [];
  return [
    fault(
      'design.wrong-parent',
      `design/records/${r.id}/parent`,
      r.id,
      `A ${r.kind} can’t belong to a ${parent.kind}.`,
      `Let “${r.id}” belong to a ${MAY_BELONG[r.kind].join(' or ')}.`,
    ),
  ];
}

function tooMany(r: DesignRecord, tree: RecordTree): readonly Snag[] {
  return AT_MOST_ONE.filter(
    ([parent, child]) => r.kind === parent && tree.childrenOf(r.id, child).length > 1,
  ).map(([, child]) =>
    fault(
      'design.too-many',
      `design/records/${r.id}`,
      r.id,
      `“${r.id}” has more than one ${child}.`,
      'Keep one of them.',
    ),
  );
}

function badSplit(r: Extract<DesignRecord, { kind: 'opening' }>, tree: RecordTree): readonly Snag[] {
  const openings = tree.childrenOf(r.id, 'opening');
  const dividers = tree.childrenOf(r.id, 'divider');
  const shelves = tree.childrenOf(r.id, 'shelf');
  const path = `design/records/${r.id}`;
  if (r.split === undefined) {
    if (openings.length || dividers.length)
      return [
        fault(
          'design.not-split',
          path,
          r.id,
          `“${r.id}” holds openings but isn’t split.`,
          'Add “split”: “across” or “down”.',
        ),
      ];
    return [];
  }
  const snags: Snag[] = [];
  if (openings.length < 2)
    snags.push(
      fault(
        'design.split-of-one',
        path,
        r.id,
        `“${r.id}” is split but has ${openings.length === 1 ? 'one opening' : 'no openings'}.`,
        'Give it two or more, or take “split” out.',
      ),
    );
  if (openings.length > MOST_OPENINGS)
    snags.push(
      fault(
        'design.too-many-openings',
        path,
        r.id,
        `“${r.id}” has ${openings.length} openings, more than the ${MOST_OPENINGS} of one split.`,
        'Split it into fewer, and these again.',
      ),
    );
  if (shelves.length)
    snags.push(
      fault(
        'design.shelf-in-split',
        path,
        r.id,
        `“${r.id}” is split, so a shelf must belong to one of its openings.`,
        'Move the shelf into an opening.',
      ),
    );
  if (dividers.length && dividers.length !== openings.length - 1)
    snags.push(
      fault(
        'design.divider-count',
        path,
        r.id,
        `“${r.id}” has ${openings.length} openings and ${dividers.length} dividers; it needs ${openings.length - 1}.`,
        'Name one divider for each gap between openings, or none at all.',
      ),
    );
  return snags;
}

function fault(code: string, path: string, record: string | undefined, sentence: string, cure: string): Snag {
  return {
    code,
    level: 'stop',
    where: record === undefined ? { path } : { path, record },
    sentence,
    cures: [{ says: cure }],
  };
}
