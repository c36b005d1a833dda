import { type BuildPlan, type StageId, WAITS } from '../build/index.ts';

/** A stretch of a day, in minutes from its midnight. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Cards of one stage that one person does without a break. */
export interface WorkStretch extends Stretch {
  readonly stage: StageId;
  /** Numbers of the cards, in order. */
  readonly cards: readonly number[];
}

/** What one day of a schedule holds. */
export interface DayWork {
  /** Counted from 0. */
  readonly day: number;
  /** By person. */
  readonly work: ReadonlyMap<string, readonly WorkStretch[]>;
  /** When glue sets or a coat dries. */
  readonly waits: ReadonlyMap<'glue' | 'coat', readonly Stretch[]>;
}

const DAY = 24 * 60;

/** The days of a schedule on which something is done, with what is done and what sets or dries meanwhile. */
export function daysOfWork({ operations, schedule }: BuildPlan): readonly DayWork[] {
  const pauses = schedule.sessions;
  const at = (day: number) => {
    const weekday = (schedule.firstWeekday + day) % 7;
    return pauses
      .map(({ from, to }) => ({ from: from - weekday * DAY, to: to - weekday * DAY }))
      .filter((s) => s.from < DAY && s.to > 0);
  };
  const last = Math.max(0, ...schedule.operations.map((s) => Math.ceil(s.ready / DAY)));
  const days: DayWork[] = [];
  for (let day = 0; day < last; day++) {
    const midnight = day * DAY;
    const open = at(day);
    const work = new Map<string, WorkStretch[]>();
    const waits = new Map<'glue' | 'coat', Stretch[]>();
    schedule.operations.forEach((s, i) => {
      const { stage, kind } = operations[i]!;
      const span = { from: s.start - midnight, to: s.end - midnight };
      for (const person of s.who)
        for (const o of open) {
          const part = common(span, o);
          if (part) work.set(person, added(work.get(person) ?? [], { ...part, stage, cards: [i + 1] }));
        }
      const rests = WAITS[kind];
      const rest = rests && common({ from: s.end - midnight, to: s.ready - midnight }, { from: 0, to: DAY });
      if (rest) waits.set(rests, together([...(waits.get(rests) ?? []), rest]));
    });
    if (work.size > 0) days.push({ day, work, waits });
  }
  return days;
}

function common(a: Stretch, b: Stretch): Stretch | undefined {
  const [from, to] = [Math.max(a.from, b.from), Math.min(a.to, b.to)];
  return from < to ? { from, to } : undefined;
}

/** Goes on with the last stretch where stage and moment are the same. */
function added(stretches: readonly WorkStretch[], next: WorkStretch): WorkStretch[] {
  const last = stretches.at(-1);
  if (last?.stage !== next.stage || last.to !== next.from) return [...stretches, next];
  return [...stretches.slice(0, -1), { ...last, to: next.to, cards: [...last.cards, ...next.cards] }];
}

/** Stretches that overlap or touch, as one. */
function together(stretches: readonly Stretch[]): Stretch[] {
  const out: Stretch[] = [];
  for (const s of [...stretches].sort((a, b) => a.from - b.from)) {
    const last = out.at(-1);
    if (last && s.from <= last.to) out[out.length - 1] = { from: last.from, to: Math.max(last.to, s.to) };
    else out.push(s);
  }
  return out;
}
