import {
  type DesignRecord,
  type Edit,
  type JobDocument,
  type RecordOf,
  readPlace,
  treeOf,
} from '../../job/index.ts';
import { parseLength } from '../../measure/index.ts';
import { Ids } from './free-ids.ts';

/** The edits behind the buttons of the notes, each one step that can be undone. */

const MOST_SPACES = 20;

/** Makes an opening of a split have `wanted` spaces; undefined when that is not a sensible number. */
export function spacesEdit(job: JobDocument, opening: string, wanted: number): Edit | undefined {
  if (!Number.isInteger(wanted) || wanted < 2 || wanted > MOST_SPACES) return undefined;
  const tree = treeOf(job);
  const spaces = tree.childrenOf(opening, 'opening');
  const dividers = tree.childrenOf(opening, 'divider');
  const ids = new Ids(job);
  const more = Math.max(0, wanted - spaces.length);
  const of: Edit[] = [];
  for (let i = 0; i < more; i++) {
    of.push({ edit: 'add', record: { kind: 'opening', id: ids.next(stemOf(spaces)), parent: opening } });
    if (dividers.length > 0)
      of.push({ edit: 'add', record: { kind: 'divider', id: ids.next('divider'), parent: opening } });
  }
  for (const space of spaces.slice(wanted)) of.push(...removals(job, space.id));
  if (dividers.length > 0) for (const d of dividers.slice(wanted - 1)) of.push({ edit: 'remove', id: d.id });
  return { edit: 'all', of };
}

/** Divides a space in two: beside, above or behind one another. What shelves it has go into the first. */
export function divideEdit(job: JobDocument, opening: string, split: 'across' | 'down' | 'back'): Edit {
  const ids = new Ids(job);
  const spaces = [ids.next('space'), ids.next('space')] as const;
  const tree = treeOf(job);
  const shelves = [
    ...tree.childrenOf(opening, 'shelf'),
    ...tree.childrenOf(opening, 'pins'),
    ...tree.childrenOf(opening, 'drawers'),
    ...tree.childrenOf(opening, 'trays'),
  ];
  return {
    edit: 'all',
    of: [
      { edit: 'set', at: `design/records/${opening}/split`, value: split },
      ...spaces.map(
        (id): Edit => ({ edit: 'add', record: { kind: 'opening', id, parent: opening, size: 'equal' } }),
      ),
      ...shelves.map((s): Edit => ({ edit: 'set', at: `design/records/${s.id}/parent`, value: spaces[0] })),
    ],
  };
}

/** Makes a divided space one again; what was in its parts goes with them. */
export function undivideEdit(job: JobDocument, opening: string): Edit {
  return {
    edit: 'all',
    of: [
      ...treeOf(job)
        .children(opening)
        .flatMap((r) => removals(job, r.id)),
      { edit: 'set', at: `design/records/${opening}/split` },
    ],
  };
}

export function addShelfEdit(job: JobDocument, opening: string): Edit {
  return {
    edit: 'add',
    record: { kind: 'shelf', id: new Ids(job).next('shelf'), parent: opening, count: 1 },
  };
}

/** Adds a hole for a cable through a panel, low and to the right. */
export function addCableEdit(job: JobDocument, panel: string): Edit {
  const id = new Ids(job).next('cable');
  return {
    edit: 'add',
    record: { kind: 'cable', id, parent: panel, plug: 'europlug', fromRight: '80 mm', fromBelow: '80 mm' },
  };
}

/** Adds drawers of the first sheets that will do: boxes of the thinnest that takes runners, bottoms of the thinnest. */
export function addDrawersEdit(job: JobDocument, opening: string): Edit {
  const { lots } = job.shop.rack;
  const sheets = lots.filter((l) => l.form === 'sheet');
  const board = treeOf(job).caseOf(opening)?.board ?? sheets[0]?.id ?? 'board';
  const bottom = sheets.find((l) => l.id !== board)?.id ?? board;
  return {
    edit: 'add',
    record: {
      kind: 'drawers',
      id: new Ids(job).next('drawers'),
      parent: opening,
      board,
      bottomBoard: bottom,
      frontBoard: board,
      hang: 'inset',
      count: 2,
    },
  };
}

export function addPinsEdit(job: JobDocument, opening: string): Edit {
  return {
    edit: 'add',
    record: { kind: 'pins', id: new Ids(job).next('loose'), parent: opening, count: 2 },
  };
}

