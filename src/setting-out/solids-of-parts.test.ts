import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { generatedJobs } from '../../test/generate/design.ts';
import { axisOfScrew } from '../../test/generate/judge-set-out.ts';
import { openSolids } from '../adaptors/solids-manifold.ts';
import { checkJob, readJob } from '../job/index.ts';
import { density, pocketShape } from '../materials/index.ts';
import { type Traced, toMm } from '../measure/index.ts';
import { type Body, massOf, massTogether, type Point, type Solids } from '../solid/index.ts';
import {
  axisOf,
  boxTicks,
  type Feature,
  type Joint,
  type Part,
  type SetOut,
  setOut,
  shapeOf,
} from './index.ts';

let solids: Solids;
beforeAll(async () => {
  solids = await openSolids();
});

const EXAMPLES = new URL('../../examples/', import.meta.url);
const examples = readdirSync(EXAMPLES)
  .filter((name) => name.endsWith('.json'))
  .map((name) => ({ name, text: readFileSync(new URL(name, EXAMPLES), 'utf8') }));

function setOutText(text: string): SetOut {
  const read = readJob(text);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  return setOut(read.job);
}

function boxMm(piece: SetOut, part: Part): { min: Point; max: Point } {
  const origin = part.place.origin.map((t) => toMm(piece.ledger.ticks(t)));
  const [min, max] = [[...origin], [...origin]];
  for (const run of ['length', 'width', 'thickness'] as const) {
    const { axis, sign } = axisOf(part.place[run]);
    const size = toMm(piece.ledger.ticks(part[run]));
    if (sign > 0) max[axis]! += size;
    else min[axis]! -= size;
  }
  return { min: min as never, max: max as never };
}

/** Pairs of parts that share more than a thousandth of a cubic millimetre, with how much. */
function overlaps(piece: SetOut): string[] {
  return solids.within(() => {
    const bodies = piece.parts.map((part) => ({
      part,
      box: boxMm(piece, part),
      body: solids.make(shapeOf(piece, part)),
    }));
    const found: string[] = [];
    bodies.forEach((a, i) => {
      for (const b of bodies.slice(i + 1)) {
        if (a.box.min.some((v, k) => v >= b.box.max[k]!) || b.box.min.some((v, k) => v >= a.box.max[k]!))
          continue;
        const shared = a.body.common(b.body).volume();
        if (shared > 0.001) found.push(`${a.part.id} and ${b.part.id}: ${shared} mm³`);
      }
    });
    return found;
  });
}

const PUSH = 1 / 64;
/** A step of a router in inches, 1/64", which the width of a rabbet is rounded up by at most. */
const HAIR = 0.4;

/** The area, mm², on which two parts touch: one is pushed into the other by a hair, and what they then share measured. */
function touching(piece: SetOut, joint: Joint): number {
  const part = piece.parts.find((p) => p.id === joint.part)!;
  const mate = piece.parts.find((p) => p.id === joint.mate)!;
  const push = outward(part, joint.side).map((c) => c * (PUSH + clearOf(piece, joint))) as unknown as Point;
  return solids.within(() => {
    const make = (p: Part): Body => solids.make(shapeOf(piece, p, { fastenerHoles: false }));
    const pushed = make(part).moved({ origin: push, x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] });
    return pushed.common(make(mate)).volume() / PUSH;
  });
}

/** How far a back stays clear of the shoulders of its rabbets: it lies against the panels inside, and these must not stop it before. */
function clearOf(piece: SetOut, joint: Joint): number {
  const mate = piece.parts.find((p) => p.id === joint.mate)!;
  const rabbet = mate.features.find((f) => f.kind === 'rabbet' && f.id === `${mate.id}#back`);
  if (joint.kind !== 'rabbet' || rabbet?.kind !== 'rabbet') return 0;
  const clear = backEdge(piece, mate) - toMm(piece.ledger.ticks(rabbet.width));
  const gap = toMm(piece.ledger.ticks(joint.contact.min[1])) - clear;
  return gap > 0 && gap < HAIR ? gap : 0;
}

/** Where a panel ends at the back of the piece. */
function backEdge(piece: SetOut, part: Part): number {
  return boxMm(piece, part).max[1];
}

function outward(part: Part, side: Joint['side']): Point {
  const [run, sign] = (
    {
      start: ['length', -1],
      end: ['length', 1],
      near: ['width', -1],
      far: ['width', 1],
      under: ['thickness', -1],
      show: ['thickness', 1],
    } as const
  )[side];
  const d = axisOf(part.place[run]);
  return [0, 1, 2].map((k) => (k === d.axis ? sign * d.sign : 0)) as unknown as Point;
}

