import type { RecordTree } from '../../job/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { isPegged } from '../joints/joint.ts';
import { onceADraft } from '../once-a-draft.ts';
import { axisOf } from '../place.ts';
import type { ClosedSpaces } from '../spaces/closed-spaces.ts';
import type { Bounded } from '../spaces/openings.ts';
import { type RoutedChannel, routedChannels } from './channel-settings.ts';
import { cut, type FitMember, setBy, thick } from './fit.ts';
import { runningClear } from './running-clear.ts';

/** A clear distance along the width or the height, between two panels that a third reaches along. */
export interface Between {
  readonly size: 'width' | 'height';
  readonly from: DraftPart;
  /** Absent under an applied top, which lies on the ends of the uprights. */
  readonly to: DraftPart | undefined;
  /** A panel that stands between the two or that both are fixed to: the bottom for widths, an upright for heights. */
  readonly along: DraftPart;
}

/** What the width or the height of a space is between; over several neighbours, from the first to the last. */
export function betweenOf(size: 'width' | 'height', first: Bounded, last: Bounded = first): Between {
  return size === 'width'
    ? { size, from: first.left, to: last.right, along: first.below }
    : { size, from: first.below, to: last.above, along: first.left };
}

/** By a divider's id, the opening that it is set from; of all cases at once. */
const openingsBefore = onceADraft((_, tree: RecordTree): ReadonlyMap<string, string> => {
  const before = new Map<string, string>();
  for (const split of tree.all('opening')) {
    if (!split.split) continue;
    const named = tree.childrenOf(split.id, 'divider');
    tree.childrenOf(split.id, 'opening').forEach((opening, i) => {
      const id = named[i] ? `${named[i].id}/divider` : `${split.id}/divider:${i + 1}`;
      before.set(id, opening.id);
    });
  }
  return before;
});

/**
 * Which made dimensions make a clear distance: a panel cut between two others, dados marked from its end, stock
 * that lies on its ends, and clear distances that dividers are set to.
 */
export class ClearLoops {
  private readonly draft: Draft;
  private readonly closed: ClosedSpaces;
  /** The opening that a divider is set from, by the divider's id. */
  private readonly before: ReadonlyMap<string, string>;
  /** How dividers are set that stand in no dado, by their ids; neighbours first. */
  private readonly set = new Map<string, ReturnType<typeof runningClear>>();
  private readonly channels = new Map<string, ReadonlyMap<string, RoutedChannel>>();

  constructor(draft: Draft, closed: ClosedSpaces) {
    this.draft = draft;
    this.closed = closed;
    this.before = openingsBefore(draft, draft.tree);
  }

  /**
   * The loop of a clear distance; its drawn values sum to it.
   * @param fitted a panel pegged between the two, whose own fit this is: the further one’s holes must be as far off as it is long
   */
  of(between: Between, fitted?: DraftPart): readonly FitMember[] {
    const far = this.nearFace(between, between.to, fitted);
    const near = this.farFace(between, between.from).map((m) => ({ ...m, sign: -m.sign as 1 | -1 }));
    return without(far, near);
  }

  /** The channels of a part by their features' ids, as they are routed. */
  routed(part: DraftPart): ReadonlyMap<string, RoutedChannel> {
    let routed = this.channels.get(part.id);
    if (!routed) {
      routed = routedChannels(this.draft.ledger, this.draft.job.shop, part);
      this.channels.set(part.id, routed);
    }
    return routed;
  }

  /** From where the panel along begins to the nearer face of a panel. */
  private nearFace(b: Between, part: DraftPart | undefined, fitted?: DraftPart): readonly FitMember[] {
    const { draft } = this;
    const { along } = b;
    const axis = b.size === 'width' ? 0 : 2;
    const t = (x: Traced) => draft.ledger.ticks(x);
    const end = t(along.box.max[axis]);
    const whole = cut(draft, along, 'length', 1);
    if (!part) return [whole];
    const tongue = along.tongues.end;
    if (end - (tongue === undefined ? 0 : t(tongue)) === t(part.box.min[axis]))
      return [whole, ...deep(along, part, tongue)];
    if (end === t(part.box.max[axis])) return [whole, thick(part, -1)];
    // What runs through, or a side beside a lid, is shorter by the strip on its end.
    const strip = draft.edged.get(along.id)?.get(b.size === 'width' ? 'right' : 'upper');
    if (strip && t(strip.box.max[axis]) === t(part.box.max[axis]))
      return [whole, thick(strip, 1), thick(part, -1)];
    return this.dado(along, part) ?? this.holes(b, part, fitted) ?? this.stick(b, part);
  }

  /** From where the panel along begins to the further face of a panel. */
  private farFace(b: Between, part: DraftPart): readonly FitMember[] {
    const { along } = b;
    const axis = b.size === 'width' ? 0 : 2;
    const t = (x: Traced) => this.draft.ledger.ticks(x);
    const start = t(along.box.min[axis]);
    const tongue = along.tongues.start;
    if (start + (tongue === undefined ? 0 : t(tongue)) === t(part.box.max[axis]))
      return deep(along, part, tongue).map((m) => ({ ...m, sign: 1 }));
    if (start === t(part.box.min[axis])) return [thick(part, 1)];
    const strip = b.size === 'width' ? this.draft.edged.get(along.id)?.get('left') : undefined;
    if (strip && t(strip.box.min[axis]) === t(part.box.min[axis])) return [thick(part, 1), thick(strip, -1)];
    return [...(this.dado(along, part) ?? this.holes(b, part) ?? this.stick(b, part)), thick(part, 1)];
  }

