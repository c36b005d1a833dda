import { ticks } from '../../../measure/index.ts';
import type { CutNode } from '../../cut-plan.ts';
import { box } from './cut-unit.ts';

/** Where the pieces of a node end in one direction; nothing when it holds none. */
export function contentsEnd(node: CutNode, across: 'length' | 'width'): number | undefined {
  if (node.kind === 'left') return undefined;
  if (node.kind === 'piece') return across === 'length' ? node.x + node.length : node.y + node.width;
  const [a, b] = node.parts.map((p) => contentsEnd(p, across));
  if (node.across === across) return b ?? a;
  return a === undefined || b === undefined ? (a ?? b) : Math.max(a, b);
}

/** The same node, ending elsewhere in one direction: nearer, but not before its pieces end, or further. */
export function ending(
  node: CutNode,
  across: 'length' | 'width',
  end: number,
  kerfOf: (n: CutNode) => number,
): CutNode {
  const size = across === 'length' ? end - node.x : end - node.y;
  const whole =
    across === 'length' ? box(node.x, node.y, size, node.width) : box(node.x, node.y, node.length, size);
  if (node.kind === 'left') return { kind: 'left', ...whole };
  if (node.kind === 'piece') {
    if (size !== (across === 'length' ? node.length : node.width))
      throw new Error(`the piece ${node.piece} can’t be stretched`);
    return node;
  }
  const { parts } = node;
  if (node.across !== across)
    return {
      ...node,
      ...whole,
      parts: [ending(parts[0], across, end, kerfOf), ending(parts[1], across, end, kerfOf)],
    };
  if (end <= node.at) return ending(parts[0], across, end, kerfOf);
  const from = Math.min(node.at + kerfOf(node), end);
  const second = parts[1];
  const moved: CutNode =
    second.kind === 'left'
      ? {
          kind: 'left',
          ...(across === 'length'
            ? box(from, second.y, end - from, second.width)
            : box(second.x, from, second.length, end - from)),
        }
      : ending(second, across, end, kerfOf);
  return { ...node, ...whole, at: ticks(node.at), parts: [parts[0], moved] };
}
