import type { Tool, ToolKind } from './tool.ts';

const PLAIN: Record<ToolKind, string> = {
  'circular-saw': 'Circular saw',
  'guide-rail': 'Guide rail',
  'mitre-saw': 'Mitre saw',
  drill: 'Drill',
  'pocket-jig': 'Pocket-hole jig',
  'dowel-jig': 'Dowelling jig',
  'biscuit-joiner': 'Biscuit joiner',
  router: 'Router',
  sander: 'Sander',
  clamp: 'Clamps',
  marking: 'Rule and square',
};

/** What a tool is called: as its owner calls it, else by its kind. */
export function toolName(tool: Tool): string {
  return tool.name ?? PLAIN[tool.kind];
}
