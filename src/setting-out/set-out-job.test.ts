import { describe, expect, test } from 'vitest';
import { frozen, lotOf, type PlainJob, recordOf, smallJob } from '../../test/generate/small-job.ts';
import { checkJob } from '../job/index.ts';
import { explain, leavesOf, toMm } from '../measure/index.ts';
import { type Part, type SetOut, setOut } from './index.ts';

/** The small job after a change, set out. */
function setOutWith(change: (job: PlainJob) => void): SetOut {
  const job = smallJob();
  change(job);
  const read = checkJob(frozen(job));
  if (!read.ok) throw new Error(read.snags.map((s) => `${s.where.path}: ${s.sentence}`).join('\n'));
  return setOut(frozen(read.job));
}

const plain = setOutWith(() => {});

function mm(piece: SetOut, name: string): number {
  const t = piece.dimensions.get(name);
  if (t === undefined) throw new Error(`no dimension ${name}`);
  return toMm(piece.ledger.ticks(t));
}

function stops(change: (job: PlainJob) => void): string[] {
  return setOutWith(change).snags.map((s) => `${s.code} ${s.where.path}`);
}

function part(piece: SetOut, id: string): Part {
  const found = piece.parts.find((p) => p.id === id);
  if (!found) throw new Error(`no part ${id}`);
  return found;
}

/** Along the piece's x, in mm, the outer or inner face of a part. */
function edges(piece: SetOut, id: string, axis: 0 | 1 | 2): [number, number] {
  const p = part(piece, id);
  const run = (['length', 'width', 'thickness'] as const).find((r) => p.place[r][1] === 'xyz'[axis])!;
  const from = toMm(piece.ledger.ticks(p.place.origin[axis]));
  const size = toMm(piece.ledger.ticks(p[run])) * (p.place[run].startsWith('+') ? 1 : -1);
  return [Math.min(from, from + size), Math.max(from, from + size)];
}

