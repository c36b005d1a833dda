import type { Traced } from '../measure/index.ts';
import { type Part, partsAndBoards, type SetOut } from '../setting-out/index.ts';
import { cutsOfAct } from './cuts-of-act.ts';
import type { Act, Operation } from './operation.ts';

/** The sizes that stand once a card is done: of every part that comes off the saw, by the name of the dimension. */
export function sizesMade(
  setOut: SetOut,
  { does }: Operation,
): readonly (readonly [name: string, size: Traced])[] {
  if (does.act === 'saw-alike') return cutsOfAct(does).flatMap((cut) => sizesOf(setOut, cut));
  return sizesOf(setOut, does);
}

function sizesOf(setOut: SetOut, does: Act): readonly (readonly [name: string, size: Traced])[] {
  // Of two strips, the card prints one width; the other is what the blade leaves.
  if (does.act === 'part') {
    const [first] = does.yields;
    return first === undefined ? [] : [[`${first}.width`, does.at]];
  }
  // Both were as long as their blank already, and are now as wide as they shall be.
  if (does.act === 'rip-apart')
    return does.yields.map((mark, i) => [`${mark}.width`, does.widths[i]!] as const);
  if (does.act !== 'saw' && does.act !== 'name') return [];
  const names = does.act === 'saw' ? does.yields.flatMap((y) => y?.name ?? []) : [does.as.name];
  return names.flatMap((mark) => {
    const part = partsAndBoards(setOut).find((p) => p.mark === mark);
    if (!part) return [];
    if (part.fitted) return fittedSizes(part, part.fitted, does);
    if (does.act === 'saw' && does.workpiece === mark) return sizeOfItsOwnCut(part, does);
    // One board that is a whole panel is not cut to its size yet when it gets the panel’s mark.
    if (does.act === 'name' && setOut.gluedPanels.some((g) => g.panel === part.id)) return [];
    const length = [`${mark}.length`, part.cut.length] as const;
    if (part.joins)
      return [
        length,
        [`${mark}.width`, part.cut.width] as const,
        ...part.joins.map((j) => [`${j.mark}.length`, part.cut.length] as const),
      ];
    return part.form === 'strip' ? [length] : [length, [`${mark}.width`, part.cut.width] as const];
  });
}

/** What has its mark already gets one size a cut; a fresh edge to measure from is none. */
function sizeOfItsOwnCut(
  { mark, cut }: Part,
  { across, keep }: Extract<Operation['does'], { act: 'saw' }>,
): readonly (readonly [name: string, size: Traced])[] {
  return keep === 'before' ? [[`${mark}.${across}`, cut[across]]] : [];
}

/** What is cut to its opening has its sizes from then on, not when it comes off the sheet. */
function fittedSizes(
  { mark }: Part,
  fitted: NonNullable<Part['fitted']>,
  does: Operation['does'],
): readonly (readonly [name: string, size: Traced])[] {
  if (does.act !== 'saw' || does.workpiece !== mark) return [];
  return [[`${mark}.${does.across}`, fitted[does.across]]];
}
