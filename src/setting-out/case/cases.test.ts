import { describe, expect, test } from 'vitest';
import { box, type Fields, group, piece } from '../../../test/build/row-of-cases.ts';
import { smallJob } from '../../../test/generate/small-job.ts';
import { checkJob } from '../../job/index.ts';
import { type SetOut, setOut } from '../index.ts';

function outOf(...records: readonly Fields[]): SetOut {
  const job = smallJob();
  job.design.records = [...records];
  job.shop.rack.screws.push({
    id: 'flat-30',
    kind: 'countersunk',
    length: '30 mm',
    diameter: '4 mm',
    head: '8 mm',
  });
  const read = checkJob(job);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  return setOut(read.job);
}

function refused(...records: readonly Fields[]): readonly string[] {
  const job = smallJob();
  job.design.records = [...records];
  const read = checkJob(job);
  return read.ok ? [] : read.snags.map((s) => s.code);
}

const mm = (of: SetOut, name: string) => of.ledger.ticks(of.dimensions.get(name)!) / 3200;
const stops = (of: SetOut) => of.snags.filter((s) => s.level === 'stop').map((s) => [s.code, s.where.path]);

describe('cases side by side', () => {
  const row = outOf(piece, group, box('a', { size: '500 mm' }), box('b'), box('c', { size: '2 shares' }));

  test('share what the fixed ones leave, and come out as wide as asked', () => {
    expect(stops(row)).toEqual([]);
    const widths = ['a', 'b', 'c'].map((id) => mm(row, `bottom of ${id}.length`));
    const board = mm(row, 'left side of a.thickness');
    // 1000 mm in shares of 1 and 2, to the tick; a box is two boards wider than its bottom.
    expect(widths.map((w) => w + 2 * board)).toEqual([500, 333.333125, 666.666875]);
    expect(mm(row, 'overall.width')).toBe(1500);
  });

  test('have parts that go by their case, and marks that go on', () => {
    expect(row.parts.filter((p) => p.mark.startsWith('A')).map((p) => `${p.mark} ${p.name}`)).toEqual([
      'A1 left side of a',
      'A2 right side of a',
      'A3 left side of b',
      'A4 right side of b',
      'A5 left side of c',
      'A6 right side of c',
    ]);
  });

  test('are screwed together through both sides, from inside', () => {
    const joints = row.joints.filter((j) => j.duty === 'connect');
    expect(joints.map((j) => [j.part, j.mate, j.fasteners.length])).toEqual([
      ['a/right-side', 'b/left-side', 6],
      ['b/right-side', 'c/left-side', 6],
    ]);
  });

  test('whose fixed sizes leave something over are told', () => {
    const short = outOf(piece, group, box('a', { size: '500 mm' }), box('b', { size: '900 mm' }));
    expect(stops(short)).toContainEqual(['cases.do-not-add-up', 'design/records/g/lay']);
    expect(short.snags[0]!.sentence).toMatch(/leave 100 mm/);
  });

  test('that are kept apart by a top are told', () => {
    const top = { id: 't', kind: 'top', parent: 'a', board: 'birch18', overhangSides: '20 mm' };
    expect(stops(outOf(piece, group, box('a'), top, box('b')))).toEqual([
      ['cases.apart', 'design/records/b/size'],
    ]);
  });

  test('none of which is as high as the piece are told', () => {
    const low = outOf(piece, group, box('a', { height: '600 mm' }), box('b', { height: '700 mm' }));
    expect(stops(low)).toEqual([['cases.none-as-large', 'design/records/g/lay']]);
    const high = outOf(piece, group, box('a', { height: '900 mm' }), box('b'));
    expect(stops(high)).toEqual([['cases.larger-than-group', 'design/records/a/height']]);
  });

  test('keep the width that was found inside one of them', () => {
    const job = smallJob();
    job.design.records = [
      piece,
      group,
      box('a'),
      { id: 'in', kind: 'opening', parent: 'a' },
      box('b'),
      box('c'),
    ];
    job.work = { measured: { 'in.width': '461 mm' } };
    const read = checkJob(job);
    if (!read.ok) throw new Error('refused');
    const after = setOut(read.job);
    expect(mm(after, 'bottom of a.length')).toBe(461);
    expect(mm(after, 'overall.width')).toBe(1500);
    expect(mm(after, 'bottom of b.length')).toBe(mm(after, 'bottom of c.length'));
  });

  test('reach the wall with their filler, also where one was measured inside', () => {
    const job = smallJob();
    const filler = { id: 'gap', kind: 'filler', parent: 'g', board: 'birch18', size: '25 mm' };
    const inside = { id: 'in', kind: 'opening', parent: 'a' };
    job.design.records = [piece, group, box('a'), inside, box('b'), filler];
    job.work = { measured: { 'in.width': '461 mm' } };
    const read = checkJob(job);
    if (!read.ok) throw new Error('refused');
    expect(mm(setOut(read.job), 'overall.width')).toBe(1500);
  });
});

