import type { Traced } from '../measure/index.ts';
import type { Hole, Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { CAUTION } from './cautions.ts';
import { listWords, measuredFrom, referenceFor, sideWords } from './words.ts';

/**
 * Rows of holes for shelf pins in a face, all of one width and depth: where the first hole is, how far on each of the
 * next, and which are left out.
 */
export function pinHoles(bench: Bench, batch: readonly [Part, ...Part[]], holes: readonly Hole[]): void {
  const [part] = batch;
  const l = bench.ledger;
  const first = holes[0]!;
  const face = first.side as 'show' | 'under';
  const ref = referenceFor(part, 'near');
  const lengths: Traced[] = [];
  const put = (x: Traced) => `{${lengths.push(x) - 1}}`;
  const depth = bench.set('drill', first.depth!, 'nearest');
  const bit = put(first.diameter);
  const deep = put(depth);
  const end = measuredFrom(part, ref.from, face);
  const edges = edgesOf(bench, part, holes);
  const reference = listWords(edges.map(({ edge }) => `the ${sideWords(part, edge)}`));
  const rows = edges.flatMap(({ edge, holes: there }) =>
    runsOf(bench, part, there, ref.turned).map((run) => ({
      ...(edges.length > 1 && edge === 'far' ? { acrossFrom: 'far' as const } : {}),
      lines: run.rows
        .map((across) => (edge === 'near' ? across : l.less('the same from that edge', part.width, across)))
        .sort((a, b) => l.ticks(a) - l.ticks(b))
        .map((across) => bench.set('drill', across)),
      first: run.first,
      ...(run.count > 1 ? { pitch: run.pitch } : {}),
      count: run.count,
      leftOut: run.leftOut,
    })),
  );
  const lines = rows.map((row) => {
    const edge = sideWords(part, row.acrossFrom ?? edges[0]!.edge);
    const on = `Line${row.lines.length > 1 ? 's' : ''} ${listWords(row.lines.map(put))} from the ${edge}`;
    if (row.pitch === undefined) return `${on}: one hole on each, ${put(row.first)} from ${end}.`;
    const out = row.leftOut.length
      ? ` Leave out number${row.leftOut.length > 1 ? 's' : ''} ${listWords(row.leftOut.map(String))}: something else is there.`
      : '';
    return `${on}: the first hole ${put(row.first)} from ${end}, then one every ${put(row.pitch)}, to number ${row.count}.${out}`;
  });
  bench.settings.push({
    id: `${part.mark}/drill-${face}-pins`,
    kind: 'drill',
    what: `Rows of holes for shelf pins in the ${sideWords(part, face)} of`,
    parts: batch,
    does: {
      act: 'pin-holes',
      workpieces: batch.map((p) => p.mark),
      side: face,
      from: ref.from as 'start' | 'end',
      ...(edges.length === 1 && edges[0]!.edge === 'far' ? { acrossFrom: 'far' as const } : {}),
      rows,
      diameter: first.diameter,
      depth,
    },
    tool: 'drill',
    once: 10,
    times: holes.length * 0.4,
    faceUp: `${sideWords(part, face)} up`,
    reference: `${end} and ${reference}`,
    lines: [
      'A strip of hardwood or plywood with one row of holes serves as the jig: bore it on a drill press, mark its lower end, and clamp it on each line with that end at the same side of every part. A shelf rocks where one hole of its four is off.',
      ...lines,
      `Drill ${bit}, ${deep} deep, with a stop on the bit; try it on an offcut with a pin, which goes in by hand and holds.`,
    ],
    lengths,
    cautions: [CAUTION.drill],
  });
}

/** From which long edges lines are measured: from the front one, and on a blank of two parts on either from its own. */
function edgesOf(
  bench: Bench,
  part: Part,
  holes: readonly Hole[],
): readonly { readonly edge: 'near' | 'far'; readonly holes: readonly Hole[] }[] {
  if (!part.joins) return [{ edge: frontEdge(part), holes }];
  const l = bench.ledger;
  const near = (h: Hole) => l.ticks(h.at[1]) * 2 < l.ticks(part.width);
  return [
    { edge: 'near', holes: holes.filter(near) },
    { edge: 'far', holes: holes.filter((h) => !near(h)) },
  ];
}

/** Which of the two long edges looks to the front. */
function frontEdge(part: Part): 'near' | 'far' {
  return part.place.width === '+y' ? 'near' : 'far';
}

/** Lines that have their holes at the same places. */
interface Run {
  readonly rows: readonly Traced[];
  readonly first: Traced;
  readonly pitch: Traced;
  /** As many as there would be with none left out; numbers count from the first. */
  readonly count: number;
  readonly leftOut: readonly number[];
}

function runsOf(bench: Bench, part: Part, holes: readonly Hole[], turned: boolean): readonly Run[] {
  const l = bench.ledger;
  const t = (x: Traced) => l.ticks(x);
  const lines = new Map<string, { rows: Traced[]; along: Traced[]; purpose: string }>();
  const byRow = new Map<string, { across: Traced; along: Traced[]; purpose: string }>();
  for (const h of holes) {
    const place = turned ? l.less('the same, measured from the other end', part.length, h.at[0]) : h.at[0];
    // Rows of two openings, one above the other, are set out each from its own first hole.
    const key = `${h.purpose} ${t(h.at[1])}`;
    const row = byRow.get(key);
    if (row) row.along.push(place);
    else byRow.set(key, { across: h.at[1], along: [place], purpose: h.purpose });
  }
  for (const { across, along, purpose } of byRow.values()) {
    along.sort((a, b) => t(a) - t(b));
    const key = `${purpose} ${along.map(t).join(' ')}`;
    const same = lines.get(key);
    if (same) same.rows.push(across);
    else lines.set(key, { rows: [across], along, purpose });
  }
  return [...lines.values()].map(({ rows, along }): Run => {
    const first = bench.set('drill', along[0]!);
    const steps = along.slice(1).map((z, i) => l.less('from hole to hole', z, along[i]!));
    const least = steps.length ? l.least('the pitch of the row', ...steps) : first;
    const pitch = bench.set('drill', least);
    const numbers = along.map((z) => Math.round((t(z) - t(along[0]!)) / Math.max(1, t(least))));
    const count = numbers.at(-1)! + 1;
    const leftOut = Array.from({ length: count }, (_, i) => i).filter((i) => !numbers.includes(i));
    return {
      rows: [...rows].sort((a, b) => t(a) - t(b)),
      first,
      pitch,
      count,
      leftOut: leftOut.map((n) => n + 1),
    };
  });
}
