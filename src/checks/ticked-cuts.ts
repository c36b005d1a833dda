import { cutsOfAct, type Operation } from '../build/index.ts';
import { formatOf } from '../job/index.ts';
import { parseLength, printSetting } from '../measure/index.ts';
import { partsAndBoards } from '../setting-out/index.ts';
import type { Snag } from '../snag/index.ts';
import type { CheckInput } from './check-input.ts';
import { practice } from './rule.ts';

/** Cuts of stock, by the id of their card: of a sheet, a strip or a piece of one. */
const OF_STOCK = /^[SL]\d+(\.\d+)?\/(true-edge|square-end|rip|crosscut|trim|waste-off)/;

/** Tells of cuts that are ticked, and that the plan as it is now makes elsewhere or not at all: what is sawn stays sawn. */
export function tickedCuts({
  job,
  setOut,
  build,
}: Pick<CheckInput, 'job' | 'setOut' | 'build'>): readonly Snag[] {
  const { done = [], made = [] } = job.work;
  const byId = new Map(build.operations.map((o) => [o.id, o]));
  const marks = new Map(partsAndBoards(setOut).map((p) => [p.mark, p.id]));
  const isMade = (name: string) =>
    made.some((m) => m.from === name.split('.')[0] || m.part === marks.get(name));
  const other = done.flatMap(({ id, at }, i) => {
    const now = byId.get(id);
    if (now ? at === undefined || isAt(now, at) : at === undefined && !OF_STOCK.test(id)) return [];
    return isMade(id.split('/')[0]!) ? [] : [{ id, i, title: now?.title }];
  });
  const [first] = other;
  if (!first) return [];
  const more = other.length > 1 ? ` So it is with ${other.length - 1} more of the ticked cuts.` : '';
  return [
    {
      code: 'work.cut-otherwise',
      level: 'stop',
      where: { path: `work/done/${first.i}`, ...(first.title === undefined ? {} : { operation: first.id }) },
      sentence: `${first.title === undefined ? `The cut “${first.id}” is ticked, but the plan as it is now doesn’t make it.` : `“${first.title}” is ticked, but the plan as it is now makes that cut elsewhere.`}${more} What was measured or changed since doesn’t go with what is sawn.`,
      rule: practice('what is sawn stays sawn; only what is not can be cut otherwise'),
      cures: [
        {
          says: 'Note what is sawn, with “casewright cut JOB --ticked” or in the app where sheets are cut: the plan then goes on from the pieces that lie there.',
        },
        { says: 'Or take the ticks away, if these cuts were not made.' },
      ],
    },
  ];

  function isAt({ does }: Operation, at: string): boolean {
    const read = parseLength(at, job.shop.units);
    const [cut] = cutsOfAct(does);
    if (!read.ok || !cut) return true;
    const format = formatOf(job.shop);
    return printSetting(setOut.ledger.ticks(cut.at), format) === printSetting(read.value, format);
  }
}
