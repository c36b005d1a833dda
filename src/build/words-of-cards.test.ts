import { describe, expect, test } from 'vitest';
import { builtExample } from '../../test/build/built.ts';

/** All that the cards of an example say, or those whose id is one of these. */
function said(name: string, ...ids: readonly string[]): string {
  const { operations, stages } = builtExample(name).build;
  const cards = operations.filter((o) => ids.length === 0 || ids.includes(o.id));
  return [...stages.map((s) => s.title), ...cards.flatMap((o) => [o.title, ...o.lines, ...o.cautions])].join(
    '\n',
  );
}

describe('cards speak of what is there', () => {
  test('a chest has a lid to hang, two brackets, and holes for a purpose of its maker’s', () => {
    const chest = said('toy-chest');
    expect(chest).toContain('Hang the lid');
    expect(chest).not.toContain('Hang the doors');
    expect(chest).toContain('Two angle brackets, one for each side');
    expect(chest).toContain('with an angle bracket at each side');
    expect(chest).toContain('Holes through A1 (left side): air, and a hand to carry by');
  });

  test('one flap, one loose shelf and no drawer', () => {
    const cabinet = said('writing-cabinet');
    expect(cabinet).toContain('Its door and loose shelf go on their own.');
    expect(cabinet).toContain('by hand; the flap on.');
    expect(cabinet).not.toContain('the uppermost hinge first');
    expect(cabinet).toContain('\nDoors run true only');
    expect(cabinet).toContain('A falling flap crushes fingers');
    expect(cabinet).not.toContain('A falling lid');
  });

  test('drawers alone run true, and what is lowest is loaded first', () => {
    const chest = said('tool-chest', 'home/level', 'home/set-up');
    expect(chest).toContain('\nDrawers run true only');
    expect(chest).toContain('Load what is lowest first.');
  });

  test('an upright that waits for a top is named; where a lid holds it already none is', () => {
    const stand = said('aquarium-stand');
    expect(stand).toContain('D1 is still free at one end: bring that to its marks');
    expect(stand).toContain(
      'Check the overhang on all sides, and D1 by the long story stick, before the first screw.',
    );
    expect(said('hall-console')).toContain('Check the overhang on all sides, before the first screw.');
  });

  test('cases that share a side are turned together, and a base without pockets speaks of none', () => {
    const cupboard = said('linen-cupboard');
    expect(cupboard).toContain('tip them over the lower edges of all their sides, and let them down slowly');
    expect(cupboard).toContain('Set the cases on their base (G1, G2, G3 and G4)');
    expect(cupboard).toContain('An offcut glued into each inner corner holds more than the mitre alone.');
    expect(said('glaze-cabinet')).toContain('each inner corner, clear of the pockets, holds more');
  });

  test('what hangs says where the forces of its anchors stand, where they are bought and where they go in', () => {
    for (const [name, card] of [
      ['wall-shelf', 'home/set-up'],
      ['hall-console', 'home/set-up'],
    ] as const)
      for (const id of ['gather/stock', card])
        expect(said(name, id), `${name} ${id}`).toContain(
          'What each has to hold, downward and away from the wall',
        );
    // The wall shelf has no back.
    expect(said('wall-shelf', 'home/set-up')).toContain('Bore through the rail, at every stud');
  });

  test('a divider has no inner face, although its holes are those of a side', () => {
    const cards = builtExample('step-stool').build.operations.filter((o) => o.id.includes('/drill-'));
    const both = cards.filter((o) => o.title.includes('A1 and D1'));
    expect(both.length).toBeGreaterThan(0);
    for (const o of both) {
      expect(o.lines.join(' ')).not.toContain('inner face');
      expect(o.lines.join(' ')).toContain('from either face: run the gauge from both');
    }
  });
});
