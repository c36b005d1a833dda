import type { Traced } from '../measure/index.ts';
import type { Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { glueEdging, stripsLater } from './edging-work.ts';
import { fixHandles } from './handles.ts';
import { machineParts } from './part-work.ts';
import { underRail } from './rail.ts';
import { cutCaution } from './saw-cut.ts';
import { BY_HAND, isTooSmall } from './too-small.ts';
import { looks, sideWords } from './words.ts';

/**
 * Cuts doors to the openings that were measured, then works what is bored and cut into them and puts their handles on: places are measured from
 * sides that are final.
 */
export function cutToOpenings(bench: Bench, parts: readonly Part[]): void {
  const ids = new Set(parts.map((p) => p.id));
  for (const part of parts)
    for (const across of ['width', 'length'] as const) {
      const to = part.fitted?.[across];
      if (to !== undefined && bench.ledger.ticks(to) < bench.ledger.ticks(part.cut[across]))
        cutDown(bench, part, across, to);
    }
  machineParts(bench, parts, 'hang');
  machineParts(
    bench,
    stripsLater(bench).filter((s) => bench.setOut.joints.some((j) => j.part === s.id && ids.has(j.mate))),
    'hang',
  );
  glueEdging(bench, parts, 'hang');
  fixHandles(bench, parts, 'hang');
}

function cutDown(bench: Bench, part: Part, across: 'length' | 'width', to: Traced): void {
  const [from, other] = across === 'length' ? (['start', 'end'] as const) : (['near', 'far'] as const);
  const height = looks(part, from) === '-z';
  const near = sideWords(part, from);
  // It is cut to its width first.
  const width = across === 'length' ? (part.fitted?.width ?? part.cut.width) : part.cut.width;
  const byHand = isTooSmall(bench, 'circular-saw', {
    of: { length: part.cut.length, width },
    across,
    at: to,
  });
  const ease = 'Ease the fresh edge by hand with 220, no more than a stroke or two.';
  bench.do(
    {
      id: `${part.mark}/cut-${across}`,
      kind: across === 'length' ? 'crosscut' : 'rip',
      stage: 'hang',
      title: `Cut ${part.mark} (${part.name}) to the ${height ? 'height' : 'width'} of its opening`,
      does: {
        act: 'saw',
        workpiece: part.mark,
        across,
        at: to,
        keep: 'before',
        yields: [{ name: part.mark, turned: false }, undefined],
      },
      ...(byHand ? {} : { tool: 'circular-saw' as const }),
      faceUp: byHand ? 'better face up' : 'better face down',
      reference: `the ${near}`,
      lines: [
        `Mark {0} from the ${near}, near both ${across === 'length' ? 'edges' : 'ends'}: so by the drawing. What you measured comes first.`,
        ...(byHand
          ? [`The ${sideWords(part, other)} comes off: score the line round with a knife.`, ...BY_HAND, ease]
          : [
              'Tape across the upper face, and mark on the tape: the line is seen, and the veneer tears less.',
              `Lay the rail on the door, its edge on both marks, and cut off the ${sideWords(part, other)}; a board of its thickness beneath the rail’s far end.`,
              ...(underRail(bench, to)
                ? [
                    'The door is narrower than the rail: a board of the same thickness close beside it, both fixed down.',
                  ]
                : []),
              ease,
            ]),
      ],
      lengths: [to],
      cautions: [cutCaution('circular-saw', { byHand, tape: false })],
    },
    [part.mark, 'case'],
  );
}
