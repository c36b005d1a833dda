import { readFileSync } from 'node:fs';
import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { called, DEMO, ROOT } from './called.ts';

const before = readFileSync(DEMO);
const demo = () => JSON.parse(before.toString());
let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'casewright-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

describe('parts', () => {
  test('lists every part, and as JSON with overall sizes that are those asked for', async () => {
    const told = await called('parts', DEMO);
    expect(told).toMatchObject({ code: 0, err: '' });
    expect(told.out).toMatch(
      /^mark +part +count +length +width +thickness +from\nA1 +left side +1 +812\.4 mm/,
    );
    const { code, out } = await called('parts', DEMO, '--json');
    const report = JSON.parse(out);
    expect(code).toBe(0);
    expect(report.overall_mm).toEqual({ width: 1580, height: 900, depth: 400 });
    const fields = 'ids mark name material length_mm width_mm thickness_mm count grain features'.split(' ');
    for (const part of report.parts) {
      for (const field of fields) expect(part).toHaveProperty(field);
      expect(part.ids).toHaveLength(part.count);
    }
  });

  test('--shop FILE builds it in another shop, whose thicker boards every part follows', async () => {
    const job = demo();
    job.shop.rack.lots.find((l: { id: string }) => l.id === 'birch18').thickness = '18.2 mm';
    await writeFile(join(folder, 'shop.json'), JSON.stringify(job.shop));
    await writeFile(join(folder, 'job.json'), JSON.stringify(job));
    const bare = await called('parts', DEMO, '--shop', join(folder, 'shop.json'));
    // The case is 900 - 70 - 18.2 high between base and top.
    expect(bare.out).toMatch(/A1 +left side +1 +811\.8 mm/);
    expect((await called('parts', DEMO, '--shop', join(folder, 'job.json'))).out).toBe(bare.out);
  });
});

describe('why', () => {
  test('tells what a number is made of, down to what was typed; capitals don’t matter', async () => {
    const { code, out } = await called('why', DEMO, 'Left SIDE.length');
    expect(code).toBe(0);
    expect(out.split('\n')).toEqual([
      'left side.length',
      '812.4 mm  height of the sides, between base and top',
      '  = 900 mm  typed as 900 mm at design/records/cabinet/height',
      '  - 70 mm  typed as 70 mm at design/records/base/height',
      '  - 17.6 mm  typed as 17.6 mm at shop/rack/lots/birch18/thickness',
      '',
    ]);
  });

  test('knows every length of plan --json by its place', async () => {
    const { operations } = JSON.parse((await called('steps', DEMO, '--json')).out);
    const at = operations.findIndex((o: { id: string }) => o.id === 'S1/true-edge');
    const { code, out } = await called('why', DEMO, `steps/operations/${at}/does/at_mm`);
    expect(code).toBe(0);
    expect(out).toMatch(/\n10 mm {2}as fine as the circular saw is set\n/);
    expect(out).toContain('typed as 10 mm at shop/rack/lots/birch18/trim');
  });

  test('a near miss suggests names, or places', async () => {
    const { code, out, err } = await called('why', DEMO, 'left side.lenght');
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(/^There is no “left side\.lenght” here\. Nearest: “left side\.length”, /);
    const place = await called('why', DEMO, 'overal_mm/width');
    expect(place.code).toBe(2);
    expect(place.err).toContain('“overall_mm/width”');
  });
});

