import type { Traced } from '../measure/index.ts';
import type { Joint, Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { planesOf } from './boxes.ts';
import { driveScrews } from './drive-screws.ts';
import type { Touch } from './operation.ts';
import { offset, outermost } from './seating.ts';
import { touchesTold } from './touch-words.ts';
import { listWords } from './words.ts';

/** Screws handles to their doors and drawer fronts while these lie loose: their backs are out of reach later. */
export function fixHandles(bench: Bench, fronts: readonly Part[], stage: 'fill' | 'hang'): void {
  const ids = new Set(fronts.map((p) => p.id));
  for (const joint of bench.setOut.joints)
    if (joint.duty === 'handle' && ids.has(joint.part)) fixHandle(bench, joint, stage);
}

function fixHandle(bench: Bench, joint: Joint, stage: 'fill' | 'hang'): void {
  const [front, handle] = [joint.part, joint.mate].map(
    (id) => bench.setOut.parts.find((p) => p.id === id)!,
  ) as [Part, Part];
  const [mine, board] = [planesOf(bench.ledger, handle), planesOf(bench.ledger, front)];
  const from = (side: '-x' | '+x' | '-z') => offset(bench, mine, side, outermost(bench, front, side));
  const touches: readonly [Touch, Touch, Touch] = [
    from(nearer(bench, mine, board)),
    { side: '+y', of: front.mark, face: '-y' },
    from('-z'),
  ];
  const lengths: Traced[] = [];
  const told = touchesTold(bench, touches, lengths);
  bench.do(
    {
      id: `${handle.mark}/set`,
      kind: 'assemble',
      stage,
      title: `Lay ${handle.mark} (${handle.name}) on ${front.mark}`,
      does: {
        act: 'edge',
        pairs: [{ strip: handle.mark, board: front.mark }],
        turn: { length: handle.place.length, width: handle.place.width },
        boardTurn: { length: front.place.length, width: front.place.width },
        touches: touches.map((t) => (t.of === front.mark ? { ...t, of: 'board' } : t)) as never,
      },
      tool: 'clamp',
      lines: [
        'Round its edges and ends well with a block first: a hand takes hold here every day.',
        `Where it comes: ${listWords(told)}. A nail through each hole of ${front.mark} must find its pilot.`,
      ],
      lengths,
    },
    [handle.mark, front.mark],
  );
  driveScrews(bench, front.mark, joint, stage);
}

/** The side of the front that the handle is nearer to: its place is measured from there. */
function nearer(
  bench: Bench,
  mine: ReturnType<typeof planesOf>,
  board: ReturnType<typeof planesOf>,
): '-x' | '+x' {
  const t = (x: Traced) => bench.ledger.ticks(x);
  const left = t(mine.planes['-x']) - t(board.planes['-x']);
  return left <= t(board.planes['+x']) - t(mine.planes['+x']) ? '-x' : '+x';
}
