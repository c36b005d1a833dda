import { describe, expect, test } from 'vitest';
import { checkJob } from '../src/job/index.ts';
import { type Built, built, mm } from './build/built.ts';
import { dryFaults } from './build/dry-faults.ts';
import { equipped } from './generate/equipped.ts';
import { faultsOf } from './generate/judge-set-out.ts';
import { addScrews, lotOf, type PlainJob, smallJob } from './generate/small-job.ts';

type Fields = Record<string, unknown> & { readonly id: string };

/** A plain box without a top, edged: its case as it is changed, its edging of a lot, on some sides. */
function plain(
  box: object,
  edging: { readonly lot: object; readonly sides: readonly string[] },
  back?: object,
): PlainJob {
  const job = smallJob();
  job.shop.rack.lots.push({
    ...lotOf(job, 'ash18'),
    id: 'lip',
    nominal: '3 mm',
    thickness: '3 mm',
    width: '24 mm',
    stock: [{ id: 'lip-length', length: '2400 mm', price: 4 }],
    ...edging.lot,
  });
  addScrews(job, 'pocket', [25, 30, 38], { diameter: '4 mm', head: '9 mm' });
  addScrews(job, 'countersunk', [25, 30, 40, 50], { diameter: '4 mm', head: '8 mm' });
  const { records } = job.design;
  const kept = records.filter((r) => !['top', 'base', 'back', 'edging'].includes(String(r.kind)));
  Object.assign(kept.find((r) => r.id === 'case')!, { joints: 'pocket-screws', ...box });
  const own: Fields[] = [
    { id: 'edge', kind: 'edging', parent: 'case', strip: 'lip', sides: edging.sides },
    ...(back ? [{ id: 'back', kind: 'back', parent: 'case', board: 'birch6', ...back }] : []),
  ];
  records.splice(0, records.length, ...kept, ...(own as typeof records));
  return job;
}

const of = (...how: Parameters<typeof plain>): Built => built(equipped(plain(...how)));
const TAPE = { nominal: '0.6 mm', thickness: '0.6 mm', tape: 'iron-on' };

/** Sizes of a part along x, y and z, mm. */
function sizes(b: Built, id: string): readonly number[] {
  const part = b.drawn.parts.find((p) => p.id === id)!;
  return ['x', 'y', 'z'].map((axis) =>
    mm(b, part[(['length', 'width', 'thickness'] as const).find((run) => part.place[run][1] === axis)!]),
  );
}

const FRONT_AND_ENDS = ['front', 'left', 'right'];
const APPLIED = { fitting: 'applied' };

describe('a lid over the sides, edged in front and at both ends', () => {
  const b = of({ lid: 'over' }, { lot: {}, sides: FRONT_AND_ENDS }, APPLIED);
  const strip = (side: string) => b.drawn.parts.find((p) => p.id === `edge/${side}on:case/lid`)!;

  test('is shorter by a strip at either end, and with them as wide as the case', () => {
    // 1000 by 350 by 800 mm; a back of 6.5 mm laid on, and strips of 3 mm.
    expect(sizes(b, 'case/lid')).toEqual([994, 340.5, 18]);
    expect(sizes(b, 'edge/left-on:case/lid')).toEqual([3, 343.5, 18]);
    expect(sizes(b, 'edge/on:case/lid')).toEqual([1000, 3, 18]);
    expect(mm(b, b.drawn.overall.width)).toBe(1000);
  });

  test('its strips are mitred at the front corners, and end square behind', () => {
    const bevels = (side: string) =>
      strip(side).features.flatMap((f) => (f.kind === 'bevel' ? [f.edge] : []));
    expect(bevels('')).toEqual(['start', 'end']);
    expect([bevels('left-'), bevels('right-')]).toEqual([['end'], ['start']]);
    const mitres = b.drawn.joints.filter((j) => j.kind === 'mitre').map((j) => [j.part, j.mate]);
    expect(mitres).toEqual([
      [strip('left-').id, strip('').id],
      [strip('').id, strip('right-').id],
    ]);
  });

  test('panels whose ends are hidden keep their length', () => {
    expect(sizes(b, 'case/bottom')[0]).toBe(964);
    expect(b.drawn.parts.some((p) => p.id.includes('on:case/bottom') && p.id.includes('left'))).toBe(false);
  });

  test('is set by its strips: level with the outer face of a side', () => {
    const card = b.build.operations.find((o) => o.id === 'C1/set')!;
    expect(card.lines.join(' ')).toContain(
      `${strip('left-').mark}’s left side level with the left side of A1`,
    );
  });
});

