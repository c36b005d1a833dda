import { expect, test } from 'vitest';
import { builtExample } from '../../test/build/built.ts';

/** The lines of a card, its lengths in millimetres in their places. */
function card(name: string, id: string): string {
  const { build, drawn } = builtExample(name);
  const o = build.operations.find((x) => x.id === id)!;
  const mm = (n: string) => String(drawn.ledger.ticks(o.lengths[Number(n)]!) / 3200);
  return o.lines.join(' ').replace(/\{(\d+)\}/g, (_, n) => mm(n));
}

test('what takes another in its rabbet says so, and what goes into a dado as well', () => {
  expect(card('seed-shelf', 'A1/set')).toContain('B1 7.3 deep in its right side');
  expect(card('seed-shelf', 'E1/set')).toContain('Its left side 4.8 deep in A1');
});

test('the side at the end of a panel comes level with it, measured from no other end', () => {
  expect(card('step-stool', 'A2/set')).toContain('Its right side level with the right side of B1');
});

test('a rabbet along an end runs from edge to edge, one along an edge from end to end', () => {
  expect(card('seed-shelf', 'A1/rabbet-start')).toContain('right through from edge to edge');
  expect(card('record-bench', 'A1/rabbet-far')).toContain('right through from end to end');
});

test('butt hinges have their pilots and the slip below the door on their cards, a lid the place where it is marked', () => {
  expect(card('tool-cupboard', 'K3/hinges')).toContain('Pilot holes through the leaves, 2 wide and 13 deep');
  expect(card('tool-cupboard', 'K3/mortise')).toMatch(/with slips 2\.38125 thick under it/);
  expect(card('toy-chest', 'C1/hinges')).toContain('Pilot holes through the leaves, 1.7 wide and 11 deep');
  expect(card('toy-chest', 'C1/mortise')).toContain('its left side 6 beyond the left side of A1');
});

test('a chest is not fixed to the wall under a top that opens', () => {
  expect(card('toy-chest', 'home/set-up')).toContain('close under the lid');
});

test('the handle of a sliding door is measured from the edge beside it', () => {
  expect(card('radio-station', 'K1/drill-under-clearance')).toContain('40 from the left edge');
  expect(card('radio-station', 'K2/drill-under-clearance')).toContain('40 from the right edge');
});

test('a runner’s gauge stick names what it stands on', () => {
  expect(card('tool-chest', 'P3/runners')).toContain('72.5 long, from E1 up to the middle of the runner');
});

test('one shelf comes out with its pins, and a rabbet wider than the bit says how', () => {
  expect(card('writing-cabinet', 'finish/prepare')).toContain('M1 and its pins come out.');
  expect(card('seed-shelf', 'A1/rabbet-start')).toContain(
    'a bit narrower than the rabbet clears the edge first',
  );
});
