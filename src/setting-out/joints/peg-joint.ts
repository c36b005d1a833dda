import { BISCUITS, DOWELS, SETTING_OUT } from '../../materials/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Face, Feature } from '../feature.ts';
import { type Axis, axisOf, opposite } from '../place.ts';
import { type Bore, type Bores, type Hollow, WALL } from './bores.ts';
import { contactBox, inPart, outward, planeOf, sideLooking } from './contact.ts';
import type { Joint } from './joint.ts';
import { clearPlaces } from './move-aside.ts';
import { type ChosenPeg, chooseBiscuit, chooseDowel, cutterOf, halfSlot } from './peg-choice.ts';
import { type SpacingRule, spaceBy } from './screw-spacing.ts';
import { woodBehind } from './wood-behind.ts';

/** A panel's end on another's face, held by dowels or biscuits and glued. */
export interface PegJointSpec {
  readonly part: DraftPart;
  readonly edge: 'start' | 'end';
  readonly mate: DraftPart;
  readonly by: 'dowels' | 'biscuits';
}

const SPACING: Record<PegJointSpec['by'], SpacingRule> = {
  dowels: {
    least: DOWELS.spacingLeast,
    most: DOWELS.spacingMost,
    end: DOWELS.end,
    endLeast: DOWELS.endLeast,
  },
  biscuits: {
    least: BISCUITS.spacingLeast,
    most: BISCUITS.spacingMost,
    end: BISCUITS.end,
    endLeast: BISCUITS.end,
  },
};

/** Adds the joint, its holes or slots in both parts, and what is glued into them. */
export function pegJoint(draft: Draft, bores: Bores, spec: PegJointSpec): void {
  const l = draft.ledger;
  const { part, edge, mate, by } = spec;
  const direction = outward(part.place, edge);
  const contact = contactBox(draft, part, edge, mate);
  const { axis: across } = axisOf(part.place.thickness);
  const drive = axisOf(direction);
  const along = (3 - drive.axis - across) as Axis;
  const joint: Omit<Joint, 'fasteners'> = {
    id: `${part.id}>${mate.id}`,
    kind: 'butt',
    duty: 'carries',
    hold: by,
    part: part.id,
    side: edge,
    mate: mate.id,
    mateSide: sideLooking(mate.place, opposite(direction)),
    contact,
  };
  const [low, high] = [contact.min[along], contact.max[along]];
  const length = l.less('length of the joint', high, low);
  const wood = woodBehind(draft, mate, mate.thickness, direction, contact);
  const thinner = l.least('the thinner board', part.thickness, mate.thickness);
  const room = { edge: thinner, wood, joint: length };
  const chosen = by === 'dowels' ? chooseDowel(draft, room) : chooseBiscuit(draft, room);
  if (!chosen || l.ticks(length) <= 0) {
    noneSuits(draft, spec);
    draft.joints.push({ fasteners: [], pegs: [], ...joint });
    return;
  }
  const step = draft.stepOf('marking');
  const half = l.ratio('middle of the end', part.thickness, SETTING_OUT.half);
  const line = l.sum('middle of the end', part.box.min[across], half);
  const plane = planeOf(part, edge);
  const atPlace = <T>(place: T, of: (t: Traced) => T): readonly [T, T, T] => {
    const at: T[] = [];
    at[drive.axis] = of(plane);
    at[along] = place;
    at[across] = of(line);
    return at as never;
  };
  const taken = (place: number) =>
    takenBy(draft, spec, chosen, { at: atPlace(place, (t) => l.ticks(t)), drive, along, across });
  const rows = {
    spacing: spaceBy(l, SPACING[by], length, step),
    low,
    high,
    first: 0,
    aside: l.round(
      'as fine as lines are marked',
      l.row(by === 'dowels' ? DOWELS.aside : BISCUITS.aside),
      step,
      'up',
    ),
    apart: (chosen.kind === 'dowel' ? l.ticks(chosen.wide) : 2 * halfSlot(draft, chosen.deep[0])) + WALL,
    isFree: (place: number) => taken(place).every((t) => t.isFree(bores)),
  };
  const row = clearPlaces(l, rows);
  if (!row) pegsMeet(draft, spec);
  const pegs = (row ?? []).map((place, i) => {
    for (const t of taken(l.ticks(place))) t.note(bores);
    const n = i + 1;
    const on = (p: DraftPart, axis: Axis, where: Traced, reason: string) =>
      inPart(draft, p, axis, where, reason);
    const face = joint.mateSide as Face;
    const onFace = (of: 'length' | 'width') => {
      const { axis } = axisOf(mate.place[of]);
      return on(mate, axis, axis === along ? place : line, `place on the ${mate.name}`);
    };
    const inEnd = hollowed(draft, chosen, {
      id: `${part.id}#${mate.id}:${n}`,
      purpose: `${chosen.kind}s into the ${mate.name}`,
      side: edge,
      at: [
        on(part, along, place, `place along the end of the ${part.name}`),
        on(part, across, line, 'middle of the end, from the under face'),
      ],
      deep: chosen.deep[0],
      run: 'width',
    });
    const inFace = hollowed(draft, chosen, {
      id: `${mate.id}#${part.id}:${n}`,
      purpose: `${chosen.kind}s from the ${part.name}`,
      side: face,
      at: [onFace('length'), onFace('width')],
      deep: chosen.deep[1],
      run: axisOf(mate.place.length).axis === along ? 'length' : 'width',
    });
    part.features.push(inEnd);
    mate.features.push(inFace);
    const id = `${joint.id}:${n}`;
    draft.pegs.push({
      id,
      joint: joint.id,
      kind: chosen.kind,
      fixing: chosen.fixing,
      parts: [part.id, mate.id],
      at: atPlace(place, (t) => t),
      direction,
      across: chosen.across,
      wide: chosen.wide,
      holds: chosen.holds,
      spare: l.less('wood left behind', wood, chosen.deep[1]),
    });
    return id;
  });
  draft.joints.push({ fasteners: [], pegs, ...joint });
}