/** The area a joint states as a rectangle, less what the part's own mitres and rabbets take off its edge. */
function stated(piece: SetOut, joint: Joint): number {
  const { min, max } = boxTicks(piece.ledger, joint.contact);
  const spans = min.map((v, k) => toMm(max[k]! - v));
  const part = piece.parts.find((p) => p.id === joint.part)!;
  const mm = (t: Traced) => toMm(piece.ledger.ticks(t));
  if (joint.kind === 'mitre') {
    // Seen along the push: both slopes lie one on the other there.
    const push = outward(part, joint.side);
    return (
      spans.reduce((area, s, k) => (push[k] === 0 ? area * s : area), 1) - offSlope(part, joint.side, mm)
    );
  }
  const area = spans.filter((s) => s > 0).reduce((a, b) => a * b, 1);
  const bevels = cornersOff(part, joint.side);
  const along = part.features.filter((f) => f.kind === 'rabbet' && (f.edge === 'near' || f.edge === 'far'));
  const rabbets = joint.side === 'end' || joint.side === 'start' ? along : [];
  const corner = rabbets.reduce((sum, f) => sum + (f.kind === 'rabbet' ? mm(f.width) * mm(f.depth) : 0), 0);
  // The shoulder of a notch that is no longer than the dado is deep rests on the mate's face, before the end of the stopped dado.
  const shoulder = part.features.find((f) => f.kind === 'notch' && f.id === `${part.id}#${joint.mate}`);
  const meets = shoulder?.kind === 'notch' && joint.letIn && mm(shoulder.length) === mm(joint.letIn.depth);
  const rests = meets ? mm(shoulder.width) * mm(part.thickness) : 0;
  return (
    area +
    rests -
    (bevels * mm(part.thickness) ** 2) / 2 -
    ofMitredBase(piece, joint) -
    corner -
    runOut(piece, joint) -
    crossing(piece, joint) -
    slotted(piece, joint) -
    behindShoulder(piece, joint)
  );
}

/** What slots for moving screws take off the face they go through. */
function slotted(piece: SetOut, joint: Joint): number {
  const part = piece.parts.find((p) => p.id === joint.part)!;
  const mm = (t: Traced) => toMm(piece.ledger.ticks(t));
  return part.features.reduce((sum, f) => {
    if (f.kind !== 'slot' || !f.id.startsWith(`${part.id}#${joint.mate}:`)) return sum;
    return sum + (mm(f.length) - mm(f.width)) * mm(f.width) + (Math.PI * mm(f.width) ** 2) / 4;
  }, 0);
}

/** What rabbets along a panel take off the slope of its end, seen along the panel: as deep as they run into it. */
function offSlope(part: Part, side: Joint['side'], mm: (t: Traced) => number): number {
  return part.features.reduce((sum, f) => {
    if (f.kind !== 'rabbet' || (f.edge !== 'near' && f.edge !== 'far')) return sum;
    // So far from the tip; at that depth under the inner face the slope lies as far in.
    const stops = side === 'start' ? mm(f.from) : mm(part.length) - mm(f.to);
    return sum + mm(f.width) * Math.max(0, Math.min(mm(f.depth), mm(part.thickness) - stops));
  }, 0);
}

/**
 * What a mate's rabbet for a back takes off the face that an end meets, where the router’s step makes it a hair wider than
 * the back is thick.
 */
function behindShoulder(piece: SetOut, joint: Joint): number {
  const mate = piece.parts.find((p) => p.id === joint.mate)!;
  const mm = (t: Traced) => toMm(piece.ledger.ticks(t));
  const { min, max } = boxTicks(piece.ledger, joint.contact);
  const back = mate.features.find((f) => f.kind === 'rabbet' && f.id === `${mate.id}#back`);
  if (back?.kind !== 'rabbet' || joint.duty === 'back' || max[1] === min[1]) return 0;
  const over = toMm(max[1]) - (backEdge(piece, mate) - mm(back.width));
  const deep = Math.min(...min.map((v, k) => toMm(max[k]! - v)).filter((s) => s > 0));
  return over > 0 && over < HAIR ? over * deep : 0;
}

/** How many corners of a side slopes take off: of a long edge those of its ends, of an end those of its long edges. */
function cornersOff(part: Part, side: Joint['side']): number {
  const beside: readonly string[] =
    side === 'far' ? ['start', 'end'] : side === 'start' || side === 'end' ? ['near', 'far'] : [];
  return part.features.filter((f) => f.kind === 'bevel' && beside.includes(f.edge)).length;
}

