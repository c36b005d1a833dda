import type { Traced } from '../../src/measure/index.ts';
import type { Fastener, Feature, Joint, Part, SetOut } from '../../src/setting-out/index.ts';

// A judge of what was set out. It shares no code with the room: it places parts, takes off their features and follows
// their screws by its own arithmetic, in ticks of 1/3200 mm.

const MM = 3200;
const POCKET_RADIUS = 4.75 * MM;

type Vec = readonly [number, number, number];
interface Box {
  readonly min: Vec;
  readonly max: Vec;
}

/** Everything that is wrong with a set-out piece of these overall sizes, in a few words each. */
export function faultsOf(
  setOut: SetOut,
  overall: { readonly width: number; readonly height: number; readonly depth: number },
): readonly string[] {
  return [
    ...sizes(setOut),
    ...names(setOut),
    ...boundingBox(setOut, overall),
    ...overlaps(setOut),
    ...setOut.parts.flatMap((part) => part.features.flatMap((f) => featureFaults(setOut, part, f))),
    ...setOut.fasteners.flatMap((f) => screwFaults(setOut, f)),
    ...screwsThatMeet(setOut),
    ...setOut.joints.flatMap((j) => letInFaults(setOut, j)),
  ];
}

function sizes({ ledger, parts, openings }: SetOut): string[] {
  const faults: string[] = [];
  const whole = (name: string, t: Traced) => {
    const value = ledger.ticks(t);
    if (!Number.isInteger(value) || value <= 0) faults.push(`${name} is ${value}`);
  };
  for (const p of parts)
    for (const size of ['length', 'width', 'thickness'] as const) {
      whole(`${p.id}.${size}`, p[size]);
      if (!p.rough) continue;
      whole(`${p.id}.rough ${size}`, p.rough[size]);
      if (ledger.ticks(p.rough[size]) < ledger.ticks(p[size])) faults.push(`${p.id} is cut too small`);
    }
  for (const o of openings) for (const size of ['width', 'height', 'depth'] as const) whole(o.id, o[size]);
  return faults;
}

function names({ parts, joints, fasteners }: SetOut): string[] {
  const faults: string[] = [];
  const once = (what: string, list: readonly string[]) => {
    if (new Set(list).size !== list.length) faults.push(`${what} twice`);
  };
  once(
    'a part’s id',
    parts.map((p) => p.id),
  );
  once(
    'a mark',
    parts.map((p) => p.mark),
  );
  once(
    'a joint’s id',
    joints.map((j) => j.id),
  );
  once(
    'a fastener’s id',
    fasteners.map((f) => f.id),
  );
  const known = new Set(fasteners.map((f) => f.id));
  for (const j of joints)
    for (const f of j.fasteners) if (!known.has(f)) faults.push(`${j.id} names ${f}, which is not there`);
  once(
    'a feature’s id',
    parts.flatMap((p) => p.features.map((f) => f.id)),
  );
  return faults;
}

/** The box that a part fills in the piece, less its features. */
export function boxOf(setOut: SetOut, part: Part): Box {
  const origin: number[] = part.place.origin.map((t) => setOut.ledger.ticks(t));
  const min = [...origin];
  const max = [...origin];
  for (const run of ['length', 'width', 'thickness'] as const) {
    const size = setOut.ledger.ticks(part[run]);
    const axis = 'xyz'.indexOf(part.place[run][1]!);
    if (part.place[run].startsWith('+')) max[axis]! += size;
    else min[axis]! -= size;
  }
  return { min: min as never, max: max as never };
}

/** The box of a board with what is glued to its edges. */
export function outerBoxOf(setOut: SetOut, part: Part): Box {
  const edging = setOut.joints.filter((j) => j.duty === 'edging' && j.mate === part.id).map((j) => j.part);
  const boxes = [part, ...setOut.parts.filter((p) => edging.includes(p.id))].map((p) => boxOf(setOut, p));
  const each = (most: (...n: number[]) => number, end: 'min' | 'max') =>
    [0, 1, 2].map((k) => most(...boxes.map((b) => b[end][k]!))) as never;
  return { min: each(Math.min, 'min'), max: each(Math.max, 'max') };
}

