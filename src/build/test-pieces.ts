import { type Breakdown, KEEP_LENGTH, KEEP_WIDTH } from '../breakdown/index.ts';
import { toMm } from '../measure/index.ts';
import type { Snag } from '../snag/index.ts';
import type { Bench } from './bench.ts';
import { stockWords } from './stock-words.ts';
import { listWords } from './words.ts';

/** Lays by a piece of each lot: settings are proved on it, and the finish is tried on it. */
export function keepTestPieces(bench: Bench, { testPieces, lots }: Breakdown): void {
  for (const form of ['sheet', 'strip'] as const) {
    const of = testPieces.flatMap((t) => {
      const lot = lots.find((l) => l.lot.id === t.lot)!.lot;
      return lot.form === form ? [{ ...t, says: lot.name }] : [];
    });
    const kept = of.flatMap((t) => (t.name === undefined ? [] : [t.name]));
    const others = of.filter((t) => t.from === 'rack').map((t) => t.says);
    const none = of.filter((t) => t.from === 'nothing').map((t) => t.says);
    if (of.length === 0) continue;
    for (const t of of) if (t.from === 'nothing') bench.snags.push(nothingLeft(t.lot, t.says));
    bench.do(
      {
        id: `${form}s/test-pieces`,
        kind: 'inspect',
        stage: form === 'sheet' ? 'sheets' : 'strips',
        title: `Lay test pieces of the ${form === 'strip' ? 'strips' : stockWords(lots.flatMap((l) => (of.some((t) => t.lot === l.lot.id) ? [l.lot] : [])))} by`,
        does: { act: 'other', on: kept },
        lines: [
          ...of.flatMap((t) => (t.name === undefined ? [] : [`${t.says}: write TEST on ${t.name}.`])),
          ...(others.length > 0
            ? [`Of ${listWords(others)} there is more on the rack: an end of that serves.`]
            : []),
          ...(none.length > 0
            ? [`Of ${listWords(none)} nothing this large is left: keep the largest waste.`]
            : []),
          'Every setting is proved on them before it comes to a part, and all coats of the finish are tried on them, sanded the same way. They stay until the piece stands.',
        ],
      },
      kept,
    );
  }
}

function nothingLeft(lot: string, says: string): Snag {
  return {
    code: 'stock.no-test-piece',
    level: 'note',
    where: { path: `shop/rack/lots/${lot}` },
    sentence: `Nothing of ${says} is left that is large enough to prove settings and the finish on.`,
    rule: {
      says: `a test piece is at least ${toMm(KEEP_LENGTH)} x ${toMm(KEEP_WIDTH)} mm, of a strip ${toMm(KEEP_LENGTH)} mm long`,
      source: 'common practice',
      confirmed: false,
    },
    cures: [{ says: 'Have an offcut of it at hand, or keep the largest waste.' }],
  };
}