/** What the mitres of a base take off where a case stands on it: those of its corners that are under that case. */
function ofMitredBase(piece: SetOut, joint: Joint): number {
  const mate = piece.parts.find((p) => p.id === joint.mate)!;
  if (joint.duty !== 'base' || joint.mateSide !== 'far') return 0;
  const { min, max } = boxTicks(piece.ledger, joint.contact);
  const { axis, sign } = axisOf(mate.place.length);
  const start = piece.ledger.ticks(mate.place.origin[axis]);
  const end = start + sign * piece.ledger.ticks(mate.length);
  const under = mate.features.filter((f) => {
    if (f.kind !== 'bevel' || (f.edge !== 'start' && f.edge !== 'end')) return false;
    const at = f.edge === 'start' ? start : end;
    return at === min[axis] || at === max[axis];
  });
  return (under.length * toMm(piece.ledger.ticks(mate.thickness)) ** 2) / 2;
}

/** What grooves along a part take off the end that they run out at. */
function runOut(piece: SetOut, joint: Joint): number {
  const part = piece.parts.find((p) => p.id === joint.part)!;
  const mm = (t: Traced) => toMm(piece.ledger.ticks(t));
  return part.features.reduce((sum, f) => {
    if (f.kind !== 'groove' || (f.edge !== 'near' && f.edge !== 'far')) return sum;
    const out =
      joint.side === 'start' ? mm(f.from) === 0 : joint.side === 'end' && mm(f.to) === mm(part.length);
    return out ? sum + mm(f.width) * mm(f.depth) : sum;
  }, 0);
}

/** What channels across a mate take off the face that a back lies on: each its width by its depth. */
function crossing(piece: SetOut, joint: Joint): number {
  if (joint.duty !== 'back') return 0;
  const { min, max } = boxTicks(piece.ledger, joint.contact);
  const mm = (t: Traced) => toMm(piece.ledger.ticks(t));
  const narrow = Math.min(...min.map((v, k) => toMm(max[k]! - v)).filter((s) => s > 0));
  const mate = piece.parts.find((p) => p.id === joint.mate)!;
  const { axis } = axisOf(mate.place.length);
  const from = mm(mate.place.origin[axis]);
  const [low, high] = [toMm(min[axis]!) - from, toMm(max[axis]!) - from];
  return mate.features.reduce((sum, f) => {
    if ((f.kind !== 'groove' && f.kind !== 'rabbet') || (f.edge !== 'start' && f.edge !== 'end')) return sum;
    // A mortise for a button ends within the panel.
    if (mm(f.from) > 0 && mm(f.to) < mm(mate.width)) return sum;
    const inset = f.kind === 'groove' ? mm(f.inset) : 0;
    const begins = f.edge === 'start' ? inset : mm(mate.length) - inset - mm(f.width);
    const wide = Math.min(high, begins + mm(f.width)) - Math.max(low, begins);
    return sum + Math.max(0, wide) * Math.min(mm(f.depth), narrow);
  }, 0);
}