function boundingBox(setOut: SetOut, overall: { width: number; height: number; depth: number }): string[] {
  // Handles stand out beyond the piece's own sizes.
  const handles = new Set(setOut.joints.filter((j) => j.duty === 'handle').map((j) => j.mate));
  const boxes = setOut.parts.filter((p) => !handles.has(p.id)).map((p) => boxOf(setOut, p));
  return [overall.width, overall.depth, overall.height].flatMap((asked, axis) => {
    // What stands on levellers begins as far above the floor as they lift it.
    const lifted: number[] = axis === 2 ? setOut.levellers.map((one) => setOut.ledger.ticks(one.height)) : [];
    const lowest = Math.min(...boxes.map((b) => b.min[axis]!));
    const from = lifted.includes(lowest) ? 0 : lowest;
    const to = Math.max(...boxes.map((b) => b.max[axis]!));
    return from === 0 && to === asked ? [] : [`along ${'xyz'[axis]} from ${from} to ${to}, not to ${asked}`];
  });
}

function overlaps(setOut: SetOut): string[] {
  const faults: string[] = [];
  const boxes = setOut.parts.map((part) => ({ part, box: boxOf(setOut, part) }));
  boxes.forEach((a, i) => {
    for (const b of boxes.slice(i + 1)) {
      const shared: Box = {
        min: a.box.min.map((v, k) => Math.max(v, b.box.min[k]!)) as never,
        max: a.box.max.map((v, k) => Math.min(v, b.box.max[k]!)) as never,
      };
      if (shared.min.some((v, k) => v >= shared.max[k]!)) continue;
      if (isCutAway(setOut, [a.part, b.part], shared)) continue;
      if (isMitre(setOut, a.part, b.part, shared)) continue;
      if (isHook(setOut, a.part, b.part, shared)) continue;
      faults.push(`${a.part.id} and ${b.part.id} share ${JSON.stringify(shared)}`);
    }
  });
  return faults;
}

/** True when the rabbets, grooves and notches of two parts leave nothing of a box: every cell of their planes' grid is gone. */
export function isCutAway(setOut: SetOut, parts: readonly Part[], shared: Box): boolean {
  const gone = parts.flatMap((part) =>
    part.features.flatMap((f) => {
      const box = takenBox(setOut, part, f);
      return box ? [inPiece(setOut, part, box)] : [];
    }),
  );
  const grid = [0, 1, 2].map((k) => {
    const planes = gone.flatMap((g) => [g.min[k]!, g.max[k]!]);
    const between = planes.filter((p) => p > shared.min[k]! && p < shared.max[k]!);
    return [...new Set([shared.min[k]!, ...between, shared.max[k]!])].sort((x, y) => x - y);
  });
  const middles = grid.map((marks) => marks.slice(1).map((m, i) => (m + marks[i]!) / 2));
  return middles[0]!.every((x) =>
    middles[1]!.every((y) =>
      middles[2]!.every((z) =>
        gone.some((g) => [x, y, z].every((at, k) => at > g.min[k]! && at < g.max[k]!)),
      ),
    ),
  );
}

/** What a feature takes out of a part, in the part's own coordinates. */
function takenBox(setOut: SetOut, part: Part, f: Feature): Box | undefined {
  const t = (x: Traced) => setOut.ledger.ticks(x);
  const size: Vec = [t(part.length), t(part.width), t(part.thickness)];
  const min = [0, 0, 0];
  const max = [...size];
  const cut = (k: number, low: boolean, inset: number, width: number) => {
    min[k] = low ? inset : size[k]! - inset - width;
    max[k] = min[k]! + width;
  };
  if (f.kind === 'notch') {
    cut(0, f.end === 'start', 0, t(f.length));
    cut(1, f.edge === 'near', 0, t(f.width));
  } else if (f.kind === 'rabbet' || f.kind === 'groove') {
    const across = f.edge === 'start' || f.edge === 'end' ? 0 : 1;
    cut(across, f.edge === 'start' || f.edge === 'near', f.kind === 'groove' ? t(f.inset) : 0, t(f.width));
    cut(2, f.face === 'under', 0, t(f.depth));
    min[1 - across] = t(f.from);
    max[1 - across] = t(f.to);
  } else return undefined;
  return { min: min as never, max: max as never };
}