/** Strips or tape on the front edges of loose shelves, or round doors or drawers’ fronts: the first there is. */
export function addEdgingEdit(job: JobDocument, parent: string): Edit {
  const strip = job.shop.rack.lots.find((l) => l.form === 'strip')?.id ?? 'strips';
  return { edit: 'add', record: { kind: 'edging', id: new Ids(job).next('edging'), parent, strip } };
}

/** Three thin dividers for trays, of the thinnest board there is. */
export function addTraysEdit(job: JobDocument, opening: string): Edit {
  const inMm = (typed: string) => {
    const read = parseLength(typed, job.shop.units);
    return read.ok ? read.value : Number.POSITIVE_INFINITY;
  };
  const [thinnest] = job.shop.rack.lots
    .filter((l) => l.form === 'sheet')
    .toSorted((a, b) => inMm(a.nominal) - inMm(b.nominal));
  const board = thinnest?.id ?? treeOf(job).caseOf(opening)?.board ?? 'board';
  return {
    edit: 'add',
    record: { kind: 'trays', id: new Ids(job).next('trays'), parent: opening, board, count: 3 },
  };
}

/** True when doors can be put before an opening: it is no part of a depth, and nothing closes it or what is in it. */
export function canHaveDoors(job: JobDocument, opening: string): boolean {
  const tree = treeOf(job);
  const outward = (id: string): readonly RecordOf<'opening'>[] => {
    const record = tree.get(id);
    return record?.kind === 'opening' ? [record, ...outward(record.parent)] : [];
  };
  const within = (outer: string, inner: string) => outward(inner).some((o) => o.id === outer);
  if (outward(opening).some((o) => o.id !== opening && o.split === 'back')) return false;
  return ![...tree.all('door'), ...tree.all('sliding-doors')].some((d) =>
    d.over.some((o) => within(o, opening) || within(opening, o)),
  );
}

/** Puts a hinged door, or two that slide, before an opening, of what its case is made of. */
export function addDoorsEdit(job: JobDocument, opening: string, kind: 'door' | 'sliding-doors'): Edit {
  const box = treeOf(job).caseOf(opening);
  // An opening of a checked job is in a case.
  if (!box) throw new Error(`no case holds ${opening}`);
  const own = { id: new Ids(job).next('doors'), parent: box.id, board: box.board, over: [opening] };
  return { edit: 'add', record: kind === 'door' ? { ...own, kind, hang: 'inset' } : { ...own, kind } };
}

/** Adds a vent for a modest heat to a panel, low down. */
export function addVentEdit(job: JobDocument, panel: string): Edit {
  const id = new Ids(job).next('vent');
  return {
    edit: 'add',
    record: { kind: 'vent', id, parent: panel, form: 'holes', count: 8, fromBelow: '80 mm' },
  };
}

/** Takes records away one after the other: what belongs to a record before itself. */
export function removals(job: JobDocument, id: string): Edit[] {
  const tree = treeOf(job);
  return [...tree.children(id).flatMap((r) => removals(job, r.id)), { edit: 'remove', id }];
}

/** Puts handles of the rack's first strips on doors; they take the place of finger holes. */
export function addHandlesEdit(job: JobDocument, doors: string): Edit {
  const strip = job.shop.rack.lots.find((l) => l.form === 'strip')?.id ?? 'strips';
  const id = new Ids(job).next('handles');
  // Without strips on the rack the edit is refused, and says that they are missing.
  const add: Edit = { edit: 'add', record: { kind: 'handle', id, parent: doors, strip } };
  const at = `design/records/${doors}/fingerHole`;
  return readPlace(job, at) === undefined ? add : { edit: 'all', of: [{ edit: 'set', at }, add] };
}

/** Closes a case in front, under its lid. */
export function addFrontEdit(job: JobDocument, box: string): Edit {
  return { edit: 'add', record: { kind: 'front', id: new Ids(job).next('front'), parent: box } };
}

/** Adds a row of three holes to the outer faces of a case's sides. */
export function addHolesEdit(job: JobDocument, box: string): Edit {
  const id = new Ids(job).next('holes');
  const own = { id, parent: box, panel: 'left-side', mirror: true, face: 'left', lay: 'up' } as const;
  return {
    edit: 'add',
    record: {
      ...own,
      kind: 'holes',
      diameter: '8 mm',
      depth: '10 mm',
      count: 3,
      apart: '64 mm',
      fromFront: '60 mm',
    },
  };
}

/** Takes a record away, and all that belongs to it. */
export function removeEdit(job: JobDocument, id: string): Edit {
  return { edit: 'all', of: removals(job, id) };
}

