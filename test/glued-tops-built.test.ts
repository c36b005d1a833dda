import { describe, expect, test } from 'vitest';
import { cuttingList } from '../src/book/cutting-list.ts';
import { type Act, sizesMade } from '../src/build/index.ts';
import { sawCuts } from '../src/checks/saw-cuts.ts';
import { topMoves } from '../src/checks/top-moves.ts';
import { checkJob } from '../src/job/index.ts';
import { BUTTONS } from '../src/materials/index.ts';
import { fromMm, type Traced } from '../src/measure/index.ts';
import { partsToCut } from '../src/setting-out/index.ts';
import { built, mm } from './build/built.ts';
import { dryFaults } from './build/dry-faults.ts';
import { cured } from './checks/checked-job.ts';
import { equipped } from './generate/equipped.ts';
import { addScrews, lotOf, type PlainJob, smallJob } from './generate/small-job.ts';

/** The small cupboard with a top glued up from ash boards. */
function glued(top: object = {}, change: (job: PlainJob) => void = () => {}): PlainJob {
  const job = smallJob();
  job.shop.rack.lots.push({
    ...lotOf(job, 'ash18'),
    id: 'boards',
    nominal: '22 mm',
    width: '120 mm',
    stock: [{ id: 'boards-2400', length: '2400 mm', price: 20 }],
  });
  addScrews(job, 'pocket', [25, 30, 38, 45, 63], { diameter: '4 mm', head: '8.8 mm' });
  addScrews(job, 'countersunk', [25, 30, 35, 40], { diameter: '4 mm', head: '8 mm' });
  job.shop.rack.fixings = [{ id: 'washer', kind: 'washer', diameter: '4.3 mm', width: '30 mm' }];
  const { records } = job.design;
  records[records.findIndex((r) => r.id === 'top')] = {
    id: 'top',
    kind: 'top',
    parent: 'case',
    board: 'boards',
    overhangSides: '25 mm',
    overhangFront: '20 mm',
    ...top,
  };
  change(job);
  return job;
}

