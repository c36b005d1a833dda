import { describe, expect, test } from 'vitest';
import { type PlainJob, recordOf, smallJob } from '../../../test/generate/small-job.ts';
import { checkJob } from '../../job/index.ts';
import { explain, type Traced, toMm } from '../../measure/index.ts';
import type { Groove } from '../feature.ts';
import type { SetOut } from '../set-out.ts';
import { setOut } from '../set-out-job.ts';

function setOutWith(change: (job: PlainJob) => void): SetOut {
  const job = smallJob();
  change(job);
  const read = checkJob(job);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  return setOut(read.job);
}

const joined = (joints: string, more: (job: PlainJob) => void = () => {}) =>
  setOutWith((job) => {
    recordOf(job, 'case').joints = joints;
    more(job);
  });
const part = (piece: SetOut, id: string) => piece.parts.find((p) => p.id === id)!;
const mm = (piece: SetOut, t: Traced) => toMm(piece.ledger.ticks(t));
const grooves = (piece: SetOut, id: string) =>
  part(piece, id).features.filter((f): f is Groove => f.kind === 'groove');

describe('panels let into dados', () => {
  const plain = joined('pocket-screws');
  const dado = joined('dado');

  test('the case sets out without a snag', () => {
    expect(dado.snags).toEqual([]);
  });

  test('a dado is a third of an 18 mm board deep, and up to 0.13 mm wider than what goes in (common practice)', () => {
    for (const g of grooves(dado, 'case/left-side')) {
      expect(mm(dado, g.depth)).toBe(6);
      expect(mm(dado, g.width)).toBeGreaterThan(18);
      expect(mm(dado, g.width)).toBeLessThanOrEqual(18.13);
    }
    expect(grooves(dado, 'case/left-side')).toHaveLength(2);
    expect(grooves(dado, 'case/bottom')).toHaveLength(1);
  });

  test('a shelf is longer by both depths, an upright by the one below it: the clear sizes stay', () => {
    const longer = (id: string) => mm(dado, part(dado, id).length) - mm(plain, part(plain, id).length);
    expect(longer('shelves/shelf:1')).toBe(12);
    expect(longer('upright/divider')).toBe(6);
    expect(longer('case/bottom')).toBe(18);
    expect(dado.openings.map((o) => mm(dado, o.width))).toEqual(
      plain.openings.map((o) => mm(plain, o.width)),
    );
  });

  test('the lower wall of a dado stands where the shelf does', () => {
    const shelf = part(dado, 'shelves/shelf:1');
    const side = part(dado, 'case/left-side');
    const [first] = grooves(dado, 'case/left-side');
    const above = mm(dado, shelf.place.origin[2]) - mm(dado, side.place.origin[2]);
    expect(mm(dado, first!.inset)).toBe(above);
  });

  test('no pocket is bored in a shelf, and the joint says what it leaves', () => {
    expect(part(dado, 'shelves/shelf:1').features).toEqual([]);
    const joint = dado.joints.find((j) => j.id === 'shelves/shelf:1>case/left-side')!;
    expect(joint).toMatchObject({ kind: 'dado', hold: 'glue', fasteners: [] });
    expect(mm(dado, joint.letIn!.sideways)).toBe(0.1);
  });

  test('the bottom lies in rabbets half the board deep (common practice: half to two thirds)', () => {
    const joint = dado.joints.find((j) => j.id === 'case/bottom>case/left-side')!;
    expect(joint.kind).toBe('rabbet');
    expect(mm(dado, joint.letIn!.depth)).toBe(9);
  });

  test('with rabbets at the corners only, shelves keep their pockets', () => {
    const piece = joined('rabbet');
    expect(piece.snags).toEqual([]);
    expect(piece.joints.filter((j) => j.kind === 'rabbet' && j.duty === 'carries')).toHaveLength(2);
    expect(part(piece, 'shelves/shelf:1').features.filter((f) => f.kind === 'pocket')).not.toEqual([]);
    expect(mm(piece, part(piece, 'shelves/shelf:1').length)).toBe(
      mm(plain, part(plain, 'shelves/shelf:1').length),
    );
  });

  test('a shelf that is set back has its dado begin there', () => {
    const piece = joined('dado', (job) => {
      recordOf(job, 'shelves').setback = '30 mm';
    });
    const [first] = grooves(piece, 'case/left-side');
    expect(mm(piece, first!.from)).toBe(30);
    expect(part(piece, 'shelves/shelf:1').features).toEqual([]);
  });

  test('edging of a shelf ends at its neighbours, not in them', () => {
    const strip = part(dado, 'lipping/on:shelves/shelf:1');
    const bay = dado.openings.find((o) => o.id === 'left')!;
    expect(dado.ledger.ticks(strip.length)).toBe(dado.ledger.ticks(bay.width));
    expect(strip.rough!.length).toBe(strip.length);
  });
});

