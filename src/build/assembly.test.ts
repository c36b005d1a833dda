import { describe, expect, test } from 'vitest';
import { built, builtExample, demoDocument, pieceOf } from '../../test/build/built.ts';

/** Which part is screwed to which, in the order of the cards. */
function screwed(document: unknown): string[] {
  return built(document).build.operations.flatMap(({ does }) =>
    does.act === 'screw' ? [`${does.workpiece}-${does.mate} ${does.count}`] : [],
  );
}

describe('the assembly', () => {
  test('a lid over a divider is screwed to both sides, not only to the divider', () => {
    const pairs = screwed(
      pieceOf(
        { id: 'box', kind: 'piece', name: 'Box', width: '670 mm', height: '700 mm', depth: '180 mm' },
        { id: 'case', kind: 'case', parent: 'box', board: 'birch18' },
        { id: 'inside', kind: 'opening', parent: 'case', split: 'across' },
        { id: 'a', kind: 'opening', parent: 'inside' },
        { id: 'b', kind: 'opening', parent: 'inside' },
      ),
    );
    expect(pairs.sort()).toEqual(['B1-A1 2', 'B1-A2 2', 'C1-A1 2', 'C1-A2 2', 'D1-B1 2', 'D1-C1 2']);
  });

  test('a lid in the rabbets of the sides is level with their ends, not measured past every shelf', () => {
    const { build } = built(
      pieceOf(
        { id: 'box', kind: 'piece', name: 'Box', width: '670 mm', height: '1111 mm', depth: '272 mm' },
        { id: 'case', kind: 'case', parent: 'box', board: 'birch18', joints: 'dado' },
        { id: 'inside', kind: 'opening', parent: 'case' },
        { id: 'shelves', kind: 'shelf', parent: 'inside', count: 3 },
      ),
    );
    const lid = build.operations.find((o) => o.id === 'C1/set')!.does;
    expect(lid.act === 'set' && lid.touches.find((t) => t.side.endsWith('z'))).toEqual({
      side: '+z',
      of: 'A1',
      face: '+z',
    });
  });

  test('a part comes level with what it touches, not with its like some bays away', () => {
    const { build } = builtExample('wall-shelf');
    const levelWith = ['T1', 'T2', 'T3'].map((mark) => {
      const { does } = build.operations.find((o) => o.id === `${mark}/set`)!;
      const touch = does.act === 'set' && does.touches.find((t) => t.side === t.face);
      return touch && `${touch.side} ${touch.of}`;
    });
    expect(levelWith).toEqual(['+y A1', '+y D1', '+y D2']);
  });

  test('a shelf screwed through an upright stands on sticks, on what the upright stands on', () => {
    const { build } = builtExample('aquarium-stand');
    const { does, lines } = build.operations.find((o) => o.id === 'E1/set')!;
    expect(does.act === 'set' && does.touches[2]).toMatchObject({ side: '-z', of: 'B1', face: '+z' });
    expect(lines.some((l) => l.startsWith('Cut gauge stick 1 twice'))).toBe(true);
  });

  test('every fastener of the drawing is driven once, between the parts it joins', () => {
    const { drawn, build } = built(demoDocument());
    const mark = new Map(drawn.parts.map((p) => [p.id, p.mark]));
    const asked = new Map<string, number>();
    for (const j of drawn.joints)
      if (j.fasteners.length > 0)
        asked.set([j.part, j.mate].map((id) => mark.get(id)).join('-'), j.fasteners.length);
    const driven = build.operations.flatMap(({ does }) =>
      does.act === 'screw' ? [[`${does.workpiece}-${does.mate}`, does.count] as const] : [],
    );
    expect(driven.length).toBeGreaterThan(20);
    expect(new Map(driven)).toEqual(asked);
    expect(driven.reduce((n, [, count]) => n + count, 0)).toBe(drawn.fasteners.length);
  });

  test('each distance that parts are set by has one stick, cut once and named on every card that uses it', () => {
    const { drawn, build } = built(demoDocument());
    const { ledger } = drawn;
    const lengths = build.gauges.map((g) => ledger.ticks(g.length));
    expect(new Set(lengths).size).toBe(lengths.length);
    // Four equal bays: one stick for the uprights between them.
    expect(build.gauges[0]!.uses.map((u) => u.mark)).toEqual(['D1', 'D2', 'D3']);
    const gaps = build.operations.flatMap(({ id, does }) =>
      does.act === 'set' && does.into === 'case' && !id.endsWith('/runners')
        ? does.touches.flatMap((t) =>
            t.gap !== undefined && t.side !== t.face && !t.shoulder ? [[id, ledger.ticks(t.gap)]] : [],
          )
        : [],
    );
    // Sticks for runners reach to the middle of their profile, which no part is set by.
    const used = build.gauges.flatMap((g) =>
      g.uses
        .filter((u) => !u.operation.endsWith('/runners'))
        .map((u) => [u.operation, ledger.ticks(g.length)]),
    );
    expect(used.sort()).toEqual(gaps.sort());
    for (const { name, uses } of build.gauges)
      uses.forEach(({ operation }, i) => {
        const { lines } = build.operations.find((o) => o.id === operation)!;
        const cut = lines.filter((l) => l.toLowerCase().includes(`cut ${name} twice,`)).length;
        expect(cut).toBe(i === 0 ? 1 : 0);
        expect(lines.some((l) => l.toLowerCase().includes(name))).toBe(true);
      });
  });

  test('every part goes in once, after all it stands against', () => {
    const { drawn, build } = built(demoDocument());
    const there = new Set<string>(['bench']);
    const set: string[] = [];
    for (const { does, title } of build.operations) {
      if (does.act === 'edge')
        for (const { strip } of does.pairs) {
          set.push(strip);
          there.add(strip);
        }
      if (does.act === 'lift-in') set.push(does.workpiece);
      if (does.act !== 'set') continue;
      for (const t of does.touches) expect(there.has(t.of), `${title}: ${t.of}`).toBe(true);
      there.add(does.workpiece);
      if (drawn.parts.some((p) => p.mark === does.workpiece)) set.push(does.workpiece);
      if (does.into !== 'case') there.add(does.into);
    }
    expect(set.sort()).toEqual(drawn.parts.map((p) => p.mark).sort());
  });
});
