import type { GluedPanel, SetOut } from '../../src/setting-out/index.ts';
import { boxOf } from './judge-set-out.ts';

// A judge of panels that are glued up: its own arithmetic, in ticks of 1/3200 mm.

const MM = 3200;

/** Everything that is wrong with the boards of panels that are glued up. */
export function gluedPanelFaults(setOut: SetOut): string[] {
  return setOut.gluedPanels.flatMap((g) => faultsOf(setOut, g).map((f) => `${g.panel}: ${f}`));
}

/** Boards lie side by side over all of the panel, and there is enough of each for planing and for the saw. */
function faultsOf(setOut: SetOut, { panel, boards, jointed, raw, off }: GluedPanel): string[] {
  const t = (x: GluedPanel['jointed']) => setOut.ledger.ticks(x);
  const whole = boxOf(setOut, setOut.parts.find((p) => p.id === panel)!);
  const faults: string[] = [];
  let front = whole.min[1];
  for (const board of boards) {
    const box = boxOf(setOut, board);
    if (box.min[1] !== front) faults.push(`${board.mark} leaves a gap before it`);
    front = box.max[1];
    for (const axis of [0, 2] as const)
      if (box.min[axis] !== whole.min[axis] || box.max[axis] !== whole.max[axis])
        faults.push(`${board.mark} isn’t as long or as thick as the panel`);
    const { rough, cut } = board;
    if (!rough || t(rough.width) - t(jointed) < 3 * MM)
      faults.push(`${board.mark} is too narrow to be planed`);
    if (t(cut.length) - t(board.length) < 39 * MM)
      faults.push(`${board.mark} has nothing to cut off its ends`);
    if (!rough || t(rough.thickness) <= t(board.thickness)) faults.push(`${board.mark} can’t be planed flat`);
    if (box.max[1] <= box.min[1]) faults.push(`nothing is left of ${board.mark}`);
  }
  if (front !== whole.max[1]) faults.push('its boards don’t reach its back edge');
  if (t(raw.width) !== boards.length * t(jointed)) faults.push('it is not as wide as its boards');
  const behind = t(raw.width) - t(off.near) - (whole.max[1] - whole.min[1]);
  if (t(off.near) < 4 * MM || behind < 4 * MM) faults.push('too little is ripped off its edges');
  return faults;
}
