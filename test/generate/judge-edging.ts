import { type JobDocument, type RecordOf, treeOf } from '../../src/job/index.ts';
import type { SetOut } from '../../src/setting-out/index.ts';
import { boxOf, outerBoxOf } from './judge-set-out.ts';

// A judge of edging round doors and drawers' fronts: its own arithmetic, in ticks of 1/3200 mm.

const SIDES = { left: [0, 'min'], right: [0, 'max'], lower: [2, 'min'], upper: [2, 'max'] } as const;

/** Boards that are not covered as asked: on the wrong edges, not right across, or by more or less than the strips' thickness. */
export function edgingFaults(job: JobDocument, setOut: SetOut): string[] {
  return treeOf(job)
    .all('edging')
    .flatMap((edging) => {
      const parent = treeOf(job).get(edging.parent)!;
      if (parent.kind === 'case') return endFaults(job, setOut, edging);
      if (parent.kind !== 'door' && parent.kind !== 'drawers') return [];
      const faces = new Set(setOut.drawers.map((d) => d.parts.face));
      const boards = setOut.parts.filter(
        (p) => p.record === parent.id && (parent.kind === 'door' || faces.has(p.id)),
      );
      return boards.flatMap((b) => boardFaults(setOut, edging, b.id).map((what) => `${b.id}: ${what}`));
    });
}

function boardFaults(setOut: SetOut, edging: RecordOf<'edging'>, id: string): string[] {
  const board = setOut.parts.find((p) => p.id === id)!;
  const [own, whole] = [boxOf(setOut, board), outerBoxOf(setOut, board)];
  const strips = setOut.parts.filter((p) =>
    setOut.joints.some((j) => j.duty === 'edging' && j.part === p.id && j.mate === id),
  );
  const asked = new Set<string>(edging.sides ?? Object.keys(SIDES));
  const thick = setOut.ledger.ticks(strips[0]!.thickness);
  const faults: string[] = [];
  for (const [side, [axis, end]] of Object.entries(SIDES)) {
    const over = Math.abs(whole[end][axis] - own[end][axis]);
    if (over !== (asked.has(side) ? thick : 0)) faults.push(`${over} on its ${side} edge`);
  }
  if (own.min[1] !== whole.min[1] || own.max[1] !== whole.max[1])
    faults.push('a strip stands before or behind it');
  // Every edge asked for is covered from end to end by one strip.
  for (const side of asked) {
    const [axis, end] = SIDES[side as keyof typeof SIDES];
    const covers = strips.some((s) => {
      const box = boxOf(setOut, s);
      const other = axis === 0 ? 2 : 0;
      return (
        box[end][axis] === whole[end][axis] &&
        box.max[axis] - box.min[axis] === thick &&
        box.min[other] <= own.min[other] &&
        box.max[other] >= own.max[other]
      );
    });
    if (!covers) faults.push(`its ${side} edge is not covered`);
  }
  return faults;
}

/** Ends that were asked for: each is covered by one strip from front to back, and with it comes to the outer plane of the case. */
function endFaults(job: JobDocument, setOut: SetOut, edging: RecordOf<'edging'>): string[] {
  const box = treeOf(job).get(edging.parent)!;
  if (box.kind !== 'case') return [];
  const panel = (role: string) => setOut.parts.find((p) => p.role === role && p.id.startsWith(`${box.id}/`));
  const [left, right] = [panel('left-side'), panel('right-side')];
  if (!left || !right) return [];
  const planes = { left: boxOf(setOut, left).min[0], right: boxOf(setOut, right).max[0] };
  const through = (hand: 'left' | 'right') =>
    [
      ...(box.bottom === 'under' || box.bottom === `under-${hand}` ? [panel('bottom')] : []),
      ...(box.lid === 'over' || box.lid === `over-${hand}` ? [panel('lid')] : []),
    ].flatMap((p) => p ?? []);
  // A side under the lid shows no end above.
  const beside = [...(box.lid === 'over-left' ? [] : [left]), ...(box.lid === 'over-right' ? [] : [right])];
  const faults: string[] = [];
  for (const side of edging.sides ?? []) {
    if (side !== 'left' && side !== 'right' && side !== 'upper') continue;
    for (const board of side === 'upper' ? beside : through(side)) {
      const strip = setOut.parts.find((p) => p.id === `${edging.id}/${side}-on:${board.id}`);
      if (!strip) {
        faults.push(`${board.id}: its ${side} end is not covered`);
        continue;
      }
      const [own, on] = [boxOf(setOut, board), boxOf(setOut, strip)];
      const [axis, end] =
        side === 'upper' ? ([2, 'max'] as const) : ([0, side === 'left' ? 'min' : 'max'] as const);
      const touches = end === 'min' ? on.max[axis] === own.min[axis] : on.min[axis] === own.max[axis];
      const covers = ([0, 1, 2] as const).every(
        (k) => k === axis || (on.min[k] <= own.min[k] && on.max[k] >= own.max[k]),
      );
      if (!touches || !covers) faults.push(`${board.id}: the strip on its ${side} end lies beside it`);
      if (side !== 'upper' && on[end][axis] !== planes[side])
        faults.push(`${board.id}: with its strip it ends beside the case’s own ${side} side`);
    }
  }
  return faults;
}