/** What can be put round a case that hasn't got it. */
export type Trim = 'back' | 'top' | 'base' | 'edging' | 'hanging';

/** Adds a back, a top, a base, rails for the wall or an edging of usual sizes, of the first stock that will do. */
export function addTrimEdit(job: JobDocument, box: RecordOf<'case'>, kind: Trim): Edit {
  const { lots } = job.shop.rack;
  const sheet = lots.find((l) => l.form === 'sheet' && l.id !== box.board)?.id ?? box.board;
  const strip = lots.find((l) => l.form === 'strip')?.id;
  const own = { id: new Ids(job).next(kind), parent: box.id };
  const records: Readonly<Record<Trim, () => DesignRecord>> = {
    back: () => ({ ...own, kind: 'back', board: sheet, fitting: 'rabbet' }),
    top: () => ({ ...own, kind: 'top', board: box.board }),
    base: () => ({ ...own, kind: 'base', board: box.board, height: '70 mm', setback: '40 mm' }),
    hanging: () => ({ ...own, kind: 'hanging', board: box.board }),
    // Without strips on the rack the edit is refused, and says that they are missing.
    edging: () => ({ ...own, kind: 'edging', strip: strip ?? 'strips' }),
  };
  return { edit: 'add', record: records[kind]() };
}

/** Adds a back to each bay of a case, let into rabbets, of the first sheets that will do. */
export function addBayBacksEdit(job: JobDocument, box: RecordOf<'case'>): Edit {
  const tree = treeOf(job);
  const board = job.shop.rack.lots.find((l) => l.form === 'sheet' && l.id !== box.board)?.id ?? box.board;
  const ids = new Ids(job);
  const inside = tree.childOf(box.id, 'opening');
  const parted = inside?.split === 'across' || inside?.split === 'down';
  const bays = inside && parted ? tree.childrenOf(inside.id, 'opening') : [];
  return {
    edit: 'all',
    of: bays.map((bay) => ({
      edit: 'add',
      record: { kind: 'back', id: ids.next('back'), parent: bay.id, board, fitting: 'rabbet' },
    })),
  };
}

/** Adds a filler to the wall at one end of a row, of what its first case is made of. */
export function addFillerEdit(job: JobDocument, group: RecordOf<'group'>, hand: 'left' | 'right'): Edit {
  const board = treeOf(job).casesOf(group.id)[0]?.board ?? 'board';
  const id = new Ids(job).next('filler');
  const orders = treeOf(job)
    .rowOf(group.id)
    .map((r) => r.order ?? 0);
  const order = hand === 'left' ? Math.min(...orders) - 1 : Math.max(...orders) + 1;
  return { edit: 'add', record: { kind: 'filler', id, parent: group.id, board, size: '40 mm', order } };
}

/** Adds the room that the piece is built into, as wide as the piece until it is measured. */
export function addRoomEdit(job: JobDocument, piece: RecordOf<'piece'>): Edit {
  return { edit: 'add', record: { kind: 'room', id: new Ids(job).next('room'), widths: [piece.width] } };
}

/** Adds one top over all cases of a group, of what the first of them is made of. */
export function addTopOverCasesEdit(job: JobDocument, group: RecordOf<'group'>): Edit {
  const board = treeOf(job).casesOf(group.id)[0]?.board ?? 'board';
  return { edit: 'add', record: { kind: 'top', id: new Ids(job).next('top'), parent: group.id, board } };
}

/** Adds one base under all cases of a group; what each of them stood on or hung by goes. */
export function addBaseUnderCasesEdit(job: JobDocument, group: RecordOf<'group'>): Edit {
  const tree = treeOf(job);
  const boxes = tree.casesOf(group.id);
  const own = boxes.flatMap((box) => [
    ...tree.childrenOf(box.id, 'base'),
    ...tree.childrenOf(box.id, 'hanging'),
  ]);
  return {
    edit: 'all',
    of: [
      ...own.map((r): Edit => ({ edit: 'remove', id: r.id })),
      {
        edit: 'add',
        record: {
          kind: 'base',
          id: new Ids(job).next('base'),
          parent: group.id,
          board: boxes[0]?.board ?? 'board',
          height: '70 mm',
          setback: '40 mm',
        },
      },
    ],
  };
}

/** `bay` of bay1 to bay4, so that the next one is bay5. */
function stemOf(spaces: readonly { readonly id: string }[]): string {
  return spaces[0]?.id.replace(/[\d.]+$/, '') || 'space';
}
