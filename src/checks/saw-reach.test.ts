import { describe, expect, test } from 'vitest';
import { checkInput, codes, glazeCabinet, withPlaces } from '../../test/checks/checked-job.ts';
import { sawReach } from './saw-reach.ts';

const cabinet = checkInput(glazeCabinet());
const shopWith = (places: Readonly<Record<string, unknown>>) =>
  sawReach({ ...cabinet, job: withPlaces(cabinet.job, places) });
const RAIL = 'shop/tools/rail/length';

test('the shop of the glaze cabinet can make every cut', () => {
  expect(sawReach(cabinet)).toEqual([]);
});

describe('the guide rail', () => {
  test('trues a sheet of 2500 mm and should stand out 100 mm in all', () => {
    expect(shopWith({ [RAIL]: '2600 mm' })).toEqual([]);
    const [snag] = shopWith({ [RAIL]: '2599 mm' });
    expect(snag).toMatchObject({ code: 'tools.rail-short', level: 'mind' });
    expect(snag!.figures).toEqual({ value: 2599, limit: 2600, margin: -1, unit: 'mm' });
    expect(snag!.where.operation).toBeDefined();
  });

  test('that is shorter than the cut itself stops the work', () => {
    expect(shopWith({ [RAIL]: '1400 mm' })[0]).toMatchObject({ code: 'tools.rail-short', level: 'stop' });
  });

  test('that is not there is to be replaced by a straight board', () => {
    const tools = cabinet.job.shop.tools.filter((t) => t.id !== 'rail');
    const snags = shopWith({ 'shop/tools': tools });
    expect(snags.map((s) => [s.code, s.level])).toEqual([['tools.no-rail', 'mind']]);
    expect(snags[0]!.sentence).toContain('2500 mm');
  });
});

describe('the saw', () => {
  test('must reach through the thickest stock, strips of 20 mm here', () => {
    expect(shopWith({ 'shop/tools/saw/reach': '20 mm' })).toEqual([]);
    const [snag] = shopWith({ 'shop/tools/saw/reach': '19 mm' });
    expect(snag).toMatchObject({ code: 'tools.saw-shallow', level: 'stop' });
    // The strips of the top's edging are 20 mm thick.
    expect(snag!.figures).toEqual({ value: 19, limit: 20, margin: -1, unit: 'mm' });
  });

  test('and again with its blade tilted, for the mitres', () => {
    const [snag] = shopWith({ 'shop/tools/saw/reach45': '15 mm' });
    expect(snag).toMatchObject({ code: 'tools.saw-shallow-tilted', level: 'stop' });
    expect(snag!.sentence).toContain('45 degrees');
  });

  test('whose tilted reach is not stated is to be measured', () => {
    expect(codes(shopWith({ 'shop/tools/saw/reach45': undefined }))).toEqual(['tools.saw-reach-unknown']);
  });
});

test('a mitre saw must take the width of what it cuts', () => {
  const mitre = (width: string) => {
    const tools = [
      ...cabinet.job.shop.tools.filter((t) => t.id !== 'saw'),
      {
        id: 'mitre',
        kind: 'mitre-saw',
        accuracy: '0.5 mm',
        kerf: '2.2 mm',
        step: '0.5 mm',
        width,
        height: '60 mm',
      },
    ];
    return codes(sawReach(checkInput(withPlaces(cabinet.job, { 'shop/tools': tools }))));
  };
  expect(mitre('120 mm')).toContain('tools.mitre-saw-small');
  expect(mitre('1600 mm')).not.toContain('tools.mitre-saw-small');
});
