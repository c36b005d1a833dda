import { SETTING_OUT } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Face } from '../feature.ts';
import { axisOf, opposite } from '../place.ts';
import { theName } from '../the-name.ts';
import type { Bores, Hollow } from './bores.ts';
import { contactBox, inPart, outward, planeOf, sideLooking } from './contact.ts';
import { cutTongue, type EndLetIn } from './tongue.ts';

/** A panel's end let into another panel's face, and glued there. */
export interface LetInSpec {
  readonly part: DraftPart;
  readonly end: 'start' | 'end';
  readonly mate: DraftPart;
  /** How far behind the mate's front the channel stops; right through when absent. */
  readonly stop?: Traced;
  /** True for an end that is rabbeted, so that only a tongue of it goes in. */
  readonly tongued?: boolean;
}

/**
 * Lets a panel into a face: a dado across it, or a rabbet where the panel lies level with the mate's own end. The
 * nearer wall of the channel stands where the panel's face does; what it is wider lies on the other side.
 */
export function dadoJoint(draft: Draft, bores: Bores, spec: LetInSpec): void {
  const l = draft.ledger;
  const { part, end, mate } = spec;
  const depth = part.tongues[end];
  if (depth === undefined) throw new Error(`${part.id} was not made longer for ${mate.id}`);
  const direction = outward(part.place, end);
  const face = sideLooking(mate.place, opposite(direction)) as Face;
  const across = axisOf(part.place.thickness).axis;
  const [low, high] = [part.box.min[across], part.box.max[across]];
  const [first, last] = [mate.box.min[across], mate.box.max[across]];
  const flush =
    l.ticks(low) === l.ticks(first) ? 'start' : l.ticks(high) === l.ticks(last) ? 'end' : undefined;
  // A rabbet at a corner is cut right through; what stops is a dado.
  const front = frontOf(draft, flush ? { part, end, mate } : spec);
  const goesIn = spec.tongued
    ? cutTongue(draft, part, end, mate, depth, flush)
    : { low, thickness: part.thickness };
  const rabbet = spec.tongued ? undefined : flush;
  const run = runAlongWidth(draft, mate, front);
  const cause = {
    id: `${mate.id}#${part.id}`,
    purpose: `for ${theName(part)}`,
    face,
    depth,
    ...run,
  };
  const sideways = rabbet ? draft.nothing : l.row(SETTING_OUT.dadoClear);
  if (rabbet) mate.features.push({ kind: 'rabbet', ...cause, edge: rabbet, width: part.thickness });
  else
    mate.features.push({
      kind: 'groove',
      ...cause,
      edge: 'start',
      inset: inPart(draft, mate, across, goesIn.low, 'from the end to the nearer wall of the dado'),
      width: l.sum('width of the dado: what goes in, and a little for glue', goesIn.thickness, sideways),
    });
  if (front !== undefined) notchFor(draft, spec, depth, front);
  bores.hollow(mate.id, hollowOf(draft, spec, goesIn, depth, sideways, front));
  const contact = contactBox(draft, part, end, mate);
  draft.joints.push({
    id: `${part.id}>${mate.id}`,
    kind: rabbet ? 'rabbet' : 'dado',
    duty: 'carries',
    hold: 'glue',
    part: part.id,
    side: end,
    mate: mate.id,
    mateSide: face,
    contact:
      front === undefined ? contact : { min: [contact.min[0], front, contact.min[2]], max: contact.max },
    fasteners: [],
    letIn: { depth, sideways, endways: draft.nothing },
  });
}

/** Where the channel begins, when not at the mate's front: at the stop, or at the front of a part set back. */
function frontOf(draft: Draft, { part, mate, stop }: LetInSpec): Traced | undefined {
  const l = draft.ledger;
  const own = part.box.min[1];
  // Less than can be marked is no stop.
  const set = l.ticks(own) - l.ticks(mate.box.min[1]) >= l.ticks(draft.stepOf('marking'));
  if (stop === undefined) return set ? own : undefined;
  const stopped = l.sum('where the dado stops, behind the front', mate.box.min[1], stop);
  return l.ticks(own) > l.ticks(stopped) ? own : stopped;
}

/** The front corner that would stand before the end of a stopped dado is sawn out of the panel. */
function notchFor(draft: Draft, { part, end, mate }: LetInSpec, depth: Traced, front: Traced): void {
  const l = draft.ledger;
  const before = l.less('from the front to where the dado stops', front, part.box.min[1]);
  if (l.ticks(before) <= 0) return;
  const marked = (t: Traced) => l.round('as fine as it is marked', t, draft.stepOf('marking'), 'up');
  part.features.push({
    kind: 'notch',
    id: `${part.id}#${mate.id}`,
    purpose: `for the stopped dado in the ${mate.name}`,
    end,
    edge: axisOf(part.place.width).sign > 0 ? 'near' : 'far',
    length: marked(depth),
    width: marked(before),
  });
}

/** From the front to the mate's back edge, measured along its end from its near edge. */
function runAlongWidth(
  draft: Draft,
  mate: DraftPart,
  front: Traced | undefined,
): { readonly from: Traced; readonly to: Traced } {
  if (front === undefined) return { from: draft.nothing, to: mate.width };
  const at = inPart(draft, mate, 1, front, 'where the dado stops');
  return axisOf(mate.place.width).sign > 0 ? { from: at, to: mate.width } : { from: draft.nothing, to: at };
}

/** The channel as a box of the piece, in ticks. */
function hollowOf(
  draft: Draft,
  spec: LetInSpec,
  goesIn: EndLetIn,
  depth: Traced,
  wider: Traced,
  front: Traced | undefined,
): Hollow {
  const l = draft.ledger;
  const { part, end, mate } = spec;
  const min: number[] = mate.box.min.map((t) => l.ticks(t));
  const max: number[] = mate.box.max.map((t) => l.ticks(t));
  const across = axisOf(part.place.thickness).axis;
  min[across] = l.ticks(goesIn.low);
  max[across] = min[across]! + l.ticks(goesIn.thickness) + l.ticks(wider);
  if (front !== undefined) min[1] = l.ticks(front);
  const into = axisOf(outward(part.place, end));
  const floor = l.ticks(planeOf(part, end));
  if (into.sign > 0) {
    min[into.axis] = floor - l.ticks(depth);
    max[into.axis] = floor;
  } else {
    min[into.axis] = floor;
    max[into.axis] = floor + l.ticks(depth);
  }
  return { min, max } as unknown as Hollow;
}