describe('a top glued up from boards', () => {
  test('comes of as many boards as its width asks for, each planed at both edges', async () => {
    const of = built(equipped(glued()));
    expect(of.drawn.snags).toEqual([]);
    const [panel] = of.drawn.gluedPanels;
    // 350 mm and 5 mm at either edge, of boards of 120 mm less 1.5 mm at either edge.
    expect(panel!.boards.map((b) => b.mark)).toEqual(['V1', 'V2', 'V3', 'V4']);
    expect(mm(of, panel!.jointed)).toBe(117);
    const top = of.drawn.parts.find((p) => p.id === panel!.panel)!;
    expect([top.length, top.width, top.thickness].map((t) => mm(of, t))).toEqual([1000, 350, 21]);
    // The outer boards are ripped by what the panel is too wide.
    expect(panel!.boards.map((b) => mm(of, b.width))).toEqual([58, 117, 117, 58]);
    expect(panel!.boards.map((b) => mm(of, b.cut.length))).toEqual([1040, 1040, 1040, 1040]);
    expect(partsToCut(of.drawn).some((p) => p.id === top.id)).toBe(false);
    expect(await dryFaults(of)).toEqual([]);
  });

  test('is held fast in front and moves behind, as wide as it is', () => {
    const of = built(equipped(glued()));
    const held = of.drawn.fasteners.filter((f) => f.through[1] === 'top/top');
    expect(held.some((f) => f.washer === undefined)).toBe(true);
    const lid = of.drawn.parts.find((p) => p.role === 'lid')!;
    const wide = lid.features.flatMap((f) =>
      f.kind === 'hole' && f.use === 'clearance' && f.countersink === undefined ? [mm(of, f.diameter)] : [],
    );
    // White ash, 0.00274 a point, flat-sawn (Wood Handbook, ch. 13), four points, some 250 mm behind the front screws:
    // 2.7 mm more than the 4.5 mm of a screw of 4 mm.
    expect(wide.length).toBeGreaterThan(0);
    for (const w of wide) expect(w).toBeGreaterThanOrEqual(7);
  });

  test('its screws stand in the middle of slots, which leave as much room on either side as it moves', async () => {
    const of = built(equipped(glued({ moves: 'slots' })));
    expect(of.drawn.snags).toEqual([]);
    const lid = of.drawn.parts.find((p) => p.role === 'lid')!;
    const slots = lid.features.flatMap((f) => (f.kind === 'slot' ? [f] : []));
    expect(slots.length).toBeGreaterThan(0);
    const behind = of.drawn.fasteners.filter((f) => f.washer !== undefined);
    expect(behind).toHaveLength(slots.length);
    const front = of.drawn.fasteners.find((f) => f.through[1] === 'top/top' && f.washer === undefined)!;
    const apart = mm(of, behind[0]!.head[1]) - mm(of, front.head[1]);
    for (const f of slots) {
      expect([f.run, mm(of, f.width)]).toEqual(['width', 6]);
      // White ash, 0.00274 a point, flat-sawn (Wood Handbook, ch. 13); 35 to 60 % of damp are four points.
      expect(mm(of, f.length)).toBe(Math.ceil(6 + 2 * apart * 0.00274 * 4));
    }
    const card = of.build.operations.find((o) => o.kind === 'slot')!;
    expect(card.title).toContain(lid.mark);
    const screws = of.build.operations.find((o) => o.id === `${lid.mark}/screw-C2`)!;
    expect(screws.lines.join(' ')).toContain('in the slots behind');
    expect(await dryFaults(of)).toEqual([]);
  });

  test('the dry fit finds a slot that was never routed, or one not in the middle of its screw', async () => {
    const of = built(equipped(glued({ moves: 'slots' })));
    const none = await dryFaults(of, (o) =>
      o.does.act === 'slot' ? { ...o, does: { act: 'other', on: [] } } : o,
    );
    expect(none.map((f) => f.code)).toContain('no-hole');
    const aside = await dryFaults(of, (o) =>
      o.does.act === 'slot' ? { ...o, does: { ...o.does, ends: [o.does.ends[0], o.does.ends[0]] } } : o,
    );
    expect(aside.length).toBeGreaterThan(0);
  });

  /** A wood for buttons, and a top on them. */
  const onButtons = (change: (job: PlainJob) => void = () => {}) =>
    glued({ moves: 'buttons', buttons: 'button-strip' }, (j) => {
      j.shop.rack.lots.push({
        ...lotOf(j, 'ash18'),
        id: 'button-strip',
        nominal: '20 mm',
        width: '40 mm',
        stock: [{ id: 'button-strip-1', length: '1200 mm', price: 6 }],
      });
      change(j);
    });

  test('lies on the uprights on buttons, each in the middle of a mortise as long as the top moves both ways', async () => {
    const of = built(equipped(onButtons()));
    expect(of.drawn.snags).toEqual([]);
    const buttons = of.drawn.parts.filter((p) => p.role.startsWith('button'));
    // Two sides and a divider.
    expect(buttons).toHaveLength(3);
    expect(of.drawn.parts.some((p) => p.role === 'lid')).toBe(false);
    const held = of.drawn.fasteners.filter((f) => f.through[1] === 'top/top');
    for (const button of buttons) {
      // 20 mm thick, 10 mm of wood above the mortise; 5 mm of a tongue in an upright of 18 mm, 2 mm off it, and 35 mm.
      expect([button.length, button.width, button.thickness].map((t) => mm(of, t))).toEqual([43, 40, 20]);
      const post = of.drawn.parts.find((p) => p.features.some((f) => f.id === `${p.id}#${button.id}`))!;
      const mortise = post.features.find((f) => f.id === `${post.id}#${button.id}`)!;
      if (mortise.kind !== 'groove') throw new Error('no mortise');
      // A divider may come out half a millimetre short of the top: its mortise begins so much nearer to its end.
      const nearer = post.role === 'divider' ? 0.5 : 0;
      expect([mortise.inset, mortise.width].map((t) => mm(of, t))).toEqual([10 - nearer, 10.5 + nearer]);
      const screw = held.find((f) => f.through[0] === button.id)!;
      const front = held.find((f) => f.through[0] === post.id)!;
      // White ash, 0.00274 a point (Wood Handbook, ch. 13), four points: as much on either side, and 1 mm.
      const moves = (mm(of, screw.head[1]) - mm(of, front.head[1])) * 0.00274 * 4;
      const long = mm(of, mortise.to) - mm(of, mortise.from);
      expect(long).toBeGreaterThanOrEqual(40 + 2 * (moves + 1));
      expect(long).toBeLessThan(40 + 2 * (moves + 3));
    }
    expect(await dryFaults(of)).toEqual([]);
  });

  test('mortises come before the case is put together, buttons when it is finished', () => {
    const { build } = built(equipped(onButtons()));
    const at = (act: string, id: string) =>
      build.operations.findIndex((o) => o.does.act === act && o.id.includes(id));
    const [mortise, button] = [at('groove', 'A1/'), at('buttons', 'A1/')];
    const coats = build.operations.flatMap((o, i) => (o.kind === 'finish' ? [i] : []));
    expect(mortise).toBeGreaterThanOrEqual(0);
    expect(mortise).toBeLessThan(build.operations.findIndex((o) => o.does.act === 'set'));
    expect(button).toBeGreaterThan(Math.max(...coats));
    const card = build.operations[button]!;
    expect(card.lines.join(' ')).toMatch(/behind the front end of its mortise, so that C1 can move/);
  });

  test.each([
    ['a mortise was never routed', 'groove', { act: 'other', on: [] }, 'no-hole'],
    ['no step was sawn above the tongue', 'rabbet', { act: 'other', on: [] }, 'in-the-way'],
    ['buttons are left out', 'buttons', { act: 'other', on: [] }, 'part-missing'],
  ])('the dry fit finds out where %s', async (_, act, does, code) => {
    const of = built(equipped(onButtons()));
    const faults = await dryFaults(of, (o) =>
      o.does.act === act && /^(A1\/groove-under-end|U1\/|A1\/buttons)/.test(o.id)
        ? { ...o, does: does as never }
        : o,
    );
    expect(faults.map((f) => f.code)).toContain(code);
  });

  test('the dry fit finds out where a mortise is too short, or a tongue doesn’t catch', async () => {
    const of = built(equipped(onButtons()));
    const add = (t: Traced, by: number) =>
      of.drawn.ledger.sum(
        'wrong',
        t,
        of.drawn.ledger.row({ ...BUTTONS.lip, id: `test.${by}`, value: fromMm(by) }),
      );
    const codes = async (change: (does: Extract<Act, { act: 'buttons' }>) => Act) =>
      (await dryFaults(of, (o) => (o.does.act === 'buttons' ? { ...o, does: change(o.does) } : o))).map(
        (f) => f.code,
      );
    expect(await codes((a) => ({ ...a, moves: a.moves.map((t) => add(t, 4)) }))).toContain('in-the-way');
    expect(await codes((a) => ({ ...a, tongue: add(a.tongue, -12) }))).toContain('holds-nothing');
  });

  test.each([
    ['too thin', { nominal: '12 mm' }, 'top.buttons-too-small'],
    ['too thick', { nominal: '40 mm' }, 'top.buttons-too-small'],
    ['too narrow', { width: '15 mm' }, 'top.buttons-too-small'],
  ])('buttons of strips that are %s are told', (_, change, code) => {
    const of = built(equipped(onButtons((j) => Object.assign(lotOf(j, 'button-strip'), change))));
    expect(of.drawn.snags.map((s) => s.code)).toContain(code);
  });

  test('where uprights are too thin for mortises, slots are a cure that stands', () => {
    const of = built(
      equipped(
        onButtons((j) => {
          for (const lot of j.shop.rack.lots) if (lot.id === 'birch18') lot.thickness = '12 mm';
        }),
      ),
    );
    const thin = of.drawn.snags.find((s) => s.code === 'top.buttons-thin')!;
    const top = cured(of.job, thin.cures[0]!.edits!).design.records.find((r) => r.id === 'top');
    expect(top).toMatchObject({ moves: 'slots' });
    expect(top).not.toHaveProperty('buttons');
  });

  test('buttons without a screw that fits are told', () => {
    const of = built(
      equipped(
        onButtons((j) => {
          j.shop.rack.screws = j.shop.rack.screws.filter((s) => s.kind !== 'countersunk');
        }),
      ),
    );
    expect(of.drawn.snags.map((s) => s.code)).toContain('top.no-button-screw');
  });

  test.each([
    [
      { moves: 'buttons' },
      'doesn’t say what they are made of',
      /, 16 to 32 mm thick and at least 20 mm wide,/,
    ],
    [{ moves: 'slots', buttons: 'boards' }, 'isn’t held by buttons', /Take “buttons” out/],
    [
      { moves: 'buttons', buttons: 'boards', hinged: true },
      'is hinged',
      /^Take “moves” and “buttons” out\.$/,
    ],
  ])('a top that says %o is told', (top, says, cure) => {
    const read = checkJob(glued(top));
    expect(read.ok ? [] : read.snags.map((s) => s.sentence)).toEqual([expect.stringContaining(says)]);
    expect(read.ok ? '' : read.snags[0]!.cures[0]!.says).toMatch(cure);
  });

  test('a check finds out that it can’t move where its screws have no room', () => {
    const of = built(equipped(glued({ moves: 'slots' })));
    const codes = (setOut: typeof of.drawn) => topMoves({ job: of.job, setOut }).map((s) => s.code);
    expect(codes(of.drawn)).toEqual([]);
    const tight = of.drawn.fasteners.map(({ washer: _, ...f }) => f);
    expect(codes({ ...of.drawn, fasteners: tight })).toEqual(['top.cannot-move']);
  });

  test('a top that doesn’t move says nothing of how it can', () => {
    for (const change of [
      (j: PlainJob) => Object.assign(lotOf(j, 'boards'), { material: 'oak-european' }),
      (j: PlainJob) => Object.assign(j.design.records.find((r) => r.id === 'top')!, { hinged: true }),
    ]) {
      const read = checkJob(glued({ moves: 'slots' }, change));
      expect(read.ok ? [] : read.snags.map((s) => s.code)).toEqual(['design.top-moves']);
    }
  });

  test('of one board wide enough is glued of nothing', async () => {
    const of = built(equipped(glued({}, (j) => Object.assign(lotOf(j, 'boards'), { width: '400 mm' }))));
    expect(of.drawn.gluedPanels[0]!.boards).toHaveLength(1);
    expect(of.build.operations.some((o) => o.kind === 'glue-up')).toBe(false);
    expect(await dryFaults(of)).toEqual([]);
  });

  test('is glued up in parts where the glue leaves no time for all of it', async () => {
    const quick = { id: 'glue', material: 'pva', label: { openMinutes: 3, assemblyMinutes: 5 } };
    const of = built(
      equipped(
        glued({}, (j) => {
          j.shop.rack.adhesives = [quick];
          Object.assign(lotOf(j, 'boards'), { width: '60 mm' });
        }),
      ),
    );
    const ups = of.build.operations.flatMap((o) => (o.does.act === 'glue-up' ? [o.does] : []));
    expect(ups.length).toBeGreaterThan(2);
    expect(ups.at(-1)).toMatchObject({ as: 'C2' });
    // Two at a time is all that the glue leaves time for, also when what was glued up is put together.
    for (const { boards } of ups) expect(boards).toHaveLength(2);
    expect(await dryFaults(of)).toEqual([]);
  });

  test('a cut to size freezes only the size that it makes', () => {
    const of = built(equipped(glued()));
    const made = (id: string) =>
      sizesMade(of.drawn, of.build.operations.find((o) => o.id === id)!).map(([name]) => name);
    expect(['true-edge', 'square-end', 'rip', 'crosscut'].map((id) => made(`C2/${id}`))).toEqual([
      [],
      [],
      ['C2.width'],
      ['C2.length'],
    ]);
    const one = built(equipped(glued({}, (j) => Object.assign(lotOf(j, 'boards'), { width: '400 mm' }))));
    const name = one.build.operations.find((o) => o.id === 'C2/name')!;
    expect(sizesMade(one.drawn, name)).toEqual([]);
  });

  test('asks for clamps that the shop has too few of, one of them in the singular', () => {
    const few = (count: number) =>
      built(
        equipped(
          glued({}, (j) => {
            j.shop.tools = j.shop.tools.filter((t) => t.kind !== 'clamp');
            j.shop.tools.push({ id: 'clamp', kind: 'clamp', accuracy: '0.5 mm', count, reach: '1200 mm' });
          }),
        ),
      );
    const panels = (of: ReturnType<typeof built>) =>
      of.build.snags.filter((s) => s.code === 'glue-up.too-few-clamps' && s.where.operation === 'C2/glue-up');
    // 1040 mm of joint.
    expect(panels(few(1))[0]).toMatchObject({ figures: { value: 1, margin: expect.any(Number) } });
    expect(panels(few(8))).toEqual([]);
    const card = few(1).build.operations.find((o) => o.kind === 'glue-up')!;
    expect(card.lines.join(' ')).not.toContain('1 clamps');
  });

  test('is judged by the saw’s depth and the rail’s length where it is cut to size', () => {
    const of = built(equipped(glued()));
    const cuts = sawCuts({ setOut: of.drawn, build: of.build });
    const cut = (id: string) => cuts.find((c) => c.operation.id === `C2/${id}`);
    // Four boards of 117 mm, planed flat to 21 mm; of the width, half of what is too much is off when the end is squared.
    expect(cut('true-edge')).toMatchObject({ run: 1040, width: 468, thickness: 21, onSheet: true });
    expect(cut('square-end')).toMatchObject({ run: 409, thickness: 21 });
    expect(cut('crosscut')).toMatchObject({ run: 350, width: 350 });
  });

  test('is sanded as solid wood, without a word of veneer', () => {
    const of = built(equipped(glued()));
    const cards = of.build.operations.filter(
      (o) => o.kind === 'sand' && o.does.act === 'other' && o.does.on.includes('C2') && o.stage === 'sand',
    );
    expect(cards).toHaveLength(1);
    expect(cards[0]!.lines.join(' ')).not.toContain('veneer');
  });

  test('is noted with its own boards, and as cut once it is there', () => {
    const note = (of: ReturnType<typeof built>, mark: string) =>
      cuttingList(of.drawn, of.breakdown, of.build).find((r) => r.marks.split(/[, –]+/).includes(mark))!
        .notes;
    const of = built(equipped(glued()));
    expect(note(of, 'C2')).toMatch(/^glued up from V1–V4/);
    const made = built(
      equipped(
        glued({}, (j) => {
          j.work = { made: [{ part: 'top/top', length: '1000 mm', width: '350 mm' }] };
        }),
      ),
    );
    expect(note(made, 'C2')).toMatch(/^glued up from V1–V4; cut already/);
    expect(note(made, 'V2')).toMatch(/^glued up already/);
    expect(note(of, 'V2')).not.toContain('already');
  });

  test('opens as a lid', async () => {
    const lid = built(
      equipped(
        glued({ hinged: true }, (j) => {
          Object.assign(j.design.records.find((r) => r.id === 'back')!, { board: 'birch18' });
          j.shop.rack.screws.push({
            id: 'hinge-screw',
            kind: 'countersunk',
            length: '12 mm',
            diameter: '3.5 mm',
            head: '7 mm',
          });
          j.shop.rack.hinges = [
            {
              id: 'butt',
              kind: 'butt',
              screw: 'hinge-screw',
              length: '50 mm',
              width: '14 mm',
              leaf: '1.5 mm',
              screws: 3,
            },
          ];
          j.shop.rack.stays = [{ id: 'stay', holds: '60 N m' }];
        }),
      ),
    );
    expect(lid.drawn.snags.filter((s) => s.level === 'stop')).toEqual([]);
    expect(lid.drawn.gluedPanels).toHaveLength(1);
    expect(await dryFaults(lid)).toEqual([]);
  });

  test.each([
    ['no edge is planed', 'plane', 'joint'],
    ['it isn’t planed flat', 'plane', 'flatten'],
    ['it is never glued up', 'glue-up', 'glue-up'],
    ['it is never ripped to width', 'saw', 'rip'],
  ])('the dry fit finds out where %s', async (_, act, id) => {
    const of = built(equipped(glued()));
    const faults = await dryFaults(of, (o) =>
      o.does.act === act && o.id === `C2/${id}` ? { ...o, does: { act: 'other', on: [] } } : o,
    );
    expect(faults.length).toBeGreaterThan(0);
  });

  test('glue that is let go too soon is found', async () => {
    const of = built(equipped(glued()));
    const faults = await dryFaults(of, (o) =>
      o.kind === 'glue-up' ? { ...o, minutes: { ...o.minutes, waiting: 5 } } : o,
    );
    expect(faults.map((f) => f.code)).toContain('still-wet');
  });

  test('boards too narrow, or of a wood whose movement nobody knows, are told', () => {
    const narrow = built(equipped(glued({}, (j) => Object.assign(lotOf(j, 'boards'), { width: '20 mm' }))));
    expect(narrow.drawn.snags.map((s) => s.code)).toContain('top.boards-too-small');
    const unknown = built(
      equipped(glued({}, (j) => Object.assign(lotOf(j, 'boards'), { material: 'oak-european' }))),
    );
    expect(unknown.drawn.snags.map((s) => s.code)).toContain('top.movement-unknown');
  });

  test.each([
    ['between the sides', { fit: 'inset', overhangSides: undefined, overhangFront: undefined }, 'ash-white'],
    ['of plywood', {}, 'birch-plywood'],
  ])('is no top %s', (_, top, material) => {
    const job = glued(JSON.parse(JSON.stringify(top)), (j) =>
      Object.assign(lotOf(j, 'boards'), { material }),
    );
    if ('fit' in top)
      for (const r of job.design.records.filter((r) => r.id === 'top')) {
        delete r.overhangSides;
        delete r.overhangFront;
      }
    const read = checkJob(job);
    expect(read.ok ? [] : read.snags.map((s) => s.code)).toEqual(['design.glued-up-top']);
  });
});

test('a formula that names the thickness of a glued-up top means it as it comes out', () => {
  const { drawn } = built(
    equipped(glued({}, (j) => j.design.records.push({ id: 'gap', kind: 'size', value: 'top.thickness' }))),
  );
  expect(drawn.ledger.ticks(drawn.dimensions.get('gap.value')!) / 3200).toBe(21);
});
