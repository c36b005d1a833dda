import { treeOf } from '../job/index.ts';
import { stabilityLoad } from '../materials/index.ts';
import { type Traced, toMm } from '../measure/index.ts';
import type { Cure, Snag } from '../snag/index.ts';
import type { CheckInput } from './check-input.ts';
import { practice, ruleOf } from './rule.ts';
import { lengthMm, ShopWords } from './shop-words.ts';
import { type StandingBox, standingBoxes } from './standing-boxes.ts';
import { type Balance, balance, centreOf, tiltOfBlock, tipAngle, type Weight } from './tipping.ts';
import { tryEdits } from './try-edits.ts';

type Input = Pick<CheckInput, 'job' | 'setOut' | 'build' | 'weigh'>;

/** The piece as it stands, empty, seen from the side: y to the back, z up. */
interface Stand {
  /** The front of what touches the floor: it tips over this line. */
  readonly pivotMm: number;
  readonly rearMm: number;
  readonly frontMm: number;
  readonly heightMm: number;
  /** What of it stands open: its doors, its drawers. */
  readonly open: readonly string[];
  /** Parts with the place of their middle: y, not yet counted from the pivot. */
  readonly masses: readonly {
    readonly part: string;
    readonly kg: number;
    readonly y: number;
    readonly z: number;
  }[];
}

/** One way to try it: the moments about a pivot line. */
interface Trial {
  readonly code: string;
  readonly load: NonNullable<ReturnType<typeof stabilityLoad>>;
  readonly applies: (s: Stand) => boolean;
  readonly moments: (s: Stand, pivotMm: number) => Balance;
  readonly sentence: (s: Stand, words: ShopWords) => string;
}

const LEAN = stabilityLoad('lean')!;
const WEIGHT = stabilityLoad('child')!;
const TILT = stabilityLoad('tilt')!;
/** What the rule of the tilt speaks of. */
const TILTED_FROM_KG = 11;

const TRIALS: readonly Trial[] = [
  {
    code: 'tipping.pull',
    load: LEAN,
    applies: () => true,
    moments: (s, pivot) =>
      balance(weights(s, pivot), { pull: { newtons: LEAN.pull!.newtons, heightMm: pullHeight(s) } }),
    sentence: (s, words) =>
      `${tried(s)} tips forward when someone pulls at its front with ${words.force(LEAN.pull!.newtons)} at a height of ${words.length(pullHeight(s))}.`,
  },
  {
    code: 'tipping.weight-in-front',
    load: WEIGHT,
    applies: (s) => s.frontMm < s.pivotMm,
    moments: (s, pivot) =>
      balance(
        [...weights(s, pivot), { kg: WEIGHT.weightKg!, behindMm: s.frontMm - pivot, heightMm: s.heightMm }],
        // The carpet under its rear feet, as a block.
        { tiltDegrees: tiltOfBlock(WEIGHT.blockMm!, Math.max(WEIGHT.blockMm!, s.rearMm - pivot)) },
      ),
    sentence: (s, words) =>
      `${tried(s)} tips forward when someone leans on the front edge of its top with ${words.mass(WEIGHT.weightKg!)}, its rear feet raised a little, as on a carpet.`,
  },
  {
    code: 'tipping.tilt',
    load: TILT,
    applies: (s) => s.masses.reduce((sum, m) => sum + m.kg, 0) >= TILTED_FROM_KG,
    moments: (s, pivot) => balance(weights(s, pivot), { tiltDegrees: TILT.tiltDegrees! }),
    sentence: (s) => {
      const c = centreOf(weights(s, s.pivotMm));
      return `${tried(s)} tips forward by itself when it is tilted ${Math.round(tipAngle(c.behindMm, c.heightMm) * 10) / 10} degrees; it should stand ${TILT.tiltDegrees}.`;
    },
  },
];

/**
 * Whether the empty piece with its doors open and its drawers out, the worst case, tips over the front of what it stands on. Trying these loads comes near
 * the tests of furniture standards and proves nothing by them; so the last snag always asks for an anchor.
 */
export function tipsForward(input: Input): readonly Snag[] {
  const { job, build } = input;
  const stand = standOf(input);
  const record = job.design.records.find((r) => r.kind === 'piece')!;
  const anchored = build.operations.find((o) => o.kind === 'anchor');
  const words = new ShopWords(job);
  const anchor: Cure = anchored
    ? { says: `Anchor it to the wall before it is used: the plan has that as “${anchored.title}”.` }
    : { says: 'Anchor it to the wall; the plan lacks that step, so add it by hand.' };
  const snags: Snag[] = [];
  if (stand)
    for (const trial of TRIALS) {
      if (!trial.applies(stand)) continue;
      const b = trial.moments(stand, stand.pivotMm);
      if (b.stands) continue;
      snags.push({
        code: trial.code,
        level: anchored ? 'mind' : 'stop',
        where: { path: `design/records/${record.id}`, record: record.id },
        sentence: trial.sentence(stand, words),
        figures: words.momentAtLeast(b.rightingNmm, b.overturningNmm),
        rule: ruleOf(trial.load),
        cures: [anchor, ...smallerSetback(input, stand, trial)],
      });
    }
  snags.push({
    code: 'tipping.anchor',
    level: 'note',
    where: {
      path: `design/records/${record.id}`,
      record: record.id,
      ...(anchored ? { operation: anchored.id } : {}),
    },
    sentence:
      'Fix the piece to the wall, above all where children are about; choose the fixing for the wall, and follow local codes.',
    rule: practice('furniture that can be climbed on or pulled at is fixed to the wall'),
    cures: [anchor],
  });
  return snags;
}

