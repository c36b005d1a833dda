import { expect, test } from 'vitest';
import { built, demoDocument } from '../../test/build/built.ts';
import { CAUTION } from './cautions.ts';

const sawn = (document: unknown) =>
  built(document).build.operations.filter((o) => o.does.act === 'saw' || o.does.act === 'bevel');

test('a blade that is tilted is as sharp as an upright one: its cards carry the saw’s caution too', () => {
  const mitres = sawn(demoDocument()).filter((o) => o.kind === 'bevel');
  expect(mitres.length).toBeGreaterThan(8);
  for (const o of mitres) expect(o.cautions).toEqual([CAUTION.saw, CAUTION.bevel]);
});

test('a mitre saw is turned, not tilted, and nobody has both hands on it', () => {
  const demo = demoDocument();
  const saw = {
    id: 'mitre',
    kind: 'mitre-saw',
    accuracy: '0.3 mm',
    kerf: '2 mm',
    step: '0.5 mm',
    width: '300 mm',
    height: '60 mm',
  };
  const { tools } = demo.shop as { tools: object[] };
  const cards = sawn({ ...demo, shop: { ...demo.shop, tools: [...tools, saw] } }).filter(
    (o) => o.tool === 'mitre',
  );
  expect(new Set(cards.map((o) => o.does.act))).toEqual(new Set(['saw', 'bevel']));
  for (const o of cards) expect(o.cautions).toEqual([CAUTION.mitreSaw]);
});
