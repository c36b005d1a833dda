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

/** Where something begins and ends along a lath. */
interface Stretch {
  readonly from: Traced;
  readonly to: Traced;
}

/** A stick, and where its parts are drawn, before anything is rounded, by mark. */
interface Lath {
  readonly stick: StoryStick;
  readonly drawn: ReadonlyMap<string, Stretch>;
}

/** The story sticks of a case: heights of what lies, and places along the front of what stands. */
function lathsOf(bench: Bench, unit: CaseUnit, several: boolean): readonly Lath[] {
  return (['up', 'across'] as const).flatMap((runs): Lath[] => {
    const lath = lathOf(bench, unit, runs, several);
    return lath && lath.stick.marks.length >= FEWEST ? [lath] : [];
  });
}

/** The card that makes some sticks. */
export interface StickCard {
  readonly id: string;
  readonly laths: readonly Lath[];
}

/** Makes the sticks, before anything is marked out on parts. */
export function makeStorySticks(bench: Bench): readonly StickCard[] {
  const units = unitsOf(bench);
  return units.flatMap((unit, i): readonly StickCard[] => {
    const laths = lathsOf(bench, unit, units.length > 1);
    if (laths.length === 0) return [];
    const sticks = laths.map((a) => a.stick);
    bench.stories.push(...sticks);
    const id = `parts/story-sticks${i === 0 ? '' : `-${i + 1}`}`;
    const of = units.length > 1 ? ` of ${unit.words}` : '';
    bench.do(
      {
        id,
        kind: 'mark',
        stage: 'machine',
        title: `Make the story stick${sticks.length > 1 ? 's' : ''}${of}`,
        does: { act: 'other', on: [] },
        tool: 'marking',
        times: sticks.reduce((sum, s) => sum + 2 + s.marks.length, 0),
        ...told(sticks),
      },
      [],
    );
    return [{ id, laths }];
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
 * Two sticks for one place must agree: what a gauge stick sets comes on the story stick where that brings it, and not where its
 * own place would be rounded to. Its other mark is rounded from where it then really ends, so that boards that are not as
 * thick as they are printed don't add up from one to the next.
 */
export function marksAsSet(bench: Bench, cards: readonly StickCard[]): void {
  for (const { id, laths } of cards) {
    const moved = laths.map((lath) => asSet(bench, lath));
    laths.forEach(({ stick }, i) => {
      bench.stories[bench.stories.indexOf(stick)] = moved[i]!;
    });
    const at = bench.operations.findIndex((o) => o.id === id);
    bench.operations[at] = { ...bench.operations[at]!, ...told(moved) };
  }
}

function asSet(bench: Bench, { stick, drawn }: Lath): StoryStick {
  const l = bench.ledger;
  const [low, high] = DIRECTIONS[stick.runs];
  const marks = new Map<string, Stretch>(stick.marks.map((m) => [m.part, m]));
  const real = new Map(drawn);
  for (const { does } of bench.operations) {
    const own = does.act === 'set' ? drawn.get(does.workpiece) : undefined;
    if (does.act !== 'set' || !own) continue;
    // So far above, or behind, what stands there already.
    const by = does.touches.find((t) => t.side === low && t.face === high && t.gap !== undefined);
    const [marked, stands] = [by && marks.get(by.of), by && real.get(by.of)];
    if (!by?.gap || !marked || !stands) continue;
    const begins = l.sum('where its gauge stick sets it', stands.to, by.gap);
    const ends = l.sum('its other side', begins, l.less('how thick it is', own.to, own.from));
    real.set(does.workpiece, { from: begins, to: ends });
    marks.set(does.workpiece, {
      from: l.sum('its gauge stick from the mark before', marked.to, by.gap),
      to: bench.set('marking', ends),
    });
  }
  return { ...stick, marks: stick.marks.map(({ part }) => ({ part, ...marks.get(part)! })) };
}

function lathOf(bench: Bench, unit: CaseUnit, runs: StoryStick['runs'], several: boolean): Lath | undefined {
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
  const at = (plane: Traced) => l.less('from the end of the lath', plane, from);
  const drawn = new Map(
    marked.map(({ part, planes }) => [part.mark, { from: at(planes[low]), to: at(planes[high]) }]),
  );
  const set = (t: Traced) => bench.set('marking', t);
  return {
    stick: {
      name: `${runs === 'up' ? 'Upright' : 'Long'} story stick${several ? ` of ${unit.words}` : ''}`,
      runs,
      length: set(l.less('length of the lath', to, from)),
      marks: [...drawn].map(([part, d]) => ({ part, from: set(d.from), to: set(d.to) })),
    },
    drawn,
  };
}

/** Sides and dividers stand; bottoms, lids and shelves lie. Panels across the depth do neither. */
function stands({ place }: Part): boolean | undefined {
  const { axis } = axisOf(place.thickness);
  return axis === 0 ? true : axis === 2 ? false : undefined;
}
