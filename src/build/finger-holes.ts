import type { Traced } from '../measure/index.ts';
import type { Hole, Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { CAUTION } from './cautions.ts';
import { referenceFor, sideWords } from './words.ts';

/** Recesses that sliding doors are pushed by: one Forstner bit, each from the edge that it is nearer to. */
export function fingerHoles(bench: Bench, batch: readonly [Part, ...Part[]], row: readonly Hole[]): void {
  const [part] = batch;
  const l = bench.ledger;
  const marks = batch.map((p) => p.mark);
  const ref = referenceFor(part, 'near');
  for (const [i, hole] of row.entries()) {
    const face = hole.side as 'show' | 'under';
    const low = 2 * l.ticks(hole.at[1]) < l.ticks(part.width);
    const along = ref.turned ? l.less('the same from the other end', part.length, hole.at[0]) : hole.at[0];
    const across = low ? hole.at[1] : l.less('the same from the other edge', part.width, hole.at[1]);
    const at = [bench.set('marking', along), bench.set('marking', across)] as const;
    const depth = hole.depth === undefined ? undefined : bench.set('drill', hole.depth, 'down');
    const edge = sideWords(part, low ? 'near' : 'far');
    bench.settings.push({
      id: `${part.mark}/drill-${face}-finger${i === 0 ? '' : `-${i + 1}`}`,
      kind: 'drill',
      what: 'Finger hole in',
      parts: batch,
      does: {
        act: 'drill',
        workpieces: marks,
        side: face,
        from: ref.from,
        ...(low ? {} : { acrossFrom: 'far' as const }),
        at: [at],
        diameter: hole.diameter,
        ...(depth === undefined ? {} : { depth }),
        bit: 'forstner',
        open: true,
      },
      tool: 'drill',
      times: 3,
      faceUp: `${sideWords(part, face)} up${depth === undefined ? ', a waste board clamped tight under it' : ''}`,
      reference: `the ${sideWords(part, ref.from)} and the ${edge}`,
      lines: [
        isMiddle(bench, part, at[0])
          ? `Middle: mark {0} from both ends and halve what is between the strokes; {1} from the ${edge}.`
          : `Middle {0} from the ${sideWords(part, ref.from)} and {1} from the ${edge}.`,
        depth === undefined
          ? 'Forstner bit of {2}, slowly, through into the waste board.'
          : 'Forstner bit of {2}, {3} deep and no deeper: try it on an offcut of the same board, and set the stop by that.',
        'Ease the rim with sandpaper round a finger.',
      ],
      lengths: [...at, hole.diameter, ...(depth === undefined ? [] : [depth])],
      cautions: [CAUTION.drill],
    });
  }
}

/** Is a place half way along the part, as far as it can be marked? Then it is halved rather than measured. */
function isMiddle(bench: Bench, part: Part, along: Traced): boolean {
  const t = (x: Traced) => bench.ledger.ticks(x);
  return Math.abs(2 * t(along) - t(part.length)) <= t(bench.finest('marking'));
}
