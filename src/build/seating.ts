import { fromMm, type Traced } from '../measure/index.ts';
import {
  type Axis,
  axisOf,
  type Direction,
  type Groove,
  isPegged,
  type Joint,
  type Part,
  type Rabbet,
  routedChannels,
  runningClear,
} from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { highSide, lowSide, overlap, type PartPlanes, planesOf } from './boxes.ts';
import { isApronJoint } from './leg-frame.ts';
import type { Touch } from './operation.ts';
import { looks } from './words.ts';

/** Parts that already stand, in the order they were set. */
export class Standing {
  private readonly bench: Bench;
  /** The assembly that they stand in. */
  readonly into: string;
  /** Whether any of its parts is held by pocket screws. */
  readonly pockets: boolean;
  readonly placed: PartPlanes[] = [];
  /** Where panels in dados come by the cards, whose figures are rounded: what is set from them next counts from there. */
  readonly setAt = new Map<string, Traced>();
  /** How much further along dividers and shelves come by the cards than they were drawn, where no dado holds them. */
  readonly further = new Map<string, Traced>();

  constructor(bench: Bench, into: string, pockets = false) {
    this.bench = bench;
    this.into = into;
    this.pockets = pockets;
  }

  add(part: Part): void {
    this.placed.push(planesOf(this.bench.ledger, part));
  }

  has(id: string): boolean {
    return this.placed.some((p) => p.part.id === id);
  }

  get(id: string): PartPlanes | undefined {
    return this.placed.find((p) => p.part.id === id);
  }
}

const AXES: readonly Axis[] = [0, 1, 2];

/**
 * The three touches that bring a part to its place: where a joint touches, along that; otherwise a measure from the
 * neighbour before or below it (a gauge stick), or flush with what already stands there.
 */
export function seat(bench: Bench, standing: Standing, part: Part): readonly [Touch, Touch, Touch] {
  if (standing.placed.length === 0)
    return AXES.map((axis) => ({ side: lowSide(axis), of: 'bench', face: highSide(axis) })) as never;
  const mine = planesOf(bench.ledger, part);
  return AXES.map((axis) => alongAxis(bench, standing, mine, axis)) as never;
}

function alongAxis(bench: Bench, standing: Standing, mine: PartPlanes, axis: Axis): Touch {
  const channel = inGroove(bench, standing, mine.part, axis) ?? inRabbet(bench, standing, mine.part, axis);
  if (channel) return channel;
  const joint = jointAcross(bench, standing, mine.part, axis);
  if (joint) return joint;
  // What takes others in its dados is set by what can be measured: clear distances decide whether things fit.
  const takes = takingIn(bench, standing, mine.part, axis);
  // A lid sits down on the ends that it takes; a side comes home on the bottom, which sets how far apart both are.
  if (takes && (mine.part.role === 'lid' || isBottom(standing, takes.of))) return takes;
  if (takes) return flush(bench, standing, mine, axis) ?? fromNeighbour(bench, standing, mine, axis) ?? takes;
  // In a rabbet at a corner a panel comes level with the end of the side, however shelves below it have come.
  const corner = atCorner(bench, standing, mine, axis);
  if (corner) return corner;
  const framed = inLegFrame(bench, standing, mine, axis);
  if (framed) return framed;
  // A back among several comes where its own rabbets are, however far the cases before it have come by rounded figures.
  const own = axis === 0 ? fromRabbet(bench, standing, mine, axis) : undefined;
  if (own) return own;
  const foot = onFoot(bench, standing, mine, axis);
  if (foot) return foot;
  const upright = axisOf(mine.part.place.length).axis === 2;
  // A divider stands so far from the upright before it; a shelf so far above what is below.
  const gauged = (upright && axis === 0) || (!upright && axis === 2);
  // What is screwed through another part's face, or pegged into it, goes where that part's holes are: measured as they were.
  const outer = gauged ? outerOf(bench, standing, mine.part) : undefined;
  if (outer) {
    const t = (side: Direction) =>
      bench.ledger.ticks(mine.planes[side]) - bench.ledger.ticks(outer.planes[side]);
    const touch = offset(bench, mine, t(highSide(axis)) === 0 ? highSide(axis) : lowSide(axis), outer);
    return fromItsFoot(bench, standing, mine, outer, touch) ?? touch;
  }
  return (
    (gauged ? atEnd(bench, standing, mine, axis) : undefined) ??
    (gauged ? fromNeighbour(bench, standing, mine, axis) : undefined) ??
    flush(bench, standing, mine, axis) ??
    fromNeighbour(bench, standing, mine, axis) ??
    fromRabbet(bench, standing, mine, axis) ??
    fromFirst(bench, standing, mine, axis)
  );
}

