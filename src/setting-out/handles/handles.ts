import type { RecordOf } from '../../job/index.ts';
import { HANDLES, SCREW_DISTANCES, SETTING_OUT } from '../../materials/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { Cure } from '../../snag/index.ts';
import type { CaseFrame } from '../case/frame-of-case.ts';
import type { Draft, DraftPart, Triple } from '../draft.ts';
import type { Bores } from '../joints/bores.ts';
import { contactBox, inPart } from '../joints/contact.ts';
import { type ChosenScrew, connectingScrew } from '../joints/screw-choice.ts';
import { clearanceHole, edgePilot } from '../joints/screw-holes.ts';
import { type Axis, axisOf } from '../place.ts';
import { sizeAcross } from './from-edge.ts';
import { type FrontPart, frontParts, middlesOn, whichOf } from './front-part.ts';
import { layOn, rowOn } from './places-on-front.ts';
import { markFromMiddle, standApart } from './several-on-front.ts';

type HandleRecord = RecordOf<'handle'>;

/** Makes the handles of a case's doors and drawers, and bores for the screws that hold them from behind. */
export function shopMadeHandles(draft: Draft, bores: Bores, frame: CaseFrame): void {
  for (const record of draft.tree.all('handle')) {
    if (draft.tree.caseOf(record.id) !== frame.box) continue;
    const fronts = frontParts(draft, record);
    for (const [i, front] of fronts.entries()) {
      // The way that the row runs, a handle lying along it is as long as it is.
      const lay = layOn(record, front);
      const size = sizeAcross(draft, record, rowOn(record, front) === lay ? 'across' : 'up');
      const middles = middlesOn(draft, record, front);
      if (!standApart(draft, record, front, middles, size)) continue;
      const before = front.part.features.length;
      middles.forEach((middle, j) => {
        makeHandle(draft, bores, record, front, { n: i * middles.length + j + 1, j, middle });
      });
      markFromMiddle(draft, record, front, front.part, before);
    }
  }
}

/** One of the handles of a front: its number among all of the record, that on its front, and its middle. */
interface One {
  readonly n: number;
  readonly j: number;
  readonly middle: readonly [x: Traced, z: Traced];
}

function makeHandle(
  draft: Draft,
  bores: Bores,
  record: HandleRecord,
  front: FrontPart,
  { n, j, middle: [x, z] }: One,
): void {
  const l = draft.ledger;
  const lot = draft.lot(record.strip);
  const [thick, wide] = [draft.thickness(lot), draft.typed(`shop/rack/lots/${lot.id}/width`, lot.width!)];
  const long = record.length === undefined ? l.row(HANDLES.long) : draft.field(record, 'length');
  const up = layOn(record, front) === 'up';
  const half = (t: Traced) => l.ratio('half of it', t, SETTING_OUT.half);
  const at: Triple = [
    l.less('left side of the handle', x, half(up ? wide : long)),
    l.less('front of the handle', front.part.box.min[1], thick),
    l.less('lower side of the handle', z, half(up ? long : wide)),
  ];
  const part = draft.panel({
    record: record.id,
    role: `handle:${n}`,
    name: `${whichOf(record, front, j)}handle of the ${front.part.name}`,
    family: 'handle',
    lot,
    at,
    size: [up ? wide : long, thick, up ? long : wide],
    length: up ? '+z' : '+x',
    // The show face looks to the front.
    width: up ? '-x' : '+z',
  });
  if (!isOnFront(draft, record, part, front.part) || coversHoles(draft, record, part, front.part)) return;
  const thickest = thickestScrew(draft, part);
  const screw = connectingScrew(draft, front.part.thickness, thick, thickest);
  if (screw) screwOn(draft, bores, record, part, front.part, screw);
  else
    draft.stop(
      'handles.no-screw',
      record,
      'strip',
      `No countersunk screw on the shop’s list goes through the ${front.part.name} and holds in its handle without coming through or splitting it.`,
      {
        says: `Put one on the list that is about ${Math.floor(mm(draft, front.part.thickness) + mm(draft, thick) - 3)} mm long and at most ${Math.floor(toMm(thickest as never) * 2) / 2} mm thick.`,
      },
    );
}

