import type { Breakdown, PlannedNode, PlannedSheet } from '../breakdown/index.ts';
import { MACHINE_RULES } from '../materials/index.ts';
import { blankOf } from '../setting-out/index.ts';
import { asItLies, layAsDrawn } from './as-it-lies.ts';
import type { Bench } from './bench.ts';
import { CAUTION } from './cautions.ts';
import { cut, isStripLot, wordOf } from './saw-cut.ts';
import { sawTree, trimToContents } from './saw-tree.ts';
import { stockWords } from './stock-words.ts';
import { sawStrips } from './strip-cuts.ts';
import { piecesFromYard, type RawPiece } from './yard-cuts.ts';

/**
 * Cuts every sheet, offcut and strip to blanks, in the order of the cut trees. Of the sheets and of the strips those come
 * first that hold parts which nothing would give again, while all else can still be changed.
 */
export function sawStock(bench: Bench, breakdown: Breakdown): void {
  testCut(bench, breakdown);
  const lastChance = new Set(
    breakdown.spares
      .filter((s) => s.from === 'nothing')
      .map(({ part }) => (blankOf(bench.setOut, part.id) ?? part).mark),
  );
  const risk = (sheet: PlannedSheet) => (marksIn(sheet.root).some((m) => lastChance.has(m)) ? 0 : 1);
  const cuts = breakdown.lots
    .flatMap((lot) => lot.sheets.map((sheet) => ({ lot, sheet, risk: risk(sheet) })))
    .sort((a, b) => a.risk - b.risk);
  for (const { lot, sheet } of cuts) {
    const strip = lot.lot.form === 'strip';
    const home = strip ? undefined : piecesFromYard(bench, lot, sheet);
    const last = marksIn(sheet.root).filter((m) => lastChance.has(m));
    const lies = home?.pieces.map((p) => p.name) ?? [sheet.name];
    if (last.length > 0 && lot.lot.tape === undefined) {
      const others = cuts.some((c) => c.risk > 0 && wordOf(bench, c.sheet.lot) === wordOf(bench, sheet.lot));
      onlyOnce(bench, sheet, last, { lies, others });
    }
    if (home) sawPieces(bench, sheet, home);
  }
  for (const some of [0, 1])
    sawStrips(
      bench,
      cuts.flatMap(({ lot, sheet, risk }) => (lot.lot.form === 'strip' && risk === some ? [sheet] : [])),
    );
}

/**
 * Says of stock, before its first cut in the shop, which of its parts can’t be cut again; `lies` are the pieces it came home in,
 * and `others` come after it whose parts can.
 */
function onlyOnce(
  bench: Bench,
  { name, source, lot }: PlannedSheet,
  marks: readonly string[],
  { lies, others }: { readonly lies: readonly string[]; readonly others: boolean },
): void {
  const strip = isStripLot(bench, lot);
  const id = `${name}/only-once`;
  bench.do(
    {
      id,
      kind: 'inspect',
      stage: strip ? 'strips' : 'sheets',
      title: `There is no second ${[...marks]
        .sort()
        .join(', ')
        .replace(/, ([^,]*)$/, ' or $1')}`,
      does: { act: 'other', on: lies },
      lines: [
        `Nothing that is there or can be bought would give ${marks.length > 1 ? 'them' : 'it'} again${others ? `, so ${source.stock.name ?? name} is cut before ${wordOf(bench, lot)}s whose parts can be cut again` : ''}. Look ${others ? 'it' : (source.stock.name ?? name)} over for dents, voids and bow; check every mark on it a second time before the saw starts.`,
      ],
    },
    lies,
  );
  for (const piece of lies) bench.comesFrom(piece, id);
}

function marksIn(node: PlannedNode): readonly string[] {
  if (node.kind === 'cut') return node.parts.flatMap(marksIn);
  return node.kind === 'piece' ? [node.part.mark] : [];
}

