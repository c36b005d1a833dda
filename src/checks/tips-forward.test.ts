import { describe, expect, test } from 'vitest';
import { shelvesAlone } from '../../test/build/built.ts';
import { codes, cured, glazeCabinet, jobOf, setOutInput, withPlaces } from '../../test/checks/checked-job.ts';
import { cupboard } from '../../test/doors/door-job.ts';
import type { JobDocument } from '../job/index.ts';
import type { CheckInput } from './check-input.ts';
import { tipsForward } from './tips-forward.ts';

const ANCHORED = {
  stock: [],
  stages: [],
  snags: [],
  operations: [{ id: 'home/set-up', kind: 'anchor', title: 'Fix it to the wall' }],
} as unknown as CheckInput['build'];
const LOOSE = { ...ANCHORED, operations: [] };

const tips = (job: JobDocument, build = ANCHORED) => tipsForward({ ...setOutInput(job), build });
/** A cabinet so shallow and set back so far that it tips. */
const shallow = withPlaces(jobOf(shelvesAlone()), {
  'design/records/cabinet/depth': '260 mm',
  'design/records/base/setback': '80 mm',
  'design/records/base/setbackBack': '0 mm',
});

test('the glaze cabinet stands, and is to be fixed to the wall all the same', () => {
  const snags = tips(glazeCabinet());
  expect(codes(snags)).toEqual(['tipping.anchor']);
  expect(snags[0]).toMatchObject({ level: 'note', where: { operation: 'home/set-up' } });
  expect(snags[0]!.sentence).toContain('local codes');
});

describe('a shallow cabinet on a base far back', () => {
  test('tips when someone leans on the front of its top; the plan anchors it, so the maker is to mind it', () => {
    const snag = tips(shallow).find((s) => s.code === 'tipping.weight-in-front')!;
    expect(snag.level).toBe('mind');
    expect(snag.figures!.unit).toBe('N m');
    expect(snag.figures!.margin).toBeLessThan(0);
    // At least 27.2 kg at the front of the top, 104 mm in front of the base (24 mm of overhang and 80 of setback).
    expect(snag.figures!.limit).toBeGreaterThan((27.2 * 9.80665 * 104) / 1000);
    expect(snag.cures[0]!.says).toContain('Anchor it');
  });

  test('without an anchor in the plan it is no piece to begin with', () => {
    expect(tips(shallow, LOOSE).find((s) => s.code === 'tipping.weight-in-front')!.level).toBe('stop');
  });

  test('a smaller setback is offered, and does cure it', () => {
    const snag = tips(shallow).find((s) => s.code === 'tipping.weight-in-front')!;
    const cure = snag.cures.find((c) => c.edits)!;
    expect(cure.edits).toEqual([
      { record: 'base', field: 'setback', value: expect.stringMatching(/^\d+ mm$/) },
    ]);
    const after = cured(shallow, cure.edits!);
    expect(setOutInput(after).setOut.snags).toEqual([]);
    expect(codes(tips(after))).not.toContain('tipping.weight-in-front');
  });

  test('no setback is offered that leaves the base under the sides', () => {
    const cure = tips(withPlaces(shallow, { 'design/records/base/setback': '19 mm' }));
    expect(cure.flatMap((s) => s.cures.flatMap((c) => c.edits ?? []))).toEqual([]);
  });
});

describe('statics worked by hand: one weight of 40 kg', () => {
  const at = (behindMm: number, heightMm: number) => {
    const input = setOutInput(glazeCabinet());
    const front = input.setOut.parts.find((p) => p.id === 'base/base-front')!;
    expect(front).toBeDefined();
    // The base begins 24 + 40 mm from the front of the top.
    const weigh = (id: string) => ({
      kg: id === 'case/bottom' ? 40 : 0,
      centreMm: [0, 64 + behindMm, heightMm] as const,
    });
    return tipsForward({ ...input, weigh, build: ANCHORED });
  };

  test('44.5 N at 900 mm is 40.05 N m; 40 kg rights 39.2 N m at 100 mm behind the edge and 43.1 at 110', () => {
    const pull = at(100, 100).find((s) => s.code === 'tipping.pull')!;
    expect(pull.figures!.limit).toBeCloseTo(40.05, 2);
    expect(pull.sentence).toContain('44.5 N at a height of 900 mm');
    expect(pull.figures!.value).toBeCloseTo(39.227, 2);
    expect(codes(at(110, 100))).not.toContain('tipping.pull');
  });

  test('27.2 kg on the front edge 64 mm in front and 900 mm high, the rear feet, 296 mm behind, on 10.9 mm', () => {
    // asin(10.9 / 296) is 2.110 degrees: sine 0.03682, cosine 0.99932. Someone's weight overturns with
    // 27.2 g (64 cos + 900 sin) = 25.90 N m; 40 kg at 100 high rights with 40 g (72 cos - 100 sin) = 26.78 at 72 mm
    // behind the edge, and with 25.61 at 69 mm.
    const front = at(69, 100).find((s) => s.code === 'tipping.weight-in-front')!;
    expect(front.figures!.limit).toBeCloseTo(25.9, 1);
    expect(front.figures!.value).toBeCloseTo(25.61, 1);
    expect(codes(at(72, 100))).not.toContain('tipping.weight-in-front');
  });

  test('a centre 200 mm behind tips at 10 degrees when it is 1134 mm high (200 / tan 10)', () => {
    expect(codes(at(200, 1130))).not.toContain('tipping.tilt');
    expect(codes(at(200, 1140))).toContain('tipping.tilt');
  });
});

test('doors stand open when the piece is tried: their weight hangs half their width before it', () => {
  const job = cupboard();
  const input = setOutInput(job);
  const tilt = (of: typeof input) =>
    tipsForward({ ...of, build: ANCHORED }).find((s) => s.code === 'tipping.tilt');
  const open = tilt(input)!;
  expect(open.sentence).toContain('with its doors open');
  // By hand: three doors of 17.8 mm, each with its middle half its width before its front at 6 mm.
  const doors = input.setOut.doors.map((d) => {
    const part = input.setOut.parts.find((p) => p.id === d.part)!;
    const kg = input.weigh(part.id).kg;
    return { kg, moment: kg * (6 - input.setOut.ledger.ticks(part.width) / 3200 / 2) };
  });
  const rest = input.setOut.parts
    .filter((p) => !input.setOut.doors.some((d) => d.part === p.id))
    .map((p) => ({ kg: input.weigh(p.id).kg, moment: input.weigh(p.id).kg * input.weigh(p.id).centreMm[1] }));
  const all = [...doors, ...rest];
  const kg = all.reduce((sum, w) => sum + w.kg, 0);
  const y = all.reduce((sum, w) => sum + w.moment, 0) / kg;
  const z =
    input.setOut.parts.reduce((sum, p) => sum + input.weigh(p.id).kg * input.weigh(p.id).centreMm[2], 0) / kg;
  // The base's front: 25.3 mm of top and doors, 25 of setback.
  const angle = (Math.atan2(y - 50.3, z) * 180) / Math.PI;
  expect(open.sentence).toContain(`tilted ${Math.round(angle * 10) / 10} degrees`);
});
