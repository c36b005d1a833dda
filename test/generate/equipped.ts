/** Dowels and biscuits of usual sizes. */
export const PEGS = [
  ...[
    [6, 30],
    [8, 35],
    [10, 40],
    [12, 50],
  ].map(([d, long]) => ({ id: `dowel-${d}`, kind: 'dowel', diameter: `${d} mm`, length: `${long} mm` })),
  ...[
    [0, 47, 15],
    [10, 53, 19],
    [20, 56, 23],
  ].map(([n, long, wide]) => ({
    id: `biscuit-${n}`,
    kind: 'biscuit',
    length: `${long} mm`,
    width: `${wide} mm`,
    thickness: '3.9 mm',
  })),
];

/** Drills by half a millimetre, and those that pilots of the shop’s screws ask for besides. */
const TWISTS = [1.3, 1.7, 2.3, 2.8, ...Array.from({ length: 40 }, (_, i) => i / 2 + 1.5)];
const FORSTNERS = [...Array.from({ length: 27 }, (_, i) => i / 2 + 10), 25, 30, 32];

/** A shop that can do the work: what a generated one has, and saw, rail, jig, clamps and the rest besides. */
export function equipped(document: { readonly shop: unknown }): unknown {
  const shop = document.shop as { units: string; tools: readonly { kind: string }[]; rack: object };
  const step = shop.units === 'in' ? '1/32 in' : '0.5 mm';
  const tool = (kind: string, more: object) => ({ id: `our-${kind}`, kind, accuracy: '0.5 mm', ...more });
  const tools = [
    tool('circular-saw', { kerf: '2.2 mm', step, reach: '60 mm', reach45: '45 mm' }),
    // Two rails, joined for the longest cuts.
    tool('guide-rail', { length: '3400 mm', width: '200 mm' }),
    tool('drill', { step }),
    tool('pocket-jig', { step: '1 mm' }),
    tool('dowel-jig', {}),
    tool('biscuit-joiner', { step: '0.5 mm', kerf: '4 mm', cutter: '100 mm' }),
    tool('router', { step: '0.1 mm', edgeGuide: true }),
    tool('sander', {}),
    tool('clamp', { count: 8, reach: '3000 mm' }),
    tool('marking', { step }),
  ].filter(({ kind }) => !shop.tools.some((t) => t.kind === kind));
  const bits = [
    ...TWISTS.map((d) => ({
      id: `twist-${d}`,
      kind: 'twist',
      diameter: `${d} mm`,
    })),
    { id: 'sink', kind: 'countersink', diameter: '12 mm' },
    ...FORSTNERS.map((d) => ({ id: `forstner-${d}`, kind: 'forstner', diameter: `${d} mm` })),
    { id: 'cup-bit', kind: 'forstner', diameter: '35 mm' },
    ...[10, 15, 25, 30, 35, 40, 45, 50].map((d) => ({
      id: `hole-saw-${d}`,
      kind: 'hole-saw',
      diameter: `${d} mm`,
    })),
    { id: 'pocket-bit', kind: 'pocket', diameter: '9.5 mm' },
    { id: 'straight', kind: 'straight', diameter: '12 mm' },
    { id: 'straight-narrow', kind: 'straight', diameter: '6 mm' },
    { id: 'straight-small', kind: 'straight', diameter: '3 mm' },
    { id: 'flush', kind: 'flush-trim', diameter: '12 mm' },
  ];
  // Sheets and strips as large as any generated part, so that most designs are planned to the end.
  const rack = shop.rack as { lots: readonly { id: string; form: string; stock: readonly object[] }[] };
  const lots = rack.lots.map((lot) => ({
    ...lot,
    stock: [
      ...lot.stock,
      lot.form === 'sheet'
        ? { id: `${lot.id}-large`, length: '3200 mm', width: '2600 mm', price: 240 }
        : { id: `${lot.id}-long`, length: '3600 mm', price: 20 },
    ],
  }));
  const fixings = [
    ...((shop.rack as { fixings?: readonly object[] }).fixings ?? []),
    ...PEGS.filter(({ id }) => !JSON.stringify(shop.rack).includes(`"${id}"`)),
  ];
  const equippedRack = { ...shop.rack, bits, lots, fixings };
  return { ...document, shop: { ...shop, tools: [...shop.tools, ...tools], rack: equippedRack } };
}