/** A box of a part's own coordinates, as it stands. */
function inPiece(setOut: SetOut, part: Part, box: Box): Box {
  const corners = [box.min, box.max].map((corner) => {
    const at: number[] = part.place.origin.map((o) => setOut.ledger.ticks(o));
    (['length', 'width', 'thickness'] as const).forEach((run, local) => {
      const sign = part.place[run].startsWith('+') ? 1 : -1;
      at['xyz'.indexOf(part.place[run][1]!)]! += sign * corner[local]!;
    });
    return at;
  });
  return {
    min: [0, 1, 2].map((k) => Math.min(corners[0]![k]!, corners[1]![k]!)) as never,
    max: [0, 1, 2].map((k) => Math.max(corners[0]![k]!, corners[1]![k]!)) as never,
  };
}

/** True when a box is the square corner in which two strips or panels of one thickness meet at 45 degrees, tips outside. */
function isMitre(setOut: SetOut, a: Part, b: Part, shared: Box): boolean {
  const bevelled = (part: Part, other: Part) => {
    const local = inPart(setOut, part, shared);
    const [from, to] = [local.min[0], local.max[0]];
    const thick = setOut.ledger.ticks(part.thickness);
    const end = setOut.ledger.ticks(part.length);
    return part.features.some(
      (f) =>
        f.kind === 'bevel' &&
        f.angle === 45 &&
        (f.edge === 'start'
          ? from === 0 && to === thick
          : f.edge === 'end' && from === end - thick && to === end) &&
        tipIsOutside(setOut, part, f.fullFace, other),
    );
  };
  return bevelled(a, b) && bevelled(b, a) && a.place.thickness[1] !== b.place.thickness[1];
}

/** True when two strips on edge hook into one another along slopes of 45 degrees, that of the upper one hanging down behind. */
function isHook(setOut: SetOut, a: Part, b: Part, shared: Box): boolean {
  const [upper, lower] = boxOf(setOut, a).max[2] > boxOf(setOut, b).max[2] ? [a, b] : [b, a];
  const thick = shared.max[1] - shared.min[1];
  const slope = (part: Part, edge: 'near' | 'far', full: 'show' | 'under') =>
    part.place.width === '+z' &&
    part.place.thickness === '-y' &&
    setOut.ledger.ticks(part.thickness) === thick &&
    part.features.some((f) => f.kind === 'bevel' && f.angle === 45 && f.edge === edge && f.fullFace === full);
  return (
    shared.max[2] - shared.min[2] === thick && slope(upper, 'near', 'under') && slope(lower, 'far', 'show')
  );
}

/** True when the face that keeps its length is level with the outer end of the other part. */
function tipIsOutside(setOut: SetOut, part: Part, full: 'show' | 'under', other: Part): boolean {
  const [mine, theirs] = [boxOf(setOut, part), boxOf(setOut, other)];
  const k = 'xyz'.indexOf(part.place.thickness[1]!);
  const up = part.place.thickness.startsWith('+') === (full === 'show');
  return up ? mine.max[k] === theirs.max[k] : mine.min[k] === theirs.min[k];
}

/** A box of the piece in a part's own coordinates. */
function inPart(setOut: SetOut, part: Part, box: Box): Box {
  const corners = [box.min, box.max].map((p) => pointInPart(setOut, part, p));
  return {
    min: [0, 1, 2].map((k) => Math.min(corners[0]![k]!, corners[1]![k]!)) as never,
    max: [0, 1, 2].map((k) => Math.max(corners[0]![k]!, corners[1]![k]!)) as never,
  };
}

function pointInPart(setOut: SetOut, part: Part, point: Vec): Vec {
  return (['length', 'width', 'thickness'] as const).map((run) => {
    const axis = 'xyz'.indexOf(part.place[run][1]!);
    const from = point[axis]! - setOut.ledger.ticks(part.place.origin[axis]!);
    return part.place[run].startsWith('+') ? from : -from;
  }) as unknown as Vec;
}

