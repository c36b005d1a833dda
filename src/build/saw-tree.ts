import type { PlannedNode, PlannedSheet } from '../breakdown/index.ts';
import type { Part } from '../setting-out/index.ts';
import { leftWords, thenWhat, trimTo } from './after-cut.ts';
import type { Bench } from './bench.ts';
import type { Yield } from './operation.ts';
import { cut, isStripLot, isTape, wordOf } from './saw-cut.ts';
import { sideWords } from './words.ts';

/** Trims the far sides of a workpiece where a part reaches them, so that every side of a part is sawn to a mark. */
export function trimToContents(
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

/** A part of the tree that waits to be cut, and the workpiece that holds it. */
interface Waiting {
  readonly node: PlannedNode & { readonly kind: 'cut' };
  readonly workpiece: string;
}

/** All cuts of a sheet, what comes off first; but what is cut to the same setting as the last cut goes before. */
export function sawTree(
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
export function inItsStrip(part: Part): string {
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
    uncut: isUncut(bench, sheet, workpiece),
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
    uncut: isUncut(bench, sheet, workpiece),
    yields: [
      undefined,
      { name, turned: stays.kind === 'piece' && stays.turned && !turnsLater(bench, stays, node.across) },
    ],
    extra: `What comes off is waste; write ${piece} on what stays: its fresh ${lengthwise ? 'end is the squared' : 'edge is the trued'} one.${thenWhat(bench, node, [undefined, name])}`,
  });
  if (stays.kind !== 'left') trimToContents(bench, stays, name, node.across);
  return stays.kind === 'cut' ? [{ node: stays, workpiece: name }] : [];
}

/** Is it a strip as it was bought, whose end nobody has looked at? */
function isUncut(bench: Bench, { name, lot }: PlannedSheet, workpiece: string): boolean {
  return workpiece === name && isStripLot(bench, lot);
}

/** A part that takes all of its stock needs no cut, only its mark. */
export function nameWhole(bench: Bench, part: Part, turned: boolean, workpiece: string): void {
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
