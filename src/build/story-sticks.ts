import type { Traced } from '../measure/index.ts';
import { axisOf, type Direction, type Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { type PartPlanes, planesOf } from './boxes.ts';
import { type CaseUnit, unitsOf } from './case-units.ts';
import type { Operation } from './operation.ts';
import { listWords } from './words.ts';

/** A lath that carries a case's marks at full size, up its sides or along its front. */
export interface StoryStick {
  readonly name: string;
  readonly runs: 'up' | 'across';
  readonly length: Traced;
  /** Where each part begins and ends, from the lower or left end of the lath, in that order. */
  readonly marks: readonly { readonly part: string; readonly from: Traced; readonly to: Traced }[];
}

/** Which way a stick's low and high ends look. */
const DIRECTIONS: Record<StoryStick['runs'], readonly [Direction, Direction]> = {
  up: ['-z', '+z'],
  across: ['-x', '+x'],
};

/** Fewer marks are sooner measured than carried over from a lath. */
const FEWEST = 3;

/** The story sticks of a case: heights of what lies, and places along the front of what stands. */
function storySticks(bench: Bench, unit: CaseUnit, several: boolean): readonly StoryStick[] {
  return (['up', 'across'] as const).flatMap((runs): StoryStick[] => {
    const stick = stickOf(bench, unit, runs, several);
    return stick && stick.marks.length >= FEWEST ? [stick] : [];
  });
}

/** The card that makes some sticks. */
export interface StickCard {
  readonly id: string;
  readonly of: string;
  readonly sticks: readonly StoryStick[];
}

/** Makes the sticks, before anything is marked out on parts. */
export function makeStorySticks(bench: Bench): readonly StickCard[] {
  const units = unitsOf(bench);
  return units.flatMap((unit, i): readonly StickCard[] => {
    const sticks = storySticks(bench, unit, units.length > 1);
    if (sticks.length === 0) return [];
    bench.stories.push(...sticks);
    const card = {
      id: `parts/story-sticks${i === 0 ? '' : `-${i + 1}`}`,
      of: units.length > 1 ? ` of ${unit.words}` : '',
      sticks,
    };
    bench.do(
      {
        id: card.id,
        kind: 'mark',
        stage: 'machine',
        title: `Make the story stick${sticks.length > 1 ? 's' : ''}${card.of}`,
        does: { act: 'other', on: [] },
        tool: 'marking',
        times: sticks.reduce((sum, s) => sum + 2 + s.marks.length, 0),
        ...told(sticks),
      },
      [],
    );
    return [card];
  });
}

/** What the card of some sticks says, and the lengths that it names. */
function told(sticks: readonly StoryStick[]): Pick<Operation, 'lines' | 'lengths'> {
  const lengths: Traced[] = [];
  const put = (t: Traced) => `{${lengths.push(t) - 1}}`;
  const lines = [
    `A straight lath${sticks.length > 1 ? ' for each' : ''}, squared at one end; every mark is measured from that end, once, with a knife, and has its part’s mark written between its two lines.`,
    ...sticks.map(
      (s) =>
        `${s.name}, ${put(s.length)} long, from the ${s.runs === 'up' ? 'lower' : 'left'} end: ${listWords(
          s.marks.map((m) => `${m.part} ${put(m.from)} to ${put(m.to)}`),
        )}.`,
    ),
    `Lay ${sticks.length > 1 ? 'each' : 'it'} along what takes ${sticks.length > 1 ? 'its' : 'those'} parts, both of a pair side by side, and carry the marks over; what is put together is held against it again. A lath can’t be misread, and all parts get the same marks.`,
  ];
  return { lines, lengths };
}

/**
 * Two sticks for one place must agree: what a gauge stick sets comes on the story stick where that brings it, one printed
 * distance after the other, and not where its own place would be rounded to.
 */
export function marksAsSet(bench: Bench, cards: readonly StickCard[]): void {
  for (const { id, sticks } of cards) {
    const moved = sticks.map((stick) => asSet(bench, stick));
    sticks.forEach((stick, i) => {
      bench.stories[bench.stories.indexOf(stick)] = moved[i]!;
    });
    const at = bench.operations.findIndex((o) => o.id === id);
    bench.operations[at] = { ...bench.operations[at]!, ...told(moved) };
  }
}

function asSet(bench: Bench, stick: StoryStick): StoryStick {
  const l = bench.ledger;
  const [low, high] = DIRECTIONS[stick.runs];
  const marks = new Map(stick.marks.map((m) => [m.part, m]));
  for (const { does } of bench.operations) {
    const mark = does.act === 'set' ? marks.get(does.workpiece) : undefined;
    if (does.act !== 'set' || !mark) continue;
    // So far above, or behind, what stands there already.
    const by = does.touches.find((t) => t.side === low && t.face === high && t.gap !== undefined);
    const before = by && marks.get(by.of);
    if (!by?.gap || !before) continue;
    const from = l.sum('where its gauge stick sets it', before.to, by.gap);
    const off = l.less('how far that is from its own place', from, mark.from);
    if (l.ticks(off) === 0) continue;
    const to = l.sum('its other side', mark.to, off);
    marks.set(mark.part, { part: mark.part, from, to });
  }
  return { ...stick, marks: stick.marks.map((m) => marks.get(m.part)!) };
}

function stickOf(
  bench: Bench,
  unit: CaseUnit,
  runs: StoryStick['runs'],
  several: boolean,
): StoryStick | undefined {
  const l = bench.ledger;
  const [low, high] = DIRECTIONS[runs];
  const inside = unit.parts.filter((p) => /^[A-E]/.test(p.mark));
  const edging = new Set(bench.setOut.joints.filter((j) => j.duty === 'edging').map((j) => j.part));
  const all = inside.filter((p) => !edging.has(p.id)).map((p) => planesOf(l, p));
  const sides = all.filter(({ part }) => part.hand !== 'none');
  if (sides.length < 2) return undefined;
  const from = l.least('where the lath begins', ...sides.map((s) => s.planes[low]));
  const to = l.greatest('where it ends', ...sides.map((s) => s.planes[high]));
  const between = (p: PartPlanes) =>
    l.ticks(p.planes[low]) >= l.ticks(from) && l.ticks(p.planes[high]) <= l.ticks(to);
  const marked = all
    .filter((p) => stands(p.part) === (runs === 'across') && between(p))
    .sort((a, b) => l.ticks(a.planes[low]) - l.ticks(b.planes[low]));
  const at = (plane: Traced) => bench.set('marking', l.less('from the end of the lath', plane, from));
  return {
    name: `${runs === 'up' ? 'Upright' : 'Long'} story stick${several ? ` of ${unit.words}` : ''}`,
    runs,
    length: bench.set('marking', l.less('length of the lath', to, from)),
    marks: marked.map(({ part, planes }) => ({
      part: part.mark,
      from: at(planes[low]),
      to: at(planes[high]),
    })),
  };
}

/** Sides and dividers stand; bottoms, lids and shelves lie. Panels across the depth do neither. */
function stands({ place }: Part): boolean | undefined {
  const { axis } = axisOf(place.thickness);
  return axis === 0 ? true : axis === 2 ? false : undefined;
}