describe.each(examples)('the parts of $name as solids', ({ text }) => {
  const piece = setOutText(text);

  test('sets out without a snag', () => {
    expect(piece.snags).toEqual([]);
  });

  test('no two parts overlap, mitred corners included', () => {
    expect(overlaps(piece)).toEqual([]);
  });

  test('each is one body, in its box', () => {
    for (const part of piece.parts)
      solids.within(() => {
        const body = solids.make(shapeOf(piece, part));
        expect(body.pieces(), part.id).toHaveLength(1);
        const bounds = body.bounds()!;
        const box = boxMm(piece, part);
        for (const k of [0, 1, 2]) {
          expect(bounds.min[k], part.id).toBeCloseTo(box.min[k]!, 6);
          expect(bounds.max[k], part.id).toBeCloseTo(box.max[k]!, 6);
        }
      });
  });

  test('the mating faces of every joint touch over the area it states', () => {
    expect(piece.joints.length).toBeGreaterThan(10);
    for (const joint of piece.joints)
      expect(touching(piece, joint) / stated(piece, joint), joint.id).toBeCloseTo(1, 3);
  });

  test('every screw lies in the hole that is cut for it, and its thread in wood', () => {
    expect(piece.fasteners.length).toBeGreaterThan(10);
    solids.within(() => {
      const bodies = new Map(piece.parts.map((p) => [p.id, solids.make(shapeOf(piece, p))]));
      for (const f of piece.fasteners) {
        const [head, tip] = axisOfScrew(piece, f).map((p) => p.map(toMm) as unknown as Point) as [
          Point,
          Point,
        ];
        const length = toMm(piece.ledger.ticks(f.length));
        const joint = piece.joints.find((j) => j.id === f.joint)!;
        const k = 'xyz'.indexOf(f.direction[1]!);
        const plane = toMm(piece.ledger.ticks(joint.contact.min[k]!));
        const enters = (length * (plane - head[k]!)) / (tip[k]! - head[k]!);
        const inWood = (part: string, from: number) => {
          const at = head.map((h, i) => h + (from / length) * (tip[i]! - h));
          const [min, max] = [-0.1, 0.1].map((d) => at.map((v) => v + d) as unknown as Point) as [
            Point,
            Point,
          ];
          return solids.make({ kind: 'box', min, max }).common(bodies.get(part)!).volume() > 0.004;
        };
        const [first, last] = f.through as [string, string];
        expect(inWood(first, 0.5), `${f.id}, under its head`).toBe(false);
        expect(inWood(first, enters - 0.5), `${f.id}, before the joint`).toBe(false);
        // A pocket screw cuts its own way; one into an edge has a pilot hole as deep as it goes.
        expect(inWood(last, enters + 0.5), `${f.id}, behind the joint`).toBe(f.lean !== undefined);
        expect(inWood(last, length + 0.5), `${f.id}, beyond its tip`).toBe(true);
      }
    });
  });

  test('together they fill the overall size, to the tick', () => {
    solids.within(() => {
      // Handles stand out before what was asked for.
      const handles = new Set(piece.joints.filter((j) => j.duty === 'handle').map((j) => j.mate));
      const boxes = piece.parts
        .filter((p) => !handles.has(p.id))
        .map((p) => solids.make(shapeOf(piece, p)).bounds()!);
      const { width, height, depth } = piece.overall;
      const ends = (end: 'min' | 'max', of: (...at: number[]) => number) =>
        [0, 1, 2].map((k) => of(...boxes.map((b) => b[end][k]!)));
      // On levellers the lowest wood stands as high as they are set by the drawing.
      const [leveller] = piece.levellers;
      const foot = leveller ? toMm(piece.ledger.ticks(leveller.height)) : 0;
      expect(ends('min', Math.min)).toEqual([0, 0, foot]);
      expect(ends('max', Math.max)).toEqual([width, depth, height].map((t) => toMm(piece.ledger.ticks(t))));
    });
  });

  test('mass and balance are those of the boxes, but for what is cut away', () => {
    const job = readJob(text);
    if (!job.ok) throw new Error('unreadable');
    const heavy = piece.parts.map((part) => {
      const lot = job.job.shop.rack.lots.find((l) => l.id === part.lot)!;
      return { part, box: boxMm(piece, part), kgM3: density(lot.material)!.kgM3 };
    });
    let kg = 0;
    const moment = [0, 0, 0];
    for (const { box, kgM3 } of heavy) {
      const mass = box.max.reduce((v, m, k) => v * (m - box.min[k]!), kgM3 / 1e9);
      kg += mass;
      for (const k of [0, 1, 2]) moment[k]! += (mass * (box.min[k]! + box.max[k]!)) / 2;
    }
    const found = solids.within(() =>
      massTogether(heavy.map((h) => massOf({ body: solids.make(shapeOf(piece, h.part)), density: h.kgM3 }))),
    );
    // Rabbets, mitres and pockets take off a little, never as much as a thirtieth.
    expect(found.kg).toBeLessThan(kg);
    expect(found.kg).toBeGreaterThan(kg * (29 / 30));
    for (const k of [0, 1, 2]) expect(Math.abs(found.centre[k]! - moment[k]! / kg)).toBeLessThan(5);
  });
});

