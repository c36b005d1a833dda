import type { Traced } from '../measure/index.ts';
import type { Bench } from './bench.ts';
import { CAUTION } from './cautions.ts';
import type { StageId, Touch, Turn } from './operation.ts';
import { touchWords } from './seating.ts';
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
): void {
  const lengths: Traced[] = [];
  const told = touches.map((t) => {
    const { words, lengths: more } = touchWords(bench, t, lengths.length);
    lengths.push(...more);
    return words;
  });
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
      cautions: [CAUTION.lift],
    },
    [workpiece, into],
  );
}
