import { describe, expect, test } from 'vitest';
import { checkJob } from '../src/job/index.ts';
import type { Plan } from '../src/plan/index.ts';
import { planned } from './build/planned.ts';
import { box, type Fields, group, piece } from './build/row-of-cases.ts';
import { equipped } from './generate/equipped.ts';
import { type PlainJob, smallJob } from './generate/small-job.ts';

const inside = (of: string): readonly Fields[] => [
  { id: `${of}.in`, kind: 'opening', parent: of },
  { id: `${of}.shelf`, kind: 'shelf', parent: `${of}.in`, count: 2 },
];

type Change = (job: PlainJob) => void;

const hinged: Change = (job) => {
  const screw = 'hinge-screw';
  job.shop.rack.screws.push({
    id: screw,
    kind: 'countersunk',
    length: '12 mm',
    diameter: '3.5 mm',
    head: '7 mm',
    have: 100,
  });
  job.shop.rack.hinges = [
    {
      id: 'cranked',
      kind: 'cup',
      suits: 'inset',
      screw,
      cup: '35 mm',
      deep: '12.5 mm',
      edge: '4 mm',
      cupScrews: '45 mm',
      cupScrewsBehind: '9.5 mm',
      plateScrews: '32 mm',
      plateBehind: '37 mm',
      have: 8,
    },
  ];
};

/** The plan of a piece of these records; changes of the shop come before them. */
function planOf(...given: readonly (Fields | readonly Change[])[]): Plan {
  const job = equipped(smallJob()) as PlainJob;
  const records = given.filter((g): g is Fields => !Array.isArray(g));
  for (const changes of given) if (Array.isArray(changes)) for (const change of changes) change(job);
  job.design.records = [...records];
  for (const [length, diameter] of [
    [30, 4],
    [60, 4],
  ])
    job.shop.rack.screws.push({
      id: `flat-${length}`,
      kind: 'countersunk',
      length: `${length} mm`,
      diameter: `${diameter} mm`,
      head: '8 mm',
      have: 200,
    });
  return planned(job);
}

const ledgerWidth = (plan: Plan, opening: string) =>
  plan.setOut.openings.find((o) => o.id === opening)!.width;

function builtClean(plan: Plan): void {
  expect(plan.snags.filter((s) => s.level === 'stop').map((s) => s.sentence)).toEqual([]);
  expect(plan.dryFit.faults).toEqual([]);
  expect(plan.dryFit).toMatchObject({ fits: true, unused: [] });
}

