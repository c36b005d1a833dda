import type { Ledger, Ticks, Traced } from '../measure/index.ts';
import {
  type Axis,
  boxTicks,
  doorsOf,
  type Opening,
  type Part,
  type SetOut,
  type TickBox,
} from '../setting-out/index.ts';
import { between, partBox, sizeAlong } from './traced-box.ts';

/** A stretch along an axis of the piece, with the length that it shows. */
export interface TracedSpan {
  readonly from: Ticks;
  readonly to: Ticks;
  readonly trace: Traced;
}

/** The overall size along an axis, from where the outermost part begins; handles stand out of it. */
export function overallSpan(setOut: SetOut, axis: Axis): TracedSpan {
  const { width, depth, height } = setOut.overall;
  const trace = [width, depth, height][axis]!;
  const lowest = Math.min(
    ...withoutHandles(setOut).map((p) => boxTicks(setOut.ledger, partBox(setOut.ledger, p)).min[axis]),
  );
  // What stands on levellers is measured from the floor.
  const lifted: readonly number[] =
    axis === 2 ? setOut.levellers.map((o) => setOut.ledger.ticks(o.height)) : [];
  const low = lifted.includes(lowest) ? 0 : lowest;
  return { from: low as Ticks, to: (low + setOut.ledger.ticks(trace)) as Ticks, trace };
}

function withoutHandles({ parts, joints }: SetOut): readonly Part[] {
  const handles = new Set(joints.filter((j) => j.duty === 'handle').map((j) => j.mate));
  return parts.filter((p) => !handles.has(p.id));
}

/** Openings that hold no other and that are seen from the front: no other opening is before them. */
function innermostOpenings(setOut: SetOut): Opening[] {
  const boxes = setOut.openings.map((o) => boxTicks(setOut.ledger, o.box));
  const holds = (a: TickBox, b: TickBox) =>
    a.min.every((v, i) => v <= b.min[i]!) && a.max.every((v, i) => v >= b.max[i]!);
  const isBefore = (a: TickBox, b: TickBox) =>
    a.max[1] <= b.min[1] && [0, 2].every((k) => a.min[k]! < b.max[k]! && b.min[k]! < a.max[k]!);
  return setOut.openings.filter(
    (_, i) =>
      !boxes.some(
        (b, j) => j !== i && ((holds(boxes[i]!, b) && !holds(b, boxes[i]!)) || isBefore(b, boxes[i]!)),
      ),
  );
}

/** The clear widths (axis 0) or heights (axis 2) of the innermost openings, each stretch once. */
export function clearSpans(setOut: SetOut, axis: 0 | 2): TracedSpan[] {
  return distinctSpans(
    innermostOpenings(setOut).map((o) => {
      const box = boxTicks(setOut.ledger, o.box);
      return { from: box.min[axis], to: box.max[axis], trace: axis === 0 ? o.width : o.height };
    }),
  );
}

/** Openings one above the other with what lies in them, and the clear heights between, from the left. */
export interface ClearStack {
  readonly across: TracedSpan;
  readonly heights: readonly TracedSpan[];
}

/** The innermost openings by the width that they span, each divided at the shelves that lie across it. */
export function clearStacks(setOut: SetOut): ClearStack[] {
  const { ledger } = setOut;
  const parts = setOut.parts.map((part) => {
    const box = partBox(ledger, part);
    return { box, ticks: boxTicks(ledger, box) };
  });
  const stacks = new Map<string, { across: TracedSpan; heights: TracedSpan[] }>();
  for (const o of innermostOpenings(setOut)) {
    const box = boxTicks(ledger, o.box);
    const shelves = parts
      .filter(
        ({ ticks: t }) =>
          t.min[0] <= box.min[0] &&
          t.max[0] >= box.max[0] &&
          t.min[2] > box.min[2] &&
          t.max[2] < box.max[2] &&
          t.max[1] - t.min[1] > t.max[2] - t.min[2] &&
          t.max[1] > box.min[1] &&
          t.min[1] < box.max[1],
      )
      .sort((a, b) => a.ticks.min[2] - b.ticks.min[2]);
    const key = `${box.min[0]} ${box.max[0]}`;
    const across = { from: box.min[0], to: box.max[0], trace: o.width };
    const stack = stacks.get(key) ?? { across, heights: [] };
    stacks.set(key, stack);
    let from = { at: box.min[2], trace: o.box.min[2] };
    for (const s of shelves) {
      const trace = between(ledger, 'clear height below the shelf', from.trace, s.box.min[2]);
      stack.heights.push({ from: from.at, to: s.ticks.min[2], trace });
      from = { at: s.ticks.max[2], trace: s.box.max[2] };
    }
    const last =
      shelves.length === 0
        ? o.height
        : between(ledger, 'clear height above the shelf', from.trace, o.box.max[2]);
    stack.heights.push({ from: from.at, to: box.max[2], trace: last });
  }
  return [...stacks.values()].sort((a, b) => a.across.from - b.across.from);
}

/**
 * Where the outline of the parts steps in or out, seen along `across` from its low side: the stretches along `axis`
 * between steps. None when the outline is straight.
 */
export function profileSpans(setOut: SetOut, axis: Axis, across: Axis): TracedSpan[] {
  const { ledger } = setOut;
  // Doors hardly change the outline; their small gaps would only crowd the figures.
  const doors = new Set(doorsOf(setOut));
  const solid = withoutHandles(setOut).filter((p) => !doors.has(p.id));
  const boxes = solid.map((part) => {
    const box = partBox(ledger, part);
    return { part, box, ticks: boxTicks(ledger, box) };
  });
  const ends = [...new Set(boxes.flatMap((b) => [b.ticks.min[axis], b.ticks.max[axis]]))].sort(
    (a, b) => a - b,
  );
  const bands: { from: Ticks; to: Ticks; edge: number }[] = [];
  ends.slice(1).forEach((to, i) => {
    const from = ends[i]!;
    const over = boxes.filter((b) => b.ticks.min[axis] < to && b.ticks.max[axis] > from);
    const edge = Math.min(...over.map((b) => b.ticks.min[across]));
    const last = bands[bands.length - 1];
    if (last && last.edge === edge) last.to = to;
    else bands.push({ from, to, edge });
  });
  if (bands.length < 2) return [];
  return bands
    .filter((b) => Number.isFinite(b.edge))
    .map(({ from, to }) => ({ from, to, trace: traceOf(ledger, boxes, axis, from, to) }));
}

/** Spans without those that show a stretch already shown. */
function distinctSpans(spans: readonly TracedSpan[]): TracedSpan[] {
  const seen = new Map<string, TracedSpan>();
  for (const s of spans) if (!seen.has(`${s.from} ${s.to}`)) seen.set(`${s.from} ${s.to}`, s);
  return [...seen.values()];
}

/** A part's own size where one fills the stretch, else the difference of two faces. */
function traceOf(
  ledger: Ledger,
  boxes: readonly {
    readonly part: Part;
    readonly box: ReturnType<typeof partBox>;
    readonly ticks: TickBox;
  }[],
  axis: Axis,
  from: Ticks,
  to: Ticks,
): Traced {
  const whole = boxes.find((b) => b.ticks.min[axis] === from && b.ticks.max[axis] === to);
  if (whole) return sizeAlong(whole.part, axis);
  const at = (t: Ticks) => {
    for (const b of boxes) {
      if (b.ticks.min[axis] === t) return b.box.min[axis];
      if (b.ticks.max[axis] === t) return b.box.max[axis];
    }
    throw new Error(`no part ends at ${t}`);
  };
  return between(ledger, 'from one step of the outline to the next', at(from), at(to));
}
