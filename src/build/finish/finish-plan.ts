import type { FinishLot } from '../../job/index.ts';
import { FINISH_WORK, type Finish } from '../../materials/index.ts';
import {
  type ExposedFace,
  exposedFaces,
  SURFACE_CLASSES,
  type SurfaceClass,
  surfaceClass,
} from '../../setting-out/index.ts';
import type { Bench } from '../bench.ts';
import { finishOf } from '../setting-times.ts';

/** What the surfaces of one class get. */
export interface ClassFinish {
  readonly surface: SurfaceClass;
  readonly areaM2: number;
  readonly coats: number;
  readonly litres: number;
}

/** How a piece is finished: surfaces by class, coats, quantities. */
export interface FinishPlan {
  readonly kind: Finish;
  readonly lot: FinishLot | undefined;
  /** Coats on every face; both faces of a panel get as many, or it goes hollow. */
  readonly coats: number;
  /** Square metres that a litre covers once, and whether the label says so. */
  readonly coverageM2PerL: number;
  readonly coverageFrom: 'label' | 'table';
  readonly classes: readonly ClassFinish[];
  readonly areaM2: number;
  /** With waste. */
  readonly litres: number;
  /** Marks of parts with a face that no hand reaches once the piece stands. */
  readonly before: readonly string[];
  /** By mark, the broad face that nobody sees once the piece stands; parts whose both faces are seen are not in it. */
  readonly hidden: ReadonlyMap<string, 'show' | 'under'>;
}

/** One more coat where it wears. */
const MORE_ON_TOP = 1;

/** Areas by class from the standing parts, coats by the label or else the most that are usual, quantities with waste. */
export function planFinish(bench: Bench): FinishPlan {
  const { lot, kind } = finishOf(bench.job.shop.rack.finishes);
  const coats = lot?.label?.coats ?? kind.coats[1];
  const told = lot?.label?.coverageM2PerL;
  const coverage = told ?? kind.coverageM2PerL;
  const classOf = surfaceClass(bench.setOut);
  const faces = exposedFaces(bench.setOut).map((face) => ({ face, surface: classOf(face) }));
  const classes = SURFACE_CLASSES.flatMap((surface): ClassFinish[] => {
    const areaM2 = faces.reduce((sum, f) => sum + (f.surface === surface ? f.face.areaMm2 : 0), 0) / 1e6;
    const n = coats + (surface === 'top' ? MORE_ON_TOP : 0);
    return areaM2 > 0
      ? [{ surface, areaM2, coats: n, litres: ((areaM2 * n) / coverage) * FINISH_WORK.withWaste }]
      : [];
  });
  const comesOut = partsThatComeOut(bench);
  const before = faces.filter(
    (f) => f.surface === 'inside' && !comesOut.has(f.face.part.id) && outOfReach(bench, f.face),
  );
  return {
    kind,
    lot,
    coats,
    coverageM2PerL: coverage,
    coverageFrom: told === undefined ? 'table' : 'label',
    classes,
    areaM2: classes.reduce((sum, c) => sum + c.areaM2, 0),
    litres: classes.reduce((sum, c) => sum + c.litres, 0),
    before: [...new Set(before.map((f) => f.face.part.mark))],
    hidden: hiddenFaces(bench, faces),
  };
}

function hiddenFaces(
  bench: Bench,
  faces: readonly { readonly face: ExposedFace; readonly surface: SurfaceClass }[],
): FinishPlan['hidden'] {
  const seen = new Set(
    faces.flatMap(({ face, surface }) => (surface === 'hidden' ? [] : [`${face.part.id} ${face.side}`])),
  );
  return new Map(
    bench.setOut.parts.flatMap((p) => {
      const side = (['under', 'show'] as const).find((s) => !seen.has(`${p.id} ${s}`));
      return side ? [[p.mark, side] as const] : [];
    }),
  );
}

/** Drawers, doors and loose shelves come out for the finish: every face of theirs can be reached then. */
function partsThatComeOut({ setOut }: Bench): ReadonlySet<string> {
  return new Set([
    ...setOut.drawers.flatMap((d) => Object.values(d.parts)),
    ...setOut.doors.map((d) => d.part),
    ...setOut.sliding.flatMap((s) => s.leaves.map((d) => d.part)),
    ...setOut.pinned.map((s) => s.part),
  ]);
}

/** A face in a space so narrow and deep that a hand with a cloth doesn’t reach it. */
function outOfReach(bench: Bench, { part, gapMm, looks }: ExposedFace): boolean {
  if (gapMm === undefined || looks === '-y' || looks === '+y') return false;
  const deep = bench.ledger.ticks(part.width) / 3200;
  return gapMm < FINISH_WORK.handMm && deep > FINISH_WORK.armMm;
}