describe('a side that two cases share', () => {
  const back = (of: string): Fields => ({
    id: `${of}.back`,
    kind: 'back',
    parent: of,
    board: 'birch6',
    fitting: 'rabbet',
  });
  const base = (of: string): Fields => ({
    id: `${of}.base`,
    kind: 'base',
    parent: of,
    board: 'birch18',
    height: '80 mm',
    setback: '40 mm',
  });

  test.each(['pocket-screws', 'rabbet', 'dado', 'stopped-dado', 'tongue'])(
    '%s: three cases are built on to one another, and stand as drawn',
    (joints) => {
      const plan = planOf(
        piece,
        group,
        box('a', { joints }),
        ...inside('a'),
        back('a'),
        base('a'),
        box('b', { joints, leftSide: 'shared' }),
        ...inside('b'),
        back('b'),
        base('b'),
        box('c', { joints, leftSide: 'shared' }),
        ...inside('c'),
        back('c'),
        base('c'),
      );
      builtClean(plan);
      expect(plan.setOut.parts.filter((p) => p.mark.startsWith('A'))).toHaveLength(4);
      expect(plan.setOut.joints.filter((j) => j.duty === 'connect')).toEqual([]);
    },
  );

  test.each([
    ['43 7/16"', 'pocket-screws'],
    ['43 7/16"', 'dado'],
    ['1100.3 mm', 'rabbet'],
    ['1099.9 mm', 'pocket-screws'],
  ])('three equal cases in %s, %s: no step of the saw is lost at each', (width, joints) => {
    const of = planOf(
      { ...piece, width },
      group,
      ...['a', 'b', 'c'].flatMap((id, i) => [
        box(id, { joints, ...(i > 0 ? { leftSide: 'shared' } : {}) }),
        ...inside(id),
        back(id),
      ]),
    );
    builtClean(of);
    const { ledger, parts, overall } = of.setOut;
    const ticks = (t: typeof overall.width): number => ledger.ticks(t);
    expect(ticks(overall.width)).toBe(
      width.endsWith('mm') ? Math.round(Number.parseFloat(width) * 3200) : 695 * 5080,
    );
    const bottoms = parts.filter((p) => p.role === 'bottom');
    const lost = bottoms.reduce((sum, p) => sum + ticks(p.length) - ticks(p.cut.length), 0);
    // Half a millimetre is a step of the saw here: all together are off by half of one at most.
    expect(Math.abs(lost)).toBeLessThanOrEqual(0.25 * 3200);
    const clear = ['a.in', 'b.in', 'c.in'].map((id) => ticks(ledgerWidth(of, id)));
    expect(Math.max(...clear) - Math.min(...clear)).toBeLessThanOrEqual(0.75 * 3200);
  });

  test('belongs to the higher one: the lower case’s back stops in it where its lid does', () => {
    const plan = planOf(
      piece,
      group,
      box('a', { height: '600 mm', rightSide: 'shared', joints: 'dado' }),
      ...inside('a'),
      back('a'),
      box('b', { joints: 'dado' }),
      ...inside('b'),
      back('b'),
    );
    builtClean(plan);
    const side = plan.setOut.parts.find((p) => p.id === 'b/left-side')!;
    const rabbet = side.features.find(
      (f) => f.kind === 'rabbet' && f.purpose === 'for the back' && f.face === 'show',
    );
    expect(rabbet?.kind === 'rabbet' && plan.setOut.ledger.ticks(rabbet.to) / 3200).toBe(600);
  });
});

describe('a run along a wall', () => {
  const room = {
    id: 'alcove',
    kind: 'room',
    widths: ['1562 mm', '1560 mm', '1571 mm', '1566 mm'],
    heights: ['2400 mm', '2396 mm'],
    floorFall: '9 mm',
    fallsTo: 'left',
  };
  const filler = (id: string, more: Fields = {}): Fields => ({
    id,
    kind: 'filler',
    parent: 'g',
    board: 'birch18',
    ...more,
  });
  const lip = (of: string): Fields => ({ id: `${of}.lip`, kind: 'edging', parent: of, strip: 'ash6' });

  test('closes to both walls with fillers scribed in their place, screwed on from inside', () => {
    const plan = planOf(
      { ...piece, width: 'alcove.width' },
      room,
      group,
      filler('west', { scribe: '(alcove.widest - alcove.width) / 2 + 6 mm' }),
      box('a', { size: '740 mm' }),
      ...inside('a'),
      lip('a'),
      box('b', { size: '740 mm', leftSide: 'shared' }),
      ...inside('b'),
      lip('b'),
      filler('east'),
    );
    builtClean(plan);
    const { ledger, parts } = plan.setOut;
    const mm = (id: string, of: 'width' | 'rough') => {
      const part = parts.find((p) => p.id === `${id}/filler`)!;
      return ledger.ticks(of === 'rough' ? part.rough!.width : part.width) / 3200;
    };
    // 1560 mm less two cases that have a side of 18 mm in common, in two.
    const each = (1560 - 2 * 740 + 18) / 2;
    expect([mm('west', 'width'), mm('east', 'width')]).toEqual([each, each]);
    expect([mm('west', 'rough'), mm('east', 'rough')]).toEqual([each + 11.5, each + 12]);
    const order = plan.build.operations.map((o) => o.id);
    const scribed = order.indexOf(`${parts.find((p) => p.id === 'west/filler')!.mark}/scribe`);
    expect(scribed).toBeGreaterThan(order.indexOf('home/level'));
    const level = plan.build.operations.find((o) => o.id === 'home/level')!;
    expect(level.lines.join(' ')).toMatch(/falls \{0\} to the left/);
  });

  test('is screwed on behind doors that hang already: they are opened for it', () => {
    const door = (of: string, hang: string): Fields => ({
      id: `${of}.door`,
      kind: 'door',
      parent: of,
      board: 'birch18',
      over: [`${of}.in`],
      hang,
      hand: of === 'a' ? 'left' : 'right',
    });
    builtClean(
      planOf(
        [hinged],
        piece,
        group,
        filler('west', { size: '30 mm' }),
        box('a'),
        ...inside('a'),
        door('a', 'inset'),
        box('b', { leftSide: 'shared' }),
        ...inside('b'),
        filler('east', { size: '30 mm' }),
      ),
    );
  });

  test('that is wider than the alcove where it is least is told, and fillers too narrow for where it is widest', () => {
    const run = [group, filler('west', { scribe: '4 mm' }), box('a'), box('b')];
    const wide = planOf({ ...piece, width: '1561 mm' }, room, ...run);
    expect(wide.snags.map((s) => s.code)).toContain('piece.too-large-for-its-place');
    const narrow = planOf({ ...piece, width: '1560 mm' }, room, ...run);
    const snag = narrow.snags.find((s) => s.code === 'fillers.too-narrow')!;
    expect(snag.sentence).toContain('11 mm wider at its widest than the piece');
    const [edit] = snag.cures[0]!.edits!;
    expect(edit).toEqual({ record: 'west', field: 'scribe', value: '14 mm' });
  });
});