/** Heights no further apart are one, mm. */
const SAME = 0.01;

/** How the piece stands; undefined when it has no parts. */
function standOf({ setOut, weigh }: Input): Stand | undefined {
  const boxes = standingBoxes(setOut);
  const all = [...boxes.values()];
  if (all.length === 0) return undefined;
  const lowest = Math.min(...all.map((b) => b.min[2]));
  const mm = (t: Traced) => toMm(setOut.ledger.ticks(t));
  // What stands on levellers tips over their middles, and its parts begin above the floor.
  const onLevellers = setOut.levellers.flatMap(({ at, height }) =>
    Math.abs(mm(height) - lowest) > SAME ? [] : at.map(({ y }) => [mm(y), mm(height)] as const),
  );
  const floor = lowest - (onLevellers[0]?.[1] ?? 0);
  const feet =
    onLevellers.length > 0
      ? onLevellers.map(([y]) => [y, y] as const)
      : all.filter((b) => b.min[2] === lowest).map((b) => [b.min[1], b.max[1]] as const);
  const head = Math.max(...all.map((b) => b.max[2]));
  const top = all.filter((b) => b.max[2] === head);
  const flaps = new Set(setOut.doors.filter((d) => d.held).map((d) => d.part));
  const front = (of: readonly StandingBox[]) => Math.min(...of.map((b) => b.min[1]));
  return {
    pivotMm: Math.min(...feet.map(([from]) => from)),
    rearMm: Math.max(...feet.map(([, to]) => to)),
    frontMm: front(top),
    heightMm: head - floor,
    masses: setOut.parts.map((p) => {
      const { kg, centreMm } = weigh(p.id);
      const open = setOut.doors.some((d) => d.part === p.id);
      const out = setOut.drawers.find((d) => Object.values(d.parts).includes(p.id));
      const drawn = out ? centreMm[1] - toMm(setOut.ledger.ticks(out.travel)) : centreMm[1];
      return {
        part: p.id,
        kg,
        y: open ? opened(boxes.get(p.id)!, flaps.has(p.id)) : drawn,
        z: centreMm[2] - floor,
      };
    }),
    open: [
      ...(setOut.doors.length > 0 ? ['doors open'] : []),
      ...(setOut.drawers.length > 0 ? ['drawers out'] : []),
    ],
  };
}

/** Where the middle of a door comes when it stands open at a right angle: half its width before its front, half its height of a flap. */
function opened(door: StandingBox, flap: boolean): number {
  const axis = flap ? 2 : 0;
  return door.min[1] - (door.max[axis] - door.min[axis]) / 2;
}

/** How the piece is tried, to begin a sentence with. */
function tried(s: Stand): string {
  return s.open.length > 0 ? `Empty and with its ${s.open.join(' and ')}, the piece` : 'Empty, the piece';
}

function weights(s: Stand, pivotMm: number): readonly Weight[] {
  return s.masses.map((m) => ({ kg: m.kg, behindMm: m.y - pivotMm, heightMm: m.z }));
}

function pullHeight(s: Stand): number {
  return Math.min(s.heightMm, LEAN.pull!.highestMm);
}

/**
 * The greatest setback of the base, on the shop's step, with which the piece would stand. The base's own strips
 * are counted where they are now, so a little is kept in hand.
 */
function smallerSetback({ job, setOut }: Input, s: Stand, trial: Trial): readonly Cure[] {
  const tree = treeOf(job);
  const base = tree.all('base')[0];
  const box = base && tree.caseOf(base.id);
  if (base?.setback === undefined || !box) return [];
  const board = job.shop.rack.lots.find((l) => l.id === box.board);
  const least = board ? lengthMm(job, board.thickness ?? board.nominal) : 0;
  const now = lengthMm(job, base.setback);
  const words = new ShopWords(job);
  const IN_HAND = 3;
  // Below the thickness of a side the base could no longer be screwed up into the bottom.
  for (let to = Math.floor(now - 1); to >= least; to--) {
    if (!trial.moments(s, s.pivotMm - (now - to) + IN_HAND).stands) continue;
    const typed = words.typedUpTo(to);
    if (lengthMm(job, typed) < least) return [];
    const edits = [{ record: base.id, field: 'setback', value: typed }];
    if (!tryEdits(job, setOut, edits)) return [];
    return [
      {
        says: `Set the base back only ${typed} instead of ${words.length(now)}.`,
        edits,
      },
    ];
  }
  return [];
}
