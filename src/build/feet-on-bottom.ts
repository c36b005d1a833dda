import type { Traced } from '../measure/index.ts';
import type { Joint, Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { planesOf } from './boxes.ts';
import { glueCautions } from './cautions.ts';
import { driveScrews } from './drive-screws.ts';
import type { Touch } from './operation.ts';
import { offset } from './seating.ts';
import { touchesTold } from './touch-words.ts';
import { listWords, sideWords } from './words.ts';

/** The joints of feet that go under their bottom before anything stands on it. */
export function earlyFeet(bench: Bench): readonly Joint[] {
  return bench.setOut.joints.filter((j) => j.duty === 'foot' && j.loose);
}

/** Glues and screws feet under bottoms that lie loose on the bench, where a driver reaches every screw. */
export function feetOnBottoms(bench: Bench): void {
  const joints = earlyFeet(bench);
  const part = (id: string) => bench.setOut.parts.find((p) => p.id === id)!;
  for (const joint of joints) footOn(bench, joint, part(joint.mate), part(joint.part));
  for (const bottom of new Set(joints.map((j) => part(j.part)))) {
    const feet = joints.filter((j) => j.part === bottom.id).map((j) => part(j.mate).mark);
    if (joints.every((j) => j.part !== bottom.id || j.hold !== 'glue-and-screws')) continue;
    bench.do(
      {
        id: `${bottom.mark}/feet-cure`,
        kind: 'cure',
        stage: 'edging',
        title: `Let ${listWords(feet)} set under ${bottom.mark}`,
        does: { act: 'other', on: [bottom.mark] },
        lines: ['The screws hold them meanwhile: no clamp is needed.'],
        cautions: glueCautions(bench),
      },
      [bottom.mark],
    );
  }
}

function footOn(bench: Bench, joint: Joint, foot: Part, bottom: Part): void {
  const [mine, other] = [planesOf(bench.ledger, foot), planesOf(bench.ledger, bottom)];
  const touches: readonly [Touch, Touch, Touch] = [
    { side: '+z', of: bottom.mark, face: '-z' },
    offset(bench, mine, '-x', other),
    offset(bench, mine, '-y', other),
  ];
  const lengths: Traced[] = [];
  const glued = joint.hold === 'glue-and-screws';
  const told = listWords(touchesTold(bench, touches, lengths, foot));
  bench.do(
    {
      id: `${foot.mark}/set`,
      kind: 'assemble',
      stage: 'edging',
      title: `Put ${foot.mark} (${foot.name}) under ${bottom.mark} (${bottom.name})`,
      does: {
        act: 'edge',
        pairs: [{ strip: foot.mark, board: bottom.mark }],
        turn: { length: foot.place.length, width: foot.place.width },
        boardTurn: { length: bottom.place.length, width: bottom.place.width },
        touches: touches.map((t) => ({ ...t, of: 'board' })) as never,
      },
      tool: 'clamp',
      lines: [
        `${bottom.mark} lies loose with its ${sideWords(bottom, 'under')} up, its front edge towards you: what will be its left side is on your right.`,
        `Where it comes, as it will stand: ${told}. Mark that on ${bottom.mark}.`,
        `${glued ? `A film of glue on the upper edge of ${foot.mark}. ` : ''}Clamp it there at both ends: its pilots lie under the holes of ${bottom.mark}. The screws go in from the other face.`,
      ],
      lengths,
      ...(glued ? { cautions: glueCautions(bench) } : {}),
    },
    [foot.mark, bottom.mark],
  );
  driveScrews(bench, bottom.mark, joint, 'edging');
}
