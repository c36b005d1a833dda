import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { planned } from './build/planned.ts';

function stops(example: string, measured: Record<string, string>) {
  const job = JSON.parse(readFileSync(new URL(`../examples/${example}.json`, import.meta.url), 'utf8'));
  job.work = { measured };
  return planned(job)
    .snags.filter((s) => s.level === 'stop')
    .map((s) => ({ code: s.code, path: s.where.path, cures: s.cures.map((c) => c.says) }));
}

describe('a part that was made to another size than drawn', () => {
  test('is named where the piece no longer comes out, with both ways on; what follows from it is not told again', () => {
    expect(stops('hall-cupboard', { 'left side.length': '879 mm' })).toEqual([
      {
        code: 'work.made-off',
        path: 'work/measured/left side.length',
        cures: [
          'Cut A1 anew, 882 mm long.',
          'Or go on with it: note “inside.height” as measured at 861.4 mm, and all that is still to be cut follows; the piece comes out smaller by as much.',
        ],
      },
    ]);
  });

  test.each([
    ['hall-cupboard', { 'left side.length': '879 mm', 'inside.height': '861.4 mm' }],
    ['hall-cupboard', { 'bottom.length': '1060 mm', 'inside.width': '1060.4 mm' }],
    ['glaze-cabinet', { 'left side.length': '808 mm', 'inside.height': '790.3 mm' }],
  ])('may be gone on with in the %s: the rest follows what is noted inside', (example, measured) => {
    expect(stops(example, measured as never)).toEqual([]);
  });

  test('and is in a fit is told as lost, and nothing that follows from it', () => {
    const [lost, ...others] = stops('hall-cupboard', { 'D1.length': '865 mm' });
    expect(lost!.code).toBe('fits.lost');
    expect(others).toEqual([]);
  });

  test('goes by its short name, where no other part has that: the left door of a pair', () => {
    const [off, ...others] = stops('hall-cupboard', { 'left door.width': '364 mm' });
    expect(others).toEqual([]);
    expect(off).toMatchObject({
      code: 'work.made-off',
      path: 'work/measured/left door.width',
      cures: ['Cut K2 down to 359 mm.'],
    });
  });
});
