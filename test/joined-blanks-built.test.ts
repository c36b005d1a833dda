import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { openSolids } from '../src/adaptors/solids-manifold.ts';
import { cuttingList } from '../src/book/cutting-list.ts';
import type { Operation } from '../src/build/index.ts';
import { partsReport, partsToCut } from '../src/setting-out/index.ts';
import type { Solids } from '../src/solid/index.ts';
import { type Built, built, mm } from './build/built.ts';
import { dryFaults } from './build/dry-faults.ts';
import { equipped } from './generate/equipped.ts';
import { type PlainJob, recordOf, smallJob } from './generate/small-job.ts';
import { judgeMutants } from './mutants/judge-mutants.ts';

let solids: Solids;
beforeAll(async () => {
  solids = await openSolids();
});

function example(name: string, change: (job: PlainJob) => void = () => {}): PlainJob {
  const job = JSON.parse(readFileSync(new URL(`../examples/${name}.json`, import.meta.url), 'utf8'));
  change(job);
  return job;
}

/** The small cupboard without what its top and its lipping add, in four bays with a shelf in each, its dividers joined. */
function bays(change: (job: PlainJob) => void = () => {}): PlainJob {
  const job = smallJob();
  const gone = ['upright', 'shelves', 'shelf', 'lipping', 'left', 'right'];
  job.design.records = job.design.records.filter((r) => !gone.includes(String(r.id)));
  Object.assign(recordOf(job, 'case'), { joints: 'dado', oneBlank: 'dividers' });
  for (const bay of ['a', 'b', 'c'])
    job.design.records.push(
      { id: bay, kind: 'opening', parent: 'inside', size: 'equal' },
      { id: `shelf-${bay}`, kind: 'shelf', parent: bay, at: '300 mm' },
    );
  change(job);
  return job;
}

const cutApart = ({ drawn }: Built) =>
  drawn.snags.filter((s) => s.code === 'blanks.cut-apart').map((s) => s.sentence);
const actsOn = ({ build }: Built, mark: string) =>
  build.operations.flatMap(({ does }) =>
    ('workpieces' in does && does.workpieces.includes(mark)) ||
    ('workpiece' in does && does.workpiece === mark)
      ? [does.act]
      : [],
  );

describe('two sides of one blank', () => {
  test('are cut as one, worked at one setting and parted, each measured from its own front', async () => {
    const of = built(example('writing-cabinet'));
    expect(cutApart(of)).toEqual([]);
    const [joined] = of.drawn.joinedBlanks;
    const [left, right] = joined!.parts.map((id) => of.drawn.parts.find((p) => p.id === id)!);
    // A blade of 2.2 mm goes through twice, on a saw that is set to half a millimetre.
    expect(mm(of, joined!.blank.cut.width)).toBe(mm(of, left!.cut.width) + 4.5 + mm(of, right!.cut.width));
    expect(joined!.blank.cut.length).toBeDefined();
    const cut = partsToCut(of.drawn).map((p) => p.mark);
    expect(cut).toContain('Z1');
    expect(cut).not.toContain('A1');
    expect(actsOn(of, 'Z1')).toEqual(['rabbet', 'rabbet', 'groove', 'pin-holes', 'rip-apart']);
    // The shelf for letters is let into the right side alone.
    expect(actsOn(of, 'A1')).not.toContain('groove');
    expect(actsOn(of, 'A2').filter((a) => a === 'groove')).toHaveLength(1);
    const apart = of.build.operations.find((o) => o.does.act === 'rip-apart')!;
    expect(apart.reference).toBe('the front edge of A1, then the front edge of A2');
    expect(await dryFaults(of)).toEqual([]);
  });

  test('are in the lists as what they are: the blank to be cut, both parted from it, and what each would be cut from again', () => {
    const of = built(example('writing-cabinet'));
    const rows = cuttingList(of.drawn, of.breakdown, of.build);
    const row = (marks: string) => rows.find((r) => r.marks === marks)!;
    expect(row('Z1').notes).toContain('parted into A1 and A2 after its work');
    for (const mark of ['A1', 'A2']) expect(row(mark).notes).toContain('parted from Z1');
    expect(partsReport(of.drawn)).toMatchObject({
      parts: expect.arrayContaining([expect.objectContaining({ mark: 'A1', parted_from: 'Z1' })]),
    });
    const spares = of.breakdown.spares.map((s) => s.part.mark);
    expect(spares).toEqual(expect.arrayContaining(['A1', 'A2']));
    expect(spares).not.toContain('Z1');
    const lay = of.build.operations.find((o) => o.id === 'parts/lay-out')!;
    expect(lay.lines.join(' ')).toContain('A1 and A2 are one board still');
  });

  test('have dados stopped behind both fronts, which are the long edges of the blank', async () => {
    const of = built(
      example('writing-cabinet', (j) => Object.assign(recordOf(j, 'case'), { joints: 'stopped-dado' })),
    );
    expect(cutApart(of)).toEqual([]);
    const groove = of.build.operations.find((o) => o.does.act === 'groove' && o.does.workpieces[0] === 'Z1')!;
    expect(groove.does).toMatchObject({ stop: { from: 'near' }, otherStop: { from: 'far' } });
    expect(groove.title).toContain('dados in Z1');
    expect(groove.lines.join(' ')).toContain('from the front edge of A1 and');
    expect(await dryFaults(of)).toEqual([]);
  });

  test('hold rows of holes at the same heights, each on lines of its own', async () => {
    const of = built(
      example('pantry-shelf', (j) => Object.assign(recordOf(j, 'case'), { oneBlank: 'sides' })),
    );
    const pins = of.build.operations.find(
      (o) => o.does.act === 'pin-holes' && o.does.workpieces[0] === 'Z1',
    )!;
    expect(pins.lines.join(' ')).toMatch(/from the front edge of A1: .* from the front edge of A2: /);
    expect(await dryFaults(of)).toEqual([]);
  });

  test('keep every mistake of theirs in sight: what is worked or parted wrongly on the blank is noticed', () => {
    const of = judgeMutants(built(example('writing-cabinet')), solids, (all) =>
      all.filter((m) => /\bZ1\b/.test(m.name) && !m.name.startsWith('swap')),
    )!;
    expect([...of.slipped, ...of.near, ...of.unchanged]).toEqual([]);
    expect(of.caught.length).toBeGreaterThan(25);
  });

  test('once they are cut, the blank lies ready, and is worked and parted; once parted, nothing of it is left to do', async () => {
    const sized = built(example('writing-cabinet'));
    const part = (id: string) => {
      const { drawn } = sized;
      const { cut } = [...drawn.parts, ...drawn.joinedBlanks.map((b) => b.blank)].find((p) => p.id === id)!;
      return {
        part: id,
        length: `${mm(sized, cut.length)} mm`,
        width: `${mm(sized, cut.width)} mm`,
        from: 'S9',
      };
    };
    const blank = built(
      example('writing-cabinet', (j) => {
        Object.assign(j, { work: { made: [part('case/sides-blank')] } });
      }),
    );
    expect(blank.build.stock.map((w) => w.name)).toContain('Z1');
    expect(await dryFaults(blank)).toEqual([]);
    const parted = built(
      example('writing-cabinet', (j) => {
        Object.assign(j, {
          work: { made: ['case/sides-blank', 'case/left-side', 'case/right-side'].map(part) },
        });
      }),
    );
    expect(parted.build.stock.map((w) => w.name)).not.toContain('Z1');
    expect(actsOn(parted, 'Z1')).toEqual([]);
    expect(await dryFaults(parted)).toEqual([]);
  });
});

