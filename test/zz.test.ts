import { mkdirSync, writeFileSync } from 'node:fs';
import fc from 'fast-check';
import { test } from 'vitest';
import { checkJob } from '../src/job/index.ts';
import { setOut } from '../src/setting-out/index.ts';
import { generatedJobs } from './generate/design.ts';

test('zz', { timeout: 600000 }, () => {
  const docs = fc.sample(generatedJobs, {
    numRuns: Number(process.env.RUNS ?? 300),
    seed: Number(process.env.SEED ?? 9),
  });
  const stops = new Map<string, number>();
  let clean = 0;
  mkdirSync('/tmp/lead/st', { recursive: true });
  docs.forEach(({ document }, i) => {
    const read = checkJob(document);
    if (!read.ok) throw new Error('refused');
    const p = setOut(read.job);
    const s = p.snags.filter((x) => x.level === 'stop');
    if (s.length === 0) {
      clean++;
      return;
    }
    for (const c of new Set(s.map((x) => x.code))) stops.set(c, (stops.get(c) ?? 0) + 1);
    writeFileSync(
      `/tmp/lead/st/${s[0]!.code}-${i}.json`,
      JSON.stringify({ s: s.map((x) => x.sentence + ' ' + x.where.path), d: document }),
    );
  });
  console.log(
    clean,
    docs.length,
    [...stops].sort((a, b) => b[1] - a[1]),
  );
});