/** As thick as a screw may be, in ticks, to keep its distances from the handle's sides and ends, and from the other. */
function thickestScrew(draft: Draft, part: DraftPart): number {
  const l = draft.ledger;
  const [side, under] = SCREW_DISTANCES.solidSide.of;
  const [end, of] = SCREW_DISTANCES.solidEnd.of;
  const long = l.ticks(part.length) - l.ticks(l.row(HANDLES.apart));
  return Math.max(0, Math.min((l.ticks(part.width) * under) / (2 * side), (long * of) / (2 * end)));
}

/** True when a hole that the maker asked for comes out under the handle, which a stop says. */
function coversHoles(draft: Draft, record: HandleRecord, part: DraftPart, front: DraftPart): boolean {
  const l = draft.ledger;
  const covered = front.features.some((f) => {
    if (f.kind !== 'hole' || f.use !== 'row') return false;
    return (['length', 'width'] as const).every((run, i) => {
      const { axis, sign } = axisOf(front.place[run]);
      const at = l.ticks(front.place.origin[axis]) + sign * l.ticks(f.at[i]!);
      const reach = l.ticks(f.diameter) / 2 + l.ticks(l.row(HANDLES.beside));
      return at + reach > l.ticks(part.box.min[axis]) && at - reach < l.ticks(part.box.max[axis]);
    });
  });
  if (covered)
    draft.stop(
      'handles.no-place',
      record,
      'fromBelow',
      `The ${part.name} would lie over holes of its door.`,
      {
        says: 'Place one of them elsewhere.',
      },
    );
  return covered;
}

function isOnFront(draft: Draft, record: HandleRecord, part: DraftPart, front: DraftPart): boolean {
  const l = draft.ledger;
  const clear = l.ticks(l.row(HANDLES.beside));
  const inside = ([0, 2] as const).every(
    (k) =>
      l.ticks(part.box.min[k]) - clear >= l.ticks(front.box.min[k]) &&
      l.ticks(part.box.max[k]) + clear <= l.ticks(front.box.max[k]),
  );
  if (inside) return true;
  draft.stop(
    'handles.off-front',
    record,
    'length',
    `The ${part.name} comes to its edge, or beyond.`,
    ...backOnFront(draft, record, part, front),
    {
      says:
        (record.count ?? 1) > 1
          ? 'Make it shorter, place it further in, or have fewer.'
          : 'Make it shorter, or place it further in.',
    },
  );
  return false;
}

/** How a handle that comes too near an end of its front may be shorter about its middle, or lie further in on a door. */
function backOnFront(draft: Draft, record: HandleRecord, part: DraftPart, front: DraftPart): readonly Cure[] {
  const t = (x: Traced) => draft.ledger.ticks(x);
  const clear = t(draft.ledger.row(HANDLES.beside));
  const long = (k: 0 | 2) => t(part.box.max[k]) - t(part.box.min[k]);
  const along = long(0) > long(2) ? 0 : 2;
  const over = Math.max(
    t(front.box.min[along]) + clear - t(part.box.min[along]),
    t(part.box.max[along]) + clear - t(front.box.max[along]),
  );
  if (over <= 0) return [];
  const length = Math.floor(toMm(long(along) - 2 * over) / 5) * 5;
  const cures: Cure[] = [];
  if (length >= SHORTEST)
    cures.push({
      says: `Make it ${length} mm long.`,
      edits: [{ record: record.id, field: 'length', value: `${length} mm` }],
    });
  if (along === 0 && draft.tree.get(record.parent)?.kind !== 'drawers') {
    const fromEdge = Math.ceil(toMm(long(along) / 2 + clear));
    cures.push({
      says: `Place its middle ${fromEdge} mm from the edge that opens.`,
      edits: [{ record: record.id, field: 'fromEdge', value: `${fromEdge} mm` }],
    });
  }
  return cures;
}

/** A handle this short is hardly held any more, mm. Our own choice. */
const SHORTEST = 50;

