import type { SetOut } from '../../src/setting-out/index.ts';
import { boxOf } from './judge-set-out.ts';

// A judge of lids and fixed fronts: its own arithmetic, in ticks of 1/3200 mm.

const MM = 3200;

/** Everything that is wrong with the lids of a set-out piece. */
export function lidFaults(setOut: SetOut): string[] {
  const t = (x: SetOut['lids'][number]['gap']) => setOut.ledger.ticks(x);
  const box = (id: string) => boxOf(setOut, setOut.parts.find((p) => p.id === id)!);
  return setOut.lids.flatMap((lid) => {
    const faults: string[] = [];
    const [board, back] = [box(lid.part), box(lid.back)];
    if (board.max[1] !== back.max[1]) faults.push('is not level with the back behind');
    if (setOut.joints.some((j) => j.mate === lid.part && j.hold !== 'glue')) faults.push('is screwed down');
    const sides = setOut.parts.filter((p) => p.hand !== 'none').map((p) => box(p.id));
    for (const side of sides) if (side.max[2] !== board.min[2]) faults.push('does not lie on the sides');
    const front = setOut.parts.find((p) => p.role === 'front');
    if (front) {
      const [f, inner] = [box(front.id), [sides[0]!.max[0], sides[1]!.min[0]]];
      if (board.min[2] - f.max[2] !== t(lid.gap)) faults.push('leaves another gap than it says');
      if (f.min[0] !== inner[0] || f.max[0] !== inner[1])
        faults.push('has a front that is not between the sides');
      for (const p of setOut.parts)
        if (p !== front && p.role !== 'bottom' && p.hand === 'none' && overlap(f, box(p.id)))
          faults.push(`has ${p.id} in its front`);
    }
    const places = lid.hinges.map(t);
    const long = back.max[0] - back.min[0];
    if (places.length < 2) faults.push('hangs on one hinge');
    places.forEach((at, i) => {
      if (at - t(lid.leaf.length) / 2 < 0 || at + t(lid.leaf.length) / 2 > long)
        faults.push('has a hinge off its back');
      if (i > 0 && at - places[i - 1]! < t(lid.leaf.length)) faults.push('has two hinges in one place');
    });
    if (t(lid.leaf.width) > back.max[1] - back.min[1]) faults.push('has hinges wider than its back');
    if (t(lid.screwLength) + 3 * MM > board.max[2] - board.min[2])
      faults.push('has screws that come through');
    if (lid.stays && lid.stays.holdNm < lid.momentNm) faults.push('is too heavy for its stays');
    return faults.map((what) => `${lid.part} ${what}`);
  });
}

type Box = ReturnType<typeof boxOf>;

function overlap(a: Box, b: Box): boolean {
  return [0, 1, 2].every((k) => a.min[k]! < b.max[k]! && b.min[k]! < a.max[k]!);
}
