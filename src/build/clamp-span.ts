import type { Traced } from '../measure/index.ts';
import type { Joint, Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import type { Standing } from './seating.ts';

/**
 * How far apart the jaws of clamps go that press a part to those that stand there: along the panels whose ends meet the faces of
 * others. Undefined where none does; a back is pressed in from front to back.
 */
export function clampSpan(bench: Bench, standing: Standing, part: Part): Traced | undefined {
  const l = bench.ledger;
  const spans = bench.setOut.joints.flatMap((j) => {
    const other = j.part === part.id ? j.mate : j.mate === part.id ? j.part : undefined;
    if (other === undefined || j.duty === 'back' || !standing.has(other)) return [];
    const pressed = pressedAlong(bench, j);
    return pressed ? [l.sum('what the clamps span', pressed.length, pressed.onto.thickness)] : [];
  });
  return spans.length > 0 ? l.greatest('what the clamps span at most', ...spans) : undefined;
}

/** The panel whose end is in a joint, and what it is pressed on to. */
function pressedAlong({ setOut }: Bench, joint: Joint): { length: Traced; onto: Part } | undefined {
  const [own, mate] = [joint.part, joint.mate].map((id) => setOut.parts.find((p) => p.id === id)!);
  if (isEnd(joint.side)) return { length: own!.length, onto: mate! };
  return isEnd(joint.mateSide) ? { length: mate!.length, onto: own! } : undefined;
}

function isEnd(side: Joint['side'] | undefined): boolean {
  return side === 'start' || side === 'end';
}
