import { expect, test } from 'vitest';
import { setOutInput } from '../../test/checks/checked-job.ts';
import { smallJob } from '../../test/generate/small-job.ts';
import { checkJob } from '../job/index.ts';
import { vents } from './vents.ts';

function told(...records: Record<string, unknown>[]) {
  const job = smallJob();
  for (const r of records)
    job.design.records.push({ kind: 'vent', parent: 'back', in: 'left', form: 'holes', ...r });
  const read = checkJob(job);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  return vents(setOutInput(read.job));
}

test('a low and a high vent made for a heat are enough for it', () => {
  const low = { id: 'low', heat: '8 W', apart: '400 mm', fromBelow: '70 mm' };
  const high = { id: 'high', heat: '8 W', apart: '400 mm', fromAbove: '70 mm' };
  expect(told(low, high).map((x) => x.code)).toEqual(['vents.air', 'vents.air']);
});

test('fewer openings than the heat asks for, and no way in for the air', () => {
  const snags = told({ id: 'low', heat: '8 W', count: 3, fromBelow: '70 mm' });
  expect(snags.map((x) => x.code)).toEqual(['vents.too-small', 'vents.alone']);
  expect(snags[0]!.figures!.margin).toBeLessThan(0);
});