describe('steps, check, dry-fit and cut', () => {
  test('steps prints every card in order, without a placeholder left in it', async () => {
    const told = await called('steps', DEMO);
    expect(told).toMatchObject({ code: 0, err: '' });
    expect(told.out).not.toMatch(/\{\d+\}|undefined|NaN/);
    const titles = [...told.out.matchAll(/^(\d+)\. (.*?)(?: {2}\[.*\])?$/gm)];
    const { operations } = JSON.parse((await called('steps', DEMO, '--json')).out);
    expect(titles.map((m) => [Number(m[1]), m[2]])).toEqual(
      operations.map((o: { title: string }, i: number) => [i + 1, o.title]),
    );
  });

  test('steps go on from a card by its number, its title or its id, and keep their numbers', async () => {
    const { operations } = JSON.parse((await called('steps', DEMO, '--json')).out);
    const { id, title } = operations[170];
    for (const card of ['171', title, id])
      expect((await called('steps', DEMO, '--from', card)).out).toMatch(/^\n.+\n-+\n\n171\. /);
    const { code, err } = await called('steps', DEMO, '--from', '9999');
    expect(code).toBe(2);
    expect(err).toBe(`There is no card “9999” here; they go from 1 to ${operations.length}.\n`);
  });

  test('check lists snags worst first', async () => {
    const told = await called('check', DEMO);
    const { snags } = JSON.parse((await called('check', DEMO, '--json')).out);
    expect(told.code).toBe(0);
    for (const s of snags) expect(told.out).toContain(s.sentence);
    const levels = snags.map((s: { level: string }) => ['stop', 'mind', 'note'].indexOf(s.level));
    expect(levels).toEqual([...levels].sort());
  });

  test('dry-fit says that the piece is as drawn', async () => {
    const { code, out } = await called('dry-fit', DEMO);
    expect(code).toBe(0);
    expect(out).toMatch(/^(\d+) of \1 operations run\. The piece is as drawn\.\n/);
    expect(out).toMatch(/\nWhat mattered most: .+, then .+, then .+\.\n/);
    const ranked = (await called('dry-fit', `${ROOT}examples/tool-chest.json`)).out;
    // Three pairs of runners are as thick, and are named once.
    expect(
      ranked.match(/^What mattered most: .*$/m)![0].match(/thickness of Ball-bearing runners/g),
    ).toHaveLength(1);
    expect(out).toMatch(
      /\nfit +likely +at worst +what matters most +cut last, to what is measured\n.* {2}-?[\d.]+ mm to [\d.]+ mm +-?[\d.]+ mm to [\d.]+ mm {2}/,
    );
    const report = JSON.parse((await called('dry-fit', DEMO, '--json')).out);
    expect(report.tolerance.builds).toBe(10_000);
    for (const fit of report.tolerance.fits) {
      expect(fit.likely.least).toBeGreaterThanOrEqual(fit.worst.least);
      expect(fit.likely.greatest).toBeLessThanOrEqual(fit.worst.greatest);
    }
  });

  test('cut JOB lists the sheets and what is left, and takes a little time when told to', async () => {
    const told = await called('cut', DEMO);
    expect(told.code).toBe(0);
    expect(told.out).toMatch(/^sheet +lot +stock +from +length +width\nS1 /);
    expect(told.out).toContain('\nLeft over\npiece ');
    const { lots } = JSON.parse((await called('cut', DEMO, '--json', '--seconds', '0.05')).out);
    expect(lots.map((l: { lot: string }) => l.lot)).toEqual([
      'birch18',
      'offcuts18',
      'birch15',
      'birch6',
      'ash20',
      'ash6',
    ]);
    expect(lots.flatMap((l: { plan: { unplaced: unknown[] } }) => l.plan.unplaced)).toEqual([]);
  });
});

describe('plan', () => {
  test('sums up on one screen, and writes three files: the same bytes each time', {
    timeout: 300_000,
  }, async () => {
    const [one, two] = [join(folder, 'deep', 'one'), join(folder, 'two')];
    const told = await called('plan', DEMO, '--out', one);
    expect(told).toMatchObject({ code: 0, err: '' });
    expect(told.out).toContain('Glaze cabinet  1580 mm wide, 900 mm high, 400 mm deep');
    expect(told.out.split('\n').length).toBeLessThanOrEqual(40);
    for (const line of told.out.split('\n')) expect(line.length).toBeLessThanOrEqual(120);
    for (const head of ['Parts', 'Buy', 'From the rack', 'Left over', 'Dry fit', 'Hours', 'Cost', 'Snags'])
      expect(told.out).toMatch(new RegExp(`^  ${head} `, 'm'));
    const json = await called('plan', DEMO, '--out', two, '--json');
    const names = ['book.pdf', 'cutting-list.csv', 'plan.json'];
    expect((await readdir(one)).sort()).toEqual(names);
    for (const name of names) {
      const [a, b] = await Promise.all([one, two].map((f) => readFile(join(f, name))));
      expect(a!.equals(b!), name).toBe(true);
      expect(a!.length, name).toBeGreaterThan(500);
    }
    // What it writes as JSON is what it prints as JSON.
    expect(json.out).toBe(await readFile(join(two, 'plan.json'), 'utf8'));
    expect((await readFile(join(one, 'book.pdf'))).subarray(0, 5).toString()).toBe('%PDF-');
    const plan = JSON.parse(json.out);
    expect(plan).toMatchObject(JSON.parse((await called('parts', DEMO, '--json')).out));
    expect(plan.steps).toEqual(JSON.parse((await called('steps', DEMO, '--json')).out));
    expect(plan.dry_fit).toMatchObject({ fits: true, faults: [], unused: [] });
  });

  test('a piece that can’t be made: exit code 1, what stops it is said, and the JSON is still whole', async () => {
    const job = demo();
    job.design.records[0].spaceWidth = '1500 mm';
    const file = join(folder, 'too-wide.json');
    await writeFile(file, JSON.stringify(job));
    const told = await called('plan', file);
    expect(told.code).toBe(1);
    expect(told.out).toMatch(/^STOP {2}.*1500 mm/m);
    for (const command of ['check', 'parts']) {
      const { code, out } = await called(command, file, '--json');
      expect(code, command).toBe(1);
      expect(() => JSON.parse(out), command).not.toThrow();
    }
  });
});

test('no command has changed the job file', () => {
  expect(readFileSync(DEMO).equals(before)).toBe(true);
});