describe('one part', () => {
  const piece = setOutText(examples.find((e) => e.name === 'glaze-cabinet.json')!.text);
  const volume = (part: Part, options = {}) =>
    solids.within(() => solids.make(shapeOf(piece, part, options)).volume());
  const mm = (part: Part) =>
    [part.length, part.width, part.thickness].map((t) => toMm(piece.ledger.ticks(t)));
  const named = (id: string) => piece.parts.find((p) => p.id === id)!;

  test('a side loses the rabbet: its width by its depth by its length', () => {
    const side = named('case/left-side');
    const rabbet = side.features.find((f) => f.kind === 'rabbet')!;
    const [length, width, thickness] = mm(side) as [number, number, number];
    const cut = toMm(piece.ledger.ticks(rabbet.width)) * toMm(piece.ledger.ticks(rabbet.depth));
    expect(volume(side, { fastenerHoles: false })).toBeCloseTo(length * (width * thickness - cut), 2);
  });

  test('a strip mitred at both ends has the volume of its mean length', () => {
    const strip = named('base/base-front');
    const [length, width, thickness] = mm(strip) as [number, number, number];
    expect(volume(strip, { fastenerHoles: false })).toBeCloseTo((length - thickness) * width * thickness, 2);
  });

  test('a pocket leaves the face at its mouth and ends at the middle of the edge', () => {
    const shelf = named('jars1/shelf:1');
    const [, , thickness] = mm(shelf) as [number, number, number];
    const pocket = pocketShape(thickness);
    const first = shelf.features.find((f) => f.kind === 'pocket' && f.edge === 'start')!;
    if (first.kind !== 'pocket') throw new Error('no pocket');
    const along = toMm(piece.ledger.ticks(first.along));
    const box = boxMm(piece, shelf);
    // The shelf's under face looks down; probes of a tenth of a millimetre stand in the wood or in the pocket.
    const wood = (inward: number, up: number) =>
      solids.within(() => {
        const at: Point = [box.min[0] + inward, box.min[1] + along, box.min[2] + up];
        const probe = solids.make({
          kind: 'box',
          min: at.map((v) => v - 0.05) as never,
          max: at.map((v) => v + 0.05) as never,
        });
        return probe.common(solids.make(shapeOf(piece, shelf))).volume() > 0.0005;
      });
    expect(wood(0.1, thickness / 2)).toBe(false);
    expect(wood(0.1, thickness / 2 + 2.3)).toBe(true);
    expect(wood(pocket.mouth - 0.5, 0.06)).toBe(false);
    expect(wood(pocket.mouth + 0.5, 0.06)).toBe(true);
    // The seat stands one thickness back along the axis: wood before it, beside the shank; air behind.
    const [c, s] = [Math.cos(Math.PI / 12), Math.sin(Math.PI / 12)];
    const beside = (along: number) => [along * c + 3 * s, thickness / 2 - along * s + 3 * c] as const;
    expect(wood(...beside(thickness - 0.5))).toBe(true);
    expect(wood(...beside(thickness + 0.5))).toBe(false);
  });

  test('a hole into a rabbeted edge is as deep as it says, from the floor of the rabbet', () => {
    const side = named('case/left-side');
    const rabbet = side.features.find((f) => f.kind === 'rabbet')!;
    if (rabbet.kind !== 'rabbet') throw new Error('no rabbet');
    const hole: Feature = {
      kind: 'hole',
      use: 'pilot',
      id: 'hole',
      purpose: 'a test',
      side: rabbet.edge,
      at: [side.width, rabbet.width],
      diameter: rabbet.width,
      depth: rabbet.depth,
    };
    const taken = volume({ ...side, features: [rabbet] }) - volume({ ...side, features: [rabbet, hole] });
    const [radius, depth] = [
      toMm(piece.ledger.ticks(rabbet.width)) / 2,
      toMm(piece.ledger.ticks(rabbet.depth)),
    ];
    expect(taken).toBeCloseTo(Math.PI * radius ** 2 * depth, 1);
  });

  test('a pilot hole square to a plain edge is as deep as it says', () => {
    const bottom = named('case/bottom');
    const pilot = bottom.features.find((f) => f.kind === 'hole')!;
    if (pilot.kind !== 'hole') throw new Error('no hole');
    const taken = volume({ ...bottom, features: [] }) - volume({ ...bottom, features: [pilot] });
    const radius = toMm(piece.ledger.ticks(pilot.diameter)) / 2;
    expect(taken).toBeCloseTo(Math.PI * radius ** 2 * toMm(piece.ledger.ticks(pilot.depth!)), 1);
  });

  test('a countersunk hole takes off its bore and the cone round it', () => {
    const back = named('back/back');
    const hole = back.features.find((f) => f.kind === 'hole')!;
    if (hole.kind !== 'hole') throw new Error('no hole');
    const taken = volume({ ...back, features: [] }) - volume({ ...back, features: [hole] });
    const [r, R] = [hole.diameter, hole.countersink!].map((t) => toMm(piece.ledger.ticks(t)) / 2) as [
      number,
      number,
    ];
    const sink = R - r;
    const cone = (Math.PI * sink * (R * R + R * r + r * r)) / 3;
    const thickness = mm(back)[2]!;
    expect(taken).toBeCloseTo(cone + Math.PI * r * r * (thickness - sink), 1);
  });
});

test('in generated designs no two parts overlap', () => {
  fc.assert(
    fc.property(generatedJobs, ({ document }) => {
      const read = checkJob(document);
      if (!read.ok) throw new Error('refused');
      const piece = setOut(read.job);
      fc.pre(piece.snags.length === 0);
      expect(overlaps(piece)).toEqual([]);
    }),
    { numRuns: 12, seed: 7 },
  );
});
