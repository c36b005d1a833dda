import type { Operation } from '../../build/index.ts';
import type { Plan } from '../../plan/index.ts';
import { Length } from '../numbers/number.tsx';

/** A line of a card with its lengths in place, each of which can be asked. */
export function CardLine({
  plan,
  operation,
  line,
}: {
  plan: Pick<Plan, 'setOut'>;
  operation: Operation;
  line: string;
}) {
  return line.split(/(\{\d+\})/).map((words, i) => {
    const index = /^\{(\d+)\}$/.exec(words)?.[1];
    const t = index === undefined ? undefined : operation.lengths[Number(index)];
    // biome-ignore lint/suspicious/noArrayIndexKey: pieces of one sentence never move
    return t === undefined ? words : <Length key={i} of={plan.setOut} t={t} />;
  });
}