function jointAcross(bench: Bench, standing: Standing, part: Part, axis: Axis): Touch | undefined {
  for (const j of bench.setOut.joints) {
    const other = j.part === part.id ? j.mate : j.mate === part.id ? j.part : undefined;
    const goesIn = isLetIn(j) && j.part === part.id;
    if (other === undefined || (j.kind !== 'butt' && !goesIn) || !standing.has(other)) continue;
    const facing = jointDirection(bench, j);
    if (axisOf(facing).axis !== axis) continue;
    const side = j.part === part.id ? facing : opposed(facing);
    // What lies between them is touched first.
    const between = j.over === undefined ? undefined : standing.get(j.over);
    if (between) return { side, of: between.part.mark, face: opposed(side) };
    const touch = { side, of: standing.get(other)!.part.mark, face: opposed(side) };
    return goesIn ? { ...touch, gap: depthOf(bench, j) } : touch;
  }
  return undefined;
}

/** A back that slides in comes where its grooves were routed, whatever else it touches; one of their walls is enough. */
function inGroove(bench: Bench, standing: Standing, part: Part, axis: Axis): Touch | undefined {
  if (axisOf(part.place.thickness).axis !== axis) return undefined;
  const joint = bench.setOut.joints.find(
    (j) => j.part === part.id && j.duty === 'back' && j.kind === 'groove' && standing.has(j.mate),
  );
  const mate = joint && standing.get(joint.mate)!.part;
  const id = mate && `${mate.id}#${part.record}`;
  const groove = mate?.features.find((f): f is Groove => f.kind === 'groove' && f.id === id);
  if (!mate || !groove) return undefined;
  const { place } = routedChannels(bench.ledger, bench.job.shop, mate).get(groove.id)!;
  const side = looks(mate, groove.edge);
  return { side, of: mate.mark, face: side, gap: bench.ledger.times('so far in from that edge', place, -1) };
}

/**
 * A back let into rabbets lies against their shoulders, wherever a divider before it has come by rounded figures; or on a panel
 * inside, where that stands out behind them because the router has no finer step.
 */
function inRabbet(bench: Bench, standing: Standing, part: Part, axis: Axis): Touch | undefined {
  if (axisOf(part.place.thickness).axis !== axis) return undefined;
  const joint = bench.setOut.joints.find(
    (j) => j.part === part.id && j.duty === 'back' && j.kind === 'rabbet' && standing.has(j.mate),
  );
  const mate = joint && standing.get(joint.mate)!.part;
  const rabbet = mate?.features.find(
    (f): f is Rabbet => f.kind === 'rabbet' && f.id === `${mate.id}#${part.record}`,
  );
  if (!joint || !mate || !rabbet) return undefined;
  const inside = standsOut(bench, standing, part, mate, rabbet);
  if (inside) return { side: jointDirection(bench, joint), of: inside.mark, face: looks(mate, rabbet.edge) };
  const width = bench.ledger.times('so far in from that edge', bench.set('router', rabbet.width), -1);
  return {
    side: jointDirection(bench, joint),
    of: mate.mark,
    face: looks(mate, rabbet.edge),
    gap: width,
    shoulder: true,
  };
}

/** A panel standing out behind a shoulder by less than this is not felt, in ticks (our own choice). */
const FELT = fromMm(0.25);

/** The panel inside that a back meets before it comes to the shoulder of its rabbet. */
function standsOut(
  bench: Bench,
  standing: Standing,
  part: Part,
  mate: Part,
  rabbet: Rabbet,
): Part | undefined {
  const l = bench.ledger;
  const face = looks(mate, rabbet.edge);
  const { sign } = axisOf(face);
  const at = (of: Part): number => sign * l.ticks(planesOf(l, of).planes[face]);
  const shoulder = at(mate) - l.ticks(bench.set('router', rabbet.width));
  return bench.setOut.joints
    .filter((j) => j.part === part.id && j.duty === 'back' && j.kind === 'butt')
    .map((j) => standing.get(j.mate)?.part)
    .find((p) => p !== undefined && at(p) - shoulder > FELT);
}