test('panels that touch over a strip too narrow for a screw are not screwed there', () => {
  const stack = (id: string) => ({ id, kind: 'group', parent: 'g', lay: 'up' });
  const low = (id: string, height: string, parent: string) => ({ ...box(id), parent, size: height });
  // 400 mm beside 380: the upper case on the right reaches 20 mm below the head of the lower one on the left.
  const of = outOf(
    piece,
    group,
    stack('l'),
    low('l1', '400 mm', 'l'),
    low('l2', 'equal', 'l'),
    stack('r'),
    low('r1', '380 mm', 'r'),
    low('r2', 'equal', 'r'),
  );
  expect(stops(of)).toEqual([]);
  const joined = of.joints.filter((j) => j.duty === 'connect').map((j) => j.id);
  expect(joined).not.toContain('l1/right-side>r2/left-side');
  expect(joined).toContain('l1/right-side>r1/left-side');
});

describe('a side that two cases share', () => {
  const shared = (more: Fields = {}) => box('b', { leftSide: 'shared', ...more });

  test('is there once, and equal cases are as wide inside', () => {
    const row = outOf(piece, group, box('a'), shared(), box('c', { leftSide: 'shared' }));
    expect(stops(row)).toEqual([]);
    expect(row.parts.filter((p) => p.mark.startsWith('A')).map((p) => p.id)).toEqual([
      'a/left-side',
      'a/right-side',
      'b/right-side',
      'c/right-side',
    ]);
    // 1500 mm less four boards, in three.
    const clear = (1500 - 4 * mm(row, 'left side of a.thickness')) / 3;
    for (const id of ['a', 'b', 'c']) expect(mm(row, `bottom of ${id}.length`)).toBe(clear);
    expect(row.sides.map((s) => [s.left, s.right])).toEqual([
      ['a/left-side', 'a/right-side'],
      ['a/right-side', 'b/right-side'],
      ['b/right-side', 'c/right-side'],
    ]);
  });

  test('takes half the edge for the doors of each', () => {
    const door = (of: string): Fields => ({
      id: `${of}.door`,
      kind: 'door',
      parent: of,
      board: 'birch18',
      over: [`${of}.in`],
      hang: 'overlay',
      gap: '4 mm',
    });
    const opening = (of: string): Fields => ({ id: `${of}.in`, kind: 'opening', parent: of });
    const row = outOf(piece, group, box('a'), opening('a'), door('a'), shared(), opening('b'), door('b'));
    const [a, b] = ['a', 'b'].map((of) => row.parts.find((p) => p.id === `${of}.door/door`)!);
    const x = (p: typeof a) => row.ledger.ticks(p!.place.origin[0]) / 3200;
    // The doors' width runs to the left from their right edges: 4 mm are left between the two.
    expect(x(b) - mm(row, 'door of b.in.width') - x(a)).toBe(4);
  });

  test('that ends before the case does is told', () => {
    const low = outOf(piece, group, box('a', { height: '600 mm' }), shared());
    expect(stops(low)).toEqual([['cases.side-does-not-serve', 'design/records/b/leftSide']]);
    const edged = { id: 'lip', kind: 'edging', parent: 'a', strip: 'ash6' };
    expect(stops(outOf(piece, group, box('a'), edged, shared()))).toEqual([
      ['cases.side-does-not-serve', 'design/records/b/leftSide'],
    ]);
  });

  test('needs a neighbour that has it, and neither a panel running through nor a back laid on', () => {
    const codes = (...records: readonly Fields[]) => refused(piece, group, ...records);
    expect(codes(box('a', { leftSide: 'shared' }), box('b'))).toEqual(['design.side-not-shared']);
    expect(codes(box('a', { rightSide: 'shared' }), shared())).toEqual(['design.side-not-shared']);
    expect(codes(box('a', { bottom: 'under' }), shared())).toEqual(['design.side-not-shared']);
    // All panels close at once, and none can be pushed on to a side that stands already.
    expect(new Set(codes(box('a', { joints: 'dowels' }), shared()))).toEqual(
      new Set(['design.side-not-shared']),
    );
    const laid = { id: 'back', kind: 'back', parent: 'a', board: 'birch6', fitting: 'applied' };
    expect(codes(box('a'), laid, shared())).toEqual(['design.side-not-shared']);
    const top = { id: 'top', kind: 'top', parent: 'b', board: 'birch18' };
    expect(codes(box('a'), shared(), top)).toEqual(['design.side-not-shared']);
  });
});

