import type { Traced } from '../measure/index.ts';
import type { Hole, Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { CAUTION } from './cautions.ts';
import { listWords, measuredFrom, referenceFor, sideWords } from './words.ts';

/** Holes right through a panel that stay open: each by its middle, a waste board behind so that nothing tears out. */
export function openHoles(bench: Bench, batch: readonly [Part, ...Part[]], row: readonly Hole[]): void {
  const [part] = batch;
  const first = row[0]!;
  const l = bench.ledger;
  const face = first.side as 'show' | 'under';
  const marks = batch.map((p) => p.mark);
  const ref = referenceFor(part, 'near');
  const at = row.map((h) => {
    const along = ref.turned
      ? l.less('the same, measured from the other side', part.length, h.at[0])
      : h.at[0];
    return [bench.set('marking', along), bench.set('marking', h.at[1])] as const;
  });
  const lengths: Traced[] = [first.diameter];
  const end = measuredFrom(part, ref.from, face);
  const placeLines = linesOf(bench, at).map(({ across, along }) => {
    const print = (all: readonly Traced[]) => listWords(all.map((x) => `{${lengths.push(x) - 1}}`));
    return `${across.length * along.length > 1 ? 'Middles' : 'Middle'} ${print(along)} from ${end}, ${print(across)} from the ${sideWords(part, 'near')}.`;
  });
  const air = first.use === 'vent';
  const saw = bitFor(bench, first) === 'hole-saw';
  bench.settings.push({
    id: `${part.mark}/drill-${face}-${first.use}-${l.ticks(first.diameter)}`,
    kind: 'drill',
    what: `${row.length > 1 ? 'Holes' : 'Hole'} through`,
    parts: batch,
    purpose: [...new Set(row.map((h) => h.purpose))].join('; '),
    does: {
      act: 'drill',
      workpieces: marks,
      side: face,
      from: ref.from,
      at,
      diameter: first.diameter,
      bit: saw ? 'hole-saw' : 'forstner',
      open: true,
    },
    tool: 'drill',
    times: row.length * (air ? 2 : 4),
    faceUp: `${sideWords(part, face)} up, a waste board clamped tight under it`,
    reference: `${end} and the ${sideWords(part, 'near')}`,
    lines: [
      ...placeLines,
      saw
        ? 'Hole saw of {0}, slowly, cleared of dust as it goes: until its pilot bit comes through, then from the other face, so that both stay clean.'
        : 'Forstner bit of {0}, slowly, through into the waste board: so the far face stays clean.',
      air
        ? 'Ease the rims with sandpaper round a dowel.'
        : 'Try the plug itself. Ease both rims with sandpaper, so that no cable is chafed.',
    ],
    lengths,
    cautions: [CAUTION.drill],
  });
}

/** Holes by the lines they stand on; lines with the same places together. */
function linesOf(
  bench: Bench,
  at: readonly (readonly [along: Traced, across: Traced])[],
): readonly { readonly across: readonly Traced[]; readonly along: readonly Traced[] }[] {
  const t = (x: Traced) => bench.ledger.ticks(x);
  const sorted = [...at].sort((p, q) => t(p[1]) - t(q[1]) || t(p[0]) - t(q[0]));
  const alike = new Map<string, { across: Traced[]; along: Traced[] }>();
  for (const line of new Set(sorted.map((p) => t(p[1])))) {
    const here = sorted.filter((p) => t(p[1]) === line);
    const along = here.map((p) => p[0]);
    const key = along.map(t).join(' ');
    const same = alike.get(key);
    if (same) same.across.push(here[0]![1]);
    else alike.set(key, { across: [here[0]![1]], along });
  }
  return [...alike.values()];
}

/** A bit of the rack of just that width; a hole saw where there is none. */
function bitFor(bench: Bench, hole: Hole): 'forstner' | 'hole-saw' {
  const width = bench.ledger.ticks(hole.diameter);
  const forstner = bench.job.shop.rack.bits.some(
    (b) => b.kind === 'forstner' && bench.ticksOf(b.diameter) === width,
  );
  return forstner ? 'forstner' : 'hole-saw';
}