/** A leg level with others there; an apron so far behind the outer face of its leg. */
function inLegFrame(bench: Bench, standing: Standing, mine: PartPlanes, axis: Axis): Touch | undefined {
  const joint = bench.setOut.joints.find(
    (j) =>
      isApronJoint(j) &&
      ((j.part === mine.part.id && standing.has(j.mate)) ||
        (j.mate === mine.part.id && standing.has(j.part))),
  );
  if (!joint) return undefined;
  const level = flush(bench, standing, mine, axis);
  const outer = looks(mine.part, 'show');
  if (level || joint.part !== mine.part.id || axisOf(outer).axis !== axis) return level;
  return offset(bench, mine, outer, standing.get(joint.mate)!);
}

/** A foot goes where the holes of the bottom are: each is measured from that, as they were. */
function onFoot(bench: Bench, standing: Standing, mine: PartPlanes, axis: Axis): Touch | undefined {
  const joint = bench.setOut.joints.find((j) => j.duty === 'foot' && j.mate === mine.part.id);
  const bottom = joint && standing.get(joint.part);
  return bottom && offset(bench, mine, lowSide(axis), bottom);
}

/** The part there whose holes a newcomer's screws come through, or whose holes its dowels or biscuits go into. */
function outerOf(bench: Bench, standing: Standing, part: Part): PartPlanes | undefined {
  const joint = bench.setOut.joints.find(
    (j) => j.mate === part.id && j.duty === 'carries' && isScrewedThrough(j) && standing.has(j.part),
  );
  if (joint) return standing.get(joint.part);
  // Dividers for trays stand so close that running distances would leave their dados.
  const isTray = part.role.startsWith('tray');
  const into = bench.setOut.joints.find(
    (j) => j.part === part.id && (isPegged(j) || (isTray && isLetIn(j))) && standing.has(j.mate),
  );
  return into && standing.get(into.mate);
}

/**
 * A shelf so far above what an upright with its holes stands on: no rule gets at the end of the upright there, and a stick stands
 * where it stands. Not where another shelf is between.
 */
function fromItsFoot(
  bench: Bench,
  standing: Standing,
  mine: PartPlanes,
  outer: PartPlanes,
  { side, gap }: Touch,
): Touch | undefined {
  const t = (x: Traced) => bench.ledger.ticks(x);
  if (side !== '-z' || gap === undefined) return undefined;
  const screwed = bench.setOut.joints.some(
    (j) => j.part === outer.part.id && j.mate === mine.part.id && isScrewedThrough(j),
  );
  const nearest = before(bench, standing, mine, 2)[0];
  return screwed && nearest && t(nearest.planes['+z']) === t(outer.planes['-z'])
    ? { side, of: nearest.part.mark, face: '+z', gap: bench.ledger.times('the same, upward', gap, -1) }
    : undefined;
}

/** A part against the end of one that goes into it: of the bottom, where that does. */
function takingIn(bench: Bench, standing: Standing, part: Part, axis: Axis): Touch | undefined {
  const taken = bench.setOut.joints.filter(
    (x) =>
      isLetIn(x) &&
      x.mate === part.id &&
      standing.has(x.part) &&
      axisOf(jointDirection(bench, x)).axis === axis,
  );
  const j = taken.find((x) => standing.get(x.part)!.part.role === 'bottom') ?? taken[0];
  if (!j) return undefined;
  const face = jointDirection(bench, j);
  return { side: opposed(face), of: standing.get(j.part)!.part.mark, face, gap: depthOf(bench, j) };
}

function isBottom({ placed }: Standing, mark: string): boolean {
  return placed.some(({ part }) => part.mark === mark && part.role === 'bottom');
}

/** How deep one part stands in the other, as a gap that is less than nothing. */
function depthOf(bench: Bench, joint: Joint): Traced {
  return bench.set('router', bench.ledger.times('so deep in the other', joint.letIn!.depth, -1));
}

/** True when the end of a panel goes into the face of another. */
export function isLetIn(joint: Joint): boolean {
  return joint.letIn !== undefined && joint.duty === 'carries';
}

/** True when screws go through a face of the joint's own part into an edge of its mate. */
export function isScrewedThrough(joint: Joint): boolean {
  return joint.duty !== 'connect' && (joint.hold === 'face-screws' || joint.hold === 'glue-and-screws');
}

/** The way a joint's own part faces its mate. */
export function jointDirection(bench: Bench, joint: Joint): Direction {
  const part = bench.setOut.parts.find((p) => p.id === joint.part)!;
  return looks(part, joint.side);
}

