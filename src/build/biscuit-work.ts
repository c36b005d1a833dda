import type { Traced } from '../measure/index.ts';
import type { BiscuitSlot, Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { CAUTION } from './cautions.ts';
import { squaredLines } from './dowel-work.ts';
import { fromEdge, placeholders, strokesAlong } from './hole-places.ts';
import { markWords } from './mark-words.ts';
import type { WorkEdge, WorkSide } from './operation.ts';
import { listWords, referenceFor, sideWords } from './words.ts';

/** Cuts slots for biscuits with the joiner, side by side of parts that are worked alike. */
export function biscuitSlots(bench: Bench, batch: readonly [Part, ...Part[]]): void {
  const rows = new Map<string, [BiscuitSlot, ...BiscuitSlot[]]>();
  for (const f of batch[0].features)
    if (f.kind === 'biscuit-slot') {
      const key = `${f.side} ${bench.ledger.ticks(f.depth)}`;
      const row = rows.get(key);
      if (row) row.push(f);
      else rows.set(key, [f]);
    }
  const seen = new Map<WorkSide, number>();
  for (const row of rows.values()) {
    const { side } = row[0];
    // Slots of another depth on the same side are a card of their own.
    const n = (seen.get(side) ?? 0) + 1;
    seen.set(side, n);
    const suffix = n === 1 ? '' : `-${n}`;
    if (row[0].slopeFrom) onSlope(bench, batch, row, side as WorkEdge, row[0].slopeFrom);
    else if (side === 'show' || side === 'under') inFace(bench, batch, row, side, suffix);
    else inEnd(bench, batch, row, side, suffix);
  }
}

const STROKES = 'Strokes are enough along a slot: a biscuit leaves some play that way, and none across.';

function inEnd(
  bench: Bench,
  batch: readonly [Part, ...Part[]],
  row: readonly BiscuitSlot[],
  edge: WorkEdge,
  suffix: string,
): void {
  const [part] = batch;
  const { from, along } = strokesAlong(bench, part, edge, row);
  const first = row[0]!;
  const middle = first.at[1];
  const n = along.length;
  cut(bench, batch, first, {
    side: edge,
    from,
    at: along.map((a) => [a, middle] as const),
    times: n,
    suffix,
    faceUp: `${sideWords(part, 'under')} down on the bench, the ${sideWords(part, edge)} over its front`,
    reference: `the ${sideWords(part, from)}`,
    lines: [
      `Strokes on the upper face at the ${sideWords(part, edge)}: ${placeholders(n)} from the ${sideWords(part, from)}.`,
      `Fence set so that the cutter runs in the middle of the thickness, {${n}} from the ${sideWords(part, 'under')}.`,
    ],
    lengths: [...along, middle],
  });
}

/** In a mitre, square to its slope and near the inner face, where there is most wood behind. */
function onSlope(
  bench: Bench,
  batch: readonly [Part, ...Part[]],
  row: readonly BiscuitSlot[],
  edge: WorkEdge,
  inner: 'show' | 'under',
): void {
  const [part] = batch;
  const { from, along } = strokesAlong(bench, part, edge, row);
  const first = row[0]!;
  const down = bench.set('biscuit-joiner', first.at[1]);
  const n = along.length;
  cut(bench, batch, first, {
    side: edge,
    from,
    at: along.map((a) => [a, down] as const),
    times: n,
    suffix: '',
    faceUp: `${sideWords(part, inner)} up, the ${sideWords(part, edge)} over the front of the bench`,
    reference: `the ${sideWords(part, from)}`,
    lines: [
      `Strokes on the ${sideWords(part, inner)} at the ${sideWords(part, edge)}: ${placeholders(n)} from the ${sideWords(part, from)}.`,
      `Fence flat on the ${sideWords(part, inner)}, the joiner’s nose on the slope, and the fence opened to the angle of the inner edge, 135 degrees: then the cutter goes in square to the slope. Its middle comes {${n}} down the slope from the inner edge.`,
      'Further down, the slot would come through the outer face: plunge into an offcut with the same mitre first.',
    ],
    lengths: [...along, down],
  });
}

function inFace(
  bench: Bench,
  batch: readonly [Part, ...Part[]],
  row: readonly BiscuitSlot[],
  face: 'show' | 'under',
  suffix: string,
): void {
  const [part] = batch;
  const ref = referenceFor(part, 'near');
  const side = referenceFor(part, 'start');
  const at = row.map((s) => ({
    along: bench.set('marking', fromEdge(bench, part, 'near', s.at[0], ref.turned)),
    across: bench.set('marking', fromEdge(bench, part, 'start', s.at[1], side.turned)),
  }));
  const lengths: Traced[] = [];
  const print = (all: readonly Traced[]) => listWords(all.map((t) => `{${lengths.push(t) - 1}}`));
  const lines = squaredLines(bench, at).map(({ line, places }) => {
    const many = line.length > 1;
    return `${many ? 'Lines' : 'A line'} squared across ${print(line)} from the ${sideWords(part, ref.from)}: on ${many ? 'each' : 'it'} strokes at ${print(places)} from the ${sideWords(part, side.from)}.`;
  });
  cut(bench, batch, row[0]!, {
    side: face,
    from: ref.from,
    ...(side.turned ? { acrossFrom: 'far' as const } : {}),
    at: at.map((a) => [a.along, a.across] as const),
    times: row.length,
    suffix,
    faceUp: `${sideWords(part, face)} up`,
    reference: `the ${sideWords(part, ref.from)} and the ${sideWords(part, side.from)}`,
    lines: [
      ...lines,
      'The joiner stands on its nose, its base against a batten clamped so that the cutter’s middle comes on the line; test that on an offcut.',
    ],
    lengths,
  });
}

function cut(
  bench: Bench,
  batch: readonly [Part, ...Part[]],
  slot: BiscuitSlot,
  on: {
    readonly side: WorkSide;
    readonly from: WorkEdge;
    readonly acrossFrom?: 'far';
    readonly at: readonly (readonly [Traced, Traced])[];
    readonly times: number;
    readonly suffix: string;
    readonly faceUp: string;
    readonly reference: string;
    readonly lines: readonly string[];
    readonly lengths: readonly Traced[];
  },
): void {
  const [part] = batch;
  const marks = batch.map((p) => p.mark);
  const n = on.lengths.length;
  const depth = bench.set('biscuit-joiner', slot.depth, 'up');
  const { side, from, at, acrossFrom } = on;
  bench.do(
    {
      id: `${part.mark}/biscuit-${side}${on.suffix}`,
      kind: 'biscuit-slot',
      stage: 'machine',
      title: `Slots for biscuits in the ${sideWords(part, side)} of ${batch.length === 1 ? `${part.mark} (${part.name})` : markWords(marks)}`,
      does: {
        act: 'biscuit-slot',
        workpieces: marks,
        side,
        run: slot.run,
        ...(slot.slopeFrom ? { slopeFrom: slot.slopeFrom } : {}),
        from,
        ...(acrossFrom ? { acrossFrom } : {}),
        at,
        depth,
        kerf: slot.kerf,
        cutter: slot.cutter,
      },
      tool: 'biscuit-joiner',
      times: batch.length * on.times,
      faceUp: on.faceUp,
      reference: on.reference,
      lines: [
        ...on.lines,
        `Depth {${n}}: half a biscuit and a little for glue. The cutter, {${n + 1}} across, leaves slots {${n + 2}} wide.`,
        STROKES,
      ],
      lengths: [...on.lengths, depth, slot.cutter, slot.kerf],
      cautions: [CAUTION.joiner, CAUTION.dust],
    },
    marks,
  );
}
