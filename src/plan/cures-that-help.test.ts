import { expect, test } from 'vitest';
import { recordOf, smallJob } from '../../test/generate/small-job.ts';
import { checkJob } from '../job/index.ts';
import { setOut } from '../setting-out/index.ts';
import type { Cure } from '../snag/index.ts';
import { curesThatHelp } from './cures-that-help.ts';

/** The one snag of a base that is set back so far that its strips meet, with these cures, after all were tried. */
function tried(...cures: readonly Cure[]): readonly Cure[] {
  const plain = smallJob();
  recordOf(plain, 'base').setback = '400 mm';
  const read = checkJob(plain);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  const drawn = setOut(read.job);
  const [snag] = drawn.snags;
  expect(drawn.snags.map((s) => s.code)).toEqual(['base.no-room']);
  const [after] = curesThatHelp(read.job, { ...drawn, snags: [{ ...snag!, cures }] });
  return after!.cures;
}

const setBack = (value: string): Cure => ({
  says: `Set it back by ${value}.`,
  edits: [{ record: 'base', field: 'setback', value }],
});

test('a cure that leaves its snag where it is, is refused, or brings another stop, is not offered beside others', () => {
  const good = setBack('40 mm');
  const words: Cure = { says: 'Leave the base out.' };
  const high: Cure = {
    says: 'Let it be as high as the piece.',
    edits: [
      { record: 'base', field: 'setback', value: '40 mm' },
      { record: 'base', field: 'height', value: '790 mm' },
    ],
  };
  expect(tried(setBack('390 mm'), good, words, setBack('much'), high)).toEqual([good, words]);
});

test('alone, it stays as a word of advice', () => {
  expect(tried(setBack('390 mm'))).toEqual([{ says: 'Set it back by 390 mm.' }]);
  const words: Cure = { says: 'Leave the base out.' };
  expect(tried(setBack('390 mm'), words)).toEqual([words]);
});
