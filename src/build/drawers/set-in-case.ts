import type { Traced } from '../../measure/index.ts';
import type { Drawer } from '../../setting-out/index.ts';
import type { Bench, OperationDraft } from '../bench.ts';
import type { Touch } from '../operation.ts';
import { boxName } from './in-words.ts';

/** What a card says besides, that puts the box of a drawer where it runs. */
interface SetInCase extends Pick<OperationDraft, 'id' | 'title' | 'lines' | 'tool'> {
  readonly touches: readonly [Touch, Touch, Touch];
  readonly lengths: readonly Traced[];
}

/** Puts the box of a drawer into the case. */
export function setInCase(bench: Bench, drawer: Drawer, { touches, ...card }: SetInCase): void {
  const workpiece = boxName(bench, drawer);
  bench.do(
    {
      ...card,
      kind: 'hang',
      stage: 'fill',
      does: {
        act: 'set',
        workpiece,
        into: 'case',
        turn: { length: '+x', width: '+y' },
        touches,
        glue: false,
      },
    },
    [workpiece, 'case'],
  );
}