/** A hole for a dowel, or a slot for a biscuit. */
function hollowed(
  draft: Draft,
  chosen: ChosenPeg,
  of: {
    readonly id: string;
    readonly purpose: string;
    readonly side: 'start' | 'end' | Face;
    readonly at: readonly [Traced, Traced];
    readonly deep: Traced;
    readonly run: 'length' | 'width';
  },
): Feature {
  const { id, purpose, side, at, deep } = of;
  return chosen.kind === 'dowel'
    ? { kind: 'hole', use: 'dowel', id, purpose, side, at, diameter: chosen.wide, depth: deep }
    : { kind: 'biscuit-slot', id, purpose, side, at, run: of.run, depth: deep, ...cutterOf(draft) };
}

/** What a peg takes up in a part, and how it looks for its place among what is there. */
interface Taken {
  readonly isFree: (bores: Bores) => boolean;
  readonly note: (bores: Bores) => void;
}

function takenBy(
  draft: Draft,
  { part, mate }: PegJointSpec,
  chosen: ChosenPeg,
  place: {
    readonly at: readonly [number, number, number];
    readonly drive: { readonly axis: Axis; readonly sign: 1 | -1 };
    readonly along: Axis;
    readonly across: Axis;
  },
): readonly Taken[] {
  const { at, drive, along, across } = place;
  return ([-1, 1] as const).map((way, i): Taken => {
    const owner = (i === 0 ? part : mate).id;
    const deep = chosen.deep[i as 0 | 1];
    const to = [...at] as [number, number, number];
    to[drive.axis] += way * drive.sign * draft.ledger.ticks(deep);
    if (chosen.kind === 'dowel') {
      const bore: Bore = { parts: [owner], from: at, to, radius: draft.ledger.ticks(chosen.wide) / 2 };
      return { isFree: (b) => !b.meets(bore), note: (b) => b.add(bore) };
    }
    const min = at.map((x, k) => Math.min(x, to[k]!)) as [number, number, number];
    const max = at.map((x, k) => Math.max(x, to[k]!)) as [number, number, number];
    const [long, thick] = [halfSlot(draft, deep), Math.ceil(draft.ledger.ticks(cutterOf(draft).kerf) / 2)];
    for (const [axis, by] of [
      [along, long],
      [across, thick],
    ] as const) {
      min[axis] -= by;
      max[axis] += by;
    }
    const box: Hollow = { min, max };
    return { isFree: (b) => !b.meetsHollow(owner, box), note: (b) => b.hollow(owner, box) };
  });
}

function noneSuits(draft: Draft, { part, mate, by }: PegJointSpec): void {
  const code = 'pegs.none-suits';
  if (draft.snags.some((s) => s.code === code && s.where.record === part.record)) return;
  const mm = (t: Traced) => Math.round(toMm(draft.ledger.ticks(t)) * 10) / 10;
  const rule = by === 'dowels' ? DOWELS.thickest : BISCUITS.skin;
  draft.snags.push({
    code,
    level: 'stop',
    where: { path: `design/records/${part.record}`, part: part.id, record: part.record },
    sentence: `No ${by === 'dowels' ? 'dowel' : 'biscuit'} of the rack suits the ${mm(part.thickness)} mm end of the ${part.name} on the ${mm(mate.thickness)} mm ${mate.name}.`,
    rule: { says: rule.says, source: rule.source, confirmed: false },
    cures: [
      by === 'dowels'
        ? {
            says: `Put dowels between a third and half as thick as the board among the rack’s fixings: of ${Math.ceil(mm(part.thickness) / 3)} to ${Math.floor(mm(part.thickness) / 2)} mm.`,
          }
        : {
            says: 'Put biscuits as thick as the joiner’s slot among the rack’s fixings, small enough to leave wood behind.',
          },
      { says: 'Join the panels in another way: “joints” of the case.' },
    ],
  });
}

function pegsMeet(draft: Draft, { part, mate, by }: PegJointSpec): void {
  draft.snags.push({
    code: 'pegs.meet',
    level: 'stop',
    where: { path: `design/records/${part.record}`, part: part.id, record: part.record },
    sentence: `The ${by} of the ${part.name} find no place in the ${mate.name} clear of what is bored there.`,
    rule: { says: 'holes keep 2 mm of wood between them', source: 'common practice', confirmed: false },
    cures: [{ says: 'Move one of the parts by its own thickness.' }],
  });
}
