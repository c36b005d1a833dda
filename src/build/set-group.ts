import type { Traced } from '../measure/index.ts';
import type { Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { liftCautions } from './lifting.ts';
import type { Touch, Turn } from './operation.ts';
import type { StageId } from './stages.ts';
import { touchesTold } from './touch-words.ts';
import { capital, listWords } from './words.ts';

/** Several parts that hang together already, brought to their place as one. */
export function setGroup(
  bench: Bench,
  into: string,
  workpiece: string,
  title: string,
  touches: readonly [Touch, Touch, Touch],
  before: readonly string[],
  turn: Turn,
  stage: StageId = 'assemble',
  lifted: readonly Part[] = partsOf(bench, workpiece),
): void {
  const lengths: Traced[] = [];
  const told = touchesTold(bench, touches, lengths);
  bench.do(
    {
      id: `${workpiece}/set`,
      kind: 'assemble',
      stage,
      title,
      does: { act: 'set', workpiece, into, turn, touches, glue: false },
      tool: 'clamp',
      lines: [...before, `${capital(listWords(told))}.`],
      lengths,
      cautions: liftCautions(bench, lifted),
    },
    [workpiece, into],
  );
}

/** A part by its mark, or what has been put together under that name. */
function partsOf({ setOut, operations }: Bench, name: string): readonly Part[] {
  const own = setOut.parts.filter((p) => p.mark === name);
  const set = operations.flatMap(({ does }) =>
    does.act === 'set' && does.into === name ? [does.workpiece] : [],
  );
  return own.length > 0 ? own : setOut.parts.filter((p) => set.includes(p.mark));
}
