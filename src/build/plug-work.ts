import type { Traced } from '../measure/index.ts';
import { type Fastener, type Hole, opposite, type Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { CAUTION, glueCautions } from './cautions.ts';
import { stand } from './turning.ts';
import { looks, sideWords } from './words.ts';

/** Covers the sunk heads of screws with plugs, once all screws are in and the case stands: from the front every face can be reached. */
export function plugScrews(bench: Bench): void {
  for (const part of bench.setOut.parts)
    for (const side of ['show', 'under'] as const) {
      const sunk = part.features.filter(
        (f): f is Hole => f.kind === 'hole' && f.side === side && f.counterbore !== undefined,
      );
      if (sunk.length === 0) continue;
      stand(bench, 'assemble');
      plugFace(bench, part, side, sunk);
    }
}

function plugFace(bench: Bench, part: Part, side: 'show' | 'under', sunk: readonly Hole[]): void {
  const into = opposite(looks(part, side));
  const plugs = new Map<string, { count: number; readonly diameter: Traced }>();
  for (const f of bench.setOut.fasteners) {
    if (f.plug === undefined || f.through[0] !== part.id || f.direction !== into) continue;
    const known = plugs.get(f.plug);
    if (known) known.count++;
    else plugs.set(f.plug, { count: 1, diameter: holeOf(f, sunk).counterbore!.diameter });
  }
  for (const [id, { count, diameter }] of plugs) {
    const fixing = bench.job.shop.rack.fixings?.find((f) => f.id === id);
    bench.do(
      {
        id: `${part.mark}/plug-${side}-${id}`,
        kind: 'plug',
        stage: 'assemble',
        title: `Plug the screw holes in the ${sideWords(part, side)} of ${part.mark} (${part.name})`,
        does: { act: 'plug', workpiece: part.mark, into: 'case', side, plug: id, diameter, count },
        times: count,
        lines: [
          `${count} × ${fixing?.name ?? id}, {0} wide. Glue in the hole, not on the plug; its grain along the grain of ${part.mark}. Tap it home with a mallet.`,
          'When the glue has set, saw it off just above the face, a thin card under the saw; then pare and sand it flush, along the grain.',
        ],
        lengths: [diameter],
        cautions: [...glueCautions(bench), CAUTION.chisel],
      },
      [part.mark, 'case'],
    );
  }
}

/** The hole of a screw: the two are called after one joint, and counted alike. */
function holeOf({ id, through }: Fastener, holes: readonly Hole[]): Hole {
  const n = id.slice(id.lastIndexOf(':'));
  return holes.find((h) => h.id === `${through[0]}#${through[1]}${n}`)!;
}
