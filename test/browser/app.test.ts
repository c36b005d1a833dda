import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import axe from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { type ServedApp, serveApp } from '../../src/cli/serve-app.ts';
import { launchBrowser } from './launch.ts';

const EXAMPLE = readFileSync(
  fileURLToPath(new URL('../../examples/glaze-cabinet.json', import.meta.url)),
  'utf8',
);
const PLACES = ['Draw', 'Rack', 'Saw', 'Bench', 'Book'] as const;
/** A plan takes about two seconds on a slow machine. */
const PLANNED = { timeout: 30_000 };

let app: ServedApp;
let browser: Browser;
let page: Page;
let errors: string[] = [];
let asked: string[] = [];

beforeAll(async () => {
  [app, browser] = await Promise.all([
    serveApp({ port: 0, jobText: EXAMPLE, jobName: 'glaze-cabinet' }),
    launchBrowser(),
  ]);
});
afterAll(async () => {
  await browser?.close();
  await app?.close();
});

/** Opens the app afresh: nothing is kept from the test before. */
async function open(size = { width: 1440, height: 900 }): Promise<void> {
  const context = await browser.newContext({ viewport: size });
  page = await context.newPage();
  errors = [];
  asked = [];
  page.on('console', (m) => m.type() === 'error' && errors.push(m.text()));
  page.on('pageerror', (e) => errors.push(e.message));
  page.on('request', (r) => asked.push(r.url()));
  await page.goto(app.url);
  await page.getByRole('heading', { level: 1 }).waitFor();
}

async function planned(): Promise<void> {
  await page.getByText('Dry fit: as drawn').first().waitFor(PLANNED);
}

function go(place: (typeof PLACES)[number]): Promise<void> {
  return page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name: place }).click();
}

const width = () => page.getByLabel('Width over all');
const front = () => page.getByRole('group', { name: 'Front, with sizes' });

