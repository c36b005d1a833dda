import { SETTING_OUT } from '../materials/index.ts';
import type { Traced } from '../measure/index.ts';
import { axisOf, type Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { planesOf } from './boxes.ts';
import { CAUTION, glueCautions } from './cautions.ts';
import { clampsAlong, clampsThere } from './glue/clamps-needed.ts';
import { markWords } from './mark-words.ts';
import type { PieceDirection, Touch } from './operation.ts';
import { offset } from './seating.ts';
import { glueOf } from './setting-times.ts';
import { tapeLines, tapeOf, trimTape } from './tape-work.ts';
import { directionWords, listWords, looks, sideWords } from './words.ts';

/** A board and the strips that edge it. */
interface Edged {
  readonly board: Part;
  readonly strips: readonly Part[];
}

/** Boards edged alike: one setting, one card. */
type Batch = readonly [Edged, ...Edged[]];

/** Boards edged in one go, and whether strips that are on already are covered by these. */
interface Round {
  readonly stage: EdgingStage;
  readonly covers: boolean;
}

/** When boards are edged: with all others, or once they are cut to their opening. */
type EdgingStage = 'edging' | 'hang';

/** Glues edging to boards and trims it level: to those that are cut already, or to those just cut to their opening. */
export function glueEdging(bench: Bench, boards: readonly Part[], stage: EdgingStage): void {
  const all = edgedOf(bench, boards);
  const first = all.map((e) => ({ ...e, strips: e.strips.filter((s) => !coversOthers(bench, s, e.board)) }));
  const then = all.map((e) => ({ ...e, strips: e.strips.filter((s) => coversOthers(bench, s, e.board)) }));
  for (const [round, edged] of [
    [{ stage, covers: false }, first],
    [{ stage, covers: true }, then],
  ] as const) {
    const batches = batchesOf(
      bench,
      edged.filter((e) => e.strips.length > 0),
    );
    // All are glued first: while the last is clamped up, the first sets.
    for (const batch of batches) for (const wave of inWaves(bench, batch)) glueBatch(bench, wave, round);
    for (const batch of batches) trimBatch(bench, batch, round);
  }
}

/** Strips on boards that are cut to their opening: mitred and glued on when those are. */
export function stripsLater({ setOut }: Bench): readonly Part[] {
  const later = new Set(setOut.parts.filter((p) => p.cutLater).map((p) => p.id));
  const strips = new Set(
    setOut.joints.filter((j) => j.duty === 'edging' && later.has(j.mate)).map((j) => j.part),
  );
  return setOut.parts.filter((p) => strips.has(p.id));
}

function edgedOf({ setOut }: Bench, boards: readonly Part[]): readonly Edged[] {
  const byId = new Map(setOut.parts.map((p) => [p.id, p]));
  const wanted = new Set(boards.map((p) => p.id));
  const strips = new Map<string, Part[]>();
  for (const j of setOut.joints)
    if (j.duty === 'edging' && wanted.has(j.mate))
      strips.set(j.mate, [...(strips.get(j.mate) ?? []), byId.get(j.part)!]);
  return [...strips].map(([id, of]) => ({ board: byId.get(id)!, strips: of }));
}

/** True for tape that runs on over the ends of tape beside it: that must be on, and trimmed, before. */
function coversOthers(bench: Bench, strip: Part, board: Part): boolean {
  if (!tapeOf(bench, strip)) return false;
  const l = bench.ledger;
  const [s, b] = [planesOf(l, strip), planesOf(l, board)];
  return (['start', 'end'] as const).some((end) => {
    const side = looks(strip, end);
    return axisOf(side).sign * (l.ticks(s.planes[side]) - l.ticks(b.planes[side])) > 0;
  });
}

function batchesOf(bench: Bench, all: readonly Edged[]): readonly Batch[] {
  const batches = new Map<string, [Edged, ...Edged[]]>();
  for (const edged of all) {
    const key = asTold(bench, edged);
    const batch = batches.get(key);
    if (batch) batch.push(edged);
    else batches.set(key, [edged]);
  }
  return [...batches.values()];
}

/** Boards that can be in clamps at the same time; the others follow when the clamps are free. */
function inWaves(bench: Bench, batch: Batch): readonly Batch[] {
  if (tapeOf(bench, batch[0].strips[0]!)) return [batch];
  const together = Math.max(1, Math.floor(clampsThere(bench) / Math.max(1, clampsOn(bench, batch[0]))));
  const waves: Batch[] = [];
  for (let i = 0; i < batch.length; i += together)
    waves.push(batch.slice(i, i + together) as unknown as Batch);
  return waves;
}

/** Clamps that hold all strips of a board. */
function clampsOn(bench: Bench, { strips }: Edged): number {
  return strips.reduce((sum, s) => sum + clampsAlong(bench.ledger.ticks(s.length) / 3200), 0);
}

/** All that the cards of a board's edging tell of it but marks: boards of which the same is told are edged in one go. */
function asTold(bench: Bench, { board, strips }: Edged): string {
  const l = bench.ledger;
  const turn = ({ place }: Part) => `${place.length} ${place.width}`;
  const gap = (touch: Touch) => (touch.gap === undefined ? touch.side : [touch.side, l.ticks(touch.gap)]);
  return JSON.stringify([
    turn(board),
    board.hand,
    ...strips.map((strip) => [
      strip.lot,
      turn(strip),
      strip.features.map((f) => (f.kind === 'bevel' ? f.edge : '')),
      gap(endTouch(bench, strip, board)),
      gap(overhangAcross(bench, strip, board)),
      standsOut(bench, strip),
      clampsAlong(l.ticks(strip.length) / 3200),
      bench.clampFor(spanOf(strip, board))?.id,
    ]),
  ]);
}

/** How far apart the jaws of clamps go that hold a strip to its board. */
function spanOf(strip: Part, board: Part): Traced {
  return axisOf(looks(strip, 'show')).axis === axisOf(board.place.width).axis ? board.width : board.length;
}

function glueBatch(bench: Bench, batch: Batch, { stage }: Round): void {
  const [first] = batch;
  first.strips.forEach((strip, i) => {
    const pairs = batch.map((e) => ({ strip: e.strips[i]!.mark, board: e.board.mark }));
    const last = i === first.strips.length - 1;
    glueStrips(bench, first, strip, pairs, stage, last ? clampsOn(bench, first) * batch.length : undefined);
  });
}

function trimBatch(bench: Bench, batch: Batch, round: Round): void {
  const [first] = batch;
  if (tapeOf(bench, first.strips[0]!)) {
    trimTape(bench, batch, trimmedEnds(first.strips.filter((s) => standsOut(bench, s))), round);
    return;
  }
  const boards = batch.map((e) => e.board.mark);
  const ends = trimmedEnds(first.strips.filter((s) => standsOut(bench, s)));
  const routed = bench.tool('router') !== undefined;
  bench.do(
    {
      id: `${boards[0]}/flush`,
      kind: 'flush',
      stage: round.stage,
      title: `Trim the edging of ${markWords(boards)} level`,
      does: {
        act: 'flush',
        workpieces: boards,
        sides: [looks(first.board, 'show'), looks(first.board, 'under'), ...ends],
      },
      ...(routed ? { tool: 'router' as const } : {}),
      times: batch.length * (routed ? 1 : 2),
      faceUp: 'one face up, then the other',
      lines: [
        ...(routed
          ? [
              'When the glue has set: flush-trim bit, bearing on the board, both faces; the last shaving with a block plane or scraper.',
              'The router stands on the strip: clamp a thick board level beside the edge, so that it can’t tip.',
            ]
          : [
              'When the glue has set: block plane, set fine, skewed so that its sole rides on the board and its iron takes only the strip, both faces; stop a shaving short and finish with a scraper.',
              'Pencil lines across the veneer beside the strip: where they go, you are through to the board.',
            ]),
        ...(ends.length
          ? [
              `Saw and plane the ${listWords(ends.map(directionWords))} end${ends.length > 1 ? 's' : ''} level.`,
            ]
          : []),
        'The veneer is thin: no power sanding along the edge.',
      ],
      cautions: [routed ? CAUTION.router : CAUTION.chisel],
    },
    boards,
  );
}

/** The broad face of a board that looks one way, as other cards call it. */
function faceTowards(board: Part, side: PieceDirection): string {
  return sideWords(board, looks(board, 'show') === side ? 'show' : 'under');
}

/** One strip on each board of a batch. */
function glueStrips(
  bench: Bench,
  { board, strips }: Edged,
  strip: Part,
  pairs: readonly { readonly strip: string; readonly board: string }[],
  stage: EdgingStage,
  clamps: number | undefined,
): void {
  const mitred = strip.features.some((f) => f.kind === 'bevel');
  const outer = looks(strip, 'show');
  const proud = overhangAcross(bench, strip, board);
  const end = endTouch(bench, strip, board);
  const touches = [{ side: looks(strip, 'under'), of: 'board', face: outer }, end, proud] as const;
  const lengths: Traced[] = [];
  const lines: string[] = [];
  const each = clampsAlong(bench.ledger.ticks(strip.length) / 3200);
  const there = clampsThere(bench);
  if (pairs.length > 1) lines.push(`${pairs.map((p) => `${p.strip} on ${p.board}`).join(', ')}.`);
  if (mitred) {
    lines.push(
      `Fit it dry first: the mitres must close at the board’s corners. Begin with the ${directionWords(looks(strips[0]!, 'show'))} strip.`,
    );
    if (end.gap !== undefined) {
      lines.push(
        `The tip of its mitre stands {0} beyond the ${directionWords(end.side)} side of the board; then the inner corner lies on the board’s.`,
      );
      lengths.push(end.gap);
    }
  } else if (standsOut(bench, strip)) {
    lengths.push(overEnd(bench));
    lines.push('Let it stand {0} beyond both ends.');
  } else {
    const { gap } = touches[1];
    const start = directionWords(touches[1].side);
    lines.push(
      gap === undefined
        ? `It is cut to length already: its ${start} end level with the board’s.`
        : `It is cut to length already, to end beside the neighbours: its ${start} end {0} in from the board’s.`,
    );
    if (gap !== undefined) lengths.push(bench.ledger.times('the same, as a distance', gap, -1));
  }
  if (proud.gap !== undefined) {
    lines.push(
      `Let it stand {${lengths.length}} proud of the ${faceTowards(board, proud.side)}, and as much or a little more of the other.`,
    );
    lengths.push(proud.gap);
  }
  const tape = tapeOf(bench, strip);
  if (tape) lines.push(...tapeLines(tape));
  else
    lines.push(
      `Glue on the board’s edge, a thin even film; tape along both faces keeps the rest off them. Lying ready: tape, brush, ${glueOf(bench.job.shop.rack.adhesives).kind.cloth}, a batten as long as the strip, and the clamps, opened to size.`,
      `${each > there ? `As many of the ${there} clamps as can be had` : `${each} clamps${pairs.length > 1 ? ' on each' : ''}`}, pads under their jaws at the board, the batten between them and the strip, tape close between.`,
      ...(clamps === undefined ? ['The next strip goes on at once, while this one is in its clamps.'] : []),
    );
  const works = pairs.flatMap((p) => [p.strip, p.board]);
  bench.do(
    {
      id: `${strip.mark}/edge`,
      kind: tape ? 'iron' : 'edge',
      stage,
      title: `${tape ? 'Iron' : 'Glue'} ${markWords(pairs.map((p) => p.strip))} ${tape ? 'on' : 'to'} the ${directionWords(outer)} edge of ${pairs.length > 1 ? markWords(pairs.map((p) => p.board)) : `${board.mark} (${board.name})`}`,
      does: {
        act: 'edge',
        pairs,
        turn: { length: strip.place.length, width: strip.place.width },
        boardTurn: { length: board.place.length, width: board.place.width },
        touches,
      },
      times: pairs.length,
      ...(tape
        ? {}
        : {
            tool: 'clamp' as const,
            spans: spanOf(strip, board),
            ...(clamps === undefined ? {} : { clamps }),
            together: { name: `${board.mark}/edging`, last: clamps !== undefined },
          }),
      lines,
      lengths,
      cautions: tape ? [CAUTION.iron] : glueCautions(bench),
    },
    works,
  );
}

/** True when a strip is cut longer than it ends up, and trimmed once it is on. */
function standsOut(bench: Bench, strip: Part): boolean {
  const l = bench.ledger;
  return strip.rough !== undefined && l.ticks(strip.rough.length) > l.ticks(strip.length);
}

/** Where a strip comes along its length: its tip at the drawn place, or an equal overhang at both ends. */
function endTouch(bench: Bench, strip: Part, board: Part): Touch {
  const l = bench.ledger;
  const bevels = strip.features.filter((f) => f.kind === 'bevel');
  const start = looks(strip, 'start');
  const [s, b] = [planesOf(l, strip), planesOf(l, board)];
  const tip = bevels.some((f) => f.edge === 'start')
    ? start
    : bevels.length > 0
      ? looks(strip, 'end')
      : undefined;
  if (tip === undefined && !standsOut(bench, strip)) return { ...offset(bench, s, start, b), of: 'board' };
  if (tip !== undefined) return { ...offset(bench, s, tip, b), of: 'board' };
  return { side: start, of: 'board', face: start, gap: overEnd(bench) };
}

/** How far a strip stands beyond the end it is set by; what it is too long by more stands beyond the other. */
function overEnd(bench: Bench): Traced {
  return bench.set('marking', bench.ledger.row(SETTING_OUT.edgingAllowance), 'down');
}

/** A strip wider than its board stands out equally on both faces. */
function overhangAcross(bench: Bench, strip: Part, board: Part): Touch {
  const l = bench.ledger;
  const side = looks(strip, 'near');
  const more = l.less('how much wider the strip is', strip.rough?.width ?? strip.width, board.thickness);
  if (l.ticks(more) <= 0) return { side, of: 'board', face: side };
  const gap = l.ratio('half of it on either face', more, SETTING_OUT.half);
  return { side, of: 'board', face: side, gap: bench.set('marking', gap, 'down') };
}

/** The ends that are trimmed after gluing: those of strips without a mitre there. */
function trimmedEnds(strips: readonly Part[]): readonly PieceDirection[] {
  const ends = new Set<PieceDirection>();
  for (const strip of strips)
    for (const edge of ['start', 'end'] as const)
      if (!strip.features.some((f) => f.kind === 'bevel' && f.edge === edge)) ends.add(looks(strip, edge));
  return [...ends];
}
