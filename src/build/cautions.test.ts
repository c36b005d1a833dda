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

/** Its cards with another glue or finish on the rack. */
function cardsWith(rack: Record<string, unknown>) {
  const demo = demoDocument();
  const shop = { ...demo.shop, rack: { ...(demo.shop.rack as object), ...rack } };
  return built({ ...demo, shop }).build.operations;
}

test('wherever glue is spread, what its kind does to skin and lungs is told, and what wipes it off lies ready', () => {
  const spread = (material: string) =>
    cardsWith({ adhesives: [{ id: 'glue', material }] }).filter((o) => o.cautions.includes(CAUTION.glue));
  for (const material of ['epoxy', 'polyurethane']) {
    const cards = spread(material);
    expect(cards.length).toBeGreaterThan(20);
    for (const o of cards) expect(o.cautions.join(' ')).toMatch(/Wear gloves and air the room/);
    expect(cards.flatMap((o) => o.lines).join(' ')).not.toContain('damp cloth');
  }
  expect(
    spread('pva')
      .flatMap((o) => o.cautions)
      .every((c) => c === CAUTION.glue),
  ).toBe(true);
  const words = (material: string) =>
    cardsWith({ adhesives: [{ id: 'glue', material }] })
      .flatMap((o) => o.lines)
      .join(' ');
  expect(words('epoxy')).toContain('Wipe off what came out while it is wet, with alcohol on the cloth');
  // Water swells the joint, and it shrinks for days: the other glues bring none.
  expect(words('pva')).toContain('leave glued joints a day or more before you sand over them');
  expect(words('epoxy')).not.toContain('leave glued joints a day or more');
});

test('a finish is told by its kind: rags with oil burn, water doesn’t, and a film is not wiped off again', () => {
  const coats = (material: string) =>
    cardsWith({ finishes: [{ id: 'tin', material }] }).filter((o) => /^finish\/coat/.test(o.id));
  for (const [material, oily, burns, wiped] of [
    ['hardwax-oil', true, true, true],
    ['wiping-varnish', true, true, true],
    ['oil-polyurethane', true, true, false],
    ['shellac', false, true, false],
    ['lacquer', false, true, false],
    ['water-polyurethane', false, false, false],
  ] as const)
    for (const o of coats(material)) {
      expect(o.cautions.includes(CAUTION.oil), material).toBe(oily);
      expect(o.cautions.includes(CAUTION.vapour), material).toBe(burns);
      expect(o.cautions.includes(CAUTION.air), material).toBe(!burns);
      expect(o.lines.join(' ').includes('take off what stands'), material).toBe(wiped);
      expect(o.lines.join(' ').includes('It seals the wood'), material).toBe(
        !wiped && o.id === 'finish/coat-1',
      );
    }
});
