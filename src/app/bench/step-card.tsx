import type { Drawing } from '../../book/index.ts';
import { type Operation, timeWords, writtenMoment } from '../../build/index.ts';
import { toolName } from '../../job/index.ts';
import type { Plan } from '../../plan/index.ts';
import { DrawingPicture } from '../drawing/drawing-picture.tsx';
import { CardDone } from './card-done.tsx';
import { CardLine } from './card-line.tsx';

interface CardProps {
  readonly plan: Plan;
  readonly operation: Operation;
  readonly number: number;
  readonly drawing: Drawing | undefined;
}

/** One thing to do, with one tool, large enough to be read from the bench. */
export function StepCard({ plan, operation: o, number, drawing }: CardProps) {
  const tool = plan.job.shop.tools.find((t) => t.id === o.tool);
  const facts = [
    ['With', tool && toolName(tool)],
    ['Face up', o.faceUp],
    ['Measured from', o.reference],
    ['Begins', beginsOn(plan, o.id)],
    ['Takes', o.minutes.active > 0 ? timeWords(o.minutes.active) : undefined],
    ['Then wait', o.minutes.waiting > 0 ? timeWords(o.minutes.waiting) : undefined],
  ].filter((f): f is [string, string] => f[1] !== undefined);
  return (
    <article className="step-card" aria-label={`Card ${number}`}>
      <h2>
        <span className="number">{number}</span> {o.title}
      </h2>
      <dl className="facts">
        {facts.map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      <div className="step-work">
        <ol>
          {o.lines.map((line, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a card's lines never move
            <li key={i}>
              <CardLine plan={plan} operation={o} line={line} />
            </li>
          ))}
        </ol>
        {drawing && <DrawingPicture drawing={drawing} label={`Drawing for ${o.title}`} of={plan.setOut} />}
      </div>
      <CardDone plan={plan} operation={o} />
      {o.cautions.map((c) => (
        <p key={c} className="caution">
          {c}
        </p>
      ))}
    </article>
  );
}

/** `day 2, 09:20`, with the date where the job has one. */
function beginsOn({ build }: Plan, operation: string): string | undefined {
  const scheduled = build.schedule.operations.find((s) => s.operation === operation);
  if (!scheduled) return undefined;
  const { day, date, weekday, time } = writtenMoment(build.schedule, scheduled.start);
  return date === undefined ? `day ${day}, ${time}` : `${weekday} ${date}, ${time}`;
}
