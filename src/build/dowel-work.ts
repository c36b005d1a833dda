import type { Traced } from '../measure/index.ts';
import type { Hole, Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { CAUTION } from './cautions.ts';
import { fromEdge, linesOfHoles, placeholders, strokesAlong } from './hole-places.ts';
import { markWords } from './mark-words.ts';
import type { WorkEdge } from './operation.ts';
import { listWords, referenceFor, sideWords } from './words.ts';

/** Bores holes for dowels of one side, with the jig, in parts that are worked alike. */
export function dowelHoles(
  bench: Bench,
  batch: readonly [Part, ...Part[]],
  row: readonly Hole[],
  suffix: string,
): void {
  const { side } = row[0]!;
  if (side === 'show' || side === 'under') inFace(bench, batch, row, side, suffix);
  else inEnd(bench, batch, row, side, suffix);
}

const PROVE =
  'A stop collar on the bit, not tape: prove the depth on an offcut, and that a dowel goes in with the push of a thumb.';

/** In an end the jig finds the middle of the thickness by itself; only places along it are marked. */
function inEnd(
  bench: Bench,
  batch: readonly [Part, ...Part[]],
  row: readonly Hole[],
  edge: WorkEdge,
  suffix: string,
): void {
  const [part] = batch;
  const { from, along } = strokesAlong(bench, part, edge, row);
  const first = row[0]!;
  const [middle, diameter] = [first.at[1], first.diameter];
  const depth = bench.set('drill', first.depth!, 'up');
  const n = along.length;
  const marks = batch.map((p) => p.mark);
  bench.do(
    {
      id: `${part.mark}/dowel-${edge}${suffix}`,
      kind: 'drill',
      stage: 'machine',
      title: `Dowel holes in the ${sideWords(part, edge)} of ${named(batch)}`,
      does: {
        act: 'drill',
        workpieces: marks,
        side: edge,
        from,
        at: along.map((a) => [a, middle] as const),
        diameter,
        depth,
        dowels: true,
      },
      tool: 'dowel-jig',
      times: batch.length * n,
      faceUp: `${sideWords(part, edge)} up, the part clamped on end`,
      reference: `the ${sideWords(part, from)}`,
      lines: [
        `Mark the end at ${placeholders(n)} from the ${sideWords(part, from)}, a sharp stroke across at each.`,
        `The jig on each stroke, in the middle of the thickness: {${n}} from the ${sideWords(part, 'under')}. Drill {${n + 1}}, {${n + 2}} deep.`,
        PROVE,
      ],
      lengths: [...along, middle, diameter, depth],
      cautions: [CAUTION.drill],
    },
    marks,
  );
}

/** On a face a line is squared across for each end that comes there. */
function inFace(
  bench: Bench,
  batch: readonly [Part, ...Part[]],
  row: readonly Hole[],
  face: 'show' | 'under',
  suffix: string,
): void {
  const [part] = batch;
  const ref = referenceFor(part, 'near');
  const side = referenceFor(part, 'start');
  const at = row.map((h) => ({
    along: bench.set('marking', fromEdge(bench, part, 'near', h.at[0], ref.turned)),
    across: bench.set('marking', fromEdge(bench, part, 'start', h.at[1], side.turned)),
  }));
  const first = row[0]!;
  const depth = bench.set('drill', first.depth!, 'down');
  const lengths: Traced[] = [first.diameter, depth];
  const print = (all: readonly Traced[]) => listWords(all.map((t) => `{${lengths.push(t) - 1}}`));
  const lines = squaredLines(bench, at).map(({ line, places }) => {
    const many = line.length > 1;
    return `${many ? 'Lines' : 'A line'} squared across ${print(line)} from the ${sideWords(part, ref.from)}: on ${many ? 'each' : 'it'} ${print(places)} from the ${sideWords(part, side.from)}.`;
  });
  const marks = batch.map((p) => p.mark);
  bench.do(
    {
      id: `${part.mark}/dowel-${face}${suffix}`,
      kind: 'drill',
      stage: 'machine',
      title: `Dowel holes in the ${sideWords(part, face)} of ${named(batch)}`,
      does: {
        act: 'drill',
        workpieces: marks,
        side: face,
        from: ref.from,
        ...(side.turned ? { acrossFrom: 'far' as const } : {}),
        at: at.map((a) => [a.along, a.across] as const),
        diameter: first.diameter,
        depth,
        dowels: true,
      },
      tool: 'dowel-jig',
      times: batch.length * row.length,
      faceUp: `${sideWords(part, face)} up`,
      reference: `the ${sideWords(part, ref.from)} and the ${sideWords(part, side.from)}`,
      lines: [
        ...lines,
        'The jig on each crossing; a batten clamped along the line keeps its fence straight. Drill {0}, {1} deep and no deeper.',
        PROVE,
      ],
      lengths,
      cautions: [CAUTION.drill],
    },
    marks,
  );
}

/** Places grouped by the lines across the part that they stand on. */
export function squaredLines(
  bench: Bench,
  at: readonly { readonly along: Traced; readonly across: Traced }[],
): readonly { readonly line: readonly Traced[]; readonly places: readonly Traced[] }[] {
  const turned = at.map(({ along, across }) => ({ along: across, across: along }));
  return linesOfHoles(bench, turned).map(({ across, along }) => ({ line: across, places: along }));
}

function named(batch: readonly [Part, ...Part[]]): string {
  const [first] = batch;
  return batch.length === 1 ? `${first.mark} (${first.name})` : markWords(batch.map((p) => p.mark));
}
