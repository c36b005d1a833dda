import { describe, expect, test } from 'vitest';
import { builtExample } from '../../test/build/built.ts';

const kitchen = builtExample('hall-kitchen');
const card = (of: typeof kitchen, id: string) => of.build.operations.find((o) => o.id === id)!;
const mm = (of: typeof kitchen, x: Parameters<typeof of.drawn.ledger.ticks>[0]) =>
  of.drawn.ledger.ticks(x) / 3200;

describe('a case that lies on its face', () => {
  test('what stands back from its front lies on packings', () => {
    const { lines, lengths } = card(kitchen, 'E23/set');
    const line = lines.find((l) => l.startsWith('Packings'))!;
    expect(mm(kitchen, lengths[Number(/\{(\d+)\}/.exec(line)![1])]!)).toBe(20);
    expect(card(kitchen, 'D5/set').lines.join(' ')).not.toContain('Packings');
    // It lies on the shelf before it.
    expect(card(kitchen, 'D6/set').lines.join(' ')).not.toContain('Packings');
  });

  test('a divider that its foot holds comes to the story stick before a screw holds its upper end', () => {
    expect(card(kitchen, 'D1/screw-C1').lines[0]).toContain(
      'upper end of D1 to its marks on the long story stick',
    );
    expect(card(kitchen, 'D1/screw-B1').lines.join(' ')).not.toContain('story stick');
  });
});

test('cases are set beside one another by the edging of both', () => {
  const set = kitchen.build.operations.find(
    ({ does }) => does.act === 'set' && does.workpiece === 'case:crockery',
  )!;
  expect(set.lines.at(-1)).toContain('J16’s front side level with the front side of J2');
});

test('a back is home against the shoulders of its rabbets, which do not run out through a mitre', () => {
  const table = builtExample('lamp-table');
  expect(card(table, 'F1/set').lines.join(' ')).toContain('against the shoulders of the rabbets');
  const { does } = table.build.operations.find((o) => o.does.act === 'rabbet' && o.title.includes('A1'))!;
  const stop = does.act === 'rabbet' ? (does.from ?? does.before) : undefined;
  // The bottom, as thick as the side, is mitred to its lower end; it stops a little inside the mitre.
  const bottom = table.drawn.parts.find((p) => p.role === 'bottom')!;
  expect(mm(table, bottom.thickness) - mm(table, stop!)).toBeGreaterThan(0);
  expect(mm(table, bottom.thickness) - mm(table, stop!)).toBeLessThan(3);
});

test('an inch shop bores pilots through the leaves of hinges to a depth that its drill is set to', () => {
  const cupboard = builtExample('tool-cupboard');
  const hung = cupboard.build.operations.find((o) =>
    o.lines.join(' ').includes('Pilot holes through the leaves'),
  )!;
  expect(hung.lines.join(' ')).toContain('{2} wide and {3} deep');
  expect(mm(cupboard, hung.lengths[3]!)).toBeCloseTo(12.7, 1);
});

test('the rims of a hole for a hand are rounded over', () => {
  const chest = builtExample('toy-chest');
  const hole = chest.build.operations.find((o) => o.title.includes('a hand to carry by'))!;
  expect(hole.lines.at(-1)).toContain('Round both rims well over');
});
