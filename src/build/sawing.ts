import type { Breakdown, PlannedNode, PlannedSheet } from '../breakdown/index.ts';
import { MACHINE_RULES } from '../materials/index.ts';
import { blankOf, type Part } from '../setting-out/index.ts';
import { leftWords, thenWhat, trimTo } from './after-cut.ts';
import { asItLies, layAsDrawn } from './as-it-lies.ts';
import type { Bench } from './bench.ts';
import { CAUTION } from './cautions.ts';
import type { Yield } from './operation.ts';
import { cut, isStripLot, isTape, wordOf } from './saw-cut.ts';
import { stockWords } from './stock-words.ts';
import { sideWords } from './words.ts';
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
    else sawStrip(bench, sheet);
  }
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

/** A cut on waste before the first that counts: it proves the saw and the rail, and measures the kerf. */
function testCut(bench: Bench, breakdown: Breakdown): void {
  const lots = breakdown.lots.filter((l) => l.lot.form === 'sheet' && l.sheets.length > 0);
  const sheets = lots.flatMap((l) => l.sheets.map((s) => s.name));
  const words = stockWords(lots.map((l) => l.lot));
  if (lots.length === 0) return;
  const kerf = bench.kerfOf('circular-saw');
  bench.do(
    {
      id: 'sheets/test-cut',
      kind: 'test-cut',
      stage: 'sheets',
      title: `Make a test cut on waste of the ${words}`,
      does: { act: 'other', on: [] },
      tool: 'circular-saw',
      lines: [
        'A sacrificial board under every cut, the blade set to cut {1} into it and no deeper.',
        'Cut a strip of waste in two: the halves, one of them turned over, must close without a gap, or the blade isn’t square. The cut follows the rail’s edge, and the face that lay down is clean.',
        'The blade is reckoned to take {0}: measure the slot, and enter what you find where it differs.',
      ],
      lengths: [kerf, bench.rule(MACHINE_RULES.intoBoard)],
      cautions: [CAUTION.saw],
    },
    sheets,
  );
  for (const name of sheets) bench.comesFrom(name, 'sheets/test-cut');
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

/** Trims the far sides of a workpiece where a part reaches them, so that every side of a part is sawn to a mark. */
function trimToContents(
  bench: Bench,
  node: PlannedNode,
  workpiece: string,
  only?: 'length' | 'width',
  tape = false,
): void {
  const to = node.kind === 'piece' ? `${node.part.mark} (${node.part.name})` : `piece ${workpiece}`;
  const turned = node.kind === 'piece' && node.turned;
  for (const across of ['width', 'length'] as const) {
    // Of what is cut up the same way next, the last part is trimmed when it is alone.
    if (node.kind === 'cut' && node.across === across) continue;
    const needs = trimTo(bench, node, across);
    if (needs === undefined || (only !== undefined && only !== across)) continue;
    cut(bench, {
      id: `${workpiece}/trim-${across}`,
      // A part that lies across the grain has its own length where the sheet has its width.
      title: `Trim ${to} to ${(across === 'length') === turned ? 'width' : 'length'}`,
      kind: across === 'length' ? 'crosscut' : 'rip',
      workpiece,
      of: node,
      across,
      at: needs,
      keep: 'before',
      yields: [{ name: workpiece, turned: turned && workpiece === node.part.mark }, undefined],
      tape,
      ...(node.kind === 'piece' && only !== undefined ? { extra: `Then lay ${node.part.mark} by.` } : {}),
    });
  }
}

/** Whether what stays of a cut gets its part's name only when it has been trimmed: until then it lies as the sheet did. */
function turnsLater(bench: Bench, stays: PlannedNode, across: 'length' | 'width'): boolean {
  return stays.kind === 'piece' && stays.turned && trimTo(bench, stays, across) !== undefined;
}

function sawStrip(bench: Bench, sheet: PlannedSheet): void {
  const { trim } = sheet.source;
  layAsDrawn(bench, sheet, sheet.name);
  if (bench.ledger.ticks(trim) > 0)
    cut(bench, {
      id: `${sheet.name}/square-end`,
      title: `Square an end of strip ${sheet.name}`,
      kind: 'square-end',
      workpiece: sheet.name,
      of: sheet.source,
      across: 'length',
      at: bench.set('circular-saw', trim),
      keep: 'behind',
      yields: [undefined, { name: sheet.name, turned: false }],
      tape: isTape(bench, sheet.lot),
    });
  trimToContents(bench, sheet.root, sheet.name, 'length', isTape(bench, sheet.lot));
  sawTree(bench, sheet, sheet.root, sheet.name, { strips: 0 });
}

/** A part of the tree that waits to be cut, and the workpiece that holds it. */
interface Waiting {
  readonly node: PlannedNode & { readonly kind: 'cut' };
  readonly workpiece: string;
}

/** All cuts of a sheet, what comes off first; but what is cut to the same setting as the last cut goes before. */
function sawTree(
  bench: Bench,
  sheet: PlannedSheet,
  root: PlannedNode,
  name: string,
  count: { strips: number },
): void {
  if (root.kind === 'piece') nameWhole(bench, root.part, root.turned, name);
  const setting = ({ node }: Waiting) => {
    const size = node.across === 'length' ? node.parts[0].length : node.parts[0].width;
    return `${node.across} ${bench.ledger.ticks(size)}`;
  };
  const waiting: Waiting[] = root.kind === 'cut' ? [{ node: root, workpiece: name }] : [];
  let last = '';
  while (waiting.length > 0) {
    const same = waiting.findLastIndex((w) => setting(w) === last);
    const [next] = waiting.splice(same < 0 ? waiting.length - 1 : same, 1);
    last = setting(next!);
    waiting.push(...sawNode(bench, sheet, next!, count));
  }
}

/** A part as it is written on the wood; of a strip that goes round a case, with what its ends lie beside there. */
function inItsStrip(part: Part): string {
  const beside = (['start', 'end'] as const).flatMap((end) => {
    const mark = part.strip?.beside?.[end];
    return mark === undefined ? [] : [`its ${sideWords(part, end)} beside ${mark}`];
  });
  return `${part.mark} (${[part.name, ...beside].join(', ')})`;
}

/** Cuts a node of the tree off the workpiece that holds it; gives what is to be cut further, the first half last. */
function sawNode(
  bench: Bench,
  sheet: PlannedSheet,
  { node, workpiece }: Waiting,
  count: { strips: number },
): readonly Waiting[] {
  const lengthwise = node.across === 'length';
  const size = lengthwise ? node.parts[0].length : node.parts[0].width;
  const names = node.parts.map((p) => nameFor(sheet, p, count));
  if (names[0] === undefined) return wasteOff(bench, sheet, { node, workpiece }, names[1]!);
  const yields = node.parts.map((p, i): Yield | undefined => {
    const name = names[i];
    const turned = p.kind === 'piece' && p.turned && !(i === 1 && turnsLater(bench, p, node.across));
    return name === undefined ? undefined : { name, turned };
  });
  const [first, second] = node.parts;
  const off = first.kind === 'piece' ? inItsStrip(first.part) : names[0];
  const staying =
    second.kind === 'left'
      ? leftWords(names[1])
      : `, ${second.kind === 'piece' ? inItsStrip(second.part) : names[1]} on what stays.`;
  cut(bench, {
    id: `${workpiece}/${lengthwise ? 'crosscut' : 'rip'}-${names[0]}`,
    title: `${isTape(bench, sheet.lot) ? 'Cut' : lengthwise ? 'Crosscut' : 'Rip'} ${first.kind === 'piece' ? first.part.mark : `piece ${names[0]}`} off ${workpiece === sheet.name ? wordOf(bench, sheet.lot) : 'piece'} ${workpiece}`,
    kind: lengthwise ? 'crosscut' : 'rip',
    workpiece,
    of: node,
    across: node.across,
    at: size,
    keep: 'before',
    yields: [yields[0], yields[1]],
    tape: isTape(bench, sheet.lot),
    extra: `Write ${off} on what comes off${staying}${thenWhat(bench, node, names)}`,
  });
  if (names[1] !== undefined && second.kind !== 'left')
    trimToContents(bench, second, names[1], node.across, isTape(bench, sheet.lot));
  return [1, 0].flatMap((i): Waiting[] => {
    const half = node.parts[i]!;
    return half.kind === 'cut' ? [{ node: half, workpiece: names[i]! }] : [];
  });
}

/** Waste before a flaw comes off first: the rail lies on what stays, whose fresh edge it is. */
function wasteOff(
  bench: Bench,
  sheet: PlannedSheet,
  { node, workpiece }: Waiting,
  name: string,
): readonly Waiting[] {
  const lengthwise = node.across === 'length';
  const [, stays] = node.parts;
  const [whole, kept] = lengthwise ? [node.length, stays.length] : [node.width, stays.width];
  const piece = stays.kind === 'piece' ? `${stays.part.mark} (${stays.part.name})` : name;
  cut(bench, {
    id: `${workpiece}/waste-off-${name}`,
    title: `Cut waste off ${workpiece === sheet.name ? wordOf(bench, sheet.lot) : 'piece'} ${workpiece}, beside a flaw`,
    kind: lengthwise ? 'crosscut' : 'rip',
    workpiece,
    of: node,
    across: node.across,
    whole,
    at: bench.ledger.less('where the waste ends', whole, kept),
    keep: 'behind',
    yields: [
      undefined,
      { name, turned: stays.kind === 'piece' && stays.turned && !turnsLater(bench, stays, node.across) },
    ],
    extra: `What comes off is waste; write ${piece} on what stays: its fresh ${lengthwise ? 'end is the squared' : 'edge is the trued'} one.${thenWhat(bench, node, [undefined, name])}`,
  });
  if (stays.kind !== 'left') trimToContents(bench, stays, name, node.across);
  return stays.kind === 'cut' ? [{ node: stays, workpiece: name }] : [];
}

/** A part that takes all of its stock needs no cut, only its mark. */
function nameWhole(bench: Bench, part: Part, turned: boolean, workpiece: string): void {
  const id = `${workpiece}/name`;
  bench.do(
    {
      id,
      kind: 'mark',
      stage: part.form === 'strip' ? 'strips' : 'sheets',
      title: `${workpiece} is ${part.mark} as it is`,
      does: { act: 'name', workpiece, as: { name: part.mark, turned } },
      lines: [`It needs no further cut: write ${part.mark} (${part.name}) on it.`],
    },
    [workpiece],
  );
  bench.comesFrom(part.mark, id);
}

function nameFor(sheet: PlannedSheet, node: PlannedNode, count: { strips: number }): string | undefined {
  if (node.kind === 'piece') return node.part.mark;
  if (node.kind === 'cut') return `${sheet.name}.${++count.strips}`;
  return node.name;
}
