import type { FixingOf, RecordOf } from '../../job/index.ts';
import { BASES, HOLES, SETTING_OUT } from '../../materials/index.ts';
import { type Ticks, type Traced, toMm } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { inPanel } from '../holes/panel-holes.ts';
import type { Bore, Bores } from '../joints/bores.ts';
import { planeOf, sideLooking } from '../joints/contact.ts';
import type { CaseFrame } from './frame-of-case.ts';

/** The leveller that a base names, or the first of the rack. */
export function levellerOf(draft: Draft, base: RecordOf<'base'>): FixingOf<'leveller'> | undefined {
  return (draft.job.shop.rack.fixings ?? [])
    .filter((f) => f.kind === 'leveller')
    .find((f) => base.leveller === undefined || f.id === base.leveller);
}

/** How high a case stands on its levellers: as asked, or turned right in. */
export function heightOnLevellers(draft: Draft, base: RecordOf<'base'>): Traced {
  const leveller = levellerOf(draft, base);
  if (base.height !== undefined || !leveller) return draft.field(base, 'height');
  return sizeOf(draft, leveller, 'lowest');
}

/** Lets levellers into the bottom of a case: a pair at either end, more between where it is long, clear of all that is bored. */
export function standOnLevellers(draft: Draft, bores: Bores, frame: CaseFrame, bottom: DraftPart): void {
  const { base } = frame;
  if (base?.form !== 'levellers') return;
  const l = draft.ledger;
  const leveller = levellerOf(draft, base);
  if (!leveller) {
    draft.stop('levellers.none', base, 'leveller', `The rack has no leveller for “${base.id}” to stand on.`, {
      says: 'Put one among its fixings, its sleeve measured and how low and high it can be turned.',
    });
    return;
  }
  const size = (field: 'diameter' | 'deep' | 'width' | 'lowest' | 'highest') =>
    sizeOf(draft, leveller, field);
  const [diameter, deep, width] = [size('diameter'), size('deep'), size('width')];
  if (!reaches(draft, base, leveller, frame.baseHeight)) return;
  if (l.ticks(bottom.thickness) - l.ticks(deep) < l.ticks(l.row(HOLES.floor))) {
    draft.stop(
      'levellers.too-deep',
      base,
      'leveller',
      `The sleeve of “${leveller.id}” goes ${mm(draft, deep)} mm deep, and the bottom is only ${mm(draft, bottom.thickness)} mm thick.`,
      { says: 'Use levellers with a shorter sleeve, or make the case of thicker board.' },
    );
    return;
  }
  const places = placesUnder(draft, frame, base, bottom, diameter);
  if (places.length === 0) {
    const wanting = tooSmallFor(draft, bottom, diameter);
    if (wanting === undefined)
      draft.stop(
        'base.no-room',
        base,
        'setback',
        'The levellers are set back so far that the case rocks on them.',
        {
          says: 'Set them back less.',
          edits: [{ record: base.id, field: 'setback', value: '25 mm' }],
        },
      );
    else
      draft.stop(
        'base.no-room',
        base,
        'form',
        `The bottom is too ${wanting.how} for levellers: the case would rock on them, however near its edges they stand.`,
        {
          says: `Make the piece ${wanting.mm} mm ${wanting.more} at least, or let it stand on another base.`,
        },
      );
    return;
  }
  const radius = l.ticks(diameter) / 2;
  const under = sideLooking(bottom.place, '-z');
  const mouth = planeOf(bottom, under);
  const at = places.flatMap(({ x, y, inward }, i) => {
    const place = clearOf(draft, bores, bottom, { x, y, inward }, (at) =>
      boreAt(draft, bottom, at, mouth, deep, radius),
    );
    if (place === undefined) return [];
    bores.add(boreAt(draft, bottom, place, mouth, deep, radius));
    const hole = `${bottom.id}#${base.id}:${i + 1}`;
    bottom.features.push({
      kind: 'hole',
      use: 'leveller',
      id: hole,
      purpose: 'for the sleeve of a leveller',
      side: under,
      at: inPanel(draft, bottom, [...place, mouth]),
      diameter,
      depth: deep,
    });
    return [{ x: place[0], y: place[1], hole }];
  });
  if (at.length < places.length) {
    draft.stop(
      'levellers.no-place',
      base,
      'setback',
      'A leveller finds no place under the bottom, clear of its edges and of what is bored there.',
      {
        says: 'Set the levellers back by 60 mm.',
        edits: [{ record: base.id, field: 'setback', value: '60 mm' }],
      },
    );
    return;
  }
  draft.levellers.push({
    record: base.id,
    fixing: leveller.id,
    part: bottom.id,
    at,
    height: frame.baseHeight,
    lowest: size('lowest'),
    highest: size('highest'),
    diameter,
    deep,
    width,
  });
}

