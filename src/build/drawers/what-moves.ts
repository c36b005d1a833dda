import type { Drawer } from '../../setting-out/index.ts';
import type { Bench } from '../bench.ts';
import { partOf } from './in-words.ts';
import { isShallow } from './shallow.ts';

/** The marks of what comes out when a box is first tried: its own parts, and its front and what is on that where it is on already. */
export function whatMoves(bench: Bench, drawer: Drawer): readonly string[] {
  const { face, ...box } = drawer.parts;
  const onFront = bench.setOut.joints
    .filter((j) => (j.duty === 'handle' && j.part === face) || (j.duty === 'edging' && j.mate === face))
    .map((j) => (j.duty === 'edging' ? j.part : j.mate));
  return [...Object.values(box), ...(isShallow(bench, drawer) ? [face, ...onFront] : [])].map(
    (id) => partOf(bench, id).mark,
  );
}
