import { SETTING_OUT } from '../materials/index.ts';
import type { Traced } from '../measure/index.ts';
import type { Bevel, Hole, Part, Pocket, Rabbet } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { CAUTION } from './cautions.ts';
import { layOut } from './lay-out.ts';
import type { WorkEdge } from './operation.ts';
import { listWords, referenceFor, sideWords } from './words.ts';

/** Parts that are worked alike: same sizes, same features, same way round in the piece. */
type Batch = readonly [Part, ...Part[]];

const SLENDER_MITRE =
  'So slender a strip is better cut in a mitre box with a fine handsaw, to the same marks; with the circular saw, only clamped between two boards of its own thickness.';

/** Everything that is cut or bored into blanks before they are put together. */
export function machineParts(bench: Bench): void {
  layOut(bench);
  // One setting after the other, not one part after the other; mitres first, for places are measured from their tips.
  for (const work of [bevels, rabbets, pockets, holes])
    for (const batch of batches(bench)) work(bench, batch);
}

/** Parts worked at one setting. */
function batches(bench: Bench): readonly Batch[] {
  const found = new Map<string, [Part, ...Part[]]>();
  for (const part of bench.setOut.parts) {
    if (part.features.length === 0) continue;
    const key = workKey(bench, part);
    const batch = found.get(key);
    if (batch) batch.push(part);
    else found.set(key, [part]);
  }
  return [...found.values()];
}

function workKey(bench: Bench, part: Part): string {
  const plain = JSON.stringify(part.features, (key, value) =>
    key === 'id' || key === 'purpose'
      ? undefined
      : typeof value === 'number' && key !== 'angle'
        ? bench.ledger.ticks(value as Traced)
        : value,
  );
  const t = (x: Traced) => bench.ledger.ticks(x);
  return [part.lot, t(part.length), t(part.width), part.place.length, part.place.width, plain].join(' ');
}

function marksOf(batch: Batch): string[] {
  return batch.map((p) => p.mark);
}

function named(batch: Batch): string {
  const [first] = batch;
  return batch.length === 1 ? `${first.mark} (${first.name})` : listWords(marksOf(batch));
}

function bevels(bench: Bench, batch: Batch): void {
  const [part] = batch;
  const l = bench.ledger;
  const cuts = part.features.filter((f): f is Bevel => f.kind === 'bevel');
  // The start is cut first, and the end measured from its tip.
  const inOrder = [...cuts.filter((c) => c.edge === 'start'), ...cuts.filter((c) => c.edge === 'end')];
  const allowance = l.row(SETTING_OUT.mitreAllowance);
  for (const c of inOrder) {
    const startDone = cuts.some((o) => o.edge === 'start');
    const at =
      c.edge === 'start'
        ? bench.set('circular-saw', allowance)
        : startDone
          ? bench.set('circular-saw', part.length)
          : bench.set('circular-saw', l.sum('square end to the tip of the mitre', part.length, allowance));
    const far = c.edge === 'end';
    bench.do(
      {
        id: `${part.mark}/bevel-${c.edge}`,
        kind: 'bevel',
        stage: 'machine',
        title: `Mitre the ${sideWords(part, c.edge)} of ${named(batch)}`,
        does: {
          act: 'bevel',
          workpieces: marksOf(batch),
          edge: c.edge,
          at,
          angle: c.angle,
          fullFace: c.fullFace,
        },
        tool: bench.tool('circular-saw') || !bench.tool('mitre-saw') ? 'circular-saw' : 'mitre-saw',
        times: batch.length,
        faceUp: `${sideWords(part, c.fullFace)} up; it keeps the full length`,
        reference: far ? (startDone ? 'the tip of the first mitre' : 'the square end') : 'the sawn end',
        lines: [
          ...(part.form === 'strip' ? [SLENDER_MITRE] : []),
          `Blade tilted to ${c.angle} degrees; prove it on an offcut: two cuts together must make a right angle.`,
          far
            ? `Mark {0} from ${startDone ? 'the tip of the first mitre' : `the ${sideWords(part, 'start')}`} on the upper face: this is the long point.`
            : `Mark {0} from the sawn end on the upper face, only to clean it up: this is the long point.`,
          'Lay a strip of the same thickness beside it to carry the rail, and cut so that the slope runs in under the part.',
        ],
        lengths: [at],
        cautions: [CAUTION.bevel],
      },
      marksOf(batch),
    );
  }
}

