import { timeWords, writtenMoment } from '../build/index.ts';
import type { BookInput } from './book-input.ts';
import { dayStrip, type StripLook } from './day-strip.ts';
import { daysOfWork } from './day-work.ts';
import type { Block } from './flow.ts';
import { numberRanges } from './number-ranges.ts';
import { type Cell, table } from './table.ts';
import type { TextMeasure } from './text-measure.ts';
import { heading, note, prose } from './words.ts';

const DAY = 24 * 60;

/** The days of work as strips, what holds the end up, and a table of what is done when. */
export function timeBlocks(input: BookInput, width: number, type: TextMeasure): Block[] {
  const { build } = input;
  const { schedule, operations } = build;
  const days = daysOfWork(build);
  const active = operations.reduce((s, o) => s + o.minutes.active, 0);
  const stages = new Map(build.stages.map((s) => [s.id, s.title]));
  const people = new Map(
    [...new Set(schedule.operations.flatMap((o) => o.who))].map((id) => [
      id,
      input.people.find((p) => p.id === id)?.name ?? id,
    ]),
  );
  const hours = {
    from: Math.min(...schedule.sessions.map((s) => s.from % DAY)),
    to: Math.max(...schedule.sessions.map((s) => ((s.to - 1) % DAY) + 1)),
  };
  const named = (day: number) => {
    const { weekday, date } = writtenMoment(schedule, day * DAY);
    return { title: `Day ${day + 1}`, under: date === undefined ? '' : `${weekday} ${date}` };
  };
  const critical = new Set(schedule.critical);
  const chain = operations.flatMap((o, i) => (critical.has(o.id) ? [i + 1] : []));
  const blocks: Block[] = [
    prose(
      `${timeWords(active)} of work on ${days.length} ${days.length === 1 ? 'day' : 'days'}, the last of them day ${schedule.days}${schedule.days > schedule.leastDays ? '' : ': fewer there can’t be, with these hands and hours'}. While glue sets and coats dry, other cards go on. Numbers are those of the cards; an unfinished one goes on after a break.`,
      width,
      type,
    ),
    ...days.map((d): Block => {
      const look: StripLook = { width, hours, ...named(d.day), people, stages, type };
      return dayStrip(d, look);
    }),
  ];
  if (days.length > 1)
    blocks.push(
      heading('Day by day', width, type),
      ...table(
        [
          { title: 'Day', width: 34, face: 'semibold' },
          { title: 'From', width: 14, align: 'end' },
          { title: 'To', width: 14, align: 'end' },
          { title: 'Cards', width: 40 },
          { title: 'What' },
        ],
        days.map((d): Cell[] => {
          const all = [...d.work.values()].flat();
          const cards = [...new Set(all.flatMap((w) => w.cards))].sort((a, b) => a - b);
          const { title, under } = named(d.day);
          const clock = (m: number) => writtenMoment(schedule, d.day * DAY + m, true).time;
          return [
            under === '' ? title : `${title}, ${under}`,
            clock(Math.min(...all.map((w) => w.from))),
            clock(Math.max(...all.map((w) => w.to))),
            numberRanges(cards),
            [...new Set(all.map((w) => stages.get(w.stage) ?? w.stage))].join(', '),
          ];
        }),
        width,
        type,
      ),
    );
  blocks.push(
    heading('What holds up the end', width, type),
    prose(
      `The longest chain takes ${timeWords(schedule.criticalMinutes)} with its waiting, were there always hands and tools: cards ${numberRanges(chain)}. Whatever is late there is late at the end.`,
      width,
      type,
    ),
    note(input.minutesFrom, width, type),
  );
  return blocks;
}