describe('sizes', () => {
  test('the small job sets out without a snag, and its overall sizes are those asked for', () => {
    expect(plain.snags).toEqual([]);
    expect(['width', 'height', 'depth'].map((s) => mm(plain, `overall.${s}`))).toEqual([1000, 800, 350]);
  });

  test('parts follow from boards of 18 mm', () => {
    // 1000 - 2 x 25 overhang = 950; 950 - 3 x 18 = 896, shared by two bays.
    expect(mm(plain, 'left.width')).toBe(448);
    expect(mm(plain, 'right.width')).toBe(448);
    expect(mm(plain, 'bottom.length')).toBe(914);
    expect(mm(plain, 'left side.length')).toBe(702);
    // 800 - 80 - 18 - 18 = 684; two shelves of 18 leave 648 for three spaces of 216.
    expect(mm(plain, 'left.height')).toBe(684);
    expect(edges(plain, 'shelves/shelf:1', 2)).toEqual([98 + 216, 98 + 216 + 18]);
    expect(edges(plain, 'shelf/shelf', 2)).toEqual([398, 416]);
  });

  test('a board measured at 17.6 mm instead of 18: what depends on it follows, by as much as it should', () => {
    const thin = setOutWith((j) => {
      lotOf(j, 'birch18').thickness = '17.6 mm';
    });
    expect(thin.snags).toEqual([]);
    const grown = (id: string, size: 'length' | 'width' | 'thickness') => {
      const [was, is] = [plain, thin].map((piece): number => piece.ledger.ticks(part(piece, id)[size]));
      return (is! - was!) / 3200;
    };
    const expected: Record<string, readonly [length: number, width: number, thickness: number]> = {
      'case/left-side': [0.4, 0, -0.4],
      'case/right-side': [0.4, 0, -0.4],
      'case/bottom': [0.8, 0, -0.4],
      'upright/divider': [0.8, 0, -0.4],
      'shelves/shelf:1': [0.6, 0, -0.4],
      'shelves/shelf:2': [0.6, 0, -0.4],
      'shelf/shelf': [0.6, 0, -0.4],
      'top/top': [0, 0, -0.4],
      'base/base-front': [0, 0, -0.4],
      'base/base-left': [0, 0, -0.4],
      'base/base-right': [0, 0, -0.4],
      'base/base-back': [0, 0, -0.4],
      // The edging of the top follows its thickness in width.
      'top/top edging-front': [0, -0.4, 0],
      'top/top edging-left': [0, -0.4, 0],
      'top/top edging-right': [0, -0.4, 0],
    };
    for (const [id, sizes] of Object.entries(expected))
      expect(
        (['length', 'width', 'thickness'] as const).map((s) => grown(id, s)),
        id,
      ).toEqual(sizes);
    // The lipping is as long as its panel and as wide as it is thick.
    for (const { id } of plain.parts.filter((p) => p.id.startsWith('lipping/on:')))
      expect([grown(id, 'length'), grown(id, 'width')], id).toEqual([
        grown(id.slice('lipping/on:'.length), 'length'),
        -0.4,
      ]);
    // The back reaches into rabbets of two thirds of the side, as fine as the router is set: 12 mm, and 11.7 of 11.73.
    const back = part(plain, 'back/back').place.length === '+z' ? 'width' : 'length';
    expect(grown('back/back', back)).toBeCloseTo(0.8 - 2 * 0.3, 9);
    expect(['width', 'height', 'depth'].map((s) => mm(thin, `overall.${s}`))).toEqual([1000, 800, 350]);
  });

  test('equal shares differ by a tick at most and fill the whole', () => {
    const three = setOutWith((j) => {
      j.design.records.push({ id: 'third', kind: 'opening', parent: 'inside' });
      j.design.records.push({ id: 'upright2', kind: 'divider', parent: 'inside' });
    });
    const bays = ['left', 'right', 'third'].map((id) =>
      three.ledger.ticks(three.openings.find((o) => o.id === id)!.width),
    );
    expect(bays.reduce((a: number, b) => a + b, 0)).toBe((950 - 4 * 18) * 3200);
    expect(Math.max(...bays) - Math.min(...bays)).toBeLessThanOrEqual(1);
  });

  test('two shares are twice one, beside a fixed size', () => {
    const shared = setOutWith((j) => {
      recordOf(j, 'left').size = '2 shares';
      recordOf(j, 'right').size = '1 share';
      j.design.records.push({ id: 'third', kind: 'opening', parent: 'inside', size: '8"' });
      j.design.records.push({ id: 'upright2', kind: 'divider', parent: 'inside' });
    });
    expect(mm(shared, 'third.width')).toBe(203.2);
    expect(mm(shared, 'left.width') / mm(shared, 'right.width')).toBeCloseTo(2, 4);
    expect(mm(shared, 'left.width') + mm(shared, 'right.width')).toBeCloseTo(950 - 72 - 203.2, 9);
  });

  test('in inches: four parts of 12 in fill 48 in, exactly', () => {
    const inches = setOutWith((j) => {
      j.shop.units = 'in';
      Object.assign(recordOf(j, 'cupboard'), { width: '49 1/2"', height: '30', depth: '14' });
      j.design.records = j.design.records.filter(
        (r) => !['top', 'lipping', 'upright', 'left', 'right', 'shelf', 'shelves'].includes(String(r.id)),
      );
      lotOf(j, 'birch18').nominal = '3/4"';
      Object.assign(recordOf(j, 'inside'), { split: 'down' });
      for (const id of ['low', 'high']) j.design.records.push({ id, kind: 'opening', parent: 'inside' });
    });
    expect(inches.snags).toEqual([]);
    expect(mm(inches, 'low.width')).toBeCloseTo(48 * 25.4, 9);
    const [inner, outer] = edges(inches, 'case/right-side', 0);
    expect(inner / 25.4).toBeCloseTo(48.75, 9);
    expect(outer / 25.4).toBeCloseTo(49.5, 9);
  });
});

