import type { Hole, Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { CAUTION } from './cautions.ts';
import { listWords, referenceFor, sideWords } from './words.ts';

/** Holes right through a panel that stay open: each by its middle, a waste board behind so that nothing tears out. */
export function openHoles(bench: Bench, batch: readonly [Part, ...Part[]], row: readonly Hole[]): void {
  const [part] = batch;
  const first = row[0]!;
  const l = bench.ledger;
  const face = first.side as 'show' | 'under';
  const marks = batch.map((p) => p.mark);
  const named = batch.length === 1 ? `${part.mark} (${part.name})` : listWords(marks);
  const ref = referenceFor(part, 'near');
  const at = row.map((h) => {
    const along = ref.turned
      ? l.less('the same, measured from the other side', part.length, h.at[0])
      : h.at[0];
    return [bench.set('marking', along), bench.set('marking', h.at[1])] as const;
  });
  const lengths = [first.diameter, ...at.flat()];
  const saw = bitFor(bench, first) === 'hole-saw';
  bench.do(
    {
      id: `${part.mark}/drill-${face}-open-${l.ticks(first.diameter)}`,
      kind: 'drill',
      stage: 'machine',
      title: `${row.length > 1 ? 'Holes' : 'Hole'} through ${named}, ${[...new Set(row.map((h) => h.purpose))].join('; ')}`,
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
      times: batch.length * row.length * 4,
      faceUp: `${sideWords(part, face)} up, a waste board clamped tight under it`,
      reference: `the ${sideWords(part, ref.from)} and the ${sideWords(part, 'near')}`,
      lines: [
        ...at.map(
          (_, i) =>
            `Middle {${1 + 2 * i}} from the ${sideWords(part, ref.from)} and {${2 + 2 * i}} from the ${sideWords(part, 'near')}.`,
        ),
        saw
          ? 'Hole saw of {0}, slowly, cleared of dust as it goes: until its pilot bit comes through, then from the other face, so that both stay clean.'
          : 'Forstner bit of {0}, slowly, through into the waste board: so the far face stays clean.',
        'Try the plug itself. Ease both rims with sandpaper, so that no cable is chafed.',
      ],
      lengths,
      cautions: [CAUTION.drill],
    },
    marks,
  );
}

/** A bit of the rack of just that width; a hole saw where there is none. */
function bitFor(bench: Bench, hole: Hole): 'forstner' | 'hole-saw' {
  const width = bench.ledger.ticks(hole.diameter);
  const forstner = bench.job.shop.rack.bits.some(
    (b) => b.kind === 'forstner' && bench.ticksOf(b.diameter) === width,
  );
  return forstner ? 'forstner' : 'hole-saw';
}