describe('one top over several cases', () => {
  const top = { id: 'over', kind: 'top', parent: 'g', board: 'birch18' };

  test('is laid when the cases stand, and screwed up through every lid', () => {
    const edged = { ...top, overhangFront: '25 mm', overhangSides: '30 mm', edging: 'ash18' };
    const plan = planOf(
      piece,
      group,
      box('a'),
      box('b', { size: '2 shares' }),
      ...inside('b'),
      box('c'),
      edged,
    );
    builtClean(plan);
    const order = plan.build.operations.map((o) => o.id);
    const board = plan.setOut.parts.find((p) => p.id === 'over/top')!.mark;
    const lids = plan.setOut.parts.filter((p) => p.role === 'lid').map((p) => p.mark);
    const driven = lids.map((lid) => order.indexOf(`${lid}/screw-${board}`));
    expect(driven.every((at) => at > order.indexOf(`${board}/set`))).toBe(true);
    expect(order.indexOf(`${board}/set`)).toBeGreaterThan(order.indexOf('case:c/set'));
  });

  test('of the lower row of a stack is laid before the case that stands on it', () => {
    const plan = planOf(
      { ...piece, width: '900 mm', height: '1500 mm' },
      { ...group, lay: 'up' },
      { id: 'low', kind: 'group', parent: 'g', lay: 'across' },
      box('a', { parent: 'low' }),
      box('b', { parent: 'low' }),
      box('c'),
      { ...top, parent: 'low' },
    );
    builtClean(plan);
    const order = plan.build.operations.map((o) => o.id);
    const board = plan.setOut.parts.find((p) => p.id === 'over/top')!.mark;
    expect(order.indexOf('case:c/set')).toBeGreaterThan(order.indexOf(`${board}/set`));
  });
});