test('tape on the ends ends at the front of the board, and tape in front covers its ends', () => {
  const b = of({ lid: 'over' }, { lot: TAPE, sides: FRONT_AND_ENDS }, APPLIED);
  expect(sizes(b, 'edge/left-on:case/lid')).toEqual([0.6, 342.9, 18]);
  expect(sizes(b, 'edge/on:case/lid')).toEqual([1000, 0.6, 18]);
  const at = (id: string) =>
    b.build.operations.findIndex(
      (o) => o.does.act === 'edge' && o.does.pairs.some((p) => p.strip === markOf(b, id)),
    );
  expect(at('edge/left-on:case/lid')).toBeGreaterThan(0);
  expect(at('edge/on:case/lid')).toBeGreaterThan(at('edge/left-on:case/lid'));
});

test('sides beside a lid are edged above, and lower by the strip', () => {
  const b = of({}, { lot: {}, sides: ['front', 'upper'] });
  expect(sizes(b, 'case/left-side')[2]).toBe(sizes(b, 'edge/on:case/left-side')[2]! - 3);
  expect(sizes(b, 'edge/upper-on:case/right-side')[2]).toBe(3);
  expect(mm(b, b.drawn.overall.height)).toBe(800);
});

describe.each([
  ['pocket-screws', {}],
  ['face-screws', {}],
  ['dowels', {}],
  ['biscuits', TAPE],
])('joined by %s', (joints, lot) => {
  test.each([
    ['a lid over the sides', { lid: 'over' }, FRONT_AND_ENDS, APPLIED],
    [
      'bottom and lid that run through',
      { lid: 'over', bottom: 'under' },
      FRONT_AND_ENDS,
      { fitting: 'rabbet' },
    ],
    ['sides and a bottom under them', { bottom: 'under' }, ['front', 'left', 'upper'], APPLIED],
    ['one end alone', { lid: 'over' }, ['right'], APPLIED],
  ])('%s: built as drawn', async (_, box, sides, back) => {
    const b = of({ ...box, joints }, { lot, sides }, back);
    expect(b.drawn.snags.filter((s) => s.level === 'stop')).toEqual([]);
    expect(await dryFaults(b)).toEqual([]);
  });
});

test.each([
  ['let in', { lid: 'over', joints: 'dado' }, {}, ['front', 'left'], 'edging.ends-let-in'],
  ['on a side where no panel runs through', {}, {}, ['front', 'left'], 'edging.no-end-shows'],
  ['above, where a lid lies over the sides', { lid: 'over' }, {}, ['upper'], 'edging.no-end-shows'],
  [
    'by strips too thick',
    { lid: 'over' },
    { nominal: '6 mm', thickness: '6 mm' },
    ['left'],
    'edging.end-too-thick',
  ],
])('ends %s are told', (_, box, lot, sides, code) => {
  const { drawn } = of(box, { lot, sides });
  expect(drawn.snags.filter((s) => s.level === 'stop').map((s) => s.code)).toEqual([code]);
});

test('a back let into the sides leaves their upper ends bare, which is told', () => {
  const { drawn } = of({}, { lot: {}, sides: ['upper'] }, { fitting: 'groove' });
  expect(drawn.snags.map((s) => s.code)).toContain('edging.no-end-shows');
});

test('a case has no lower side to edge, and loose shelves none at all', () => {
  const job = plain({}, { lot: {}, sides: ['lower'] });
  const read = checkJob(equipped(job));
  expect(read.ok ? [] : read.snags.map((s) => `${s.code} ${s.where.path}`)).toEqual([
    'edging.sides design/records/edge/sides',
  ]);
});

function markOf({ drawn }: Built, id: string): string {
  return drawn.parts.find((p) => p.id === id)!.mark;
}

test('pocket screws into a panel whose ends are edged are short enough to stay in its board, beside the strip', () => {
  const job = plain(
    { lid: 'over', bottom: 'under' },
    { lot: { nominal: '4 mm', thickness: '4 mm' }, sides: FRONT_AND_ENDS },
  );
  addScrews(job, 'pocket', [28], { diameter: '4 mm', head: '9 mm' });
  const b = built(equipped(job));
  expect(b.drawn.snags.filter((s) => s.level === 'stop')).toEqual([]);
  const { width, height, depth } = b.drawn.overall;
  const t = (x: typeof width) => b.drawn.ledger.ticks(x);
  expect(faultsOf(b.drawn, { width: t(width), height: t(height), depth: t(depth) })).toEqual([]);
  const corner = b.drawn.fasteners.filter((f) => f.joint === 'case/left-side>case/bottom');
  // 32 mm would lean out to 5.4 mm from the outer face, 1.4 mm from the end of the board: less than half its thickness.
  expect(new Set(corner.map((f) => f.screw))).toEqual(new Set(['pocket-28']));
});
