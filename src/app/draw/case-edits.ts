import {
  type DesignRecord,
  type Edit,
  type JobDocument,
  type RecordOf,
  TOP_LACKS,
  treeOf,
} from '../../job/index.ts';
import { BUTTONS } from '../../materials/index.ts';
import { parseLength } from '../../measure/index.ts';
import { removals } from './design-edits.ts';
import { Ids } from './free-ids.ts';

/** Edits of which cases there are and how they stand, each one step that can be undone. */

/** What a case or a group says of its place among others. */
const PLACE = ['size', 'height', 'depth'] as const;

/** Puts a case of the same board to the right of a case, or on it: into its group, or into a new one with it. */
export function addCaseEdit(job: JobDocument, box: RecordOf<'case'>, lay: 'across' | 'up'): Edit {
  const ids = new Ids(job);
  const group = treeOf(job).get(box.parent);
  const id = ids.next('case');
  const inside = ids.next('inside');
  const others = (parent: string): Edit[] => [
    {
      edit: 'add',
      record: { kind: 'case', id, parent, board: box.board, ...orderOf(box) },
      position: after(job, box.id),
    },
    { edit: 'add', record: { kind: 'opening', id: inside, parent: id } },
  ];
  if (group?.kind === 'group' && group.lay === lay) return { edit: 'all', of: others(group.id) };
  const own = ids.next('group');
  const place = Object.fromEntries(PLACE.flatMap((f) => (box[f] === undefined ? [] : [[f, box[f]]])));
  const around: DesignRecord = { kind: 'group', id: own, parent: box.parent, lay, ...orderOf(box), ...place };
  return {
    edit: 'all',
    of: [
      { edit: 'add', record: around, position: after(job, box.id) - 1 },
      { edit: 'set', at: `design/records/${box.id}/parent`, value: own },
      ...Object.keys(place).map((f): Edit => ({ edit: 'set', at: `design/records/${box.id}/${f}` })),
      ...others(own).map((e) => (e.edit === 'add' && e.position ? { ...e, position: e.position + 1 } : e)),
    ],
  };
}

/** Takes a case away; a group that would hold one case then gives its place to that. */
export function removeCaseEdit(job: JobDocument, box: RecordOf<'case'>): Edit {
  const tree = treeOf(job);
  const group = tree.get(box.parent);
  const left = group ? tree.membersOf(group.id).filter((m) => m.id !== box.id) : [];
  const [last] = left;
  if (group?.kind !== 'group' || left.length !== 1 || !last)
    return { edit: 'all', of: [...ownSidesAgain(job, box), ...removals(job, box.id)] };
  const at = `design/records/${last.id}`;
  return {
    edit: 'all',
    of: [
      ...ownSidesAgain(job, box),
      ...removals(job, box.id),
      // What lay over all of them goes with the group.
      ...tree
        .children(group.id)
        .filter((r) => r.kind !== 'case' && r.kind !== 'group')
        .flatMap((r) => removals(job, r.id)),
      { edit: 'set', at: `${at}/parent`, value: group.parent },
      // What stood side by side had its size across; in the group's place it has the group's.
      ...PLACE.flatMap((f): Edit[] =>
        group[f] === undefined
          ? last[f] === undefined
            ? []
            : [{ edit: 'set', at: `${at}/${f}` }]
          : [{ edit: 'set', at: `${at}/${f}`, value: group[f] }],
      ),
      { edit: 'remove', id: group.id },
    ],
  };
}

/** Another thing for a case to stand on: what the new form needs is taken from the rack, what it has no use for goes. */
export function baseFormEdit(
  job: JobDocument,
  base: RecordOf<'base'>,
  form: NonNullable<RecordOf<'base'>['form']>,
): Edit {
  const at = `design/records/${base.id}`;
  const set = (field: string, value?: unknown): Edit =>
    value === undefined
      ? { edit: 'set', at: `${at}/${field}` }
      : { edit: 'set', at: `${at}/${field}`, value };
  const strip = base.strip ?? job.shop.rack.lots.find((l) => l.form === 'strip')?.id ?? 'strips';
  const board = base.board ?? treeOf(job).caseOf(base.id)?.board;
  const feet = form === 'feet';
  // Feet are as high as their strip, levellers as low as they can be turned.
  const bought = form === 'levellers';
  const [own, height] = feet || bought ? [undefined, undefined] : [board, base.height ?? '70 mm'];
  return {
    edit: 'all',
    of: [
      set('form', form === 'frame' ? undefined : form),
      set('strip', feet || form === 'legs' ? strip : undefined),
      ...(form === 'legs' ? [] : [set('apron')]),
      ...(bought || base.leveller === undefined ? [] : [set('leveller')]),
      set('board', own),
      set('height', height),
      ...(form === 'toe-kick' ? [set('setbackBack')] : []),
    ],
  };
}

/**
 * Fits a back, and with it all backs of its case where these must be alike: one above another, or where one is laid on. Side by side, one
 * may stand in grooves and the next in rabbets.
 */
export function backFittingEdit(job: JobDocument, back: RecordOf<'back'>, fitting: string): Edit {
  const tree = treeOf(job);
  const box = tree.caseOf(back.id);
  const bay = tree.get(back.parent);
  const split = bay?.kind === 'opening' ? tree.get(bay.parent) : undefined;
  const own =
    split?.kind === 'opening' &&
    split.split === 'across' &&
    back.fitting !== 'applied' &&
    fitting !== 'applied';
  const alike = tree
    .all('back')
    .filter((b) => b.id === back.id || (!own && box && tree.caseOf(b.id) === box));
  return {
    edit: 'all',
    of: alike.map((b): Edit => ({ edit: 'set', at: `design/records/${b.id}/fitting`, value: fitting })),
  };
}