describe('a top scribed to the walls beside its fillers', () => {
  const filler = (id: string): Fields => ({
    id,
    kind: 'filler',
    parent: 'g',
    board: 'birch18',
    size: '40 mm',
  });
  const top: Fields = {
    id: 'over',
    kind: 'top',
    parent: 'g',
    board: 'birch18',
    overhangFront: '20 mm',
    scribe: '15 mm',
  };
  const run = (...between: readonly Fields[]) =>
    [group, ...between, box('b', { leftSide: 'shared' }), ...inside('b')] as const;

  test('is cut longer at both, laid and bored so in the shop, and sawn to them once the cases and fillers stand', () => {
    const plan = planOf(piece, ...run(filler('west'), box('a'), ...inside('a')), filler('east'), top);
    builtClean(plan);
    const { ledger, parts } = plan.setOut;
    const mm = (t: Parameters<typeof ledger.ticks>[0]) => ledger.ticks(t) / 3200;
    const part = parts.find((p) => p.id === 'over/top')!;
    expect([mm(part.length), mm(part.rough!.length), mm(part.cut.length)]).toEqual([1500, 1530, 1530]);
    const { operations } = plan.build;
    const at = (id: string) => operations.findIndex((o) => o.id === id);
    const [right, left] = ['right', 'left'].map((w) => at(`${part.mark}/scribe-${w}`)) as [number, number];
    const fillers = parts.filter((p) => p.role === 'filler').map((p) => at(`${p.mark}/scribe`));
    expect(right).toBeGreaterThan(Math.max(...fillers));
    expect(left).toBe(right + 1);
    expect(operations[right]!.lengths.map(mm)).toEqual([15, 1515]);
    expect(operations[left]!.lengths.map(mm)).toEqual([15, 1500]);
    // In the shop it stands out beyond the cases by the filler and the allowance.
    const laid = operations[at(`${part.mark}/set`)]!;
    expect(laid.lengths.map(mm)).toContain(55);
  });

  test('at one end alone is level with the case at the other, and its front strip is sawn with it', () => {
    for (const row of [
      run(filler('west'), box('a'), ...inside('a')),
      [...run(box('a'), ...inside('a')), filler('east')],
    ]) {
      const plan = planOf(piece, ...row, { ...top, edging: 'ash18', edgedSides: 'front' });
      builtClean(plan);
      const cards = plan.build.operations.filter((o) => o.does.act === 'scribe' && o.does.edge !== undefined);
      expect(cards.length).toBe(1);
      expect(cards[0]!.does).toMatchObject({ with: [expect.stringMatching(/^/)] });
    }
  });
});

test('a top glued up from boards is scribed as well: its boards are longer, and screws behind move in wide holes', () => {
  const shop: Change = (job) => {
    job.shop.rack.lots.push({
      ...job.shop.rack.lots.find((l) => l.id === 'ash18')!,
      id: 'planks',
      nominal: '20 mm',
      width: '110 mm',
      stock: [{ id: 'planks-2400', length: '2400 mm', price: 24 }],
    });
    (job.shop.rack.fixings as Fields[]).push({
      id: 'washer-24',
      kind: 'washer',
      diameter: '4.3 mm',
      width: '24 mm',
      have: 40,
    });
  };
  const filler = (id: string): Fields => ({
    id,
    kind: 'filler',
    parent: 'g',
    board: 'birch18',
    size: '40 mm',
  });
  const top: Fields = { id: 'over', kind: 'top', parent: 'g', board: 'planks', scribe: '15 mm' };
  const edge = { edging: 'ash18', edgedSides: 'front', overhangFront: '20 mm' };
  for (const more of [{}, edge]) {
    const plan = planOf([shop], piece, group, filler('west'), box('a'), box('b'), filler('east'), {
      ...top,
      ...more,
    });
    builtClean(plan);
    const { ledger, parts, gluedPanels } = plan.setOut;
    const mm = (t: Parameters<typeof ledger.ticks>[0]) => ledger.ticks(t) / 3200;
    const part = parts.find((p) => p.id === 'over/top')!;
    expect([mm(part.length), mm(part.cut.length)]).toEqual([1500, 1530]);
    // 20 mm at either end until the panel is cut.
    expect(gluedPanels.flatMap((g) => g.boards.map((b) => mm(b.cut.length)))).toContain(1570);
    const cards = plan.build.operations.filter(
      (o) => o.does.act === 'scribe' && o.does.workpiece === part.mark,
    );
    expect(cards.map((o) => o.lengths.map(mm))).toEqual([
      [15, 1515],
      [15, 1500],
    ]);
  }
});

