import { BASES, pocketShape } from '../../materials/index.ts';
import { fromMm, type Traced, toMm } from '../../measure/index.ts';
import type { Draft, DraftPart, Triple } from '../draft.ts';
import { alike } from '../fits/cut-alike.ts';
import type { Bores } from '../joints/bores.ts';
import { pocketJoint } from '../joints/pocket-joint.ts';
import type { Direction } from '../place.ts';
import { type CaseFrame, ofCase } from './frame-of-case.ts';
import type { FrameSide } from './mitred-frame.ts';

/** Four legs, and the aprons between them, by the side that each looks to. */
export interface Legs {
  readonly legs: readonly DraftPart[];
  readonly aprons: ReadonlyMap<FrameSide, DraftPart>;
}

/** How each apron lies: its show face looks outward, its width stands upright. */
const RUNS: Record<FrameSide, Direction> = { front: '+x', left: '-y', right: '+y', back: '-x' };

/** The legs that an apron is between: at its start, and at its end. */
const BETWEEN: Record<FrameSide, readonly [start: number, end: number]> = {
  front: [0, 1],
  right: [1, 3],
  back: [3, 2],
  left: [2, 0],
};

/** Legs at the corners of a case and aprons between them, level at their upper ends; none for a base of another form. */
export function legsOf(draft: Draft, frame: CaseFrame): Legs {
  const { base } = frame;
  if (base?.form !== 'legs') return { legs: [], aprons: new Map() };
  const l = draft.ledger;
  const t = (x: Traced) => l.ticks(x);
  const strip = draft.lot(base.strip!);
  const lot = draft.lot(base.board!);
  const [deep, wide] = [
    draft.thickness(strip),
    draft.typed(`shop/rack/lots/${strip.id}/width`, strip.width!),
  ];
  const thick = draft.thickness(lot);
  const height = draft.field(base, 'height');
  const high = base.apron === undefined ? l.row(BASES.apronHeight) : draft.field(base, 'apron');
  const inset = l.row(BASES.apronBack);
  const setback = draft.field(base, 'setback');
  const behind = base.setbackBack === undefined ? setback : draft.field(base, 'setbackBack');
  const [x, y] = [
    l.sum('left side of the legs', frame.left, setback),
    l.sum('front of the legs', frame.front, setback),
  ];
  const between = [
    l.less('between the legs at left and right', frame.width, setback, setback, wide, wide),
    l.less('between the legs in front and behind', frame.depth, setback, behind, deep, deep),
  ] as const;
  const thin = t(thick) + t(inset) > Math.min(t(deep), t(wide));
  const low = t(high) < t(l.row(BASES.apronLeast));
  const shortest = fromMm(2 * pocketShape(toMm(t(thick))).mouth);
  if (thin || low || t(high) > t(height) || between.some((b) => t(b) <= shortest)) {
    noRoom(draft, base, thin ? 'strip' : low ? 'low' : t(high) > t(height) ? 'apron' : 'setback');
    return { legs: [], aprons: new Map() };
  }
  const right = l.sum('left face of the right legs', x, wide, between[0]);
  const rear = l.sum('front face of the legs behind', y, deep, between[1]);
  const { floor } = frame.site;
  const legs = (
    [
      ['front left', x, y],
      ['front right', right, y],
      ['back left', x, rear],
      ['back right', right, rear],
    ] as const
  ).map(([which, atX, atY]) =>
    draft.panel({
      record: base.id,
      role: `leg-${which.replace(' ', '-')}`,
      name: `${which} leg${ofCase(frame)}`,
      family: 'base',
      lot: strip,
      at: [atX, atY, floor],
      size: [wide, deep, height],
      length: '+z',
      width: '+x',
    }),
  );
  const z = l.less('lower edge of the aprons', l.sum('upper end of the legs', floor, height), high);
  const boxes: Record<FrameSide, readonly [at: Triple, size: Triple]> = {
    front: [
      [l.sum('right face of the left legs', x, wide), l.sum('front of the apron', y, inset), z],
      [between[0], thick, high],
    ],
    back: [
      [
        l.sum('right face of the left legs', x, wide),
        l.less('front of the apron behind', l.sum('back of the legs', rear, deep), inset, thick),
        z,
      ],
      [between[0], thick, high],
    ],
    left: [
      [l.sum('left face of the apron', x, inset), l.sum('back of the front legs', y, deep), z],
      [thick, between[1], high],
    ],
    right: [
      [
        l.less('left face of the right apron', l.sum('right side of the legs', right, wide), inset, thick),
        l.sum('back of the front legs', y, deep),
        z,
      ],
      [thick, between[1], high],
    ],
  };
  const aprons = new Map<FrameSide, DraftPart>();
  for (const side of ['front', 'left', 'right', 'back'] as const) {
    const [at, size] = boxes[side];
    aprons.set(
      side,
      draft.panel({
        record: base.id,
        role: `apron-${side}`,
        name: `${side} apron${ofCase(frame)}`,
        family: 'base',
        lot,
        at,
        size,
        length: RUNS[side],
        width: '+z',
        between: true,
      }),
    );
  }
  alike(draft, legs);
  for (const [one, other] of [
    ['front', 'back'],
    ['left', 'right'],
  ] as const)
    alike(
      draft,
      [one, other].flatMap((side) => aprons.get(side) ?? []),
    );
  return { legs, aprons };
}

/** Screws the aprons to the legs from inside. */
export function joinLegs(draft: Draft, bores: Bores, { legs, aprons }: Legs): void {
  const standing: DraftPart[] = [];
  for (const [side, apron] of aprons) {
    BETWEEN[side].forEach((leg, i) => {
      pocketJoint(draft, bores, {
        part: apron,
        edge: i === 0 ? 'start' : 'end',
        face: 'under',
        mate: legs[leg]!,
        duty: 'frame',
        standing: [...standing],
      });
    });
    standing.push(apron);
  }
}

const WRONG = {
  strip: [
    'The legs are so thin that an apron would stand out behind them.',
    'Use thicker strips for the legs, or a thinner board for the aprons.',
  ],
  low: [
    'The aprons are so low that the screws of two of them would meet in a leg.',
    'Make the aprons higher.',
  ],
  apron: ['The aprons are higher than the legs.', 'Make the aprons lower, or the legs higher.'],
  setback: ['The legs leave no room between them for aprons with pockets.', 'Set them back less.'],
} as const;

function noRoom(draft: Draft, base: NonNullable<CaseFrame['base']>, why: keyof typeof WRONG): void {
  const [sentence, says] = WRONG[why];
  draft.stop('base.no-room', base, why === 'low' ? 'apron' : why, sentence, { says });
}