/** Whether levellers can be turned to a height, and as far beyond as the floor falls. */
function reaches(
  draft: Draft,
  base: RecordOf<'base'>,
  leveller: FixingOf<'leveller'>,
  height: Traced,
): boolean {
  const [lowest, highest] = [sizeOf(draft, leveller, 'lowest'), sizeOf(draft, leveller, 'highest')];
  const t = (x: Traced) => draft.ledger.ticks(x);
  const [room] = draft.tree.all('room');
  const fall =
    room?.floorFall === undefined ? 0 : t(draft.typed(`design/records/${room.id}/floorFall`, room.floorFall));
  const asked = base.height === undefined ? 'leveller' : 'height';
  if (t(height) < t(lowest)) {
    draft.stop(
      'levellers.too-short',
      base,
      asked,
      `The levellers are ${mm(draft, lowest)} mm high when they are turned right in, more than the ${mm(draft, height)} mm asked for.`,
      {
        says: 'Let the case stand as low as they can be turned.',
        edits: [{ record: base.id, field: 'height', value: leveller.lowest }],
      },
    );
    return false;
  }
  if (t(height) + fall <= t(highest)) return true;
  const falling = fall > 0 ? `, and ${toMm(t(height) + fall)} mm where the floor is lowest` : '';
  draft.stop(
    'levellers.too-short',
    base,
    asked,
    `The case is to stand ${mm(draft, height)} mm high${falling}; the levellers turn out to ${mm(draft, highest)} mm at most.`,
    { says: 'Use longer ones, or let the case stand lower.' },
  );
  return false;
}

/** The way in which a bottom is too small for two rows of levellers at its very edges, and by how much; undefined where it isn't. */
function tooSmallFor(
  draft: Draft,
  { box }: DraftPart,
  diameter: Traced,
): { readonly how: string; readonly more: string; readonly mm: number } | undefined {
  const l = draft.ledger;
  const need = l.ticks(l.row(BASES.levellersApart)) + l.ticks(diameter) + 2 * l.ticks(l.row(HOLES.edge));
  const missing = ([0, 1] as const).map((k) => need - l.ticks(box.max[k]) + l.ticks(box.min[k]));
  if (missing[1]! > 0) return { how: 'shallow', more: 'deeper', mm: Math.ceil(toMm(missing[1]! as Ticks)) };
  if (missing[0]! > 0) return { how: 'narrow', more: 'wider', mm: Math.ceil(toMm(missing[0]! as Ticks)) };
  return undefined;
}

interface Middle {
  readonly x: Traced;
  readonly y: Traced;
  /** The way to the middle of the case, from the front or from the back. */
  readonly inward: 1 | -1;
}

type Place = readonly [x: Traced, y: Traced];