function rabbets(bench: Bench, batch: Batch): void {
  const [part] = batch;
  for (const r of part.features.filter((f): f is Rabbet => f.kind === 'rabbet')) {
    const width = bench.set('router', r.width);
    const depth = bench.set('router', r.depth);
    bench.do(
      {
        id: `${part.mark}/rabbet-${r.edge}`,
        kind: 'rabbet',
        stage: 'machine',
        title: `Rabbet the ${sideWords(part, r.edge)} of ${named(batch)}, ${r.purpose}`,
        does: { act: 'rabbet', workpieces: marksOf(batch), edge: r.edge, face: r.face, width, depth },
        tool: 'router',
        times: batch.length,
        faceUp: `${sideWords(part, r.face)} up`,
        reference: `the ${sideWords(part, r.edge)}`,
        lines: [
          `Straight bit, edge guide on the ${sideWords(part, r.edge)}: {0} in from the edge, right through from end to end.`,
          'Depth {1}, in two or three passes. Try both settings on an offcut with a piece of the panel that goes in.',
        ],
        lengths: [width, depth],
        cautions: [CAUTION.router, CAUTION.dust],
      },
      marksOf(batch),
    );
  }
}

function pockets(bench: Bench, batch: Batch): void {
  const [part] = batch;
  const all = part.features.filter((f): f is Pocket => f.kind === 'pocket');
  for (const edge of ['start', 'end', 'near', 'far'] as const)
    for (const face of ['under', 'show'] as const) {
      const here = all.filter((p) => p.edge === edge && p.face === face);
      if (here.length === 0) continue;
      const { from, turned } = referenceFor(part, edge);
      const along = inOrder(
        bench,
        here.map((p) => fromEdge(bench, part, edge, p.along, turned)),
        'pocket-jig',
      );
      const collar = part.thickness;
      bench.do(
        {
          id: `${part.mark}/pocket-${face}-${edge}`,
          kind: 'pocket',
          stage: 'machine',
          title: `Pocket holes at the ${sideWords(part, edge)} of ${named(batch)}`,
          does: { act: 'pocket', workpieces: marksOf(batch), face, edge, from, along, collar },
          tool: 'pocket-jig',
          times: batch.length * along.length,
          faceUp: `${sideWords(part, face)} up`,
          reference: `the ${sideWords(part, from)}`,
          lines: [
            `Set jig and bit collar for a board {${along.length}} thick.`,
            `Bore at ${placeholders(along.length)} from the ${sideWords(part, from)}, each middle on its mark, into the ${sideWords(part, face)} towards the ${sideWords(part, edge)}.`,
          ],
          lengths: [...along, collar],
          cautions: [CAUTION.drill],
        },
        marksOf(batch),
      );
    }
}

function holes(bench: Bench, batch: Batch): void {
  const [part] = batch;
  const all = part.features.filter((f): f is Hole => f.kind === 'hole');
  const rows = new Map<string, Hole[]>();
  for (const h of all) {
    const key = [
      h.side,
      h.use,
      bench.ledger.ticks(h.diameter),
      h.depth === undefined ? '' : bench.ledger.ticks(h.depth),
    ].join(' ');
    const row = rows.get(key);
    if (row) row.push(h);
    else rows.set(key, [h]);
  }
  for (const row of rows.values())
    (row[0]!.side === 'show' || row[0]!.side === 'under' ? faceHoles : edgeHoles)(bench, batch, row);
}

function edgeHoles(bench: Bench, batch: Batch, row: readonly Hole[]): void {
  const [part] = batch;
  const first = row[0]!;
  const edge = first.side as WorkEdge;
  const { from, turned } = referenceFor(part, edge);
  const sorted = [...row].sort((a, b) => bench.ledger.ticks(a.at[0]) - bench.ledger.ticks(b.at[0]));
  if (turned) sorted.reverse();
  const along = sorted.map((h) => bench.set('drill', fromEdge(bench, part, edge, h.at[0], turned)));
  const up = sorted.map((h) => bench.set('drill', h.at[1]));
  const diameter = first.diameter;
  const depth = first.depth === undefined ? undefined : bench.set('drill', first.depth, 'up');
  const lengths = [...along, up[0]!, diameter, ...(depth === undefined ? [] : [depth])];
  const n = along.length;
  bench.do(
    {
      id: `${part.mark}/drill-${edge}`,
      kind: 'drill',
      stage: 'machine',
      title: `Pilot holes in the ${sideWords(part, edge)} of ${named(batch)}`,
      does: {
        act: 'drill',
        workpieces: marksOf(batch),
        side: edge,
        from,
        at: along.map((a, i) => [a, up[i]!] as const),
        diameter,
        ...(depth === undefined ? {} : { depth }),
      },
      tool: 'drill',
      times: batch.length * n * 0.5,
      faceUp: `${sideWords(part, edge)} up, the part clamped on edge`,
      reference: `the ${sideWords(part, from)}`,
      lines: [
        `Line along the edge {${n}} from the ${sideWords(part, 'under')}; on it mark ${placeholders(n)} from the ${sideWords(part, from)}.`,
        `Drill {${n + 1}}${depth === undefined ? '' : `, {${n + 2}} deep`}, square to the edge: a flag of tape on the bit shows the depth.`,
      ],
      lengths,
      cautions: [CAUTION.drill],
    },
    marksOf(batch),
  );
}

