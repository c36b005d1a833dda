import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { applyEdit, type Edit, inverseOf, type JobDocument, readJob, treeOf } from '../../job/index.ts';
import { setOut } from '../../setting-out/index.ts';
import {
  addCaseEdit,
  addThingEdit,
  baseFormEdit,
  inMitresEdit,
  jointsEdit,
  removeCaseEdit,
  thinnestSheet,
  topFitEdit,
  topMovesEdit,
} from './case-edits.ts';
import { addBaseUnderCasesEdit, addEdgingEdit, addTrimEdit, divideEdit, removeEdit } from './design-edits.ts';

function example(name: string): JobDocument {
  const read = readJob(readFileSync(new URL(`../../../examples/${name}.json`, import.meta.url), 'utf8'));
  if (!read.ok) throw new Error('unreadable');
  return read.job;
}

/** The job after an edit, which leads back again to the tick and sets out without a throw. */
function changed(job: JobDocument, edit: Edit): JobDocument {
  const edited = applyEdit(job, edit);
  if (!edited.ok) throw new Error(edited.snags.map((s) => s.sentence).join('\n'));
  const back = applyEdit(edited.job, inverseOf(job, edit));
  expect(back).toEqual({ ok: true, job });
  setOut(edited.job);
  return edited.job;
}

const caseOf = (job: JobDocument, at: number) => treeOf(job).all('case')[at]!;

describe('cases', () => {
  test('one beside a case that stood alone: a group of two, and alone again', () => {
    const job = example('seed-shelf');
    const two = changed(job, addCaseEdit(job, caseOf(job, 0), 'across'));
    const tree = treeOf(two);
    const [group] = tree.all('group');
    expect(tree.membersOf(group!.id).map((m) => m.id)).toEqual(['case', 'case2']);
    const one = changed(two, removeCaseEdit(two, caseOf(two, 1)));
    expect(treeOf(one).all('group')).toEqual([]);
    expect(setOut(one).parts.length).toBe(setOut(job).parts.length);
  });

  test('one on a case of a row: a stack in its place, with its size along the row', () => {
    const job = example('hall-kitchen');
    const box = treeOf(job)
      .all('case')
      .find((c) => treeOf(job).get(c.parent)?.kind === 'group' && c.size !== undefined)!;
    const row = treeOf(job).get(box.parent);
    if (row?.kind !== 'group' || row.lay !== 'across') throw new Error('no row');
    const places = treeOf(job)
      .membersOf(row.id)
      .map((m) => m.id);
    const more = changed(job, addCaseEdit(job, box, 'up'));
    const tree = treeOf(more);
    const stack = tree.get(tree.caseOf(box.id)!.parent);
    expect(stack).toMatchObject({ kind: 'group', lay: 'up', size: box.size, parent: row.id });
    expect(tree.membersOf(row.id).map((m) => m.id)).toEqual(
      places.map((id) => (id === box.id ? stack!.id : id)),
    );
    const added = tree.membersOf(stack!.id)[1]!;
    const less = changed(more, removeCaseEdit(more, added as never));
    expect(treeOf(less).caseOf(box.id)).toMatchObject({ parent: row.id, size: box.size });
  });

  test('another to the right of one of a row stands next to it', () => {
    const job = example('hall-kitchen');
    const [first] = treeOf(job).all('case');
    const row = treeOf(job).get(first!.parent)!;
    const more = changed(job, addCaseEdit(job, first!, row.kind === 'group' ? row.lay : 'across'));
    const members = treeOf(more)
      .membersOf(row.id)
      .map((m) => m.id);
    expect(members[members.indexOf(first!.id) + 1]).toBe('case1');
  });
});

test('a space held before a hidden one, and something to stand in it', () => {
  const job = example('seed-shelf');
  const opening = treeOf(job)
    .all('opening')
    .find((o) => o.split === undefined)!;
  const divided = changed(job, divideEdit(job, opening.id, 'back'));
  expect(treeOf(divided).get(opening.id)).toMatchObject({ split: 'back' });
  const held = changed(job, addThingEdit(job, opening.id));
  expect(treeOf(held).all('thing')).toHaveLength(1);
});

test('what a case stands on, in every form, one after the other; or rails on the wall', () => {
  let job = example('glaze-cabinet');
  const base = () => treeOf(job).all('base')[0]!;
  for (const form of ['toe-kick', 'feet', 'levellers', 'frame'] as const) {
    job = changed(job, baseFormEdit(job, base(), form));
    expect(base().form ?? 'frame').toBe(form);
  }
  const free = changed(job, removeEdit(job, base().id));
  const hung = changed(free, addTrimEdit(free, caseOf(free, 0), 'hanging'));
  expect(treeOf(hung).all('hanging')).toHaveLength(1);
});

