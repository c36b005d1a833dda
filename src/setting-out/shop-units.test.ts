import { expect, test } from 'vitest';
import type { Snag } from '../snag/index.ts';
import { inShopUnits } from './shop-units.ts';

const inches = { units: 'in', precision: '1/32' } as const;

function snag(sentence: string, cures: Snag['cures'] = [], says?: string): Snag {
  const rule = says === undefined ? {} : { rule: { says, source: 'common practice', confirmed: false } };
  return { code: 'a.b', level: 'stop', where: {}, sentence, cures, ...rule };
}

const told = (sentence: string) => inShopUnits(snag(sentence), inches).sentence;

test('in a shop that works in millimetres a snag is told as it was written', () => {
  const written = snag('Box 1 would be 25.4 mm high.');
  expect(inShopUnits(written, { units: 'mm', precision: '0.5' })).toBe(written);
});

test('in a shop that works in inches every amount is told in them: sentence, rule and cures', () => {
  const turned = inShopUnits(
    snag(
      'Box 1 would be 25.4 mm high.',
      [{ says: 'Leave 177.8 mm clear.' }],
      'a bit of 100 mm needs about 180 mm',
    ),
    inches,
  );
  expect(turned.sentence).toBe('Box 1 would be 1" high.');
  expect(turned.cures[0]!.says).toBe('Leave 7" clear.');
  expect(turned.rule!.says).toBe('a bit of 3 15/16" needs about 7 3/32"');
});

test('limits go to the safe side: 10 mm lies between 25/64 and 26/64 inch', () => {
  expect(told('strips of at most 10 mm')).toBe('strips of at most 25/64"');
  expect(told('Make it at least 10 mm high.')).toBe('Make it at least 13/32" high.');
  expect(told('with screws no longer than 10 mm')).toBe('with screws no longer than 25/64"');
  expect(told('room for one from 10 to 12 mm thick')).toBe('room for one from 13/32" to 15/32" thick');
  expect(told('a screw of about 3 x 20 mm')).toBe('a screw of about 1/8" x 25/32"');
});

test('what a cure types into the document is typed in inches, and said as it is typed', () => {
  const typing = (says: string, ...values: readonly (string | number)[]) => {
    const edits = values.map((value) => ({ record: 'b', field: 'f', value }));
    const { cures } = inShopUnits(snag('x', [{ says, edits }]), inches);
    return [cures[0]!.says, ...cures[0]!.edits!.map((e) => e.value)];
  };
  expect(typing('Set the back in by 10 mm.', '10 mm')).toEqual(['Set the back in by 13/32".', '13/32"']);
  expect(typing('Make it at most 610 mm wide.', '610 mm')).toEqual(['Make it at most 24" wide.', '24"']);
  expect(typing('Set the base further back.', '40 mm')).toEqual(['Set the base further back.', '1 19/32"']);
  // What is no plain length stays as it is.
  expect(typing('Have one.', 1, 'equal', '12 mm + 3 mm')).toEqual(['Have one.', 1, 'equal', '12 mm + 3 mm']);
});