/** What lies outside the part's blank, or leaves nothing of it. */
function featureFaults(setOut: SetOut, part: Part, f: Feature): string[] {
  const t = (x: Traced) => setOut.ledger.ticks(x);
  const size: Vec = [t(part.length), t(part.width), t(part.thickness)];
  const faults: string[] = [];
  const want = (fine: boolean, what: string) => {
    if (!fine) faults.push(`${f.id}: ${what}`);
  };
  const edgeAxis = (edge: string) => (edge === 'start' || edge === 'end' ? 0 : 1);
  switch (f.kind) {
    case 'rabbet': {
      const across = edgeAxis(f.edge);
      want(t(f.width) > 0 && t(f.width) < size[across]!, 'width of the rabbet');
      want(t(f.depth) > 0 && t(f.depth) < size[2], 'depth of the rabbet');
      want(t(f.from) >= 0 && t(f.from) < t(f.to) && t(f.to) <= size[1 - across]!, 'run of the rabbet');
      break;
    }
    case 'groove': {
      const across = edgeAxis(f.edge);
      const inset = t(f.inset);
      want(t(f.width) > 0 && inset > 0 && inset + t(f.width) < size[across]!, 'width of the groove');
      want(t(f.depth) > 0 && 2 * t(f.depth) <= size[2], 'depth of the groove');
      want(t(f.from) >= 0 && t(f.from) < t(f.to) && t(f.to) <= size[1 - across]!, 'run of the groove');
      break;
    }
    case 'notch':
      want(t(f.length) > 0 && t(f.length) < size[0], 'length of the notch');
      want(t(f.width) > 0 && t(f.width) < size[1], 'width of the notch');
      break;
    case 'bevel':
      want(f.angle > 0 && f.angle < 60, 'angle');
      want(size[edgeAxis(f.edge)]! > 2 * size[2], 'nothing left between two bevels');
      break;
    case 'hole': {
      const through =
        f.side === 'start' || f.side === 'end' ? 0 : f.side === 'near' || f.side === 'far' ? 1 : 2;
      const plane = [0, 1, 2].filter((k) => k !== through).map((k) => size[k]!);
      const wide = [f.diameter, f.countersink, f.counterbore?.diameter].map((x) =>
        x === undefined ? 0 : t(x),
      );
      const radius = Math.max(...wide) / 2;
      f.at.forEach((at, k) => {
        want(t(at) - radius >= 0 && t(at) + radius <= plane[k]!, `hole off the ${f.side} side`);
      });
      want(t(f.diameter) > 0, 'diameter of the hole');
      want(f.counterbore === undefined || 2 * t(f.counterbore.depth) < size[through]!, 'depth for a plug');
      want(f.depth === undefined || (t(f.depth) > 0 && t(f.depth) < size[through]!), 'depth of the hole');
      break;
    }
    case 'biscuit-slot': {
      const through =
        f.side === 'start' || f.side === 'end' ? 0 : f.side === 'near' || f.side === 'far' ? 1 : 2;
      const plane = [0, 1, 2].filter((k) => k !== through).map((k) => size[k]!);
      if (f.slopeFrom) {
        // On a mitre: within the slope, and short of the outer face where it is nearest.
        const slope = size[2]! * Math.SQRT2;
        plane[1] = slope;
        want(t(f.at[1]) + t(f.kerf) / 2 + t(f.depth) < slope, 'slot through the outer face');
        want(
          part.features.some((b) => b.kind === 'bevel' && b.edge === f.side),
          'slot in a mitre that isn’t',
        );
      }
      const radius = t(f.cutter) / 2;
      const chord = Math.sqrt(radius ** 2 - (radius - t(f.depth)) ** 2);
      const runsAt = through === 2 && f.run === 'width' ? 1 : 0;
      f.at.forEach((at, k) => {
        const half = k === runsAt ? chord : t(f.kerf) / 2;
        want(t(at) - half >= 0 && t(at) + half <= plane[k]!, `slot off the ${f.side} side`);
      });
      want(t(f.depth) > 0 && t(f.depth) < size[through]!, 'depth of the slot');
      break;
    }
    case 'spline-groove': {
      const slope = size[2]! * Math.SQRT2;
      // Nearest to the outer face at the foot of its outer wall: 4 mm of wood (from memory) square to that face.
      const foot = t(f.inset) + t(f.width) + t(f.depth);
      want((slope - foot) / Math.SQRT2 >= 4 * 3200 - 2, 'groove too near the outer face');
      want(t(f.inset) > 0 && t(f.depth) > 0, 'groove off the slope');
      want(t(f.from) >= 0 && t(f.from) < t(f.to) && t(f.to) <= size[1]!, 'groove beyond the end');
      want(
        part.features.some((b) => b.kind === 'bevel' && b.edge === f.edge && b.fullFace !== f.slopeFrom),
        'groove in a mitre that isn’t',
      );
      break;
    }
    case 'pocket': {
      const across = edgeAxis(f.edge);
      const along = t(f.along);
      want(along >= POCKET_RADIUS && along <= size[1 - across]! - POCKET_RADIUS, 'pocket over the end');
      // The far side of the slanting bore leaves the face (t/2 + r / cos 15) / tan 15 back from the edge.
      const lean = (15 * Math.PI) / 180;
      const run = (size[2] / 2 + POCKET_RADIUS / Math.cos(lean)) / Math.tan(lean);
      want(run <= size[across]!, 'pocket longer than the part');
    }
  }
  return faults;
}