describe('mitres and rabbets', () => {
  test('a mitred strip is measured at its long point: short 20, width 2.5, both ends 45 degrees, long 25 (geometry)', () => {
    const piece = setOutWith((j) => {
      j.shop.units = 'in';
      Object.assign(recordOf(j, 'cupboard'), { width: '60', height: '40', depth: '30' });
      Object.assign(recordOf(j, 'top'), { edging: 'wide', edgedSides: 'all-round', overhangSides: '3"' });
      Object.assign(recordOf(j, 'cupboard'), { width: '25' });
      j.shop.rack.lots.push({
        ...lotOf(j, 'ash18'),
        id: 'wide',
        nominal: '2.5',
        stock: [{ id: 'wide-length', length: '90' }],
      });
    });
    const front = part(piece, 'top/top edging-front');
    expect(toMm(piece.ledger.ticks(front.length)) / 25.4).toBe(25);
    expect(
      front.features.filter((f) => f.kind === 'bevel').map((f) => [f.edge, f.angle, f.fullFace]),
    ).toEqual([
      ['start', 45, 'show'],
      ['end', 45, 'show'],
    ]);
    const [, left] = edges(piece, 'top/top edging-left', 0);
    const [right] = edges(piece, 'top/top edging-right', 0);
    expect((right - left) / 25.4).toBeCloseTo(20, 9);
  });

  test('a strip that ends alone is square there', () => {
    const left = part(plain, 'top/top edging-left');
    expect(left.features.filter((f) => f.kind === 'bevel').map((f) => f.edge)).toEqual(['end']);
  });

  test('rabbets are two thirds of the side deep, as wide as the back is thick, on mirrored edges', () => {
    for (const [id, edge] of [
      ['case/left-side', 'far'],
      ['case/right-side', 'near'],
    ] as const) {
      const rabbet = part(plain, id).features.find((f) => f.kind === 'rabbet')!;
      if (rabbet.kind !== 'rabbet') throw new Error('no rabbet');
      const t = [rabbet.width, rabbet.depth, rabbet.from, rabbet.to].map((x) => toMm(plain.ledger.ticks(x)));
      expect(t).toEqual([6.5, 12, 0, 702]);
      expect([rabbet.edge, rabbet.face]).toEqual([edge, 'under']);
    }
    expect([part(plain, 'case/left-side').hand, part(plain, 'case/right-side').hand]).toEqual([
      'left',
      'right',
    ]);
    // Half a millimetre of room on each side of the back: 914 + 2 x 12 - 2 x 0.5.
    expect(edges(plain, 'back/back', 0)).toEqual([25 + 6 + 0.5, 975 - 6 - 0.5]);
    expect(edges(plain, 'back/back', 1)).toEqual([350 - 6.5, 350]);
  });
});

describe('screws', () => {
  test('no pocket screw comes within 3 mm of the far face, and each holds 9 mm or more (common practice)', () => {
    expect(plain.fasteners.length).toBeGreaterThan(20);
    for (const f of plain.fasteners) {
      const mate = part(plain, f.through.at(-1)!);
      const t = (x: Parameters<typeof plain.ledger.ticks>[0]) => toMm(plain.ledger.ticks(x));
      expect(t(f.holds), f.id).toBeGreaterThanOrEqual(9);
      expect(t(f.spare), f.id).toBeGreaterThanOrEqual(3);
      if (f.lean) expect(t(f.holds) + 3, f.id).toBeLessThanOrEqual(t(mate.thickness));
    }
  });

  test('screws into an edge are in its middle, within 1 mm, piloted, with a clearance hole outside', () => {
    const edgeScrews = plain.fasteners.filter((f) => !f.lean);
    expect(edgeScrews.length).toBeGreaterThan(5);
    for (const f of edgeScrews) {
      const [outer, mate] = f.through as [string, string];
      const upright = part(plain, mate).place.length === '+z';
      const [low, high] = edges(plain, mate, upright ? 0 : 2);
      const line = toMm(plain.ledger.ticks(f.head[upright ? 0 : 2]));
      expect(Math.abs(line - (low + high) / 2), f.id).toBeLessThanOrEqual(1);
      const n = Number(f.id.split(':').at(-1));
      const pilot = part(plain, mate).features.find((x) => x.id === `${mate}#${outer}:${n}`);
      const clear = part(plain, outer).features.find((x) => x.id === `${outer}#${mate}:${n}`);
      if (pilot?.kind !== 'hole' || clear?.kind !== 'hole') throw new Error(`no holes for ${f.id}`);
      expect([pilot.use, clear.use]).toEqual(['pilot', 'clearance']);
      const [thin, wide, screw] = [pilot.diameter, clear.diameter, f.diameter].map((t) =>
        plain.ledger.ticks(t),
      );
      expect(thin!).toBeLessThan(screw!);
      expect(wide!).toBeGreaterThan(screw!);
    }
  });

  test('equal shelves on both sides of an upright have screws that don’t meet', () => {
    const piece = setOutWith((j) => {
      delete recordOf(j, 'shelf').at;
      recordOf(j, 'shelf').count = 2;
    });
    expect(piece.snags).toEqual([]);
    const from = (side: string) =>
      piece.fasteners
        .filter((f) => f.through[0]!.startsWith(side) && f.through[1] === 'upright/divider')
        .map((f) => toMm(piece.ledger.ticks(f.head[1])));
    // Two shelves on each side, at the same heights: a screw of one side stands 6 mm beside one of the other.
    expect(from('shelves/')).toEqual([80, 280, 80, 280]);
    expect(from('shelf/')).toEqual([74, 274, 74, 274]);
  });

  test('a longer screw is taken only where it fits both boards, one that is on the rack before one to buy', () => {
    const screws = (change: (job: PlainJob) => void) => [
      ...new Set(
        setOutWith(change)
          .fasteners.filter((f) => f.lean)
          .map((f) => f.screw),
      ),
    ];
    const add = (j: PlainJob, mmLong: number, have?: number) =>
      j.shop.rack.screws.push({
        id: `pocket-${mmLong}`,
        kind: 'pocket',
        length: `${mmLong} mm`,
        diameter: '4 mm',
        head: '9 mm',
        ...(have === undefined ? {} : { have }),
      });
    expect(screws((j) => add(j, 38))).toEqual(['pocket-32']);
    expect(screws((j) => add(j, 33))).toEqual(['pocket-33']);
    expect(screws((j) => add(j, 30, 50))).toEqual(['pocket-30']);
  });
});