describe('dividers of one blank', () => {
  test('share the dados on both faces, and are parted', async () => {
    const of = built(equipped(bays()));
    expect(cutApart(of)).toEqual([]);
    expect(of.drawn.joinedBlanks.map((b) => b.parts.length)).toEqual([2]);
    expect(actsOn(of, 'Z1').filter((a) => a === 'groove')).toHaveLength(2);
    expect(of.build.operations.find((o) => o.does.act === 'rip-apart')!.reference).toBe(
      'the front edge of D1, then the back edge of D2',
    );
    expect(await dryFaults(of)).toEqual([]);
  });

  test('with dados that stop share none: they would stop where the next one begins', () => {
    const of = built(equipped(bays((j) => Object.assign(recordOf(j, 'case'), { joints: 'stopped-dado' }))));
    expect(of.drawn.joinedBlanks).toEqual([]);
    expect(cutApart(of).join()).toContain('that run on from one to the other');
  });
});

test.each([
  ['a single divider', { oneBlank: 'dividers' }, {}, 'no two dividers'],
  [
    'pocket screws, which leave the sides plain',
    { oneBlank: 'sides' },
    { joints: 'pocket-screws' },
    'nothing is gained',
  ],
  ['mitred ends', { oneBlank: 'sides' }, { joints: 'mitre' }, 'mitred ends'],
])('%s: they are cut one by one, and it is told why', async (_, asked, how, why) => {
  const job = smallJob();
  if ('joints' in how && how.joints === 'mitre')
    job.design.records = job.design.records.filter((r) => r.id !== 'lipping');
  Object.assign(recordOf(job, 'case'), { joints: 'dado', ...how, ...asked });
  const of = built(equipped(job));
  expect(of.drawn.joinedBlanks).toEqual([]);
  expect(cutApart(of)).toEqual([expect.stringContaining(why)]);
  const [snag] = of.drawn.snags.filter((s) => s.code === 'blanks.cut-apart');
  expect(snag).toMatchObject({ level: 'mind', cures: [{ edits: [{ record: 'case', field: 'oneBlank' }] }] });
  expect(await dryFaults(of)).toEqual([]);
});

test('where no sheet is wide enough for both, its size is told and they are cut one by one', () => {
  const of = built(
    example('writing-cabinet', (j) => {
      const [lot] = j.shop.rack.lots;
      Object.assign(lot!.stock[0]!, { width: '700 mm' });
    }),
  );
  expect(of.drawn.joinedBlanks).toEqual([]);
  expect(cutApart(of).join()).toMatch(
    /as one blank would be [\d.]+ mm long and [\d.]+ mm wide, and no sheet/,
  );
});

test('a blank parted before it is worked leaves nothing to work', async () => {
  const of = built(example('writing-cabinet'));
  const faults = await dryFaults(of, (o: Operation) =>
    o.does.act === 'rip-apart' ? { ...o, does: { act: 'other', on: [] } } : o,
  );
  expect(faults.map((f) => f.sentence).join()).toContain('A1 is not there');
});

test('halves that are alike are the same wood, whichever mark they bear: what is cut across both ends with either', () => {
  const of = built(
    example('writing-cabinet', (j) => {
      // Left alone are the rabbets at the ends, the same on both sides.
      const plain = ['cabinet', 'case', 'inside', 'back', 'study'];
      j.design.records = j.design.records.filter((r) => plain.includes(String(r.id)));
      const { split: _, ...inside } = recordOf(j, 'inside');
      j.design.records = [...j.design.records.filter((r) => r.id !== 'inside'), inside];
    }),
  );
  expect(actsOn(of, 'Z1')).toEqual(['rabbet', 'rabbet', 'rip-apart']);
  const swapped = judgeMutants(of, solids, (all) =>
    all.filter((m) => m.operator === 'write the wrong half'),
  )!;
  expect(swapped.unchanged).toHaveLength(1);
});
