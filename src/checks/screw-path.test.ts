import { describe, expect, test } from 'vitest';
import { bookcase } from '../../test/checks/bookcase.ts';
import { codes, glazeCabinet, setOutInput } from '../../test/checks/checked-job.ts';
import { fromMm, type Traced, toMm } from '../measure/index.ts';
import type { Fastener, SetOut } from '../setting-out/index.ts';
import { drive } from './driven-screw.ts';
import { edgeScrews } from './edge-screws.ts';
import { screwPaths } from './screw-path.ts';

const cabinet = setOutInput(glazeCabinet());

/** The cabinet with one screw changed. */
function withScrew(
  find: (f: Fastener) => boolean,
  change: (f: Fastener, at: (mm: number) => Traced) => Fastener,
) {
  const { setOut, ...rest } = setOutInput(glazeCabinet());
  const l = setOut.ledger;
  const at = (mm: number) => l.document(`test/${mm}`, fromMm(mm), `${mm} mm`);
  const chosen = setOut.fasteners.find(find);
  if (!chosen) throw new Error('no such screw');
  const fasteners = setOut.fasteners.map((f) => (f === chosen ? change(f, at) : f));
  return { ...rest, setOut: { ...setOut, fasteners } satisfies SetOut };
}

const inShelf = (f: Fastener) => f.through[0] === 'jars1/shelf:1';
const inBack = (f: Fastener) => f.direction === '-y' && f.through[1] === 'case/bottom';

test('every screw of the glaze cabinet and of a plain bookcase keeps to its parts', () => {
  expect(screwPaths(cabinet)).toEqual([]);
  expect(edgeScrews(cabinet)).toEqual([]);
  expect(screwPaths(setOutInput(bookcase({ width: '800 mm', load: '10 kg' })))).toEqual([]);
});

describe('a pocket screw of 32 mm from a board of 17.6 into another (geometry, 15 degrees)', () => {
  const f = cabinet.setOut.fasteners.find(inShelf)!;
  const screw = drive(cabinet.setOut, f);

  test('its tip comes (32 - 17.6) cos 15 = 13.91 mm deep, and 14.4 sin 15 = 3.73 mm aside', () => {
    const aside = screw.tip[2] - screw.head[2];
    const deep = Math.abs(screw.tip[0] - screw.head[0]) - 17.6 * Math.cos(Math.PI / 12);
    expect(deep).toBeCloseTo(13.91, 2);
    expect(Math.abs(aside)).toBeCloseTo(32 * Math.sin(Math.PI / 12), 3);
  });

  test('setting-out reckoned the same, by its own way', () => {
    const { ledger } = cabinet.setOut;
    expect(toMm(ledger.ticks(f.holds))).toBeCloseTo(13.91, 1);
    expect(toMm(ledger.ticks(f.spare))).toBeCloseTo(17.6 - 13.91, 1);
  });
});

describe('what is wrong is found from head, lean and length alone', () => {
  test('a screw 8 mm too long comes out of the far face, by 8 cos 15 - 3.69 = 4.04 mm', () => {
    const snags = screwPaths(withScrew(inShelf, (f, at) => ({ ...f, length: at(40) })));
    const snag = snags.find((s) => s.code === 'screws.break-through')!;
    expect(snag.level).toBe('stop');
    expect(snag.where.part).toBe('jars1/shelf:1');
    expect(snag.figures).toMatchObject({ value: -4.04, limit: 3, unit: 'mm' });
  });

  test('one that ends 1.76 mm before the far face is minded', () => {
    const snags = screwPaths(withScrew(inShelf, (f, at) => ({ ...f, length: at(34) })));
    expect(snags.map((s) => [s.code, s.level])).toEqual([['screws.near-far-face', 'mind']]);
    expect(snags[0]!.figures!.value).toBeCloseTo(17.6 - 16.4 * Math.cos(Math.PI / 12), 2);
  });

  test('one that leans the wrong way comes out of its own part', () => {
    const snags = screwPaths(withScrew(inShelf, (f) => ({ ...f, lean: { degrees: 15, toward: '-z' } })));
    expect(codes(snags)).toContain('screws.out-of-side');
  });

  test('one driven the other way misses its mate', () => {
    const snags = screwPaths(
      withScrew(inShelf, (f) => ({ ...f, direction: f.direction === '+x' ? '-x' : '+x' })),
    );
    expect(codes(snags)).toContain('screws.miss-part');
  });

  test('one that claims the wrong mate is in a part that it does not name', () => {
    const snags = screwPaths(
      withScrew(inShelf, (f) => ({ ...f, through: [f.through[0]!, 'base/base-front'] })),
    );
    expect(codes(snags)).toEqual(expect.arrayContaining(['screws.in-another-part', 'screws.miss-part']));
  });

  test('a back screw as thick as a finger comes out of the bottom that it stands in', () => {
    const snags = screwPaths(withScrew(inBack, (f, at) => ({ ...f, diameter: at(19) })));
    expect(codes(snags)).toContain('screws.out-of-side');
  });
});

describe('screws into the edge of a panel (common practice)', () => {
  const moved = (axis: 0 | 2, mm: number) =>
    edgeScrews(
      withScrew(inBack, (f, at) => {
        const l = cabinet.setOut.ledger;
        const head = f.head.map((t, i) => (i === axis ? at(toMm(l.ticks(t)) + mm) : t));
        return { ...f, head: [head[0]!, head[1]!, head[2]!] };
      }),
    );

  test('stand within 1 mm of its middle', () => {
    const snag = moved(2, 2.5).find((s) => s.code === 'screws.off-centre')!;
    expect(snag).toMatchObject({ level: 'mind', where: { part: 'case/bottom' } });
    expect(snag.figures).toMatchObject({ value: 2.5, limit: 1 });
    expect(moved(2, 0.9)).toEqual([]);
  });

  test('stand 50 mm clear of its ends', () => {
    const first = cabinet.setOut.fasteners.find(inBack)!;
    const low = toMm(cabinet.setOut.ledger.ticks(first.head[0])) - (25 + 17.6);
    const snag = moved(0, 20 - low).find((s) => s.code === 'screws.near-end-of-edge')!;
    expect(snag.figures).toEqual({ value: 20, limit: 50, margin: -30, unit: 'mm' });
  });

  test('are at most a third as thick as the edge: 17.6 / 3 = 5.87 mm', () => {
    const thick = (mm: number) =>
      codes(edgeScrews(withScrew(inBack, (f, at) => ({ ...f, diameter: at(mm) }))));
    expect(thick(5.8)).toEqual([]);
    expect(thick(6)).toEqual(['screws.too-thick-for-edge']);
  });
});
