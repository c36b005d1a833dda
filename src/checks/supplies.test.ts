import { expect, test } from 'vitest';
import { demoDocument } from '../../test/build/built.ts';
import { checkJob } from '../job/index.ts';
import { supplies } from './supplies.ts';

function told(rack: Record<string, unknown>): readonly string[] {
  const demo = demoDocument();
  const shop = { ...demo.shop, rack: { ...(demo.shop.rack as object), ...rack } };
  const read = checkJob({ ...demo, shop });
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  return supplies(read).map((s) => `${s.where.path}: ${s.sentence} ${s.cures?.[0]?.says}`);
}

test('a glue or a finish whose kind isn’t known is told, with what it is reckoned as', () => {
  expect(told({})).toEqual([]);
  expect(told({ adhesives: [], finishes: [] })).toEqual([]);
  const [glue, finish] = told({
    adhesives: [{ id: 'pot', material: 'epoxi' }],
    finishes: [{ id: 'tin', material: 'shellak' }],
  });
  expect(glue).toContain(
    'shop/rack/adhesives/pot/material: “epoxi” is no glue that is known here: its times and amounts are reckoned as those of PVA wood glue (D2). Nearest: “epoxy”',
  );
  expect(finish).toContain('“shellak” is no finish that is known here');
  expect(finish).toContain('Nearest: “shellac”');
});