/** Another way for a top to lie: what it can't say of itself then goes. */
export function topFitEdit(top: RecordOf<'top'>, fit: NonNullable<RecordOf<'top'>['fit']>): Edit {
  const at = `design/records/${top.id}`;
  return {
    edit: 'all',
    of: [
      { edit: 'set', at: `${at}/fit`, ...(fit === 'applied' ? {} : { value: fit }) },
      ...TOP_LACKS[fit]
        .filter((field) => top[field] !== undefined)
        .map((field): Edit => ({ edit: 'set', at: `${at}/${field}` })),
    ],
  };
}

/** The first strips of the rack that are stout enough for buttons. */
export function stripsForButtons({ shop }: JobDocument): string | undefined {
  const ticks = (text: string | undefined) => {
    const read = text === undefined ? undefined : parseLength(text, shop.units);
    return read?.ok ? read.value : 0;
  };
  return shop.rack.lots.find(({ form, tape, thickness, nominal, width }) => {
    const thick = ticks(thickness ?? nominal);
    return (
      form === 'strip' &&
      tape === undefined &&
      thick >= BUTTONS.lip.value + BUTTONS.tongueLeast.value &&
      thick <= BUTTONS.thickest.value &&
      ticks(width) >= BUTTONS.widthLeast.value
    );
  })?.id;
}

/** Another way for a top to move: its buttons are made of the first strips that are stout enough, if it names none. */
export function topMovesEdit(job: JobDocument, top: RecordOf<'top'>, moves: string): Edit {
  const at = `design/records/${top.id}`;
  const strips = moves === 'buttons' ? (top.buttons ?? stripsForButtons(job)) : undefined;
  return {
    edit: 'all',
    of: [
      { edit: 'set', at: `${at}/moves`, ...(moves === 'holes' ? {} : { value: moves }) },
      { edit: 'set', at: `${at}/buttons`, ...(strips === undefined ? {} : { value: strips }) },
    ],
  };
}

/** A case joined in another way; what lies in its mitres goes with them. */
export function jointsEdit(box: RecordOf<'case'>, joints: string): Edit {
  const at = `design/records/${box.id}`;
  const chosen: Edit =
    joints === '' ? { edit: 'set', at: `${at}/joints` } : { edit: 'set', at: `${at}/joints`, value: joints };
  if (joints === 'mitre' || box.inMitres === undefined) return chosen;
  return {
    edit: 'all',
    of: [
      chosen,
      ...(['inMitres', 'splineBoard'] as const).map((f): Edit => ({ edit: 'set', at: `${at}/${f}` })),
    ],
  };
}

/** Something else to keep mitres in place: splines are cut from a lot of sheets, which goes when they go. */
export function inMitresEdit(box: RecordOf<'case'>, by: string, board: string | undefined): Edit {
  const at = `design/records/${box.id}`;
  const chosen: Edit =
    by === '' ? { edit: 'set', at: `${at}/inMitres` } : { edit: 'set', at: `${at}/inMitres`, value: by };
  if (by === 'spline')
    return board === undefined
      ? chosen
      : { edit: 'all', of: [chosen, { edit: 'set', at: `${at}/splineBoard`, value: board }] };
  return box.splineBoard === undefined
    ? chosen
    : { edit: 'all', of: [chosen, { edit: 'set', at: `${at}/splineBoard` }] };
}

/** The thinnest lot of sheets on the rack, as it was sold; undefined where there is none. */
export function thinnestSheet({ shop }: JobDocument): string | undefined {
  const lots = shop.rack.lots
    .filter((l) => l.form === 'sheet')
    .flatMap((l) => {
      const read = parseLength(l.nominal, shop.units);
      return read.ok ? [{ id: l.id, ticks: read.value as number }] : [];
    });
  return lots.sort((a, b) => a.ticks - b.ticks)[0]?.id;
}

/** Something to be held by a space, of modest sizes, to be written over. */
export function addThingEdit(job: JobDocument, opening: string): Edit {
  return {
    edit: 'add',
    record: {
      kind: 'thing',
      id: new Ids(job).next('thing'),
      parent: opening,
      name: 'Something',
      width: '200 mm',
      height: '150 mm',
      depth: '150 mm',
    },
  };
}

function orderOf(box: RecordOf<'case'>): { readonly order?: number } {
  return box.order === undefined ? {} : { order: box.order };
}

function after(job: JobDocument, id: string): number {
  return job.design.records.findIndex((r) => r.id === id) + 1;
}

/** Neighbours that close on a side of a case get their own, and it none of theirs. */
function ownSidesAgain(job: JobDocument, box: RecordOf<'case'>): Edit[] {
  const tree = treeOf(job);
  return (['left', 'right'] as const).flatMap((hand): Edit[] => {
    const mate = tree.neighbourOf(box, hand);
    const field = hand === 'left' ? 'rightSide' : 'leftSide';
    return mate?.[field] === 'shared' ? [{ edit: 'set', at: `design/records/${mate.id}/${field}` }] : [];
  });
}