/** Two screws from behind, as near to the handle's ends as its wood allows, further in where others are in the way. */
function screwOn(
  draft: Draft,
  bores: Bores,
  record: HandleRecord,
  part: DraftPart,
  front: DraftPart,
  screw: ChosenScrew,
): void {
  const l = draft.ledger;
  const { axis: along } = axisOf(part.place.length);
  const across = (2 - along) as Axis;
  const middle = l.sum(
    'middle of the handle',
    part.box.min[across],
    l.ratio('half its width', part.width, SETTING_OUT.half),
  );
  const back = front.box.max[1];
  const bore = (place: number) => {
    const from: [number, number, number] = [0, l.ticks(back), 0];
    from[along] = place;
    from[across] = l.ticks(middle);
    const to: [number, number, number] = [...from];
    to[1] -= l.ticks(screw.length);
    return { parts: [front.id, part.id], from, to, radius: l.ticks(screw.diameter) / 2 };
  };
  const ends = placesOf(draft, part, screw, (place) => !bores.meets(bore(place)));
  if (!ends) {
    draft.stop(
      'handles.no-place',
      record,
      'length',
      `The screws of the ${part.name} find no place in it clear of other holes.`,
      { says: 'Make it longer, or place it elsewhere.' },
    );
    return;
  }
  const holds = l.less('how deep the screw stands in the handle', screw.length, front.thickness);
  const [clearance, pilot] = [clearanceHole(draft, screw), edgePilot(draft, screw, draft.lot(part.lot))];
  const id = `${front.id}>${part.id}`;
  const fasteners = ends.map((place, i) => {
    const n = i + 1;
    bores.add(bore(l.ticks(place)));
    const head: [Traced, Traced, Traced] = [middle, back, middle];
    head[along] = place;
    const on = (of: DraftPart) => {
      const [long, wide] = [axisOf(of.place.length).axis, axisOf(of.place.width).axis];
      return [
        inPart(draft, of, long, head[long], 'screw of the handle'),
        inPart(draft, of, wide, head[wide], 'screw of the handle'),
      ] as const;
    };
    front.features.push({
      kind: 'hole',
      use: 'clearance',
      id: `${front.id}#${part.id}:${n}`,
      purpose: `screw into the ${part.name}`,
      side: 'under',
      at: on(front),
      diameter: clearance,
      countersink: screw.head,
    });
    part.features.push({
      kind: 'hole',
      use: 'pilot',
      id: `${part.id}#${front.id}:${n}`,
      purpose: `screw from behind the ${front.name}`,
      side: 'under',
      at: on(part),
      diameter: pilot,
      depth: holds,
    });
    draft.fasteners.push({
      id: `${id}:${n}`,
      joint: id,
      screw: screw.screw.id,
      through: [front.id, part.id],
      head,
      direction: '-y',
      length: screw.length,
      diameter: screw.diameter,
      holds,
      spare: l.less('wood left before the handle’s face', part.thickness, holds),
    });
    return `${id}:${n}`;
  });
  draft.joints.push({
    id,
    kind: 'butt',
    duty: 'handle',
    hold: 'face-screws',
    part: front.id,
    side: 'show',
    mate: part.id,
    mateSide: 'under',
    contact: contactBox(draft, front, 'show', part),
    fasteners,
  });
}

/** Middles of the two screws along the handle, alike from both ends; undefined where it is too short. */
function placesOf(
  draft: Draft,
  part: DraftPart,
  screw: ChosenScrew,
  isFree: (place: number) => boolean,
): readonly [Traced, Traced] | undefined {
  const l = draft.ledger;
  const { axis } = axisOf(part.place.length);
  const [min, max] = [part.box.min[axis], part.box.max[axis]];
  const least = l.ratio('from the end of the grain to the screw', screw.diameter, SCREW_DISTANCES.solidEnd);
  const end = l.round('as it is marked', least, l.row(SETTING_OUT.setStep), 'up');
  const aside = l.row(HANDLES.aside);
  const room = l.ticks(part.length) - l.ticks(l.row(HANDLES.apart));
  for (let n = 0; 2 * (l.ticks(end) + n * l.ticks(aside)) <= room; n++) {
    const off = l.ticks(end) + n * l.ticks(aside);
    if (!isFree(l.ticks(min) + off) || !isFree(l.ticks(max) - off)) continue;
    const from = n === 0 ? end : l.sum('moved inward, clear of other holes', end, l.times('steps', aside, n));
    return [l.sum('first screw of the handle', min, from), l.less('second screw of the handle', max, from)];
  }
  return undefined;
}

function mm(draft: Draft, t: Traced): number {
  return toMm(draft.ledger.ticks(t));
}