describe('stopped dados', () => {
  const piece = joined('stopped-dado');

  test('end 10 to 12 mm behind the front (common practice), and the shelf is notched there', () => {
    const [first] = grooves(piece, 'case/left-side');
    expect(mm(piece, first!.from)).toBeGreaterThanOrEqual(10);
    expect(mm(piece, first!.from)).toBeLessThanOrEqual(12);
    const notches = part(piece, 'shelves/shelf:1').features.filter((f) => f.kind === 'notch');
    expect(notches.map((n) => [n.end, n.edge, mm(piece, n.length), mm(piece, n.width)])).toEqual([
      ['start', 'near', 6, 11],
      ['end', 'near', 6, 11],
    ]);
  });

  test('the right side is its mirror image: its dado begins at the back edge and stops before the front', () => {
    const side = part(piece, 'case/right-side');
    const [first] = grooves(piece, 'case/right-side');
    expect(mm(piece, first!.from)).toBe(0);
    expect(mm(piece, side.width) - mm(piece, first!.to)).toBe(11);
  });

  test('a shelf set back further than the stop needs no notch', () => {
    const set = joined('stopped-dado', (job) => {
      recordOf(job, 'shelves').setback = '15 mm';
    });
    expect(part(set, 'shelves/shelf:1').features).toEqual([]);
  });
});

describe('small cases that were found', () => {
  test('a notch is as large as it is marked, never smaller than the dado asks for', () => {
    const piece = joined('stopped-dado', (job) => {
      job.shop.units = 'in';
      job.shop.tools.push({ id: 'rule', kind: 'marking', accuracy: '1/64"', step: '1/32"' });
    });
    const [first] = part(piece, 'shelves/shelf:1').features.filter((f) => f.kind === 'notch');
    for (const [size, least] of [
      [first!.length, 6],
      [first!.width, 11],
    ] as const) {
      expect(mm(piece, size) % (25.4 / 32)).toBeCloseTo(0, 9);
      expect(mm(piece, size)).toBeGreaterThanOrEqual(least);
    }
  });

  test('a shelf set back by less than can be marked has its dado right through', () => {
    const piece = joined('dado', (job) => {
      recordOf(job, 'shelves').setback = '0.2 mm';
    });
    expect(mm(piece, grooves(piece, 'case/left-side')[0]!.from)).toBe(0);
  });
});

describe('a back in a groove', () => {
  const groove = (setIn?: string) =>
    setOutWith((job) => {
      recordOf(job, 'back').fitting = 'groove';
      if (setIn !== undefined) recordOf(job, 'back').setIn = setIn;
    });

  test('stands so far in from the back edge, and panels inside are that much less deep', () => {
    const [rabbet, grooved] = [setOutWith(() => {}), groove('12 mm')];
    expect(grooved.snags).toEqual([]);
    const depth = (piece: SetOut) => mm(piece, part(piece, 'case/bottom').width);
    expect(depth(rabbet) - depth(grooved)).toBe(12);
    const [first] = grooves(grooved, 'case/left-side');
    expect(mm(grooved, first!.inset)).toBeCloseTo(11.9, 9);
  });

  test('the groove is 6 to 9.5 mm deep in an 18 mm board (common practice: 1/4 to 3/8 in), at most half of it', () => {
    const [first] = grooves(groove(), 'case/left-side');
    const piece = groove();
    expect(mm(piece, first!.depth)).toBeGreaterThanOrEqual(6);
    expect(mm(piece, first!.depth)).toBeLessThanOrEqual(9);
  });

  test('too near the back edge it is refused', () => {
    expect(groove('4 mm').snags.map((s) => [s.code, s.where.path])).toEqual([
      ['back.no-lip', 'design/records/back/setIn'],
    ]);
  });
});

describe('joints that were not asked for', () => {
  const without = (kinds: readonly string[]) =>
    setOutWith((job) => {
      job.shop.tools = job.shop.tools.filter((t) => !kinds.includes(String(t.kind)));
    }).joinery[0]!;

  test('follow from the tools', () => {
    expect(without([])).toMatchObject({ joints: 'pocket-screws', because: 'the shop has a pocket-hole jig' });
    expect(without(['pocket-jig']).joints).toBe('dado');
    expect(without(['pocket-jig', 'router'])).toMatchObject({
      joints: 'face-screws',
      because: 'the shop has neither a pocket-hole jig nor a router',
    });
    expect(joined('dado').joinery).toEqual([{ record: 'case', joints: 'dado' }]);
  });

  test('follow from the tools, and the reasons of a shelf’s length say so', () => {
    const reasons = (piece: SetOut) =>
      explain(piece.ledger, part(piece, 'shelves/shelf:1').length, { unit: 'mm', step: 0.1 }).join('\n');
    const chosen = setOutWith((job) => {
      job.shop.tools = job.shop.tools.filter((t) => t.kind !== 'pocket-jig');
    });
    expect(reasons(chosen)).toContain('joined so because the shop has a router, and no pocket-hole jig');
    expect(reasons(joined('dado'))).not.toContain('because');
    expect(reasons(setOutWith(() => {}))).toContain(
      'panels butt there, joined by pocket screws because the shop has a pocket-hole jig',
    );
    expect(reasons(joined('pocket-screws'))).not.toContain('because');
  });
});
