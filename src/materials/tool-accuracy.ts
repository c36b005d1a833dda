import type { Sourced } from './sourced.ts';

/** How far off a careful hand with a sound tool may be. */
export interface ToolAccuracy extends Sourced {
  readonly id: string;
  readonly name: string;
  readonly lengthMm: number;
  readonly squareDegrees?: number;
}

const BY_HAND = { source: 'common practice', confirmed: false } as const;

/** Accuracies to start from; a shop states its own. */
export const TOOL_ACCURACIES: readonly ToolAccuracy[] = [
  { id: 'rail-saw', name: 'circular saw on a guide rail', lengthMm: 0.5, squareDegrees: 0.1, ...BY_HAND },
  {
    id: 'circular-saw',
    name: 'circular saw along a straightedge',
    lengthMm: 1.5,
    squareDegrees: 0.5,
    ...BY_HAND,
  },
  { id: 'mitre-saw', name: 'mitre saw', lengthMm: 0.5, squareDegrees: 0.1, ...BY_HAND },
  { id: 'jigsaw', name: 'jigsaw', lengthMm: 2, squareDegrees: 2, ...BY_HAND },
  { id: 'router', name: 'router with an edge guide', lengthMm: 0.3, ...BY_HAND },
  { id: 'router-depth', name: 'depth of a router', lengthMm: 0.1, ...BY_HAND },
  { id: 'tape', name: 'tape and pencil', lengthMm: 1, ...BY_HAND },
  { id: 'knife', name: 'rule and knife', lengthMm: 0.3, ...BY_HAND },
];

/** The accuracy to start from for a kind of tool; undefined when it isn't in the table. */
export function toolAccuracy(id: string): ToolAccuracy | undefined {
  return TOOL_ACCURACIES.find((t) => t.id === id);
}
