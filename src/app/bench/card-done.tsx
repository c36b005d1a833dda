import { cutsOfAct, type Operation, sizesMade } from '../../build/index.ts';
import { type Edit, formatOf, type JobDocument } from '../../job/index.ts';
import { printSetting } from '../../measure/index.ts';
import type { Plan } from '../../plan/index.ts';
import { EditButton } from '../fields/edit-button.tsx';
import { LengthField } from '../fields/text-field.tsx';
import { Length } from '../numbers/number.tsx';
import { useApp } from '../state/use-desk.ts';

/** The end of a card: its tick, and what its parts really measure. What is made stays as it is. */
export function CardDone({ plan, operation }: { plan: Plan; operation: Operation }) {
  const job = useApp((s) => s.history.job);
  const ticked = (job.work.done ?? []).some((d) => d.id === operation.id);
  const sizes = sizesMade(plan.setOut, operation);
  return (
    <div className="card-done">
      <EditButton edit={() => tick(plan, job, operation)} quiet>
        {ticked ? 'Take the tick away' : 'Tick it: done'}
      </EditButton>
      {sizes.map(([name, size]) => (
        <p key={name}>
          {name}: <Length of={plan.setOut} t={size} />; found on the bench{' '}
          <LengthField
            path={`work/measured/${name}`}
            label={`${name}, measured`}
            empty="as it should be"
            end="."
          />
        </p>
      ))}
    </div>
  );
}

/** A tick keeps the sizes of the moment; taken away, they are reckoned again. */
function tick(plan: Plan, job: JobDocument, operation: Operation): Edit {
  const done = job.work.done ?? [];
  if (done.some((d) => d.id === operation.id))
    return { edit: 'set', at: 'work/done', value: done.filter((d) => d.id !== operation.id) };
  const format = formatOf(job.shop);
  const sizes = sizesMade(plan.setOut, operation).map(([name, size]) => [
    name,
    printSetting(plan.setOut.ledger.ticks(size), format),
  ]);
  const made = sizes.length > 0 ? { sizes: Object.fromEntries(sizes) } : {};
  const [cut] = cutsOfAct(operation.does);
  const at = cut ? { at: printSetting(plan.setOut.ledger.ticks(cut.at), format) } : {};
  return { edit: 'set', at: 'work/done', value: [...done, { id: operation.id, ...at, ...made }] };
}
