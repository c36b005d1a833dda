import { fromMm } from '../measure/index.ts';
import type { Shape } from '../solid/index.ts';
import type { Member } from './assembly.ts';
import { plainPiece } from './virtual-piece.ts';

type Triple = readonly [number, number, number];

/** A board that fills a box, its least corner and size in mm: its length along x, its width along y. */
export function board(mark: string, at: Triple, size: Triple, cuts: readonly Shape[] = []): Member {
  const [x, y, z] = size.map(fromMm) as readonly number[] as [number, number, number];
  return {
    mark,
    piece: { ...plainPiece(x, y, z), cuts },
    turn: { length: '+x', width: '+y' },
    origin: at.map((mm) => Math.round(fromMm(mm))) as never,
  };
}
