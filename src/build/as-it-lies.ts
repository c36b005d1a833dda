import type { PlannedSheet } from '../breakdown/index.ts';
import type { Bench } from './bench.ts';
import { type CutDraft, isStripLot, wordOf } from './saw-cut.ts';

/** Says how stock with flaws, or with one good face, must lie, where no first cut says so. */
export function layAsDrawn(bench: Bench, sheet: PlannedSheet, name: string): void {
  const { first = [], more = [] } = asItLies(bench, sheet, 0);
  if (first.length === 0) return;
  const id = `${name}/lay`;
  bench.do(
    {
      id,
      kind: 'inspect',
      stage: isStripLot(bench, sheet.lot) ? 'strips' : 'sheets',
      title: `Lay ${wordOf(bench, sheet.lot)} ${name} as it is drawn`,
      does: { act: 'other', on: [name] },
      lines: first,
      lengths: more,
    },
    [name],
  );
  bench.comesFrom(name, id);
}

/**
 * How stock with flaws, or with one good face, must lie, so that the parts come beside them and show that face. Lengths that the
 * lines name are counted on from `from`.
 */
export function asItLies(
  bench: Bench,
  { source, lot }: PlannedSheet,
  from: number,
): Pick<CutDraft, 'first' | 'more'> {
  const { flaws, stock } = source;
  const word = wordOf(bench, lot);
  const face =
    stock.goodFaces === 'one'
      ? `One face of this ${word} is good: lay it down. Of the parts on it no other face is seen.`
      : stock.goodFaces === 'none'
        ? `No face of this ${word} is good; of the parts on it none is seen.`
        : undefined;
  if (flaws.length === 0) return face === undefined ? {} : { first: [face] };
  const strip = isStripLot(bench, lot);
  const says = flaws.map((f, i) => {
    const [a, b, c, d] = [0, 1, 2, 3].map((k) => `{${(strip ? 2 : 4) * i + k + from}}`);
    return `${f.name}: from ${a} to ${b} along the length${strip ? '' : `, from ${c} to ${d} across`}.`;
  });
  return {
    first: [
      ...(face === undefined ? [] : [face]),
      `Lay the ${word} so that its flaws are where the plan has them, from ${strip ? 'its left end' : 'the near left corner'} as it lies; parts come beside them.`,
      ...says,
    ],
    more: flaws.flatMap((f) => [
      f.x,
      bench.ledger.sum('where the flaw ends', f.x, f.length),
      ...(strip ? [] : [f.y, bench.ledger.sum('where the flaw ends', f.y, f.width)]),
    ]),
  };
}
