import type { Joint } from '../../setting-out/index.ts';
import type { Bench } from '../bench.ts';
import { sideWords } from '../words.ts';

/** The screws of a drawer's joint: in the pockets of an end, through a side into an end, or from inside into the front. */
export function hangingScrews(
  bench: Bench,
  joint: Joint,
  into: string,
  stage: 'fill' | 'hang' = 'fill',
): void {
  const fasteners = joint.fasteners.map((id) => bench.setOut.fasteners.find((f) => f.id === id)!);
  const first = fasteners[0];
  if (!first) return;
  const [part, mate] = [joint.part, joint.mate].map(
    (id) => bench.setOut.parts.find((p) => p.id === id)!,
  ) as never as [import('../../setting-out/index.ts').Part, import('../../setting-out/index.ts').Part];
  const pockets = joint.hold === 'pocket-screws';
  const side = pockets ? joint.side : joint.side === 'show' ? 'under' : 'show';
  const screw = bench.job.shop.rack.screws.find((s) => s.id === first.screw)!;
  bench.do(
    {
      id: `${part.mark}/screw-${mate.mark}`,
      kind: 'screw',
      stage,
      title: `Screw ${part.mark} to ${mate.mark}`,
      does: {
        act: 'screw',
        workpiece: part.mark,
        into,
        mate: mate.mark,
        by: pockets ? 'pockets' : 'holes',
        side,
        screw: first.screw,
        length: first.length,
        diameter: first.diameter,
        count: fasteners.length,
      },
      tool: 'drill',
      times: fasteners.length,
      lines: [
        `${fasteners.length} × ${screw.name ?? screw.id}, {1} × {0}, ${pockets ? `in the pockets at its ${sideWords(part, side)}` : `through its holes into the pilots of ${mate.mark}`}.`,
        'Low clutch setting, the last turns by hand: heads just level.',
      ],
      lengths: [first.length, first.diameter],
    },
    [part.mark, mate.mark, into],
  );
}