/** A cut on a scrap before the first that counts: it proves the saw and the rail, and measures the kerf. */
function testCut(bench: Bench, breakdown: Breakdown): void {
  const lots = breakdown.lots.filter((l) => l.lot.form === 'sheet' && l.sheets.length > 0);
  const sheets = lots.flatMap((l) => l.sheets.map((s) => s.name));
  // With all sheets cut, the panels that are still to be glued up are trued with the same saw.
  const made = new Set((bench.job.work.made ?? []).map((m) => m.part));
  const panels = lots.length > 0 ? [] : bench.setOut.gluedPanels.filter((g) => !made.has(g.panel));
  if (lots.length === 0 && panels.length === 0) return;
  const words = lots.length > 0 ? stockWords(lots.map((l) => l.lot)) : 'boards';
  const works = [...sheets, ...panels.flatMap((g) => g.boards.map((b) => b.mark))];
  const kerf = bench.kerfOf('circular-saw');
  bench.do(
    {
      id: 'sheets/test-cut',
      kind: 'test-cut',
      stage: 'sheets',
      title: 'Make a test cut on a scrap',
      does: { act: 'other', on: [] },
      tool: 'circular-saw',
      lines: [
        `Nothing of the ${words} is waste yet: take a scrap of board about as thick, large enough to be clamped down.`,
        'A sacrificial board under every cut, the blade set to cut {1} into it and no deeper.',
        'Cut the scrap in two: the halves, one of them turned over, must close without a gap, or the blade isn’t square. The cut follows the rail’s edge, and the face that lay down is clean.',
        'The blade is reckoned to take {0}: measure the slot, and enter what you find where it differs.',
      ],
      lengths: [kerf, bench.rule(MACHINE_RULES.intoBoard)],
      cautions: [CAUTION.saw],
    },
    works,
  );
  for (const name of works) bench.comesFrom(name, 'sheets/test-cut');
}

/** What came home of a sheet, or all of it, one after the other. */
function sawPieces(
  bench: Bench,
  sheet: PlannedSheet,
  { pieces, named }: ReturnType<typeof piecesFromYard>,
): void {
  const count = { strips: named };
  for (const piece of pieces) sawSheet(bench, sheet, piece, count);
}

/** A sheet: true a long edge, square an end, then the tree. The far sides are trimmed only where a part reaches them. */
function sawSheet(
  bench: Bench,
  sheet: PlannedSheet,
  { node, name, raw }: RawPiece,
  count: { strips: number },
): void {
  const l = bench.ledger;
  const { stock } = sheet.source;
  if (node.kind === 'left') return;
  const whole = name === sheet.name;
  const word = wordOf(bench, sheet.lot);
  const what = `${whole ? word : 'piece'} ${name}`;
  const known = stock.name && whole ? ` (${stock.name})` : '';
  if (l.ticks(raw.near) <= 0) layAsDrawn(bench, sheet, name);
  if (l.ticks(raw.near) > 0)
    cut(bench, {
      id: `${name}/true-edge`,
      title: `True a long edge of ${what}${known}`,
      kind: 'true-edge',
      workpiece: name,
      of: raw,
      across: 'width',
      whole: raw.width,
      at: bench.set('circular-saw', raw.near),
      keep: 'behind',
      yields: [undefined, { name, turned: false }],
      ...asItLies(bench, sheet, 1),
      extra: `This is the edge that everything on this ${word} is measured from: mark it with a wavy line. Of what stays after a rip, the fresh edge is the trued one. The saw tears the upper side, and a splinter strip keeps it clean only under the rail; so the better face lies down for every cut, and drawings of ${word}s and cuts show them as they lie.`,
    });
  if (l.ticks(raw.start) > 0)
    cut(bench, {
      id: `${name}/square-end`,
      title: `Square an end of ${what} to the trued edge`,
      kind: 'square-end',
      workpiece: name,
      of: raw,
      across: 'length',
      whole: raw.length,
      at: bench.set('circular-saw', raw.start),
      keep: 'behind',
      yields: [undefined, { name, turned: false }],
      extra: `Check with the square against the trued edge, not against the ${word === 'board' ? 'one as it came' : 'factory edge'}. Of what stays after a crosscut, the fresh end is the squared one.`,
    });
  trimToContents(bench, node, name);
  sawTree(bench, sheet, node, name, count);
}