/** The axis of a screw from its head to its tip, in ticks. */
export function axisOfScrew(setOut: SetOut, f: Fastener): readonly [Vec, Vec] {
  const head = f.head.map((x) => setOut.ledger.ticks(x)) as unknown as Vec;
  const along = vector(f.direction);
  const lean = ((f.lean?.degrees ?? 0) * Math.PI) / 180;
  const toward = f.lean ? vector(f.lean.toward) : [0, 0, 0];
  const length = setOut.ledger.ticks(f.length);
  const tip = head.map((h, k) => h + length * (along[k]! * Math.cos(lean) + toward[k]! * Math.sin(lean)));
  return [head, tip as unknown as Vec];
}

function vector(direction: string): Vec {
  const sign = direction.startsWith('+') ? 1 : -1;
  return ['x', 'y', 'z'].map((axis) => (direction[1] === axis ? sign : 0)) as unknown as Vec;
}

/** A panel's end in a channel: as deep in the mate as stated, in a channel as wide as stated, at most half of the board. */
function letInFaults(setOut: SetOut, joint: Joint): string[] {
  if (!joint.letIn || joint.duty !== 'carries') return [];
  const t = (x: Traced) => setOut.ledger.ticks(x);
  const part = setOut.parts.find((p) => p.id === joint.part)!;
  const mate = setOut.parts.find((p) => p.id === joint.mate)!;
  const [a, b] = [boxOf(setOut, part), boxOf(setOut, mate)];
  const axis = 'xyz'.indexOf(part.place.length[1]!);
  const into = Math.min(a.max[axis]!, b.max[axis]!) - Math.max(a.min[axis]!, b.min[axis]!);
  const faults: string[] = [];
  if (into !== t(joint.letIn.depth)) faults.push(`${joint.id}: ${into} deep, not as stated`);
  if (2 * into > t(mate.thickness)) faults.push(`${joint.id}: more than half of the board`);
  const channel = mate.features.find((f) => f.id === `${mate.id}#${part.id}`);
  const wide = channel && 'width' in channel ? t(channel.width) : 0;
  // A rabbet may leave a tongue of it.
  const tongued = part.features.find((f) => f.kind === 'rabbet' && f.id === `${part.id}#${mate.id}`);
  const goesIn = t(part.thickness) - (tongued?.kind === 'rabbet' ? t(tongued.depth) : 0);
  const spare = wide - goesIn;
  if (spare !== t(joint.letIn.sideways)) faults.push(`${joint.id}: ${spare} wider than what goes in`);
  // Common practice: nothing to 0.005 in.
  if (spare < 0 || spare > 0.127 * MM) faults.push(`${joint.id}: too tight or too loose`);
  return faults;
}