function faceHoles(bench: Bench, batch: Batch, row: readonly Hole[]): void {
  const [part] = batch;
  const first = row[0]!;
  const face = first.side as 'show' | 'under';
  const ref = referenceFor(part, 'near');
  const at = row.map((h) => {
    const along = bench.set('drill', fromEdge(bench, part, 'near', h.at[0], ref.turned));
    return { along, across: bench.set('drill', h.at[1]) };
  });
  const lengths: Traced[] = [first.diameter, ...(first.countersink === undefined ? [] : [first.countersink])];
  const lines = linesOfHoles(bench, at).map(({ across, along }) => {
    const print = (all: readonly Traced[]) => listWords(all.map((t) => `{${lengths.push(t) - 1}}`));
    const line = print(across);
    return `${line} from the ${sideWords(part, 'near')}: ${across.length > 1 ? 'on each line ' : ''}at ${print(along)} from the ${sideWords(part, ref.from)}.`;
  });
  bench.do(
    {
      id: `${part.mark}/drill-${face}-${first.use}`,
      kind: 'drill',
      stage: 'machine',
      title: `Screw holes through ${named(batch)}`,
      does: {
        act: 'drill',
        workpieces: marksOf(batch),
        side: face,
        from: ref.from,
        at: at.map((a) => [a.along, a.across] as const),
        diameter: first.diameter,
        ...(first.depth === undefined ? {} : { depth: bench.set('drill', first.depth, 'up') }),
        ...(first.countersink === undefined ? {} : { countersink: first.countersink }),
      },
      tool: 'drill',
      times: row.length * 0.5,
      faceUp: `${sideWords(part, face)} up, a waste board under it`,
      reference: `the ${sideWords(part, ref.from)} and the ${sideWords(part, 'near')}`,
      lines: [
        'Mark the lines and the places on them:',
        ...lines,
        `Drill {0} right through into the waste board${first.countersink === undefined ? '' : '; countersink to {1} wide, so that heads lie just level'}.`,
      ],
      lengths,
      cautions: [CAUTION.drill],
    },
    marksOf(batch),
  );
}

/** Holes grouped by the lines they stand on, lines with the same places together; lines and holes in order. */
function linesOfHoles(
  bench: Bench,
  at: readonly { readonly along: Traced; readonly across: Traced }[],
): readonly { readonly across: readonly Traced[]; readonly along: readonly Traced[] }[] {
  const t = (x: Traced) => bench.ledger.ticks(x);
  const lines = new Map<number, { across: Traced; along: Traced[] }>();
  for (const a of at) {
    const line = lines.get(t(a.across));
    if (line) line.along.push(a.along);
    else lines.set(t(a.across), { across: a.across, along: [a.along] });
  }
  const alike = new Map<string, { across: Traced[]; along: readonly Traced[] }>();
  for (const line of [...lines.values()].sort((a, b) => t(a.across) - t(b.across))) {
    const along = [...line.along].sort((a, b) => t(a) - t(b));
    const key = along.map(t).join(' ');
    const same = alike.get(key);
    if (same) same.across.push(line.across);
    else alike.set(key, { across: [line.across], along });
  }
  return [...alike.values()];
}

/** A place along an edge as it is measured on the bench: from the front, left or lower side. */
function fromEdge(bench: Bench, part: Part, edge: WorkEdge, along: Traced, turned: boolean): Traced {
  if (!turned) return along;
  const whole = edge === 'start' || edge === 'end' ? part.width : part.length;
  return bench.ledger.less('the same, measured from the other side', whole, along);
}

function inOrder(bench: Bench, places: readonly Traced[], tool: 'pocket-jig'): readonly Traced[] {
  return places.map((p) => bench.set(tool, p)).sort((a, b) => bench.ledger.ticks(a) - bench.ledger.ticks(b));
}

/** `{0}, {1} and {2}`. */
function placeholders(n: number): string {
  return listWords(Array.from({ length: n }, (_, i) => `{${i}}`));
}