describe('why', () => {
  test('a shelf’s length rests on the width, the overhang and the measured boards', () => {
    const t = plain.dimensions.get('shelf in right.length')!;
    expect(
      leavesOf(plain.ledger.data(), t)
        .map((leaf) => leaf.id)
        .sort(),
    ).toEqual([
      'design/records/cupboard/width',
      'design/records/top/overhangSides',
      'shop/rack/lots/birch18/nominal',
    ]);
    const lines = explain(plain.ledger, t, { unit: 'mm', step: 0.5 });
    expect(lines[0]).toMatch(/^448 mm {2}an equal share/);
    expect(lines.join('\n')).toContain('typed as 1000 mm at design/records/cupboard/width');
  });

  test('a width that doesn’t matter is no reason: the height of the sides', () => {
    const ids = leavesOf(plain.ledger.data(), plain.dimensions.get('left side.length')!).map(
      (leaf) => leaf.id,
    );
    expect(ids.sort()).toEqual([
      'design/records/base/height',
      'design/records/cupboard/height',
      'shop/rack/lots/birch18/nominal',
    ]);
  });
});

test('a base too low for pockets is screwed down through the bottom, where the list has a screw for it', () => {
  const piece = setOutWith((j) => {
    Object.assign(recordOf(j, 'base'), { height: '45 mm' });
    j.shop.rack.screws.push({
      id: 'flat-50',
      kind: 'countersunk',
      length: '50 mm',
      diameter: '4 mm',
      head: '8 mm',
    });
  });
  expect(piece.snags.map((s) => [s.code, s.level, s.where.path])).toEqual([
    ['pockets.through-instead', 'note', 'design/records/base'],
  ]);
  const held = piece.joints.filter((j) => j.duty === 'base');
  expect(held.length).toBeGreaterThanOrEqual(2);
  for (const joint of held) {
    expect(part(piece, joint.part).role).toBe('bottom');
    expect(joint.fasteners.length).toBeGreaterThan(0);
  }
});

