import { describe, expect, test } from 'vitest';
import { cuttingList } from '../src/book/cutting-list.ts';
import { sizesMade } from '../src/build/index.ts';
import { hanging } from '../src/checks/hanging.ts';
import { checkJob } from '../src/job/index.ts';
import { fromMm } from '../src/measure/index.ts';
import { partsReport, partsToCut } from '../src/setting-out/index.ts';
import { built, mm } from './build/built.ts';
import { dryFaults } from './build/dry-faults.ts';
import { equipped } from './generate/equipped.ts';
import { addScrews, type PlainJob, recordOf, smallJob } from './generate/small-job.ts';

/** The small cupboard hung on a wall of studs by a bevelled cleat. */
function hung(change: (job: PlainJob) => void = () => {}): PlainJob {
  const job = smallJob();
  job.design.records = job.design.records.filter((r) => r.id !== 'base');
  Object.assign(recordOf(job, 'back'), { fitting: 'groove' });
  job.design.records.push(
    { id: 'hook', kind: 'hanging', parent: 'case', board: 'birch18', by: 'cleat' },
    { id: 'place', kind: 'room', wall: 'studs' },
  );
  addScrews(job, 'pocket', [25, 38, 45, 63], { diameter: '4 mm', head: '8.8 mm' });
  change(job);
  return job;
}