function flush(bench: Bench, standing: Standing, mine: PartPlanes, axis: Axis): Touch | undefined {
  const t = (x: Traced) => bench.ledger.ticks(x);
  const level = [lowSide(axis), highSide(axis)].flatMap((side) =>
    standing.placed.flatMap((p) => (t(p.planes[side]) === t(mine.planes[side]) ? [{ side, p }] : [])),
  );
  const [first] = level;
  if (!first) return flushByEdging(bench, standing, mine, axis);
  // A finger feels whether it is level with what it touches; what stands some bays away is no measure.
  const { side, p } =
    [first, ...level].find((x, i) => isBeside(bench, standing, mine, x.p, i === 0)) ?? first;
  return { side, of: p.part.mark, face: side };
}

/** Does a part touch a newcomer, or is it the first of all and before or behind it? */
function isBeside(
  { setOut, ledger }: Bench,
  standing: Standing,
  { part }: PartPlanes,
  other: PartPlanes,
  mayLieBefore: boolean,
): boolean {
  return (
    (mayLieBefore && other === standing.placed[0] && overlap(ledger, other.part, part, 0)) ||
    setOut.joints.some(
      (j) =>
        (j.part === part.id && j.mate === other.part.id) || (j.mate === part.id && j.part === other.part.id),
    )
  );
}

/** Level by the strips on ends, where a board itself is shorter by them. */
function flushByEdging(bench: Bench, standing: Standing, mine: PartPlanes, axis: Axis): Touch | undefined {
  const t = (x: Traced) => bench.ledger.ticks(x);
  for (const side of [lowSide(axis), highSide(axis)]) {
    // A front edge is no measure for another: fronts come level by themselves, as they lie.
    if (axisOf(side).axis === 1) continue;
    const own = outermost(bench, mine.part, side);
    for (const p of standing.placed) {
      const other = outermost(bench, p.part, side);
      if (own.part === mine.part && other.part === p.part) continue;
      if (t(own.planes[side]) === t(other.planes[side]))
        return byEdging({ side, of: other.part.mark, face: side }, own, mine.part);
    }
  }
  return undefined;
}

/** Level with the end of a part in whose corner rabbet this one lies. */
function atCorner(bench: Bench, standing: Standing, mine: PartPlanes, axis: Axis): Touch | undefined {
  const t = (x: Traced) => bench.ledger.ticks(x);
  for (const j of bench.setOut.joints) {
    const mate =
      j.part === mine.part.id && j.kind === 'rabbet' && isLetIn(j) ? standing.get(j.mate) : undefined;
    if (!mate || axisOf(mine.part.place.thickness).axis !== axis) continue;
    for (const side of [lowSide(axis), highSide(axis)])
      if (t(mate.planes[side]) === t(mine.planes[side])) return { side, of: mate.part.mark, face: side };
  }
  return undefined;
}

/** What stands at the end of a panel comes level with it: rounded distances between what is before it don't count there. */
function atEnd(bench: Bench, standing: Standing, mine: PartPlanes, axis: Axis): Touch | undefined {
  const t = (x: Traced) => bench.ledger.ticks(x);
  for (const j of bench.setOut.joints) {
    const other = j.part === mine.part.id ? j.mate : j.mate === mine.part.id ? j.part : undefined;
    const along = other === undefined || j.duty !== 'carries' ? undefined : standing.get(other);
    if (!along || axisOf(along.part.place.length).axis !== axis) continue;
    for (const side of [lowSide(axis), highSide(axis)])
      if (t(along.planes[side]) === t(mine.planes[side])) return { side, of: along.part.mark, face: side };
  }
  return undefined;
}

/** What stands before or below a newcomer, the nearest first. */
function before(bench: Bench, standing: Standing, mine: PartPlanes, axis: Axis): readonly PartPlanes[] {
  const t = (x: Traced) => bench.ledger.ticks(x);
  const [low, high] = [lowSide(axis), highSide(axis)];
  return standing.placed
    .filter(
      (p) =>
        t(p.planes[high]) <= t(mine.planes[low]) &&
        AXES.every((a) => a === axis || overlap(bench.ledger, p.part, mine.part, a)),
    )
    .sort((a, b) => t(b.planes[high]) - t(a.planes[high]));
}