/** A screw that leaves the wood, comes through, or holds in something else. */
function screwFaults(setOut: SetOut, f: Fastener): string[] {
  const faults: string[] = [];
  const passes = f.through.map((id) => setOut.parts.find((p) => p.id === id)!);
  const [first, last] = [passes[0], passes.at(-1)];
  const [a, b] = [boxOf(setOut, first!), boxOf(setOut, last!)];
  const [head, tip] = axisOfScrew(setOut, f);
  const radius = setOut.ledger.ticks(f.diameter) / 2;
  const axis = 'xyz'.indexOf(f.direction[1]!);
  const forward = f.direction.startsWith('+');
  const joint = forward ? b.min[axis]! : b.max[axis]!;
  const far = forward ? b.max[axis]! : b.min[axis]!;
  if (head.some((h, k) => h < a.min[k]! || h > a.max[k]!)) faults.push(`${f.id}: head outside ${first!.id}`);
  if ((far - tip[axis]!) * (forward ? 1 : -1) < 3 * MM - 2)
    faults.push(`${f.id}: comes closer than 3 mm to the far face`);
  // A rabbet brings the joint forward.
  const plane = setOut.joints.find((j) => j.id === f.joint)!.contact.min[axis]!;
  // What lies between is passed before it.
  const enters = passes.length > 2 ? joint : setOut.ledger.ticks(plane);
  if ((tip[axis]! - enters) * (forward ? 1 : -1) < 9 * MM - 2) faults.push(`${f.id}: holds too little`);
  if ((enters - joint) * (forward ? 1 : -1) < 0) faults.push(`${f.id}: its joint lies outside ${last!.id}`);
  for (const k of [0, 1, 2].filter((n) => n !== axis)) {
    // Where the axis crosses into the second part, and where it ends: both with wood all round.
    const share = (enters - head[axis]!) / (tip[axis]! - head[axis]!);
    for (const at of [head[k]! + share * (tip[k]! - head[k]!), tip[k]!])
      if (at - radius < b.min[k]! || at + radius > b.max[k]!)
        faults.push(`${f.id}: leaves ${last!.id} sideways`);
  }
  if (!f.lean) {
    // Into an edge: 25 mm clear of the panel's corners (common practice), where what touches is long enough, and within 1 mm of its middle.
    const through = 'xyz'.indexOf(last!.place.thickness[1]!);
    if (through === axis) return [...faults, ...faceScrewFaults(f, head, a, b, axis)];
    const run = 3 - through - axis;
    const duty = setOut.joints.find((j) => j.id === f.joint)!.duty;
    const least = duty === 'back' ? 50 * MM : 25 * MM;
    const end = Math.min(head[run]! - b.min[run]!, b.max[run]! - head[run]!);
    const touches = Math.min(a.max[run]!, b.max[run]!) - Math.max(a.min[run]!, b.min[run]!);
    if (end < least && touches >= 2 * least + MM) faults.push(`${f.id}: too close to the end`);
    const off = Math.abs(head[through]! - (b.min[through]! + b.max[through]!) / 2);
    if (off > MM) faults.push(`${f.id}: off the middle of the edge`);
  }
  if (setOut.ledger.ticks(f.spare) < 3 * MM - 2) faults.push(`${f.id}: says it comes through`);
  return faults;
}

/** From face to face: at least 30 mm clear of every edge of what touches, where it is large enough for that. */
function faceScrewFaults(f: Fastener, head: Vec, a: Box, b: Box, axis: number): string[] {
  return [0, 1, 2]
    .filter((k) => k !== axis)
    .flatMap((k) => {
      const low = Math.max(a.min[k]!, b.min[k]!);
      const high = Math.min(a.max[k]!, b.max[k]!);
      const end = Math.min(head[k]! - low, high - head[k]!);
      return end < 30 * MM && high - low >= 61 * MM ? [`${f.id}: too close to an edge`] : [];
    });
}

/** Screws that touch one another, found by stepping along their axes. */
function screwsThatMeet(setOut: SetOut): string[] {
  const faults: string[] = [];
  const screws = setOut.fasteners.map((f) => {
    const [from, to] = axisOfScrew(setOut, f);
    return { f, from, to, radius: setOut.ledger.ticks(f.diameter) / 2 };
  });
  screws.forEach((a, i) => {
    for (const b of screws.slice(i + 1)) {
      if (distance(a.from, b.from) > 150 * MM) continue;
      // Each stays in its own wood, which is judged by itself: sunk heads of two cases may lie face to face where they touch.
      if (!a.f.through.some((id) => b.f.through.includes(id))) continue;
      const gap = leastDistance(a, b);
      if (gap < a.radius + b.radius) faults.push(`${a.f.id} meets ${b.f.id}`);
    }
  });
  return faults;
}

function distance(a: Vec, b: Vec): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

/** Least distance of two straight lines' stretches: at thirty places of one, the foot on the other. */
function leastDistance(a: { from: Vec; to: Vec }, b: { from: Vec; to: Vec }): number {
  let least = Number.POSITIVE_INFINITY;
  const run = b.to.map((v, k) => v - b.from[k]!);
  const square = run.reduce((sum, v) => sum + v * v, 0);
  for (let i = 0; i <= 30; i++) {
    const p = a.from.map((v, k) => v + ((a.to[k]! - v) * i) / 30) as unknown as Vec;
    const along = run.reduce((sum, v, k) => sum + v * (p[k]! - b.from[k]!), 0) / square;
    const at = Math.min(1, Math.max(0, along));
    least = Math.min(least, distance(p, b.from.map((v, k) => v + run[k]! * at) as unknown as Vec));
  }
  return least;
}
