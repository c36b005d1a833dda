import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { built } from '../../test/build/built.ts';
import { checkInput, glazeCabinet, withPlaces } from '../../test/checks/checked-job.ts';
import { bits } from './bits.ts';

const cabinet = checkInput(glazeCabinet());
const BITS = glazeCabinet().shop.rack.bits;
const owning = (owned: typeof BITS) =>
  bits({ ...cabinet, job: withPlaces(cabinet.job, { 'shop/rack/bits': owned }) });

const lacks = (snags: ReturnType<typeof owning>) =>
  snags.map((s) => s.sentence.replace(/,? which .*|^.* needs a /g, ''));

test('the shop of the glaze cabinet has every bit, a pilot of 1.7 for the 1.68 that was reckoned among them', () => {
  expect(bits(cabinet)).toEqual([]);
});

describe('each bit that is taken away is missed', () => {
  test.each([
    // For the screws of the back, and of the runners.
    ['twist-2', ['twist drill of 2 mm', 'twist drill of 1.7 mm']],
    ['twist-2.5', ['twist drill of 2.5 mm']],
    ['twist-3.5', ['twist drill of 3.5 mm']],
    ['twist-4.5', ['twist drill of 4.5 mm']],
    // One for the heads in the back, one for those in the drawers.
    ['sink', ['countersink of 5.5 mm', 'countersink of 7.5 mm']],
    ['pocket-bit', ['pocket-hole bit of 9.5 mm']],
    ['straight-6', ['straight router bit of 6 mm']],
    ['straight-12', ['straight router bit of 12 mm']],
    ['forstner-30', ['Forstner bit of 30 mm']],
    ['flush', ['flush-trim bit']],
  ])('%s', (id, says) => {
    const snags = owning(BITS.filter((b) => b.id !== id));
    expect(lacks(snags)).toEqual(says);
    for (const s of snags) {
      expect(s).toMatchObject({ code: 'tools.no-bit', level: 'stop' });
      expect(s.where.operation).toBeDefined();
    }
  });
});

test('a bit within 0.3 mm does, a farther one is named as the nearest', () => {
  const drill = (mm: string) => owning(BITS.map((b) => (b.id === 'twist-3.5' ? { ...b, diameter: mm } : b)));
  expect(drill('3.8 mm')).toEqual([]);
  expect(drill('3.2 mm')).toEqual([]);
  const [snag] = drill('4 mm');
  expect(snag!.sentence).toContain('its nearest is 4 mm');
  expect(snag!.figures).toEqual({ value: 4, limit: 3.5, margin: -0.5, unit: 'mm' });
});

test('a countersink may be larger than the head, not smaller', () => {
  const sink = (mm: string) => owning(BITS.map((b) => (b.id === 'sink' ? { ...b, diameter: mm } : b)));
  expect(sink('20 mm')).toEqual([]);
  expect(lacks(sink('6 mm'))).toEqual(['countersink of 7.5 mm']);
});

test('a rabbet bit cuts a rabbet as well', () => {
  const rabbets = owning(
    BITS.flatMap((b) =>
      b.kind !== 'straight' ? [b] : b.id === 'straight-12' ? [{ ...b, kind: 'rabbet' as const }] : [],
    ),
  );
  expect(rabbets.map((s) => s.where.operation).every((id) => id?.includes('groove'))).toBe(true);
  const none = owning(BITS.filter((b) => b.kind !== 'straight'));
  expect(lacks(none)).toContain('straight router bit');
});

test('slots that are bored and sawn without a router ask for a twist drill, and sawn rabbets for no bit', () => {
  const read = (name: string) =>
    JSON.parse(readFileSync(new URL(`../../examples/${name}.json`, import.meta.url), 'utf8'));
  const without = (name: string) => {
    const plain = read(name);
    const tools = plain.shop.tools.filter((t: { kind: string }) => t.kind !== 'router');
    const rack = { ...plain.shop.rack, bits: [] };
    const { job, drawn: setOut, build } = built({ ...plain, shop: { ...plain.shop, tools, rack } });
    return { job, setOut, build };
  };
  const stand = without('sewing-stand');
  const slots = stand.build.operations.filter((o) => o.does.act === 'slot');
  expect(slots.map((o) => o.title.replace(/ through.*/, ''))).toEqual(['Cut 3 slots']);
  const asked = (of: ReturnType<typeof without>, act: string) =>
    bits({
      ...of,
      build: { ...of.build, operations: of.build.operations.filter((o) => o.does.act === act) },
    });
  expect(asked(stand, 'slot').map((s) => s.sentence)).toEqual([
    expect.stringContaining('needs a twist drill of'),
  ]);
  const cupboard = without('linen-cupboard');
  expect(cupboard.build.operations.some((o) => o.does.act === 'rabbet')).toBe(true);
  expect(asked(cupboard, 'rabbet')).toEqual([]);
});

test('edging that is planed level, and channels of a router that is missing, ask for no bit besides', () => {
  const { shop } = glazeCabinet();
  const bare = {
    ...shop,
    tools: shop.tools.filter((t: { kind: string }) => t.kind !== 'router'),
    rack: { ...shop.rack, bits: BITS.filter((b) => !/^(flush|straight)/.test(b.id)) },
  };
  expect(lacks(bits(checkInput({ ...glazeCabinet(), shop: bare })))).toEqual([]);
});
