import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { built, builtExample, demoDocument, pieceOf } from '../../test/build/built.ts';
import { placeTicks, toPiece } from '../setting-out/index.ts';

const seedShelf: unknown = JSON.parse(
  readFileSync(new URL('../../examples/seed-shelf.json', import.meta.url), 'utf8'),
);

test.each([
  ['the seed shelf', seedShelf],
  ['the glaze cabinet', demoDocument()],
])(
  'a lath carries every mark where the part stands, to half a step of the rule for each stick that it is set by: %s',
  (_, document) => {
    const { build, drawn } = built(document);
    const t = (x: Parameters<typeof drawn.ledger.ticks>[0]) => drawn.ledger.ticks(x);
    const boxOf = (mark: string) => {
      const part = drawn.parts.find((p) => p.mark === mark)!;
      const own = {
        min: [0, 0, 0] as never,
        max: [part.length, part.width, part.thickness].map(t) as never,
      };
      return toPiece(placeTicks(drawn.ledger, part.place), own);
    };
    expect(build.stories.map((s) => s.runs).sort()).toEqual(['across', 'up']);
    for (const stick of build.stories) {
      const axis = stick.runs === 'up' ? 2 : 0;
      const sides = drawn.parts.filter((p) => p.hand !== 'none').map((p) => boxOf(p.mark));
      const from = Math.min(...sides.map((b) => b.min[axis]));
      const to = Math.max(...sides.map((b) => b.max[axis]));
      expect(Math.abs(t(stick.length) - (to - from))).toBeLessThanOrEqual(800);
      const low = stick.runs === 'up' ? '-z' : '-x';
      // Its own stick, and those of what it is set from.
      const sticks = (mark: string): number => {
        const set = build.operations.find(({ does }) => does.act === 'set' && does.workpiece === mark)?.does;
        const by = set?.act === 'set' ? set.touches.find((x) => x.side === low) : undefined;
        const chained = by?.gap !== undefined && by.face !== low && stick.marks.some((m) => m.part === by.of);
        return chained ? 1 + sticks(by.of) : 1;
      };
      for (const m of stick.marks) {
        const box = boxOf(m.part);
        const half = 800 * sticks(m.part);
        expect(Math.abs(t(m.from) - (box.min[axis] - from)), m.part).toBeLessThanOrEqual(half);
        expect(Math.abs(t(m.to) - (box.max[axis] - from)), m.part).toBeLessThanOrEqual(half);
      }
    }
    // The card that makes them prints every one of their numbers, before any part is marked from them.
    const card = build.operations.findIndex((o) => o.id === 'parts/story-sticks');
    const worked = build.operations.findIndex((o) => o.stage === 'machine' && o.does.act !== 'other');
    expect(card).toBeGreaterThan(-1);
    expect(card).toBeLessThan(worked);
    const printed = new Set(build.operations[card]!.lengths);
    for (const s of build.stories)
      for (const x of [s.length, ...s.marks.flatMap((m) => [m.from, m.to])])
        expect(printed.has(x)).toBe(true);
  },
);

test('a box with nothing in it needs no lath', () => {
  const box = pieceOf(
    { id: 'box', kind: 'piece', name: 'Box', width: '600 mm', height: '700 mm', depth: '300 mm' },
    { id: 'case', kind: 'case', parent: 'box', board: 'birch18' },
    { id: 'inside', kind: 'opening', parent: 'case' },
  );
  expect(built(box).build.stories).toEqual([]);
});

test('a gauge stick brings its part where the story stick has it, shelf above shelf', () => {
  const { build, drawn } = builtExample('hall-kitchen');
  const t = (x: Parameters<typeof drawn.ledger.ticks>[0]) => drawn.ledger.ticks(x);
  const marks = new Map(
    build.stories.flatMap((s) => (s.runs === 'up' ? s.marks.map((m) => [m.part, m] as const) : [])),
  );
  const told = build.operations.flatMap(({ does }) => {
    const by = does.act === 'set' ? does.touches.find((x) => x.side === '-z' && x.face === '+z') : undefined;
    const [mine, below] = [does.act === 'set' && marks.get(does.workpiece), by && marks.get(by.of)];
    return mine && below && by?.gap !== undefined ? [t(mine.from) - t(below.to) - t(by.gap)] : [];
  });
  expect(told.length).toBeGreaterThan(30);
  expect(told.filter((off) => off !== 0)).toEqual([]);
});

test('marks of shelves above one another stay within half a step of where their gauge sticks bring them', () => {
  const { build, drawn } = builtExample('linen-cupboard');
  const t = (x: Parameters<typeof drawn.ledger.ticks>[0]) => drawn.ledger.ticks(x);
  const stick = build.stories.find((s) => s.runs === 'up')!;
  const part = (mark: string) => drawn.parts.find((p) => p.mark === mark)!;
  // B2 lies on the floor of the cupboard; each of the three is set from the one below it by a stick.
  let top: number = t(part('B2').thickness);
  for (const mark of ['E3', 'E4', 'E5']) {
    const does = build.operations.map((o) => o.does).find((a) => a.act === 'set' && a.workpiece === mark)!;
    const by = does.act === 'set' ? does.touches.find((x) => x.side === '-z')! : undefined;
    const low = top + t(by!.gap!);
    top = low + t(part(mark).thickness);
    const marked = stick.marks.find((m) => m.part === mark)!;
    expect(Math.abs(t(marked.from) - low), mark).toBeLessThanOrEqual(800);
    expect(Math.abs(t(marked.to) - top), mark).toBeLessThanOrEqual(800);
  }
});
