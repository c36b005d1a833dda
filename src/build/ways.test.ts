import { expect, test } from 'vitest';
import { type Built, built, demoDocument, pieceOf, shelvesAlone } from '../../test/build/built.ts';
import { dryFaults } from '../../test/build/dry-faults.ts';

type Tool = Record<string, unknown> & { readonly kind: string };

/** The glaze cabinet in a shop with other tools. */
function inShop(change: (tools: readonly Tool[]) => readonly object[], document = demoDocument()): Built {
  const { shop } = document;
  return built({ ...document, shop: { ...shop, tools: change(shop.tools as readonly Tool[]) } });
}

const without =
  (...kinds: readonly string[]) =>
  (tools: readonly Tool[]) =>
    tools.filter((t) => !kinds.includes(t.kind));
const missing = ({ build }: Built) => build.snags.filter((s) => s.code === 'tools.missing');

test('without a router a rabbet is kerfed from the face and pared, no tighter than drawn; edging is planed level', () => {
  const { build, drawn } = inShop(without('router'), shelvesAlone());
  const t = (x: Parameters<typeof drawn.ledger.ticks>[0]) => drawn.ledger.ticks(x);
  const rabbets = build.operations.filter((o) => o.does.act === 'rabbet');
  expect(rabbets.length).toBe(2);
  for (const o of rabbets) {
    expect(o.tool).toBe('saw');
    expect(o.faceUp).toContain('face up');
    if (o.does.act !== 'rabbet') continue;
    const [mark] = o.does.workpieces;
    const part = drawn.parts.find((p) => p.mark === mark)!;
    const cut = part.features.find((f) => f.kind === 'rabbet')!;
    if (cut.kind !== 'rabbet') continue;
    expect(t(o.does.width)).toBeGreaterThanOrEqual(t(cut.width));
    expect(t(o.does.depth)).toBeGreaterThanOrEqual(t(cut.depth));
  }
  for (const o of build.operations.filter((x) => x.kind === 'flush')) expect(o.tool).toBeUndefined();
  expect(missing({ build } as Built)).toEqual([]);
});

test('nobody needs a machine to sand', () => {
  const of = inShop(without('sander'));
  const sanding = of.build.operations.filter((o) => o.kind === 'sand');
  expect(sanding.length).toBeGreaterThan(0);
  for (const o of sanding) expect(`${o.tool} ${o.lines[0]}`).toMatch(/^undefined By hand/);
  expect(missing(of)).toEqual([]);
});

test('a mitre saw cuts strips and the mitres of what stands against its fence', () => {
  const mitre = (height: string) =>
    inShop((tools) => [
      ...tools,
      {
        id: 'mitre',
        kind: 'mitre-saw',
        accuracy: '0.3 mm',
        kerf: '2.5 mm',
        step: '0.5 mm',
        width: '200 mm',
        height,
      },
    ]).build.operations;
  // The strips of the base are 70 mm high.
  for (const [height, base] of [
    ['80 mm', 'mitre'],
    ['60 mm', 'saw'],
  ] as const) {
    const operations = mitre(height);
    const tools = (which: (title: string) => boolean) => [
      ...new Set(operations.flatMap((o) => (o.does.act === 'bevel' && which(o.title) ? [o.tool] : []))),
    ];
    expect(tools((title) => title.includes('of the base'))).toEqual([base]);
    expect(tools((title) => !title.includes('of the base'))).toEqual(['mitre']);
  }
});

test('what no tool of the shop can do names the tool, and joints that can be made instead, as edits', () => {
  const shelves = pieceOf(
    { id: 'shelves', kind: 'piece', name: 'Shelves', width: '600 mm', height: '700 mm', depth: '300 mm' },
    { id: 'case', kind: 'case', parent: 'shelves', board: 'birch18', joints: 'dado' },
    { id: 'inside', kind: 'opening', parent: 'case' },
    { id: 'board', kind: 'shelf', parent: 'inside', count: 1 },
    { id: 'back', kind: 'back', parent: 'case', board: 'birch6', fitting: 'groove' },
  ) as ReturnType<typeof demoDocument>;
  const of = inShop(without('router'), shelves);
  const [snag, ...more] = missing(of);
  expect(more).toEqual([]);
  expect(snag!.sentence).toContain('needs the router');
  expect(snag!.cures[0]!.edits).toEqual([
    { record: 'case', field: 'joints', value: 'pocket-screws' },
    { record: 'back', field: 'fitting', value: 'applied' },
  ]);
  const records = shelves.design.records.map((r) => {
    const edits = snag!.cures[0]!.edits!.filter((e) => e.record === r.id);
    return Object.assign({ ...r }, ...edits.map((e) => ({ [e.field]: e.value })));
  });
  expect(missing(inShop(without('router'), { ...shelves, design: { records } }))).toEqual([]);
});

test('drawers and sliding doors are told what does without a router, and nothing of a back that isn’t there', () => {
  const [snag] = missing(inShop(without('router')));
  expect(snag!.cures.map((c) => c.says).slice(0, 2)).toEqual([
    'Glue the bottoms of drawers on from below.',
    'Hang the doors on hinges: what slides needs grooves.',
  ]);
  const demo = demoDocument();
  const records = demo.design.records
    .filter((r) => r.kind !== 'sliding-doors')
    .map((r) => {
      const edits = snag!.cures[0]!.edits!.filter((e) => e.record === r.id);
      return Object.assign({ ...r }, ...edits.map((e) => ({ [e.field]: e.value })));
    });
  expect(missing(inShop(without('router'), { ...demo, design: { records } }))).toEqual([]);
});

test.each(['drill', 'marking'])(
  'of a missing %s the dry fit says nothing more: holes are where they were drawn',
  async (kind) => {
    expect(await dryFaults(inShop(without(kind)))).toEqual([]);
  },
);
