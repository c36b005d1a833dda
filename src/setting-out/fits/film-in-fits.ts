import { FILMS, finish } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft } from '../draft.ts';
import { sideLooking } from '../joints/contact.ts';
import { coatsOn } from '../surfaces/coats.ts';
import { lookingRound } from '../surfaces/exposed-faces.ts';
import { finishedBefore } from '../surfaces/finished-before.ts';
import { surfaceClass } from '../surfaces/surface-class.ts';
import type { FinishedFace, Fit, FitMember } from './fit.ts';

/** Takes the film off the gap of each fit: on every face that looks into it as many coats as the piece's own finish puts there. */
export function filmInFits(draft: Draft): void {
  const { finishes } = draft.job.shop.rack;
  const id = finishes[0]?.material;
  const known = id === undefined ? undefined : finish(id);
  const coat = FILMS.find((row) => row.id === `finish.film.${id}`);
  if (!known || !coat || draft.faced.size === 0) return;
  const l = draft.ledger;
  const coatsOf = coatsByFace(draft);
  for (const [at, faces] of draft.faced) {
    const by = new Map<number, number>();
    for (const face of faces) {
      const coats = coatsOf(face);
      if (coats > 0) by.set(coats, (by.get(coats) ?? 0) + 1);
    }
    const films = [...by]
      .sort(([a], [b]) => a - b)
      .map(
        ([coats, times]): FitMember => ({
          name: `${known.name} on one face, ${coats} coat${coats > 1 ? 's' : ''}`,
          length: l.times('film of the finish on one face', l.row(coat), coats),
          sign: -1,
          times,
          made: { by: 'finish', id: known.id },
        }),
      );
    if (films.length > 0) draft.fits[at] = withFilm(draft, draft.fits[at]!, films);
  }
}

function withFilm(draft: Draft, fit: Fit, films: readonly FitMember[]): Fit {
  const l = draft.ledger;
  const all = films.map((f): Traced => l.times('film on every face in the gap', f.length, f.times!));
  return {
    ...fit,
    gap: l.less('gap that the finish leaves', fit.gap, ...all),
    loop: [...fit.loop, ...films],
  };
}

/** How many coats a face gets. Only what looks up may wear as a top does; only channels are taped. */
function coatsByFace(draft: Draft): (face: FinishedFace) => number {
  const { finishes } = draft.job.shop.rack;
  const usual = coatsOn(finishes);
  let look: ReturnType<typeof lookingRound> | undefined;
  const classOf = surfaceClass(draft);
  const isBefore = finishedBefore(draft);
  const taped = new Map<string, boolean>();
  return ({ part, looks, channel }) => {
    if (!part) return usual;
    if (channel) {
      look ??= lookingRound(draft);
      const known =
        taped.get(part.id) ??
        (['show', 'under'] as const).some((side) => {
          const face = look!(part, side);
          return face !== undefined && isBefore(face, classOf(face));
        });
      taped.set(part.id, known);
      return known ? 0 : usual;
    }
    const side = sideLooking(part.place, looks);
    if (looks !== '+z' || (side !== 'show' && side !== 'under')) return usual;
    look ??= lookingRound(draft);
    const face = look(part, side);
    return face ? coatsOn(finishes, classOf(face)) : usual;
  };
}
