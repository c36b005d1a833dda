import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { type Built, built, builtExample } from '../../test/build/built.ts';

/** The lines of a card, its lengths in millimetres in their places. */
function card(name: string, id: string): string {
  return told(builtExample(name), id);
}

function told({ build, drawn }: Built, id: string): string {
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
  expect(card('tool-cupboard', 'K3/hinges')).toContain(
    'Pilot holes through the leaves, 2 wide and 12.7 deep',
  );
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
  expect(card('seed-shelf', 'A1/rabbet-start')).toContain('One that is narrower clears the edge first');
});

test('a side comes home on the bottom that it takes in: no stick holds the joint open', () => {
  const side = card('spice-rack', 'A2/set');
  expect(side).toContain('B1 9.8 deep in its left side');
  expect(side).not.toContain('gauge stick');
});

test('what stands behind an edged front is measured from the edging that is seen', () => {
  expect(card('boot-bench', 'G1/set')).toContain('its front side 45 in from the front side of J3');
});

test('a dado’s card says where the straightedge lies, whichever side of the bit has room for it', () => {
  expect(card('spice-rack', 'A1/groove-under-start-1')).toContain(
    'For shelf 1: 155, then 162.7; the straightedge at 86, then 93.7.',
  );
  const shop = JSON.parse(readFileSync(new URL('../../examples/spice-rack.json', import.meta.url), 'utf8'));
  shop.shop.tools.find((t: { kind: string }) => t.kind === 'router').base = '400 mm';
  // Half of what the plate has beyond the bit, 194 mm, is more than the 155 mm up to it: 155 + 12 + 194.
  expect(told(built(shop), 'A1/groove-under-start-1')).toContain(
    'the straightedge at 361, then 368.7, beyond',
  );
});

test('pockets behind a mitre are measured from its tip, which lies on the other face', () => {
  expect(card('radio-station', 'G1/pocket-under-far')).toContain('from the tip of the mitre at the left end');
  expect(card('boot-bench', 'A1/pocket-under-end')).toContain('from the front edge');
});

test('a hole for a hinge’s cup is never less deep than the cup', () => {
  // 12.5 mm deep by its maker; the drill is set in 64ths of an inch.
  expect(card('tool-cupboard', 'K1/drill-under-cup')).toContain('12.7 deep');
  expect(card('hall-cupboard', 'K1/drill-under-cup')).toContain('12.5 deep');
});

test('before a back goes on, laid on or let in, the diagonals are measured once more', () => {
  for (const name of ['hall-cupboard', 'spice-rack', 'radio-station'])
    expect(card(name, 'F1/set')).toContain('Measure both diagonals once more');
});

test('slopes drink before the first spline goes in', () => {
  const lines = card('lamp-table', 'A1/set');
  expect(lines.indexOf('Before all else')).toBeLessThan(lines.indexOf('Spline'));
});

test('one screw goes through its hole, and two doors alike have one size', () => {
  expect(card('spice-rack', 'A1/screw-T1')).toContain('through its hole into the pilot of T1');
  expect(card('lamp-table', 'A1/screw-C1')).toContain('in the pocket at its upper end');
  expect(card('tool-cupboard', 'K1/measure')).toContain('K1 and K2 each');
});

test('stock is cut before other stock only where there is some whose parts can be cut again', () => {
  expect(card('spice-rack', 'S3/only-once')).not.toContain('is cut before');
});

test('of clamps of two reaches a card names those that go so far apart', () => {
  const { operations } = builtExample('radio-station').build;
  const tool = (id: string) => operations.find((o) => o.id === id)!.tool;
  // The bottom is 1384 mm long and the base 1330; bar clamps reach 1200. A divider of 514 stands on the bottom.
  for (const id of ['A1/set', 'C1/set', 'G2/set']) expect(tool(id)).toBe('sash');
  for (const id of ['D1/set', 'E1/set', 'F1/set']) expect(tool(id)).toBe('clamps');
});

test('a masonry wall is bored where the rail’s own holes have been marked through, and has no studs', () => {
  const said = card('spice-rack', 'home/set-up');
  const order = [
    'Knock the wall',
    'Draw a level line',
    'Bore through the rail',
    'mark the wall',
    'masonry bit',
  ];
  const at = order.map((words) => said.indexOf(words));
  expect(at).toEqual([...at].sort((a, b) => a - b));
  expect(at[0]).toBeGreaterThanOrEqual(0);
  expect(said).not.toContain('stud');
});

test('what is glued and screwed has a clamp lying ready that holds it meanwhile', () => {
  const rehearsal = builtExample('spice-rack').build.operations.find(
    (o) => o.kind === 'rehearse' && o.title === 'Rehearse the gluing of T1',
  )!;
  expect(rehearsal.lines.join(' ')).toContain('a clamp that holds each joint while it is screwed');
});
