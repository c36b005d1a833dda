import type { StageId } from '../build/index.ts';
import type { DayWork, Stretch } from './day-work.ts';
import { line, type Mark, rectangle, type Tone, text } from './drawing.ts';
import type { Block } from './flow.ts';
import { numberRanges } from './number-ranges.ts';
import type { TextMeasure } from './text-measure.ts';

/** How a day is drawn. */
export interface StripLook {
  readonly width: number;
  /** The hours that the axis shows, in minutes. What lies before or after is drawn in the margins. */
  readonly hours: Stretch;
  readonly title: string;
  /** Under the title: the date. */
  readonly under: string;
  /** Names of those who work, by id, in the order of their lanes. */
  readonly people: ReadonlyMap<string, string>;
  readonly stages: ReadonlyMap<StageId, string>;
  readonly type: TextMeasure;
}

const LABEL = 27;
const NIGHT = 7;
const LANE = 8;
const REST = 3.6;
const SMALL = 2.6;

/** Stages next to one another differ in tone. */
const FILLS: readonly Tone[] = ['wood', 'board-side', 'wood-side', 'wood-top'];

const RESTS = {
  glue: { words: 'glue sets', fill: 'faint' },
  coat: { words: 'coat dries', fill: 'measure' },
} as const satisfies Record<'glue' | 'coat', { words: string; fill: Tone }>;

/** A day as a strip: a lane for each person with the numbers of their cards, and what sets or dries below. */
export function dayStrip({ work, waits }: DayWork, look: StripLook): Block {
  const { width, hours, type } = look;
  const left = LABEL + NIGHT;
  const right = width - NIGHT;
  const x = (minute: number) =>
    minute <= hours.from && minute < hours.to
      ? left - (NIGHT * (hours.from - minute)) / Math.max(1, hours.from)
      : minute >= hours.to
        ? right + (NIGHT * (minute - hours.to)) / Math.max(1, 1440 - hours.to)
        : left + ((right - left) * (minute - hours.from)) / (hours.to - hours.from);
  const lanes = [...look.people].filter(([id]) => work.has(id));
  const rests = (['glue', 'coat'] as const).filter((r) => waits.has(r));
  const top = 4;
  const bottom = top + lanes.length * LANE + rests.length * REST;
  const marks: Mark[] = [
    text([0, top + 3.4], look.title, 3.7, { face: 'semibold' }),
    text([0, top + 7], look.under, SMALL, { tone: 'quiet' }),
    rectangle(LABEL, top, NIGHT, bottom - top, { fill: 'shade' }),
    rectangle(right, top, NIGHT, bottom - top, { fill: 'shade' }),
  ];
  for (let h = Math.ceil(hours.from / 60); h * 60 <= hours.to; h++) {
    marks.push(line([x(h * 60), top], [x(h * 60), bottom], 'fine', 'faint'));
    marks.push(text([x(h * 60), top - 1], `${h}`, SMALL, { anchor: 'middle', tone: 'quiet' }));
  }
  lanes.forEach(([id, name], lane) => {
    const y = top + lane * LANE;
    if (look.people.size > 1)
      marks.push(text([LABEL - 1.5, y + 5], name, SMALL, { anchor: 'end', tone: 'quiet' }));
    for (const s of work.get(id)!) {
      const [from, to] = [x(s.from), x(s.to)];
      const stages = [...look.stages.keys()];
      const fill = FILLS[Math.max(0, stages.indexOf(s.stage)) % FILLS.length]!;
      marks.push(rectangle(from, y + 0.7, to - from, LANE - 1.4, { fill, pen: 'fine', tone: 'ink' }));
      const words = [look.stages.get(s.stage) ?? s.stage, numberRanges(s.cards)];
      words.forEach((w, i) => {
        if (type.width(w, SMALL, i === 1 ? 'semibold' : 'regular') < to - from - 1.2)
          marks.push(
            text([from + 0.7, y + 3.5 + i * 2.9], w, SMALL, {
              face: i === 1 ? 'semibold' : 'regular',
              ...(i === 1 ? { tone: 'measure' as const } : {}),
            }),
          );
      });
    }
  });
  rests.forEach((r, i) => {
    const y = top + lanes.length * LANE + i * REST;
    const { words, fill } = RESTS[r];
    marks.push(text([LABEL - 1.5, y + 2.6], words, SMALL, { anchor: 'end', tone: 'quiet' }));
    for (const s of waits.get(r)!)
      marks.push(rectangle(x(s.from), y + 1.1, x(s.to) - x(s.from), REST - 2.2, { fill }));
  });
  marks.push(line([LABEL, top], [width, top], 'fine', 'quiet'));
  return { marks, height: bottom, before: 4 };
}
