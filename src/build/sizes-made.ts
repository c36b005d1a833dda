import type { Traced } from '../measure/index.ts';
import { type Part, partsAndBoards, type SetOut } from '../setting-out/index.ts';
import type { Operation } from './operation.ts';

/** The sizes that stand once a card is done: of every part that comes off the saw, by the name of the dimension. */
export function sizesMade(
  setOut: SetOut,
  { does }: Operation,
): readonly (readonly [name: string, size: Traced])[] {
  if (does.act !== 'saw' && does.act !== 'name') return [];
  const names = does.act === 'saw' ? does.yields.flatMap((y) => y?.name ?? []) : [does.as.name];
  return names.flatMap((mark) => {
    const part = partsAndBoards(setOut).find((p) => p.mark === mark);
    if (!part) return [];
    if (part.fitted) return fittedSizes(part, part.fitted, does);
    const length = [`${mark}.length`, part.cut.length] as const;
    return part.form === 'strip' ? [length] : [length, [`${mark}.width`, part.cut.width] as const];
  });
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