/** Where the middles of the levellers would come: rows in front and behind, evenly spaced and no further apart than feet. */
function placesUnder(
  draft: Draft,
  frame: CaseFrame,
  base: RecordOf<'base'>,
  bottom: DraftPart,
  diameter: Traced,
): readonly Middle[] {
  const l = draft.ledger;
  const radius = l.ratio('half of the hole for the sleeve', diameter, SETTING_OUT.half);
  const usual = l.row(BASES.footSetback);
  const front = base.setback === undefined ? usual : draft.field(base, 'setback');
  const behind = base.setbackBack === undefined ? front : draft.field(base, 'setbackBack');
  // The bottom may stand between the sides: a sleeve keeps its wood there, however little it was set back.
  const least = l.sum('from an edge to the middle of a sleeve', radius, l.row(HOLES.edge));
  const first = l.greatest(
    'middle of the first leveller',
    l.sum('set back from the left', frame.left, front),
    l.sum('clear of the left end of the bottom', bottom.box.min[0], least),
  );
  const last = l.least(
    'middle of the last leveller',
    l.less('set back from the right', frame.right, front),
    l.less('clear of the right end of the bottom', bottom.box.max[0], least),
  );
  const y = [
    l.greatest(
      'middle of the levellers in front',
      l.sum('set back from the front', frame.front, front),
      l.sum('clear of the front edge of the bottom', bottom.box.min[1], least),
    ),
    l.least(
      'middle of the levellers behind',
      l.less('set back from the back', frame.rear, behind),
      l.less('clear of the back edge of the bottom', bottom.box.max[1], least),
    ),
  ] as const;
  const travel = l.less('from the first leveller to the last', last, first);
  const apart = l.ticks(l.row(BASES.levellersApart));
  if (l.ticks(travel) < apart || l.ticks(y[1]) - l.ticks(y[0]) < apart) return [];
  const gaps = Math.ceil(l.ticks(travel) / l.ticks(l.row(BASES.footApart)));
  const even = Array.from({ length: gaps }, () => 1);
  let x = first;
  return Array.from({ length: gaps + 1 }, (_, i) => {
    if (i > 0) x = l.sum('middle of the next leveller', x, l.share('an equal share', travel, even, i - 1));
    return y.map((at, k): Middle => ({ x, y: at, inward: k === 0 ? 1 : -1 }));
  }).flat();
}

/** Steps to either side and inward at which a leveller looks for its place, as few as do. */
const ASIDE = [0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5, 6, -6];
const INWARD = [0, 1, 2, 3, 4, 5, 6, 8, 10, 12];
const STEPS = INWARD.flatMap((into) => ASIDE.map((aside) => [aside, into] as const)).sort(
  (a, b) => Math.abs(a[0]) + a[1] - Math.abs(b[0]) - b[1],
);

function clearOf(
  draft: Draft,
  bores: Bores,
  bottom: DraftPart,
  { x, y, inward }: Middle,
  bore: (at: Place) => Bore,
): Place | undefined {
  const l = draft.ledger;
  const edge = l.ticks(l.row(HOLES.edge));
  for (const [aside, into] of STEPS) {
    const at: Place = [moved(draft, x, aside), moved(draft, y, into * inward)];
    const made = bore(at);
    const inside = at.every(
      (v, k) =>
        l.ticks(v) - made.radius - edge >= l.ticks(bottom.box.min[k as 0 | 1]) &&
        l.ticks(v) + made.radius + edge <= l.ticks(bottom.box.max[k as 0 | 1]),
    );
    if (inside && !bores.meets(made)) return at;
  }
  return undefined;
}

function moved(draft: Draft, at: Traced, steps: number): Traced {
  if (steps === 0) return at;
  const l = draft.ledger;
  const by = l.times('steps aside', l.row(BASES.levellerAside), Math.abs(steps));
  const reason = 'middle of the leveller, clear of what is bored';
  return steps > 0 ? l.sum(reason, at, by) : l.less(reason, at, by);
}

function boreAt(
  draft: Draft,
  bottom: DraftPart,
  [x, y]: Place,
  mouth: Traced,
  deep: Traced,
  radius: number,
): Bore {
  const t = (v: Traced) => draft.ledger.ticks(v);
  return {
    parts: [bottom.id],
    from: [t(x), t(y), t(mouth)],
    to: [t(x), t(y), t(mouth) + t(deep)],
    radius,
  };
}

function sizeOf(
  draft: Draft,
  leveller: FixingOf<'leveller'>,
  field: 'diameter' | 'deep' | 'width' | 'lowest' | 'highest',
): Traced {
  return draft.typed(`shop/rack/fixings/${leveller.id}/${field}`, leveller[field]);
}

function mm(draft: Draft, t: Traced): number {
  return Math.round(toMm(draft.ledger.ticks(t)) * 10) / 10;
}