test('a top in every way it can lie: what it can’t say then goes, and may be said again', () => {
  let job = example('glaze-cabinet');
  const top = () => treeOf(job).all('top')[0]!;
  for (const fit of ['flush', 'inset', 'applied'] as const) {
    job = changed(job, topFitEdit(top(), fit));
    expect(top().fit ?? 'applied').toBe(fit);
    expect(top().overhangFront).toBeUndefined();
  }
  expect(top().edging).toBeUndefined();
});

test('a solid top on buttons names what they are made of, and in slots no more', () => {
  let job = example('hall-console');
  const top = () => treeOf(job).all('top')[0]!;
  job = changed(job, topMovesEdit(job, top(), 'buttons'));
  expect(top()).toMatchObject({ moves: 'buttons', buttons: 'oak' });
  job = changed(job, topMovesEdit(job, top(), 'slots'));
  expect([top().moves, top().buttons]).toEqual(['slots', undefined]);
  job = changed(job, topMovesEdit(job, top(), 'holes'));
  expect(top().moves).toBeUndefined();
});

test('another joint takes the biscuits in the mitres away with it', () => {
  const job = example('seed-shelf');
  const box = () => caseOf(job, 0);
  const records = job.design.records.map((r) =>
    r.id === box().id ? { ...r, joints: 'mitre' as const, inMitres: 'biscuits' as const } : r,
  );
  const mitred = { ...job, design: { ...job.design, records } } as JobDocument;
  const joined = (to: string) => caseOf(changed(mitred, jointsEdit(caseOf(mitred, 0), to)), 0);
  expect(joined('rabbet')).toMatchObject({ joints: 'rabbet' });
  expect(joined('rabbet').inMitres).toBeUndefined();
  expect([joined('').joints, joined('').inMitres]).toEqual([undefined, undefined]);
  expect(joined('mitre').inMitres).toBe('biscuits');
});

test('splines come with the thinnest sheet, and their board goes with them', () => {
  const job = example('seed-shelf');
  const mitred = changed(job, jointsEdit(caseOf(job, 0), 'mitre'));
  const put = (on: JobDocument, by: string) =>
    changed(on, inMitresEdit(caseOf(on, 0), by, thinnestSheet(on)));
  const splined = put(mitred, 'spline');
  const board = splined.shop.rack.lots.find((l) => l.id === caseOf(splined, 0).splineBoard)!;
  expect(board.form).toBe('sheet');
  for (const lot of job.shop.rack.lots.filter((l) => l.form === 'sheet'))
    expect(Number.parseFloat(board.nominal)).toBeLessThanOrEqual(Number.parseFloat(lot.nominal));
  for (const by of ['biscuits', '']) expect(caseOf(put(splined, by), 0).splineBoard).toBeUndefined();
  expect(caseOf(changed(splined, jointsEdit(caseOf(splined, 0), 'dado')), 0).splineBoard).toBeUndefined();
});

test('one base under a row: what its cases stood on goes, and its strips are set out', () => {
  const pair = changed(
    example('glaze-cabinet'),
    addCaseEdit(example('glaze-cabinet'), caseOf(example('glaze-cabinet'), 0), 'across'),
  );
  const group = treeOf(pair).all('group')[0]!;
  const based = changed(pair, addBaseUnderCasesEdit(pair, group));
  expect(
    treeOf(based)
      .all('base')
      .map((b) => b.parent),
  ).toEqual([group.id]);
  const drawn = setOut(based);
  // The tops’ overhang keeps the cases apart, and the maker is asked to take it off; the rack has no screws for faces.
  const stops = drawn.snags.filter((s) => s.level === 'stop').map((s) => s.code);
  expect([...new Set(stops)].sort()).toEqual(['cases.apart', 'screws.none-for-face']);
  const strips = drawn.parts.filter((p) => treeOf(based).get(p.record)?.kind === 'base');
  expect(strips).toHaveLength(4);
});

test('a door is edged, and left bare again', () => {
  const job = example('tool-cupboard');
  const [door] = treeOf(job).all('door');
  const edged = changed(job, addEdgingEdit(job, door!.id));
  const edging = treeOf(edged).childOf(door!.id, 'edging')!;
  expect(edging.sides).toBeUndefined();
  expect(changed(edged, removeEdit(edged, edging.id))).toEqual(job);
});
