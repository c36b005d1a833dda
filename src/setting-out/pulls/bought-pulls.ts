import type { Pull, RecordOf } from '../../job/index.ts';
import { HANDLES, SETTING_OUT } from '../../materials/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { CaseFrame } from '../case/frame-of-case.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { type FrontPart, frontParts, middlesOn, whichOf } from '../handles/front-part.ts';
import { layOn, rowOn } from '../handles/places-on-front.ts';
import { markFromMiddle, standApart } from '../handles/several-on-front.ts';
import { bitNear } from '../joints/bit-choice.ts';
import type { Bore, Bores } from '../joints/bores.ts';
import { inPart, sideLooking } from '../joints/contact.ts';
import { axisOf } from '../place.ts';
import { type MachineScrew, machineScrew } from './machine-screw.ts';

/** Bores for the bought pulls of a case's doors and drawers, and chooses the screws that hold them. */
export function boughtPulls(draft: Draft, bores: Bores, frame: CaseFrame): void {
  for (const record of draft.tree.all('pull')) {
    if (draft.tree.caseOf(record.id) !== frame.box) continue;
    const pull = pullFor(draft, record);
    if (pull) for (const front of frontParts(draft, record)) pullsOn(draft, bores, record, pull, front);
  }
}

/** All pulls of one front. */
function pullsOn(draft: Draft, bores: Bores, record: RecordOf<'pull'>, pull: Pull, front: FrontPart): void {
  const { part } = front;
  const middles = middlesOn(draft, record, front);
  // A bar that lies across its row is as wide there as nobody measured; a knob is as wide as it is long.
  const along = pull.holes === undefined || layOn(record, front) === rowOn(record, front);
  const size = along ? draft.typed(`shop/rack/pulls/${pull.id}/length`, pull.length) : draft.nothing;
  if (!standApart(draft, record, front, middles, size)) return;
  const box = draft.drawers.find((d) => d.parts.face === part.id)?.parts.front;
  const boards = [part, ...(box === undefined ? [] : [draft.part(box)])];
  const before = boards.map((b) => b.features.length);
  middles.forEach((middle, j) => {
    fixPull(draft, bores, record, pull, front, { j, middle });
  });
  for (const [i, board] of boards.entries()) markFromMiddle(draft, record, front, board, before[i]!);
}

function pullFor(draft: Draft, record: RecordOf<'pull'>): Pull | undefined {
  const rack = draft.job.shop.rack.pulls ?? [];
  const pull = record.pull === undefined ? rack[0] : rack.find((p) => p.id === record.pull);
  if (!pull)
    draft.stop('pulls.none', record, 'pull', `The rack has no pull for “${record.id}”.`, {
      says: 'Put one on the rack, its holes and thread measured.',
    });
  return pull;
}

function fixPull(
  draft: Draft,
  bores: Bores,
  record: RecordOf<'pull'>,
  pull: Pull,
  front: FrontPart,
  { j, middle: [x, z] }: { readonly j: number; readonly middle: Place },
): void {
  const l = draft.ledger;
  const { part } = front;
  const size = (field: 'holes' | 'thread' | 'deep' | 'length') =>
    draft.typed(`shop/rack/pulls/${pull.id}/${field}`, pull[field]!);
  const up = layOn(record, front) === 'up';
  const name = `${whichOf(record, front, j)}pull on the ${part.name}`;
  if (!isOnFront(draft, record, part, { name, middle: [x, z], length: size('length'), up })) return;
  const behind = boxBehind(draft, part, [x, z]);
  const wood = behind
    ? l.sum('both boards together', part.thickness, behind.thickness)
    : l.sum('the board', part.thickness);
  const [thread, deep] = [size('thread'), size('deep')];
  const screw = machineScrew(draft, wood, thread, deep);
  if (!screw) {
    draft.stop(
      'pulls.no-screw',
      record,
      'pull',
      `No machine screw on the shop’s list goes through ${mm(draft, wood)} mm of wood into “${pull.id}” and holds in its thread without touching its end.`,
      {
        says: `Put one on the list: ${mm(draft, thread)} mm thick, ${mm(draft, wood) + mm(draft, thread)} to ${mm(draft, wood) + mm(draft, deep) - 1} mm long.`,
      },
    );
    return;
  }
  const half =
    pull.holes === undefined ? undefined : l.ratio('half between its holes', size('holes'), SETTING_OUT.half);
  const middle = up ? z : x;
  const along =
    half === undefined
      ? [middle]
      : [l.less('first hole of the pull', middle, half), l.sum('second hole of the pull', middle, half)];
  const places = along.map((at) => (up ? ([x, at] as const) : ([at, z] as const)));
  if (behind && !betweenSides(draft, record, part, name, places, screw)) return;
  const bored = places.map((place) => boreOf(draft, part, behind, place, screw));
  if (bored.some((b) => bores.meets(b))) {
    draft.stop(
      'pulls.no-place',
      record,
      placeField(record, up),
      `The screws of the ${name} would meet others.`,
      { says: 'Place it elsewhere: further from the edge, higher or lower.' },
    );
    return;
  }
  const through = bitNear(
    draft,
    'twist',
    l.sum('hole that the screw passes', screw.diameter, l.row(SETTING_OUT.clearanceExtra)),
    l.ticks(l.row(SETTING_OUT.clearanceExtra)),
  );
  // The front is brought to its gaps when it is screwed on, so the hole behind has room for that.
  const wider = bitNear(
    draft,
    'twist',
    l.sum('wider, so that the front can be set', through, l.row(HANDLES.wider)),
  );
  places.forEach((place, i) => {
    const n = j * places.length + i + 1;
    bores.add(bored[i]!);
    hole(draft, part, place, through, `${part.id}#${record.id}:${n}`, 'for its pull');
    if (behind)
      hole(draft, behind, place, wider, `${behind.id}#${record.id}:${n}`, `for the pull of the ${part.name}`);
  });
  draft.pulls.push({
    record: record.id,
    pull: pull.id,
    part: part.id,
    ...(behind ? { behind: behind.id } : {}),
    ...(pull.holes === undefined ? {} : { holes: size('holes') }),
    count: places.length,
    screw: screw.id,
    screwLength: screw.length,
    screwDiameter: screw.diameter,
    reach: l.less('how far the screw stands in the pull', screw.length, wood),
    deep,
  });
}

