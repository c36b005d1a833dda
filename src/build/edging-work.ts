import { SETTING_OUT } from '../materials/index.ts';
import type { Traced } from '../measure/index.ts';
import type { Joint, Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { planesOf } from './boxes.ts';
import { CAUTION } from './cautions.ts';
import type { PieceDirection, Touch } from './operation.ts';
import { offset } from './seating.ts';
import { directionWords, looks } from './words.ts';

/** Glues solid edging to its boards and trims it level. */
export function glueEdging(bench: Bench): void {
  const strips = bench.setOut.joints.filter((j) => j.duty === 'edging');
  const byBoard = new Map<string, Joint[]>();
  for (const j of strips) {
    const list = byBoard.get(j.mate);
    if (list) list.push(j);
    else byBoard.set(j.mate, [j]);
  }
  for (const [id, joints] of byBoard)
    edgeBoard(
      bench,
      partById(bench, id),
      joints.map((j) => partById(bench, j.part)),
    );
}

function edgeBoard(bench: Bench, board: Part, strips: readonly Part[]): void {
  const l = bench.ledger;
  for (const strip of strips) {
    const mitred = strip.features.some((f) => f.kind === 'bevel');
    const id = `${strip.mark}/edge`;
    const outer = looks(strip, 'show');
    const touches = [
      { side: looks(strip, 'under'), of: board.mark, face: outer } satisfies Touch,
      endTouch(bench, strip, board),
      overhangAcross(bench, strip, board),
    ] as const;
    const proud = touches[2].gap;
    bench.do(
      {
        id,
        kind: 'edge',
        stage: 'edging',
        title: `Glue ${strip.mark} to the ${directionWords(outer)} edge of ${board.mark}, the ${board.name}`,
        does: {
          act: 'set',
          workpiece: strip.mark,
          into: board.mark,
          turn: { length: strip.place.length, width: strip.place.width },
          touches,
          glue: true,
          hostTurn: { length: board.place.length, width: board.place.width },
        },
        tool: 'clamp',
        lines: [
          mitred
            ? 'Fit it dry first: the mitres must close at the board’s corners. Begin with the front strip.'
            : `Let it stand {${proud === undefined ? 0 : 1}} beyond both ends${proud === undefined ? '' : ', and {0} proud of both faces'}.`,
          'Glue on the board’s edge, a thin even film. Hold with tape and clamps, a batten under the clamps so as not to mark the strip.',
        ],
        lengths: mitred ? [] : [...(proud === undefined ? [] : [proud]), l.row(SETTING_OUT.edgingAllowance)],
        cautions: [CAUTION.glue],
      },
      [strip.mark, board.mark],
    );
  }
  const ends = trimmedEnds(strips);
  const faces: readonly PieceDirection[] = [looks(board, 'show'), looks(board, 'under')];
  bench.do(
    {
      id: `${board.mark}/flush`,
      kind: 'flush',
      stage: 'edging',
      title: `Trim the edging of ${board.mark} level`,
      does: {
        act: 'flush',
        workpiece: board.mark,
        to: board.mark,
        sides: [...faces, ...ends],
        into: board.mark,
      },
      tool: 'router',
      faceUp: 'either face, then the other',
      lines: [
        'When the glue has set: flush-trim bit, bearing on the board, both faces; leave the last tenth for a block plane or scraper.',
        ...(ends.length
          ? [`Saw and plane the ${ends.map((d) => directionWords(d)).join(' and ')} ends level.`]
          : []),
        'The veneer is thin: no power sanding along the edge.',
      ],
      cautions: [CAUTION.router],
    },
    [board.mark],
  );
}

/** Where a strip comes along its length: its tip at the drawn place, or an equal overhang at both ends. */
function endTouch(bench: Bench, strip: Part, board: Part): Touch {
  const l = bench.ledger;
  const bevels = strip.features.filter((f) => f.kind === 'bevel');
  const start = looks(strip, 'start');
  const end = looks(strip, 'end');
  const [s, b] = [planesOf(l, strip), planesOf(l, board)];
  if (bevels.some((f) => f.edge === 'start')) return offset(bench, s, start, b);
  if (bevels.some((f) => f.edge === 'end')) return offset(bench, s, end, b);
  return { side: start, of: board.mark, face: start, gap: l.row(SETTING_OUT.edgingAllowance) };
}

/** A strip wider than its board stands out equally on both faces. */
function overhangAcross(bench: Bench, strip: Part, board: Part): Touch {
  const l = bench.ledger;
  const side = looks(strip, 'near');
  const more = l.less('how much wider the strip is', strip.rough?.width ?? strip.width, board.thickness);
  if (l.ticks(more) === 0) return { side, of: board.mark, face: side };
  const gap: Traced = bench.ledger.ratio('half of it on either face', more, SETTING_OUT.half);
  return { side, of: board.mark, face: side, gap: bench.set('marking', gap, 'down') };
}

/** The ends that are trimmed after gluing: those of strips without a mitre there. */
function trimmedEnds(strips: readonly Part[]): readonly PieceDirection[] {
  const ends = new Set<PieceDirection>();
  for (const strip of strips)
    for (const edge of ['start', 'end'] as const)
      if (!strip.features.some((f) => f.kind === 'bevel' && f.edge === edge)) ends.add(looks(strip, edge));
  return [...ends];
}

function partById(bench: Bench, id: string): Part {
  return bench.setOut.parts.find((p) => p.id === id)!;
}