describe('a bevelled cleat', () => {
  test('is parted from one blank, hidden in the recess behind the back, and the case hooks over it', async () => {
    const of = built(equipped(hung()));
    expect(of.drawn.snags).toEqual([]);
    const [cleat] = of.drawn.cleats;
    const part = (id: string) => of.drawn.parts.find((p) => p.id === id)!;
    const [onCase, onWall] = [part(cleat!.onCase), part(cleat!.onWall)];
    // 80 mm of either, 18 mm of which they share; the kerf of 2.2 mm takes 3.1 mm of the face at 45 degrees.
    expect(mm(of, onWall.width)).toBe(80);
    expect(mm(of, cleat!.blank.width)).toBe(145.5);
    expect(mm(of, onCase.width)).toBeCloseTo(145.5 + 18 - 80 - 2.2 * Math.SQRT2, 3);
    expect([onCase.mark, onWall.mark, cleat!.blank.mark]).toEqual(['T1', 'X1', 'Z1']);
    expect(partsToCut(of.drawn).map((p) => p.mark)).toContain('Z1');
    expect(partsToCut(of.drawn).map((p) => p.mark)).not.toContain('T1');
    // The back makes room for it by itself.
    const back = part('back/back');
    const rear = part('case/left-side').place.origin[1];
    expect(mm(of, of.drawn.dimensions.get('overall.depth')!)).toBe(350);
    expect(mm(of, rear)).toBeLessThan(mm(of, back.place.origin[1]));
    expect(await dryFaults(of)).toEqual([]);
  });

  test.each([
    ['dado', 'between'],
    ['dowels', 'between'],
    ['biscuits', 'between'],
    ['face-screws', 'between'],
    ['rabbet', 'over'],
  ])('holds in a case joined by %s, its lid %s', async (joints, lid) => {
    const of = built(
      equipped(
        hung((j) => {
          j.design.records = j.design.records.filter((r) => r.id !== 'top');
          Object.assign(recordOf(j, 'case'), { joints, lid });
          for (const long of [30, 40, 50, 60])
            j.shop.rack.screws.push({
              id: `countersunk-${long}`,
              kind: 'countersunk',
              length: `${long} mm`,
              diameter: '4.5 mm',
              head: '8.8 mm',
            });
        }),
      ),
    );
    expect(of.drawn.snags.filter((s) => s.level === 'stop')).toEqual([]);
    expect(await dryFaults(of)).toEqual([]);
  });

  test.each([
    ['a bottom under its sides', { bottom: 'under' }],
    ['mitred corners', { joints: 'mitre' }],
    ['mitred corners on biscuits', { joints: 'mitre', inMitres: 'biscuits' }],
    ['a bottom under its sides and a lid over them', { bottom: 'under', lid: 'over', joints: 'rabbet' }],
  ])('hangs a case with %s: it goes to the wall, and is let down over the strip there', async (_, how) => {
    const of = built(
      equipped(
        hung((j) => {
          j.design.records = j.design.records.filter((r) => r.id !== 'lipping');
          if ('lid' in how) j.design.records = j.design.records.filter((r) => r.id !== 'top');
          Object.assign(recordOf(j, 'case'), how);
        }),
      ),
    );
    expect(of.drawn.snags.filter((s) => s.level === 'stop')).toEqual([]);
    expect(await dryFaults(of)).toEqual([]);
    // Straight up into its place it would run into the bottom.
    const straight = await dryFaults(of, (o) => {
      if (o.does.act !== 'set' || o.does.hooks === undefined) return o;
      const { hooks: _, ...does } = o.does;
      return { ...o, does };
    });
    expect(straight.map((f) => f.sentence).join()).toContain('no straight way');
  });

  test('a lift that is less than the hooks are deep is noticed', async () => {
    const of = built(equipped(hung((j) => Object.assign(recordOf(j, 'case'), { bottom: 'under' }))));
    const low = of.drawn.ledger.row({ id: 'low', value: fromMm(4), says: 'a mistake', source: 'the test' });
    const faults = await dryFaults(of, (o) =>
      o.does.act === 'set' && o.does.hooks !== undefined ? { ...o, does: { ...o.does, hooks: low } } : o,
    );
    expect(faults.map((f) => f.code)).toEqual(['in-the-way']);
  });

  test.each([
    ['it is never parted', 'Z1/part'],
    ['the wall strip is as long as the case is wide', 'X1/crosscut'],
    ['nothing is hooked on', 'X1/hook'],
  ])('the dry fit finds out where %s', async (_, id) => {
    const of = built(equipped(hung()));
    const faults = await dryFaults(of, (o) => (o.id === id ? { ...o, does: { act: 'other', on: [] } } : o));
    expect(faults.length).toBeGreaterThan(0);
  });

  test('the dry fit finds out where the blank is parted off its line, or squarely', async () => {
    const of = built(equipped(hung()));
    for (const change of [{ angle: 30 }, { at: of.drawn.cleats[0]!.blank.thickness }])
      expect(
        (await dryFaults(of, (o) => (o.does.act === 'part' ? { ...o, does: { ...o.does, ...change } } : o)))
          .length,
      ).toBeGreaterThan(0);
  });

  const longScrews = (j: PlainJob) => {
    for (const long of [50, 60, 70])
      j.shop.rack.screws.push({
        id: `long-${long}`,
        kind: 'countersunk',
        length: `${long} mm`,
        diameter: '4 mm',
        head: '8 mm',
      });
  };
  const withoutTop = (j: PlainJob) => (j.design.records = j.design.records.filter((r) => r.id !== 'top'));

  test.each([
    ['applied', 'a lid', withoutTop],
    ['applied', 'a top that runs to the wall', () => {}],
    ['rabbet', 'a lid', withoutTop],
    ['rabbet', 'a top that runs to the wall', () => {}],
  ])('lies on a back fitted %s under %s, screwed through it', async (fitting, _, change) => {
    const of = built(
      equipped(
        hung((j) => {
          Object.assign(recordOf(j, 'back'), { fitting });
          longScrews(j);
          change(j);
        }),
      ),
    );
    expect(of.drawn.snags.filter((s) => s.level === 'stop')).toEqual([]);
    expect(mm(of, of.drawn.dimensions.get('overall.depth')!)).toBe(350);
    const part = (id: string) => of.drawn.parts.find((p) => p.id === id)!;
    const strip = part('hook/cleat');
    const through = of.drawn.joints.filter((j) => j.part === strip.id && j.over === 'back/back');
    if (fitting === 'applied' || change === withoutTop) expect(through.length).toBeGreaterThan(0);
    for (const id of through.flatMap((j) => j.fasteners))
      expect(of.drawn.fasteners.find((f) => f.id === id)!.through).toHaveLength(3);
    expect(of.drawn.parts.some((p) => p.id === 'hook/spacer')).toBe(fitting === 'applied');
    expect(await dryFaults(of)).toEqual([]);
    // Its screws would find no hole in the back that wasn't bored.
    if (through.length > 0) {
      const back = part('back/back').mark;
      const faults = await dryFaults(of, (o) =>
        o.id === `${back}/drill-under-clearance` ? { ...o, does: { act: 'other', on: [] } } : o,
      );
      expect(faults.length).toBeGreaterThan(0);
    }
  });

  test('says so where no screw is long enough to pass the back, or nothing takes one', () => {
    const codes = (change: (j: PlainJob) => void) =>
      built(equipped(hung(change))).drawn.snags.flatMap((s) => (s.level === 'stop' ? [s.code] : []));
    expect(
      codes((j) => {
        Object.assign(recordOf(j, 'back'), { fitting: 'applied' });
        withoutTop(j);
      }),
    ).toContain('screws.none-for-face');
    expect(
      codes((j) => {
        Object.assign(recordOf(j, 'back'), { fitting: 'rabbet' });
        Object.assign(recordOf(j, 'case'), { joints: 'rabbet', lid: 'over' });
        Object.assign(recordOf(j, 'hook'), { height: '38 mm' });
        withoutTop(j);
      }),
    ).toEqual(['hanging.no-hold']);
  });

  test('asks for a recess, and one deep enough', () => {
    const codes = (change: (j: PlainJob) => void) => {
      const read = checkJob(hung(change));
      return read.ok ? [] : read.snags.map((s) => s.code);
    };
    expect(codes((j) => (j.design.records = j.design.records.filter((r) => r.id !== 'back')))).toEqual([
      'design.cleat-place',
    ]);
    const shallow = built(equipped(hung((j) => Object.assign(recordOf(j, 'back'), { setIn: '12 mm' }))));
    const recess = shallow.drawn.snags.find((s) => s.code === 'hanging.recess-shallow')!;
    expect(recess.cures[0]!.says).toContain(
      `Set the back in by ${String(recess.cures[0]!.edits![0]!.value)},`,
    );
    const high = built(equipped(hung((j) => Object.assign(recordOf(j, 'hook'), { height: '450 mm' }))));
    expect(high.drawn.snags.map((s) => s.code)).toContain('hanging.no-room');
  });

  test('of two cases in a row: both strips are on the wall before anything is hooked on; in a stack the upper case may have one as well', async () => {
    const two = (lay: string) =>
      hung((j) => {
        j.design.records = j.design.records.filter((r) => r.id !== 'top');
        j.design.records.push(
          { id: 'row', kind: 'group', parent: 'cupboard', lay },
          { id: 'other', kind: 'case', parent: 'row', board: 'birch18' },
          { id: 'back2', kind: 'back', parent: 'other', board: 'birch6', fitting: 'groove' },
          { id: 'hook2', kind: 'hanging', parent: 'other', board: 'birch18', by: 'cleat' },
        );
        Object.assign(recordOf(j, 'case'), { parent: 'row' });
        for (const long of [25, 30, 35])
          j.shop.rack.screws.push({
            id: `connect-${long}`,
            kind: 'countersunk',
            length: `${long} mm`,
            diameter: '4 mm',
            head: '8 mm',
          });
      });
    const row = built(equipped(two('across')));
    expect(row.drawn.snags.filter((s) => s.level === 'stop')).toEqual([]);
    const home = row.build.operations.filter((o) => /X\d|set-up/.test(o.id) && o.stage === 'home');
    expect(home.map((o) => o.kind)).toEqual(['anchor', 'anchor', 'assemble', 'assemble']);
    expect(await dryFaults(row)).toEqual([]);
    // Strips alike, each parted from its own blank.
    const rows = cuttingList(row.drawn, row.breakdown, row.build).filter((r) => r.marks.includes('X'));
    expect(
      rows.map((r) =>
        r.notes
          .split('; ')
          .filter((n) => n.includes('parted'))
          .join('; '),
      ),
    ).toEqual(['X1 parted from Z1; X2 parted from Z2']);
    expect(partsReport(row.drawn)).toMatchObject({
      parts: expect.arrayContaining([expect.objectContaining({ mark: 'X1, X2', parted_from: 'Z1, Z2' })]),
    });
    // One hung by its cleat, the other by rails.
    const mixed = two('across');
    delete recordOf(mixed, 'hook2').by;
    const of = built(equipped(mixed));
    const [load] = hanging({ job: of.job, setOut: of.drawn, weigh: () => ({ kg: 1 }) as never });
    expect(load!.sentence).toContain('in its rails and wall strip each holds');
    const stack = built(equipped(two('up')));
    expect(stack.drawn.snags.filter((s) => s.level === 'stop')).toEqual([]);
    expect(stack.drawn.cleats).toHaveLength(2);
    expect(await dryFaults(stack)).toEqual([]);
  });

  test('the wall strip alone is what its anchors hold', () => {
    const of = built(equipped(hung()));
    const [cleat] = of.drawn.cleats;
    const cards = of.build.operations.filter((o) => o.stage === 'home').map((o) => o.id);
    expect(cards).toEqual(expect.arrayContaining(['home/set-up', 'X1/hook']));
    expect(mm(of, cleat!.lift)).toBe(28);
  });

  const anchor = (of: ReturnType<typeof built>) => of.build.operations.find((o) => o.kind === 'anchor')!;

  test('the card of the wall strip says where it goes from what will be seen', () => {
    const of = built(equipped(hung()));
    const card = anchor(of);
    // The strips of 80 and 80.4 mm share 18 mm of slope; the top is 18 mm thick; a side of 18 mm and 8 mm free.
    const [below, aside, under] = card.lengths!.map((t) => mm(of, t));
    expect(below).toBeCloseTo(80.4 - 18, 0);
    expect(under! - below!).toBe(18);
    expect(aside).toBe(26);
    expect(card.lines[0]).toMatch(
      /\{0\} below where the upper ends of A1 and A2 .* \{2\} below the upper face of C1:/,
    );
    expect(card.lines[1]).toMatch(/\{1\} to the right of where the left face of A1/);
    const hook = of.build.operations.find((o) => o.id === 'X1/hook')!;
    expect(mm(of, hook.lengths![2]!)).toBe(8);
    // Where nothing lies over the sides, there is nothing else to measure from.
    const bare = anchor(
      built(equipped(hung((j) => (j.design.records = j.design.records.filter((r) => r.id !== 'top'))))),
    );
    expect(bare.lines[0]).not.toContain('upper face');
  });

  test('below a lid that lies over the sides, it is measured from their ends and from the lid', () => {
    const of = built(
      equipped(
        hung((j) => {
          j.design.records = j.design.records.filter((r) => r.id !== 'top');
          Object.assign(recordOf(j, 'case'), { joints: 'rabbet', lid: 'over' });
        }),
      ),
    );
    const [cleat] = of.drawn.cleats;
    const wall = of.drawn.parts.find((p) => p.id === cleat!.onWall)!;
    const side = of.drawn.parts.find((p) => p.id === 'case/left-side')!;
    const foot = mm(of, wall.place.origin[2]) + 80;
    const high = mm(of, side.place.origin[2]) + mm(of, side.length);
    expect(Math.abs(mm(of, anchor(of).lengths![0]!) - (high - foot))).toBeLessThanOrEqual(0.5);
  });

  test('anchors go into every stud only where there are studs', () => {
    const onWall = (wall: string) =>
      anchor(built(equipped(hung((j) => Object.assign(recordOf(j, 'place'), { wall }))))).lines.join(' ');
    expect(onWall('studs')).toContain('at every stud');
    // 948 mm between the ends of the strip: one for every 400 mm.
    expect(onWall('masonry')).toContain('near both ends and evenly between, 3 anchors in all');
    expect(onWall('masonry')).not.toContain('stud');
  });

  test('is no cleat where its strips are hardly higher than thick', () => {
    const codes = (height: string) =>
      built(equipped(hung((j) => Object.assign(recordOf(j, 'hook'), { height })))).drawn.snags.map(
        (s) => s.code,
      );
    for (const height of ['10 mm', '20 mm', '37 mm'])
      expect(codes(height), height).toEqual(['hanging.strips-low']);
    for (const height of ['38 mm', '54 mm']) expect(codes(height), height).toEqual([]);
  });

  test('a strip too low for pockets up its face is held at its ends', async () => {
    const of = built(equipped(hung((j) => Object.assign(recordOf(j, 'hook'), { height: '44 mm' }))));
    expect(of.drawn.snags.filter((s) => s.level === 'stop')).toEqual([]);
    const strip = of.drawn.cleats[0]!.onCase;
    expect(of.drawn.joints.filter((j) => j.part === strip).map((j) => j.mate)).toEqual([
      'case/left-side',
      'case/right-side',
    ]);
    expect(await dryFaults(of)).toEqual([]);
  });

  test('the dry fit finds a blank that is too small to be parted with a saw', async () => {
    const of = built(equipped(hung()));
    const short = of.drawn.cleats[0]!.blank.width;
    const faults = await dryFaults(of, (o) =>
      o.does.act === 'saw' && o.does.across === 'length' && o.does.yields[0]?.name === 'Z1'
        ? { ...o, does: { ...o.does, at: short } }
        : o,
    );
    expect(faults.filter((f) => f.code === 'too-small').map((f) => f.operation)).toContain('Z1/part');
  });

  test('one strip that is there already: the other is parted off a blank alone', async () => {
    const made = (...parts: string[]) => {
      const job = hung();
      job.work = { made: parts.map((part) => ({ part, length: '900 mm', width: '80 mm' })) };
      return built(equipped(job));
    };
    const ids = ['hook/cleat', 'hook/wall-strip'];
    const sawn = (of: ReturnType<typeof built>) =>
      of.build.operations.flatMap(({ does }) => (does.act === 'part' ? [does.yields] : []));
    const cutFrom = (of: ReturnType<typeof built>) =>
      of.breakdown.lots.some((lot) =>
        [...lot.problem.pieces.keys()].some((id) => id.includes('cleat-blank')),
      );
    expect(sawn(made(ids[0]!))).toEqual([['X1', undefined]]);
    expect(cutFrom(made(ids[0]!))).toBe(true);
    expect(sawn(made(ids[1]!))).toEqual([[undefined, 'T1']]);
    expect(made(ids[1]!).build.operations.some((o) => o.id === 'X1/crosscut')).toBe(false);
    expect(sawn(made(...ids))).toEqual([]);
    expect(cutFrom(made(...ids))).toBe(false);
    // What is there has its slope, and the width that the blade left it.
    const fresh = built(equipped(hung()));
    for (const some of [[ids[0]!], [ids[1]!], ids]) {
      const job = hung();
      job.work = {
        made: some.map((part) => {
          const { cut, width } = fresh.drawn.parts.find((p) => p.id === part)!;
          return { part, length: `${mm(fresh, cut.length)} mm`, width: `${mm(fresh, width)} mm` };
        }),
      };
      expect(await dryFaults(built(equipped(job))), some.join()).toEqual([]);
    }
  });

  test('a ticked cut freezes only the size that it makes', () => {
    const of = built(equipped(hung()));
    const made = (id: string) =>
      sizesMade(of.drawn, of.build.operations.find((o) => o.id === id)!).map(([name]) => name);
    expect(made('Z1/part')).toEqual(['X1.width']);
    expect(made('X1/crosscut')).toEqual(['X1.length']);
  });
});