function fromNeighbour(bench: Bench, standing: Standing, mine: PartPlanes, axis: Axis): Touch | undefined {
  const t = (x: Traced) => bench.ledger.ticks(x);
  const [low, high] = [lowSide(axis), highSide(axis)];
  const nearest = before(bench, standing, mine, axis)[0];
  if (!nearest) return undefined;
  const l = bench.ledger;
  if (isFree(bench, mine.part)) {
    const clear = l.less('clear distance from the neighbour', mine.planes[low], nearest.planes[high]);
    const late = standing.further.get(`${nearest.part.id} ${axis}`);
    const { printed, further } = runningClear(l, clear, late, bench.finest('marking'));
    standing.further.set(`${mine.part.id} ${axis}`, further);
    const touch = { side: low, of: nearest.part.mark, face: high };
    return t(printed) === 0 ? touch : { ...touch, gap: printed };
  }
  const from = standing.setAt.get(`${nearest.part.id} ${axis}`) ?? nearest.planes[high];
  const gap = bench.set('marking', l.less('clear distance from the neighbour', mine.planes[low], from));
  if (goesIntoDados(bench, mine.part)) {
    const size = l.less('its own size there', mine.planes[high], mine.planes[low]);
    standing.setAt.set(`${mine.part.id} ${axis}`, l.sum('where it comes by the cards', from, gap, size));
  }
  const touch = { side: low, of: nearest.part.mark, face: high };
  return t(gap) === 0 ? touch : { ...touch, gap };
}

/** Dividers and shelves that stand where they are set: a row of them is set one from the next. */
function isFree(bench: Bench, part: Part): boolean {
  return /^(divider|shelf)(:|$)/.test(part.role) && !goesIntoDados(bench, part);
}

/** Its dados hold it where it was drawn: rounded distances from one to the next mustn’t add up. */
function goesIntoDados(bench: Bench, part: Part): boolean {
  return bench.setOut.joints.some((j) => j.part === part.id && j.kind === 'dado');
}

/** A back that is let in is measured from the outside of the part that takes it: that can be seen. */
function fromRabbet(bench: Bench, standing: Standing, mine: PartPlanes, axis: Axis): Touch | undefined {
  const t = (x: Traced) => bench.ledger.ticks(x);
  const [low, high] = [lowSide(axis), highSide(axis)];
  for (const j of bench.setOut.joints) {
    const isBack = j.part === mine.part.id && j.duty === 'back' && j.letIn !== undefined;
    const mate = isBack ? standing.get(j.mate) : undefined;
    if (mate && t(mate.planes[low]) < t(mine.planes[low]) && t(mine.planes[low]) < t(mate.planes[high]))
      return offset(bench, mine, low, mate);
  }
  return undefined;
}

/** Measured from the part that was there first, by what can be seen of both: the strip where a side is edged. */
function fromFirst(bench: Bench, standing: Standing, mine: PartPlanes, axis: Axis): Touch {
  const side = lowSide(axis);
  const own = outermost(bench, mine.part, side);
  return byEdging(offset(bench, own, side, outermost(bench, standing.placed[0]!.part, side)), own, mine.part);
}

/** The strip that edges a board on one side; undefined where none does. */
export function edgingOf(bench: Bench, board: Part, side: Direction): Part | undefined {
  return bench.setOut.joints
    .filter((j) => j.duty === 'edging' && j.mate === board.id)
    .map((j) => bench.setOut.parts.find((p) => p.id === j.part)!)
    .find((strip) => looks(strip, 'show') === side);
}

/** What a part’s side is measured by: the strip that edges it there, or the part itself. */
export function outermost(bench: Bench, part: Part, side: Direction): PartPlanes {
  return planesOf(bench.ledger, edgingOf(bench, part, side) ?? part);
}

/** A touch by the outermost of a part there: it names the strip where there is one. */
export function byEdging(touch: Touch, outer: PartPlanes, part: Part): Touch {
  return outer.part === part ? touch : { ...touch, part: outer.part.mark };
}

/** A side of a part measured from the same side of another: outward positive. */
export function offset(bench: Bench, mine: PartPlanes, side: Direction, other: PartPlanes): Touch {
  const l = bench.ledger;
  const { sign } = axisOf(side);
  const gap =
    sign > 0
      ? l.less('how far it stands out', mine.planes[side], other.planes[side])
      : l.less('how far it stands out', other.planes[side], mine.planes[side]);
  return {
    side,
    of: other.part.mark,
    face: side,
    ...(l.ticks(gap) === 0 ? {} : { gap: bench.set('marking', gap) }),
  };
}

function opposed(d: Direction): Direction {
  return `${d[0] === '+' ? '-' : '+'}${d[1]}` as Direction;
}