type Place = readonly [x: Traced, z: Traced];

/** A pull as it would lie on its front. */
interface Pictured {
  readonly name: string;
  readonly middle: Place;
  readonly length: Traced;
  readonly up: boolean;
}

/** The field that a pull’s place is changed by. */
function placeField(record: RecordOf<'pull'>, up: boolean): string {
  if ((record.count ?? 1) > 1) return record.apart === undefined ? 'count' : 'apart';
  return up ? 'fromBelow' : 'fromEdge';
}

function isOnFront(
  draft: Draft,
  record: RecordOf<'pull'>,
  part: DraftPart,
  { name, middle, length, up }: Pictured,
): boolean {
  const l = draft.ledger;
  const clear = l.ticks(l.row(HANDLES.beside));
  const fits = ([0, 2] as const).every((k, i) => {
    const half = (k === 2) === up ? l.ticks(length) / 2 : 0;
    const at = l.ticks(middle[i]!);
    return at - half - clear >= l.ticks(part.box.min[k]) && at + half + clear <= l.ticks(part.box.max[k]);
  });
  if (!fits)
    draft.stop(
      'handles.off-front',
      record,
      placeField(record, up),
      `The ${name} comes to its edge, or beyond.`,
      { says: 'Take a shorter one, or place it further in.' },
    );
  return fits;
}

/** The front of a drawer's box, where it lies behind the middle of the pull. */
function boxBehind(draft: Draft, part: DraftPart, [, z]: Place): DraftPart | undefined {
  const drawer = draft.drawers.find((d) => d.parts.face === part.id);
  const box = drawer && draft.part(drawer.parts.front);
  const l = draft.ledger;
  return box && l.ticks(z) > l.ticks(box.box.min[2]) && l.ticks(z) < l.ticks(box.box.max[2])
    ? box
    : undefined;
}

/** Whether screws come through a drawer's box between its sides, where a hand reaches them; a stop says where not. */
function betweenSides(
  draft: Draft,
  record: RecordOf<'pull'>,
  part: DraftPart,
  name: string,
  places: readonly Place[],
  screw: MachineScrew,
): boolean {
  const l = draft.ledger;
  const { left, right } = draft.drawers.find((d) => d.parts.face === part.id)!.parts;
  const clear = l.ticks(screw.diameter) / 2 + l.ticks(l.row(HANDLES.beside));
  const reached = places.every(
    ([x]) =>
      l.ticks(x) - clear >= l.ticks(draft.part(left).box.max[0]) &&
      l.ticks(x) + clear <= l.ticks(draft.part(right).box.min[0]),
  );
  if (!reached)
    draft.stop(
      'pulls.no-place',
      record,
      placeField(record, false),
      `A screw of the ${name} would come through beside its box or into a side of it.`,
      { says: 'Place the pull further in.' },
    );
  return reached;
}

function boreOf(
  draft: Draft,
  part: DraftPart,
  behind: DraftPart | undefined,
  [x, z]: Place,
  screw: MachineScrew,
): Bore {
  const l = draft.ledger;
  return {
    parts: [part.id, ...(behind ? [behind.id] : [])],
    from: [l.ticks(x), l.ticks((behind ?? part).box.max[1]), l.ticks(z)],
    to: [l.ticks(x), l.ticks(part.box.min[1]), l.ticks(z)],
    radius: l.ticks(screw.diameter) / 2 + l.ticks(l.row(HANDLES.wider)) / 2,
  };
}

/** A hole right through a board, bored from the face that looks to the front. */
function hole(
  draft: Draft,
  part: DraftPart,
  [x, z]: Place,
  diameter: Traced,
  id: string,
  purpose: string,
): void {
  const on = (d: 'length' | 'width') => {
    const { axis } = axisOf(part.place[d]);
    return inPart(draft, part, axis, axis === 0 ? x : z, 'hole of the pull');
  };
  part.features.push({
    kind: 'hole',
    use: 'clearance',
    id,
    purpose,
    side: sideLooking(part.place, '-y'),
    at: [on('length'), on('width')],
    diameter,
  });
}

function mm(draft: Draft, t: Traced): number {
  return Math.round(toMm(draft.ledger.ticks(t)) * 10) / 10;
}