describe('a filler', () => {
  const filler = { id: 'f', kind: 'filler', parent: 'g', board: 'birch18', size: '40 mm' };

  test('looks to the front on either side, its near edge to the case', () => {
    for (const row of [
      outOf(piece, group, filler, box('a'), box('b')),
      outOf(piece, group, box('a'), box('b'), filler),
    ]) {
      expect(stops(row)).toEqual([]);
      const part = row.parts.find((p) => p.id === 'f/filler')!;
      expect(part.place.thickness).toBe('-y');
      expect(mm(row, 'filler f.width')).toBe(40);
      expect(mm(row, 'filler f.rough width')).toBe(52);
      const [joint] = row.joints.filter((j) => j.duty === 'filler');
      expect(joint!.mateSide).toBe('near');
      expect(mm(row, 'overall.width')).toBe(1500);
    }
  });

  test('may stand on both sides of a single case, from wall to wall', () => {
    const row = outOf(piece, group, filler, box('a'), { ...filler, id: 'h' });
    expect(stops(row)).toEqual([]);
    expect(mm(row, 'bottom.length') + 2 * mm(row, 'left side.thickness')).toBe(1500 - 2 * 40);
    expect(mm(row, 'overall.width')).toBe(1500);
  });

  test('stands at the end of a row', () => {
    expect(refused(piece, group, box('a'), filler, box('b'))).toEqual(['design.filler-in-row']);
    expect(refused(piece, { ...group, lay: 'up' }, box('a'), box('b'), filler)).toEqual([
      'design.filler-in-row',
    ]);
  });
});

