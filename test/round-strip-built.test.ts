import { expect, test } from 'vitest';
import { setOut } from '../src/setting-out/index.ts';
import { built } from './build/built.ts';
import { dryFaults } from './build/dry-faults.ts';
import { checked } from './generate/checked.ts';
import { document, piece } from './generate/document.ts';
import { equipped } from './generate/equipped.ts';

const box = (more: Record<string, unknown> = {}) =>
  document('mm', '18 mm', [
    piece('600 mm', '500 mm', '300 mm'),
    {
      ...{ id: 'case', kind: 'case', parent: 'piece', board: 'board', joints: 'pocket-screws' },
      ...{ lid: 'over', oneStrip: 'sides-and-lid', ...more },
    },
    { id: 'inside', kind: 'opening', parent: 'case' },
  ]);

test('the sides and the lid of a case come from one strip, the lid between both sides', () => {
  const plan = built(equipped(box()));
  expect(plan.drawn.snags.filter((s) => s.level === 'stop')).toEqual([]);
  const lot = plan.breakdown.lots.find((l) => l.lot.id === 'board')!;
  expect(lot.verdict.holds).toBe(true);
  const [group] = lot.problem.problem.groups!;
  expect(group).toMatchObject({
    pieces: ['case/left-side', 'case/lid', 'case/right-side'],
    follow: 'length',
  });
});

test('the cards say which end of each lies beside which', () => {
  const plan = built(equipped(box()));
  const words = plan.build.operations.flatMap((o) => o.lines).join(' ');
  expect(words).toContain('A1 (left side, its upper end beside C1)');
  expect(words).toContain('A2 (right side, its upper end beside C1)');
  expect(words).toContain('C1 (top panel, its left end beside A1, its right end beside A2)');
  expect(words).toContain('A1, C1 and A2 are cut from one strip: that is their order round the case');
});

test.each([{}, { lid: 'over-left' }, { lid: 'over-right', bottom: 'under-left', joints: 'rabbet' }])(
  'built by its cards, such a case is as drawn: %j',
  async (corners) => {
    const of = built(equipped(box(corners)));
    expect(of.drawn.snags.filter((s) => s.level === 'stop')).toEqual([]);
    expect(await dryFaults(of)).toEqual([]);
  },
);

test('sides that are one blank, or a case without a lid of its own, can’t have such a strip', () => {
  const codes = (of: unknown) =>
    setOut(checked(of as never))
      .snags.filter((s) => s.level === 'stop')
      .map((s) => s.code);
  expect(codes(box({ oneBlank: 'sides', joints: 'dado' }))).toContain('cases.no-strip');
});

test('a lid between the sides that a back in rabbets makes shallower is told, and that it may lie over them', () => {
  const withBack = (more: object) => {
    const job = box({ joints: 'dado', ...more });
    const back = { id: 'back', kind: 'back', parent: 'case', board: 'thin', fitting: 'rabbet' };
    const records = [...job.design.records, back];
    const of = { ...job, design: { ...job.design, records } } as typeof job;
    return setOut(checked(of)).snags.find((s) => s.code === 'cases.no-strip');
  };
  const told = withBack({ lid: 'between' })!;
  expect(told.sentence).toMatch(/they are not of one depth\.$/);
  expect(told.cures[0]!.edits).toEqual([{ record: 'case', field: 'lid', value: 'over' }]);
  expect(withBack({ lid: 'over' })).toBeUndefined();
});
