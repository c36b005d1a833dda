import { expect, test } from 'vitest';
import { builtExample } from '../../test/build/built.ts';

test('a panel is glued up with the clamps there are: cauls get those that are left', () => {
  const { build, job } = builtExample('hall-console');
  const there = job.shop.tools.reduce((sum, t) => sum + (t.kind === 'clamp' ? t.count : 0), 0);
  const up = build.operations.find((o) => o.id === 'C2/glue-up')!;
  // Four across 880 mm; two are left, and hold one pair of cauls.
  expect([there, up.clamps]).toEqual([6, 6]);
  expect(up.lines.join(' ')).toContain('a pair of cauls with a clamp for either end');
  expect(up.lines.join(' ')).not.toContain('two pairs of cauls');
});
