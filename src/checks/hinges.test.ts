import { expect, test } from 'vitest';
import { codes, setOutInput } from '../../test/checks/checked-job.ts';
import { cupboard } from '../../test/doors/door-job.ts';
import { hinges } from './hinges.ts';

const checked = (changes: Parameters<typeof cupboard>[0]) => setOutInput(cupboard(changes));

test('the hall cupboard’s doors hang well', () => {
  expect(hinges(checked({}))).toEqual([]);
});

test('a door that weighs more than it was reckoned at has too few hinges', () => {
  const input = checked({});
  const heavy = { ...input, weigh: (id: string) => ({ ...input.weigh(id), kg: 13 }) };
  const [snag] = hinges(heavy);
  // 13 kg asks for four (12 to 17 kg; common practice, from memory).
  expect(snag).toMatchObject({ code: 'hinges.too-few', level: 'mind', figures: { value: 2, limit: 4 } });
  const heavier = { ...input, weigh: (id: string) => ({ ...input.weigh(id), kg: 23 }) };
  expect(codes(hinges(heavier))).toEqual(['hinges.door-too-heavy']);
});

test('a door wider than high is to be minded, and a pair is the cure', () => {
  const wide = checked({ cupboard: { height: '560 mm' }, 'bag-doors': { count: 1 }, rows: { count: 1 } });
  const snag = hinges(wide).find((s) => s.code === 'hinges.door-wide')!;
  expect(snag.cures[0]!.edits).toEqual([{ record: 'bag-doors', field: 'count', value: 2 }]);
});