describe('one top over cases side by side', () => {
  const top = { id: 't', kind: 'top', parent: 'g', board: 'birch18', overhangFront: '20 mm' };
  const wide = { ...top, overhangSides: '30 mm', overhangBack: '5 mm' };

  test('is as wide and deep as the piece, and its cases fill the rest', () => {
    const row = outOf(piece, group, box('a'), box('b'), wide);
    expect(stops(row)).toEqual([]);
    const [board, lid] = [mm(row, 'top of g.thickness'), mm(row, 'top panel of a.thickness')];
    expect([mm(row, 'top of g.length'), mm(row, 'top of g.width')]).toEqual([1500, 400]);
    expect(mm(row, 'left side of a.length')).toBe(800 - board);
    expect(mm(row, 'top panel of a.length')).toBe((1500 - 60) / 2 - 2 * lid);
    expect(mm(row, 'top panel of a.width')).toBe(400 - 20 - 5);
  });

  test('is screwed up through every lid, from inside', () => {
    const row = outOf(piece, group, box('a'), box('b', { height: '600 mm' }), box('c'), top);
    const held = row.joints.filter((j) => j.mate === 't/top');
    expect(held.map((j) => [j.part, j.side])).toEqual([
      ['a/lid', 'show'],
      ['c/lid', 'show'],
    ]);
    for (const f of row.fasteners.filter((x) => x.through[1] === 't/top')) expect(f.direction).toBe('+z');
  });

  test('leaves the whole gap above doors before the cases', () => {
    const door = {
      id: 'd',
      kind: 'door',
      parent: 'a',
      board: 'birch18',
      over: ['in'],
      hang: 'overlay',
      gap: '4 mm',
    };
    const records = [piece, group, box('a'), { id: 'in', kind: 'opening', parent: 'a' }, door, box('b')];
    const under = (of: SetOut) => 800 - mm(of, 'door of in.length');
    const [topped, bare] = [outOf(...records, top), outOf(...records)];
    // Without a top half the gap is left above, as it is below.
    expect(under(topped) - mm(topped, 'top of g.thickness') - under(bare)).toBe(2);
  });

  test('lies on the highest where they were measured inside', () => {
    const job = smallJob();
    job.design.records = [piece, group, box('a'), { id: 'in', kind: 'opening', parent: 'a' }, box('b'), top];
    const board = 2 * 18 + 18;
    job.work = { measured: { 'in.height': `${800 - board + 0.5} mm` } };
    const read = checkJob(job);
    if (!read.ok) throw new Error('refused');
    const after = setOut(read.job);
    expect(mm(after, 'overall.height')).toBe(800.5);
  });

  test('belongs to a row, and is the only top there', () => {
    expect(refused(piece, { ...group, lay: 'up' }, box('a'), box('b'), top)).toEqual([
      'design.top-over-stack',
    ]);
    const own = { id: 'own', kind: 'top', parent: 'a', board: 'birch18' };
    expect(refused(piece, group, box('a'), own, box('b'), top)).toEqual(['design.top-under-top']);
  });
});

describe('cases one on the other', () => {
  test('are screwed through the bottom of the upper into what closes the lower; a shallower one stands at the back', () => {
    const stack = outOf(
      piece,
      { ...group, lay: 'up' },
      box('low', { size: '300 mm' }),
      box('high', { depth: '250 mm' }),
    );
    expect(stops(stack)).toEqual([]);
    expect(stack.joints.filter((j) => j.duty === 'connect').map((j) => [j.part, j.mate])).toEqual([
      ['high/bottom', 'low/lid'],
    ]);
    const bottom = stack.parts.find((p) => p.id === 'high/bottom')!;
    expect(bottom.place.origin.map((t) => stack.ledger.ticks(t) / 3200).slice(1)).toEqual([150, 300]);
  });

  test('have a base under the lowest only', () => {
    const base = { id: 'base', kind: 'base', parent: 'high', board: 'birch18', height: '80 mm' };
    expect(refused(piece, { ...group, lay: 'up' }, box('low'), box('high'), base)).toEqual([
      'design.base-upon-case',
    ]);
  });
});

test('what stands alone has no size of its own, and several need a group', () => {
  const alone = { ...box('a', { size: '500 mm' }), parent: 'row' };
  expect(refused(piece, alone)).toEqual(['design.size-without-group']);
  expect(refused(piece, { ...box('a'), parent: 'row' }, { ...box('b'), parent: 'row' })).toEqual([
    'design.too-many',
  ]);
  expect(refused(piece, group, box('a'))).toEqual(['design.group-of-one']);
});