  /** A dado is marked from the end of the panel that it is in. */
  private dado(along: DraftPart, part: DraftPart): readonly FitMember[] | undefined {
    const channel = along.features.find((f) => f.id === `${along.id}#${part.id}`);
    if (channel?.kind !== 'groove') return undefined;
    const { place, placedBy } = this.routed(along).get(channel.id)!;
    const name = `place of the dado for the ${part.name}`;
    const at = { printed: place, ...setBy(placedBy, name, channel.inset, 1, along.id) };
    // Of an end that is rabbeted, only the further half goes in: the dado stands as much further on.
    const cut = part.features.find((f) => f.id === `${part.id}#${along.id}`);
    if (cut?.kind !== 'rabbet') return [at];
    return [at, setBy('router', `depth of the rabbet of the ${part.name}`, cut.depth, -1, part.id)];
  }

  /** What is screwed through a panel's face, or pegged into it, goes where that panel's holes are, and is measured as they were. */
  private holes(b: Between, part: DraftPart, fitted?: DraftPart): readonly FitMember[] | undefined {
    const { along, size } = b;
    const l = this.draft.ledger;
    const carried = (by: DraftPart, mate: DraftPart) =>
      this.draft.jointsOf(by.id).filter((j) => j.duty === 'carries' && j.mate === mate.id);
    const through =
      carried(part, along).find(isPegged) ??
      carried(along, part).find((j) => j.hold === 'face-screws' || j.hold === 'glue-and-screws');
    if (!through) return undefined;
    const against = isPegged(through) ? this.against(part, fitted) : undefined;
    if (against) return [...this.farFace(b, against.before), cut(this.draft, against.between, 'length', 1)];
    const axis = size === 'width' ? 0 : 2;
    const name = `distance of the ${part.name} from the end of the ${along.name}`;
    return [setBy('marking', name, l.less(name, part.box.min[axis], along.box.min[axis]), 1, part.id)];
  }

  /**
   * What is pegged between a panel and the one before it: pegs go in endwise, so it comes before the further panel, which then
   * comes against it, wherever that one’s own holes are.
   */
  private against(
    part: DraftPart,
    fitted: DraftPart | undefined,
  ): { readonly before: DraftPart; readonly between: DraftPart } | undefined {
    const id = this.before.get(part.id);
    const space = id === undefined ? undefined : this.closed.get(id);
    const before = space && (axisOf(part.place.thickness).axis === 0 ? space.left : space.below);
    // A side comes last, on the ends of bottom and lid.
    if (!before || before.role === 'left-side') return undefined;
    const into = (to: DraftPart) =>
      this.draft.joints.flatMap((j) => (isPegged(j) && j.mate === to.id ? [j.part] : []));
    const pegged = new Set(into(before));
    const between = into(part).find((other) => pegged.has(other));
    if (between === undefined || (fitted && into(part).includes(fitted.id))) return undefined;
    return { before, between: this.draft.part(between) };
  }

  /** A bottom or a lid between sides that run on beyond it is marked from their lower ends. */
  private fromEnd({ along }: Between, part: DraftPart): FitMember {
    const l = this.draft.ledger;
    const name = `distance of the ${part.name} from the lower end of the ${along.name}`;
    return setBy('marking', name, l.less(name, part.box.min[2], along.box.min[2]), 1, along.id);
  }

  /** A divider is set a clear distance from what comes before it. */
  private stick(b: Between, part: DraftPart): readonly FitMember[] {
    const id = this.before.get(part.id);
    const space = id === undefined ? undefined : this.closed.get(id);
    if (!space && (part.role === 'bottom' || part.role === 'lid')) return [this.fromEnd(b, part)];
    if (!space) throw new Error(`${part.id} is set from nothing`);
    const before = b.size === 'width' ? space.left : space.below;
    const clear = space.size[b.size === 'width' ? 0 : 2];
    const reached = this.farFace(b, before);
    const { printed } = this.running(part, before, clear);
    return [
      ...reached,
      { printed, ...setBy('marking', `clear ${b.size} of ${space.record.id}`, clear, 1, part.id) },
    ];
  }

  /** How a divider is set from its neighbour, which may have been set so as well. */
  private running(part: DraftPart, before: DraftPart, clear: Traced): ReturnType<typeof runningClear> {
    let known = this.set.get(part.id);
    if (!known) {
      const { ledger } = this.draft;
      known = runningClear(ledger, clear, this.set.get(before.id)?.further, this.draft.stepOf('marking'));
      this.set.set(part.id, known);
    }
    return known;
  }
}

function deep(along: DraftPart, part: DraftPart, tongue: Traced | undefined): readonly FitMember[] {
  return tongue === undefined
    ? []
    : [setBy('router', `depth of the ${part.name}’s channel for the ${along.name}`, tongue, -1, part.id)];
}

/** Two chains together, less what stands in both. */
function without(far: readonly FitMember[], near: readonly FitMember[]): readonly FitMember[] {
  const left = [...far];
  const more = near.filter((m) => {
    const same = left.findIndex((f) => f.name === m.name && f.length === m.length && f.sign === -m.sign);
    if (same < 0) return true;
    left.splice(same, 1);
    return false;
  });
  return [...left, ...more];
}