describe('what can’t be made is told, with the field to change', () => {
  test.each<[string, (job: PlainJob) => void, ...string[]]>([
    [
      'a piece too low for its base and top',
      (j) => Object.assign(recordOf(j, 'cupboard'), { height: '90 mm' }),
      'case.no-inside design/records/cupboard/height',
    ],
    [
      'an overhang wider than the piece',
      (j) => Object.assign(recordOf(j, 'top'), { overhangSides: '500 mm' }),
      'case.no-inside design/records/cupboard/width',
    ],
    [
      'fixed openings that leave something over',
      (j) => {
        recordOf(j, 'left').size = '400 mm';
        recordOf(j, 'right').size = '400 mm';
      },
      'openings.do-not-add-up design/records/inside/split',
    ],
    [
      'a fixed opening that takes all',
      (j) => {
        recordOf(j, 'left').size = '896 mm';
      },
      'openings.no-room design/records/inside/split',
    ],
    [
      'openings that share a single tick',
      (j) => {
        j.design.records.push({ id: 'third', kind: 'opening', parent: 'inside', size: '877.9997 mm' });
        j.design.records.push({ id: 'upright2', kind: 'divider', parent: 'inside' });
      },
      'openings.no-room design/records/inside/split',
    ],
    [
      'more shelves than fit',
      (j) => {
        recordOf(j, 'shelves').count = 38;
      },
      'shelves.no-room design/records/shelves/count',
    ],
    [
      'a shelf above its opening',
      (j) => {
        recordOf(j, 'shelf').at = '670 mm';
      },
      'shelves.no-room design/records/shelf/at',
    ],
    [
      'a shelf set back by all of its depth',
      (j) => {
        recordOf(j, 'shelf').setback = '350 mm';
      },
      'shelves.no-depth design/records/shelf/setback',
    ],
    [
      'two shelves in one place',
      (j) => {
        j.design.records.push({ id: 'again', kind: 'shelf', parent: 'right', at: '310 mm' });
      },
      'pockets.through-instead design/records/again',
      'screws.none-for-face design/records/again',
      'parts.same-space design/records/shelf',
      'parts.same-space design/records/lipping',
    ],
    [
      'a base that is set back until its strips meet',
      (j) => Object.assign(recordOf(j, 'base'), { setback: '170 mm' }),
      'base.no-room design/records/base/setback',
    ],
    [
      'edging narrower than the board',
      (j) => {
        lotOf(j, 'ash6').width = '12 mm';
      },
      'edging.too-narrow design/records/lipping/strip',
    ],
    [
      'a piece too wide for its place',
      (j) => Object.assign(recordOf(j, 'cupboard'), { spaceWidth: '990 mm' }),
      'piece.too-large-for-its-place design/records/cupboard/width',
    ],
    [
      'a base so low that its pockets run out below',
      (j) => Object.assign(recordOf(j, 'base'), { height: '45 mm' }),
      'pockets.no-room design/records/base',
    ],
    [
      'a side under the top’s edging',
      (j) => Object.assign(recordOf(j, 'top'), { overhangSides: '5 mm' }),
      'top.edging-over-side design/records/top/overhangSides',
      'top.edging-over-side design/records/top/overhangSides',
    ],
    [
      'a side so far out that its screws would come out of the top’s board',
      (j) => Object.assign(recordOf(j, 'top'), { overhangSides: '14 mm' }),
      'top.edging-over-side design/records/top/overhangSides',
      'top.edging-over-side design/records/top/overhangSides',
    ],
    [
      'a flush top edged over its sides',
      (j) => {
        Object.assign(recordOf(j, 'top'), { fit: 'flush' });
        delete recordOf(j, 'top').overhangSides;
      },
      'top.edging-over-side design/records/top/fit',
      'top.edging-over-side design/records/top/fit',
    ],
  ])('%s', (_, change, ...expected) => {
    expect(stops(change)).toEqual(expected);
  });

  test('a base under the sides, where it can’t be screwed up', () => {
    expect(
      stops((j) => Object.assign(recordOf(j, 'base'), { setback: '0 mm', setbackBack: '200 mm' })),
    ).not.toEqual([]);
  });

  test('a board too thin for pockets takes none, though a screw would hold in its mate (12 mm, common practice)', () => {
    const codes = (thickness: string) =>
      stops((j) => {
        lotOf(j, 'birch6').nominal = thickness;
        recordOf(j, 'shelf').board = 'birch6';
        recordOf(j, 'back').board = 'birch18';
        j.design.records = j.design.records.filter((r) => r.id !== 'back');
        for (const n of [20, 22, 24]) {
          const size = { length: `${n} mm`, diameter: '4 mm', head: '9 mm' };
          j.shop.rack.screws.push({ id: `pocket-${n}`, kind: 'pocket', ...size });
        }
      });
    expect(codes('12 mm')).toEqual([]);
    expect(codes('11.9 mm')).toEqual(['screws.none-fits design/records/shelf']);
  });

  test('no screw on the list: said once for each record, and nothing is left out', () => {
    const piece = setOutWith((j) => {
      j.shop.rack.screws = [];
    });
    const codes = piece.snags.map((s) => s.code);
    expect(codes).toContain('screws.none-fits');
    expect(codes).toContain('screws.none-for-edge');
    expect(piece.fasteners).toEqual([]);
    expect(piece.parts).toHaveLength(plain.parts.length);
    const records = piece.snags.filter((s) => s.code === 'screws.none-fits').map((s) => s.where.record);
    expect(new Set(records).size).toBe(records.length);
  });
});
