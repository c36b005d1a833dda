import type * as Library from 'maxrects-packer';
import type { CutProblem } from '../src/breakdown/index.ts';

// The package calls itself a module, but what it names as its main file is none: the one beside it is.
const PACKER: string = import.meta.resolve('maxrects-packer').replace(/\.js$/, '.mjs');
const { MaxRectsPacker } = (await import(PACKER)) as typeof Library;

/**
 * How many sheets a general-purpose packing library takes for a problem of one sheet size, to hold beside ours;
 * undefined for several sizes. Longest sides go in first. It packs rectangles anywhere, so it is free of the rule that a saw cuts right through.
 */
export function sheetsOfGeneralPacker(problem: CutProblem): number | undefined {
  const [sheet, ...others] = problem.stock;
  if (!sheet || others.length > 0) return undefined;
  const width = sheet.width ?? 1;
  const turn = problem.pieces.some((p) => p.turn);
  const packer = new MaxRectsPacker(sheet.length, width, 0, {
    smart: false,
    pot: false,
    square: false,
    allowRotation: turn,
  });
  const sides = (p: CutProblem['pieces'][number]): [number, number] => [p.length, p.width ?? 1];
  const order = [...problem.pieces].sort((a, b) => Math.max(...sides(b)) - Math.max(...sides(a)));
  for (const p of order) for (let n = 0; n < p.count; n++) packer.add(...sides(p), p.id);
  return packer.bins.length;
}