describe('a top to be scribed', () => {
  const west: Fields = { id: 'west', kind: 'filler', parent: 'g', board: 'birch18', size: '40 mm' };
  const top: Fields = { id: 'over', kind: 'top', parent: 'g', board: 'birch18', scribe: '5 mm' };

  test('that is too short for where the room is widest is told, with the allowance that would do', () => {
    const room = { id: 'alcove', kind: 'room', widths: ['1500 mm', '1512 mm', '1508 mm'] };
    const plan = planOf(piece, room, group, west, box('a'), ...inside('a'), top);
    const snag = plan.snags.find((s) => s.code === 'tops.too-short')!;
    expect(snag.sentence).toContain('12 mm wider at its widest than the piece');
    expect(snag.cures[0]!.edits).toEqual([{ record: 'over', field: 'scribe', value: '15 mm' }]);
  });

  test.each([
    ['scribe', [], {}],
    ['overhangSides', [west], { overhangSides: '20 mm' }],
    ['edgedSides', [west], { edging: 'ash18' }],
  ])('is refused by its “%s” where nothing can be scribed', (field, beside, more) => {
    const job = equipped(smallJob()) as PlainJob;
    job.design.records = [piece, group, ...beside, box('a'), box('b'), { ...top, ...more }];
    const read = checkJob(job);
    expect(!read.ok && read.snags.map((s) => [s.code, s.where.path])).toEqual([
      ['design.top-scribe', `design/records/over/${field}`],
    ]);
  });
});

describe('a top of solid wood', () => {
  const top: Fields = { id: 'over', kind: 'top', board: 'ash25', overhangFront: '15 mm', load: '20 kg' };
  const back: Fields = { id: 'back', kind: 'back', parent: 'a', board: 'birch6', fitting: 'rabbet' };
  const solid = (job: PlainJob) => {
    job.shop.rack.lots.push({
      id: 'ash25',
      name: 'Ash panel, glued up, 25 mm',
      material: 'ash-white',
      form: 'sheet',
      nominal: '25 mm',
      stock: [{ id: 'ash25-panel', length: '2400 mm', width: '650 mm', price: 120 }],
    });
    (job.shop.rack.fixings as Fields[]).push({
      id: 'washer-24',
      kind: 'washer',
      name: 'Washer 4.3 x 24',
      diameter: '4.3 mm',
      width: '24 mm',
      have: 40,
    });
  };
  const wideHoles = ({ setOut }: Plan) =>
    setOut.fasteners
      .filter((f) => f.washer !== undefined)
      .map((f) => setOut.parts.find((p) => p.id === f.through[0])!)
      .flatMap((lid) =>
        lid.features.flatMap((f) =>
          f.kind === 'hole' && f.use === 'clearance' && f.countersink === undefined
            ? [setOut.ledger.ticks(f.diameter) / 3200]
            : [],
        ),
      );

  test.each([
    [
      'of one case lies on a lid',
      [{ ...box('a'), parent: 'row' }, ...inside('a'), back, { ...top, parent: 'a', overhangSides: '20 mm' }],
    ],
    ['over several cases', [group, box('a'), ...inside('a'), back, box('b'), { ...top, parent: 'g' }]],
  ])('%s: it is held fast in front, and moves in wide holes behind', (_, records) => {
    const plan = planOf([solid], { ...piece, width: '1000 mm' }, ...records);
    builtClean(plan);
    const held = plan.setOut.fasteners.filter((f) => f.through[1] === 'over/top');
    expect(held.filter((f) => f.washer === undefined).length).toBeGreaterThan(0);
    const holes = wideHoles(plan);
    expect(holes.length).toBeGreaterThan(0);
    // White ash, 0.00274 a point (Wood Handbook, ch. 13), four points, about 270 mm behind: 3 mm more than the screw asks.
    for (const wide of holes) {
      expect(wide).toBeGreaterThan(7);
      expect(wide).toBeLessThan(8.5);
    }
    const used = plan.build.operations.find((o) => o.title.startsWith('Screw C') && o.lines.length > 2)!;
    expect(used.lines.at(-1)).toContain('Washer 4.3 x 24');
  });

  test('asks for washers wide enough, and for no strips across its ends', () => {
    const narrow = planOf(
      [
        solid,
        (job) => Object.assign((job.shop.rack.fixings as { width: string }[]).at(-1)!, { width: '9 mm' }),
      ],
      piece,
      { ...box('a'), parent: 'row' },
      { ...top, parent: 'a', edging: 'ash18', overhangSides: '25 mm' },
    );
    const codes = narrow.snags.map((s) => s.code);
    expect(codes).toContain('top.no-washer');
    expect(codes).toContain('top.edging-across-grain');
  });
});
