import { afterAll, beforeAll, expect, test } from 'vitest';
import { type OpenPage, openPage } from './launch.ts';

const PAGE =
  '<!doctype html><title>Bench</title><body style="margin:0;background:#fff"><h1>A level bench</h1>';

let opened: OpenPage;
beforeAll(async () => {
  opened = await openPage(`data:text/html,${encodeURIComponent(PAGE)}`, { width: 640, height: 480 });
});
afterAll(() => opened?.close());

test('a page is shown and can be looked at as a picture', async () => {
  expect(await opened.page.title()).toBe('Bench');
  expect(await opened.page.locator('h1').textContent()).toBe('A level bench');
  const picture = await opened.page.screenshot();
  expect(picture.subarray(1, 4).toString()).toBe('PNG');
  // Width and height stand at bytes 16 and 20 of a PNG (W3C PNG specification, IHDR).
  expect([picture.readUInt32BE(16), picture.readUInt32BE(20)]).toEqual([640, 480]);
  expect(opened.errors).toEqual([]);
});

test('text has ink: fonts are found', async () => {
  const box = await opened.page.locator('h1').boundingBox();
  expect(box!.height).toBeGreaterThan(20);
  const width = await opened.page.evaluate(() => {
    const pen = document.createElement('canvas').getContext('2d')!;
    pen.font = '20px sans-serif';
    return pen.measureText('mmmmmmmmmm').width - pen.measureText('iiiiiiiiii').width;
  });
  expect(width).toBeGreaterThan(50);
});

test('WebGL 2 draws, in software', async () => {
  const pixel = await opened.page.evaluate(() => {
    const gl = document.createElement('canvas').getContext('webgl2');
    if (gl === null) return undefined;
    gl.clearColor(1, 0.5, 0, 1);
    gl.clear(gl.COLOR_BUFFER_BIT);
    const rgba = new Uint8Array(4);
    gl.readPixels(0, 0, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, rgba);
    return [...rgba];
  });
  expect(pixel).toEqual([255, 128, 0, 255]);
});

test('what goes wrong in the page is kept', async () => {
  await opened.page.evaluate(() => {
    console.error('told');
    setTimeout(() => {
      throw new Error('thrown');
    });
  });
  await expect.poll(() => opened.errors).toEqual(['told', 'thrown']);
});