describe('on a wide page', () => {
  beforeEach(async () => {
    await open();
    return () => page.context().close();
  });

  test('the example opens with its sizes, parts and views; nothing is asked of another host', async () => {
    await expect.poll(() => page.getByLabel('Name of the piece').inputValue()).toBe('Glaze cabinet');
    await expect.poll(() => width().inputValue()).toBe('1580 mm');
    await expect
      .poll(() => page.getByRole('row', { name: /^A1 left side/ }).textContent())
      .toContain('Birch plywood 18 mm');
    for (const name of ['Front', 'From the right', 'From above'])
      await expect
        .poll(() => page.getByRole('group', { name: `${name}, with sizes` }).count(), { message: name })
        .toBe(1);
    await planned();
    const foreign = asked.filter((url) => !/^(data|blob):/.test(url) && !url.startsWith(app.url));
    expect(foreign).toEqual([]);
    expect(errors).toEqual([]);
  });

  test('a size that is edited changes drawing, parts, stock and cards', async () => {
    await planned();
    await go('Saw');
    const before = await page.getByRole('group', { name: 'How S1 is cut up' }).textContent();
    await go('Draw');
    await width().fill('1500 mm');
    await width().press('Enter');
    await front().getByText('1500', { exact: true }).waitFor();
    // The top's board is the width less its ash on both sides: 1500 - 2 x 20.
    await expect.poll(() => page.getByRole('row', { name: /^C1/ }).textContent()).toContain('1460');
    await planned();
    await go('Saw');
    await expect
      .poll(() => page.getByRole('group', { name: 'How S1 is cut up' }).textContent())
      .not.toBe(before);
    expect(errors).toEqual([]);
  });

  test('what can’t be read is refused with a sentence at the field, and nothing changes', async () => {
    await width().fill('12 frogs');
    await width().press('Enter');
    await expect.poll(() => page.getByRole('alert').textContent()).toMatch(/frogs is not a unit of length/);
    await expect.poll(() => width().getAttribute('aria-invalid')).toBe('true');
    await front().getByText('1580', { exact: true }).waitFor();
    await expect.poll(() => page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
    await width().press('Escape');
    await expect.poll(() => width().inputValue()).toBe('1580 mm');
    await expect.poll(() => page.getByRole('alert').count()).toBe(0);
  });

  test('inches are read as they are typed', async () => {
    await width().fill('60 1/2"');
    await width().press('Enter');
    // 60.5 x 25.4 mm (international inch, 1959).
    await front().getByText('1536.7', { exact: true }).waitFor();
    await expect.poll(() => width().inputValue()).toBe('60 1/2"');
  });

  test('undo and redo lead back and forth, by button and by key', async () => {
    await width().fill('1500 mm');
    await width().press('Enter');
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => width().inputValue()).toBe('1580 mm');
    await page.getByRole('button', { name: 'Redo' }).click();
    await expect.poll(() => width().inputValue()).toBe('1500 mm');
    await page.locator('body').press('Control+z');
    await expect.poll(() => width().inputValue()).toBe('1580 mm');
    await page.locator('body').press('Control+Shift+z');
    await expect.poll(() => width().inputValue()).toBe('1500 mm');
  });

  test('the inside is divided anew, and one undo takes it back', async () => {
    const spaces = page.getByLabel('Number of spaces in inside');
    await spaces.fill('5');
    await spaces.press('Enter');
    await page.getByText('bay5', { exact: true }).waitFor();
    const dividers = page.getByRole('row', { name: /divider/ });
    expect((await dividers.allTextContents()).join()).toMatch(/D4/);
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText('bay5', { exact: true }).waitFor({ state: 'detached' });
  });

  test('sliding doors are put before the inside, changed, and taken away', async () => {
    const doors = page.getByRole('row', { name: /sliding door/ });
    await page.locator('section', { hasText: 'sliders' }).getByRole('button', { name: 'Take away' }).click();
    await doors.first().waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Close by sliding doors' }).first().click();
    await doors.first().waitFor();
    const count = page.getByLabel('How many sliding doors, doors1');
    await count.fill('3');
    await count.press('Enter');
    await expect.poll(() => doors.allTextContents().then((rows) => rows.join())).toMatch(/K1–K3/);
    const closed = page.getByLabel('Openings that doors1 closes');
    await closed.fill('bay1, bay3');
    await closed.press('Enter');
    await page.getByRole('alert').filter({ hasText: 'not neighbours of one split' }).first().waitFor();
    await page.locator('section', { hasText: 'doors1' }).getByRole('button', { name: 'Take away' }).click();
    await doors.first().waitFor({ state: 'detached' });
  });

  test('the job survives closing the page, its steps included', async () => {
    await width().fill('1500 mm');
    await width().press('Enter');
    await front().getByText('1500', { exact: true }).waitFor();
    await go('Book');
    await page.getByText('Every change is kept in this browser').waitFor();
    await page.reload();
    await page.getByRole('heading', { level: 1 }).waitFor();
    await expect.poll(() => width().inputValue()).toBe('1500 mm');
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => width().inputValue()).toBe('1580 mm');
  });

  test('a number tells where it comes from, and leads to the field', async () => {
    await page.getByRole('row', { name: /^C1/ }).getByRole('button', { name: '1540' }).click();
    const why = page.getByRole('complementary', { name: 'Where the number comes from' });
    await expect.poll(() => why.textContent()).toContain('typed as 1580 mm at');
    await why.getByRole('button', { name: 'Glaze cabinet, width' }).click();
    await expect.poll(() => width().evaluate((e) => e === document.activeElement)).toBe(true);
    // By keyboard, on a drawing.
    await front().getByRole('button', { name: '1580, where this comes from' }).press('Enter');
    await why.getByText('typed as 1580 mm at').waitFor();
    await page.keyboard.press('Escape');
    await why.waitFor({ state: 'detached' });
  });

  test('a thickness measured on the rack moves every part that rests on it', async () => {
    await go('Rack');
    const thickness = page.getByLabel('Measured thickness of Birch plywood 18 mm', { exact: true });
    await thickness.fill('18 mm');
    await thickness.press('Enter');
    await go('Draw');
    await expect.poll(() => page.getByRole('row', { name: /^C1/ }).textContent()).toContain('18');
    // Four clear widths: 1580 - 2 x 25 overhang - 5 uprights of 18 = 1440, a quarter each.
    await front().getByText('360', { exact: true }).first().waitFor();
  });

  test('the first day, the hours and one’s own minutes stand on the Rack, and the schedule follows', async () => {
    await planned();
    await go('Rack');
    const write = async (label: string, text: string) => {
      const field = page.getByLabel(label, { exact: true });
      await field.fill(text);
      await field.press('Enter');
    };
    await write('First day of work', '2026-13-40');
    await page.getByRole('alert').first().waitFor();
    await write('First day of work', '2026-03-02');
    await write('Days of working hours 1', 'Saturday, Sunday');
    await write('End of working hours 1', '11');
    await expect
      .poll(() => page.getByLabel('Days of working hours 1', { exact: true }).inputValue())
      .toBe('sat sun');
    await expect
      .poll(() => page.getByLabel('End of working hours 1', { exact: true }).inputValue())
      .toBe('11:00');
    await page.getByText('Minutes that work takes here').click();
    await write('Minutes to rip', '9');
    await page.getByRole('button', { name: 'Another person' }).click();
    await page.getByLabel('Name of person2', { exact: true }).waitFor();
    expect(errors).toEqual([]);
  });

  test('the piece stands on the canvas, and a part of it can be clicked', async () => {
    const canvas = page.locator('canvas[data-ready=true]');
    await canvas.waitFor(PLANNED);
    const inked = () =>
      canvas.evaluate((c: HTMLCanvasElement) => {
        const flat = document.createElement('canvas');
        [flat.width, flat.height] = [c.width, c.height];
        const pen = flat.getContext('2d')!;
        pen.drawImage(c, 0, 0);
        const { data } = pen.getImageData(0, 0, flat.width, flat.height);
        let count = 0;
        for (let i = 3; i < data.length; i += 4) if (data[i]! > 0) count++;
        return count / (data.length / 4);
      });
    await expect.poll(inked).toBeGreaterThan(0.1);
    const box = (await canvas.boundingBox())!;
    await canvas.click({ position: { x: box.width / 2, y: box.height / 2 } });
    await expect.poll(() => page.getByRole('region', { name: /^Part / }).textContent()).toContain('Length');
  });

  test('the plan book and the cutting list can be taken along', async () => {
    await planned();
    await go('Book');
    const take = async (name: string) => {
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('button', { name }).click(),
      ]);
      return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
    };
    const book = await take('Plan book (PDF)');
    expect(book.name).toBe('glaze-cabinet-book.pdf');
    expect(book.bytes.subarray(0, 5).toString()).toBe('%PDF-');
    expect(book.bytes.length).toBeGreaterThan(50_000);
    const list = await take('Cutting list (CSV)');
    expect(list.bytes.toString()).toMatch(/^\uFEFFMarks,Name,Count/);
    const job = await take('Save glaze-cabinet.json');
    expect(JSON.parse(job.bytes.toString())).toEqual(JSON.parse(EXAMPLE));
  });

  test('a broken file is refused with all its reasons, and a good one is opened', async () => {
    await go('Book');
    const file = page.getByLabel('Job file to open');
    const broken = JSON.parse(EXAMPLE);
    broken.design.records[0].width = 'wide';
    broken.shop.colour = 'red';
    const give = (name: string, value: unknown) =>
      file.setInputFiles({
        name,
        mimeType: 'application/json',
        buffer: Buffer.from(JSON.stringify(value)),
      });
    await give('broken.json', broken);
    await page.getByText('broken.json was not opened.').waitFor();
    const reasons = await page.getByRole('alert').textContent();
    expect(reasons).toMatch(/wide/);
    expect(reasons).toMatch(/colour/);
    const good = JSON.parse(EXAMPLE);
    good.design.records[0].name = 'Jar cabinet';
    await give('jars.json', good);
    await page.getByRole('button', { name: 'Save jars.json' }).waitFor();
    await go('Draw');
    await expect.poll(() => page.getByLabel('Name of the piece').inputValue()).toBe('Jar cabinet');
  });

  test('a snag is in sight at once, with its cure', async () => {
    await width().fill('1700 mm');
    await width().press('Enter');
    await page.getByRole('button', { name: /1 stop/ }).click();
    const snags = page.getByRole('complementary', { name: 'Snags' });
    await snags.getByRole('button', { name: 'Do that' }).first().click();
    await expect.poll(() => width().inputValue()).toBe('1640 mm');
  });

  test('a list pasted from a spreadsheet is cut from the rack; what can’t be read is told at once', async () => {
    await planned();
    await go('Saw');
    const list = page.getByLabel('Pieces, with a row of headings');
    const begin = page.getByRole('button', { name: 'Cut it from the rack' });
    await list.fill('what\tlong\twide\tlot\nkick board\ttall\t80\tbirch18\nshelf\t862.5\t300\toak');
    await begin.click();
    await page.getByText('can’t be read').first().waitFor();
    await expect.poll(() => page.getByText('the rack has no stock').count()).toBeGreaterThan(0);
    await list.fill('what\tlong\twide\tlot\tqty\nkick board\t862.5\t80\tbirch18\t3');
    await begin.click();
    await page.getByText('P3').first().waitFor();
    expect(errors).toEqual([]);
  });

  test('cards are turned one at a time, and listed', async () => {
    await planned();
    await go('Bench');
    await expect.poll(() => page.getByRole('article').getAttribute('aria-label')).toBe('Card 1');
    await page.keyboard.press('ArrowRight');
    await page.getByRole('article', { name: 'Card 2' }).waitFor();
    await page.getByRole('button', { name: 'All cards' }).click();
    await page.getByRole('button', { name: 'Card 12', exact: true }).click();
    await page.getByRole('article', { name: 'Card 12' }).waitFor();
  });
});

describe.each([
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
])('at $width wide', (size) => {
  test('no place scrolls sideways or has a barrier that axe finds serious', async () => {
    await open(size);
    await planned();
    await page.evaluate(axe.source);
    for (const place of PLACES) {
      await go(place);
      await page.getByRole('heading', { level: 1 }).waitFor();
      expect(await page.evaluate(() => document.documentElement.scrollWidth), place).toBeLessThanOrEqual(
        size.width,
      );
      const barriers = await page.evaluate(async () => {
        const { violations } = await (window as unknown as { axe: typeof axe }).axe.run();
        return violations
          .filter((v) => v.impact === 'serious' || v.impact === 'critical')
          .map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).slice(0, 4)}`);
      });
      expect(barriers, place).toEqual([]);
    }
    expect(errors).toEqual([]);
    await page.context().close();
  });
});
