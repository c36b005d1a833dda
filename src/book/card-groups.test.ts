import { expect, test } from 'vitest';
import { smallCaseBook } from '../../test/book/small-case-book.ts';
import { cardGroups } from './card-groups.ts';
import { book } from './index.ts';

const input = smallCaseBook();
const { operations } = input.build;

test('every operation stands on one card, under its own number, in the order of work', () => {
  const all = cardGroups(operations).flat();
  expect(all.map((o) => o.number)).toEqual(operations.map((_, i) => i + 1));
  expect(all.map((o) => o.operation)).toEqual(operations);
});

test('operations that no card joins stand alone', () => {
  const gathered = { ...operations[0]!, does: { act: 'other' as const, on: [] } };
  expect(cardGroups([gathered, gathered]).map((g) => g.length)).toEqual([1, 1]);
});

test('both mitres of a strip are one card, those of another strip the next', () => {
  const mitre = (mark: string, edge: 'start' | 'end') => ({
    ...operations[0]!,
    stage: 'machine' as const,
    does: {
      act: 'bevel' as const,
      workpieces: [mark],
      edge,
      at: input.setOut.overall.width,
      angle: 45,
      fullFace: 'show' as const,
    },
  });
  const strips = [mitre('G1', 'start'), mitre('G1', 'end'), mitre('G2', 'start'), mitre('G2', 'end')];
  expect(cardGroups(strips).map((g) => g.map((o) => o.number))).toEqual([
    [1, 2],
    [3, 4],
  ]);
});

test('no figure is left out, whatever the card above says', () => {
  const printed = book(input)
    .pages.filter((p) => p.kind === 'steps')
    .flatMap((p) => p.marks)
    .flatMap((m) => (m.kind === 'text' && m.trace !== undefined ? [m.trace] : []));
  const wanted = operations.flatMap((o) =>
    o.lines.flatMap((l) => [...l.matchAll(/\{(\d+)\}/g)].map((m) => o.lengths[Number(m[1])]!)),
  );
  expect(wanted.length).toBeGreaterThan(0);
  const times = (of: readonly number[], t: number) => of.filter((x) => x === t).length;
  for (const t of wanted) expect(times(printed, t)).toBeGreaterThanOrEqual(times(wanted, t));
});
