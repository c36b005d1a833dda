import { expect, test } from 'vitest';
import { bookcase } from '../../test/checks/bookcase.ts';
import { checkInput, glazeCabinet, withPlaces } from '../../test/checks/checked-job.ts';
import { clampReach } from './clamp-reach.ts';

/** The cabinet in a shop without its long clamps. */
const whole = glazeCabinet();
const cabinet = checkInput(
  withPlaces(whole, { 'shop/tools': whole.shop.tools.filter((t) => t.id !== 'sash') }),
);
const reaching = (reach: string) =>
  clampReach({ ...cabinet, job: withPlaces(cabinet.job, { 'shop/tools/clamps/reach': reach }) });

test('the ends of a top of 1580 mm, one strip glued on and the other to come: 1560 mm to span', () => {
  expect(reaching('1560 mm')).toEqual([]);
  const [snag] = reaching('1200 mm');
  expect(snag).toMatchObject({ code: 'tools.clamps-short', level: 'mind' });
  expect(snag!.figures).toEqual({ value: 1200, limit: 1560, margin: -360, unit: 'mm' });
  expect(snag!.sentence).toContain('H2');
});

test('where nothing is glued, clamps need not be long', () => {
  const job = withPlaces(bookcase({ width: '2000 mm', load: '10 kg' }), {
    'shop/tools/clamps/reach': '150 mm',
  });
  expect(clampReach(checkInput(job))).toEqual([]);
});

test('a shop without clamps is told so by the build, not here', () => {
  const tools = cabinet.job.shop.tools.filter((t) => t.kind !== 'clamp');
  expect(clampReach({ ...cabinet, job: withPlaces(cabinet.job, { 'shop/tools': tools }) })).toEqual([]);
});
