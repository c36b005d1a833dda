import type { FinishLot } from '../../job/index.ts';
import { FINISH_WORK, type Finish } from '../../materials/index.ts';
import {
  coatsOn,
  type ExposedFace,
  exposedFaces,
  finishedBefore,
  finishOf,
  SURFACE_CLASSES,
  type SurfaceClass,
  surfaceClass,
} from '../../setting-out/index.ts';
import type { Bench } from '../bench.ts';

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

/** Areas by class from the standing parts, coats by the label or else the most that are usual, quantities with waste. */
export function planFinish(bench: Bench): FinishPlan {
  const { lot, kind } = finishOf(bench.job.shop.rack.finishes);
  const coatsOf = (surface?: SurfaceClass) => coatsOn(bench.job.shop.rack.finishes, surface);
  const coats = coatsOf();
  const told = lot?.label?.coverageM2PerL;
  const coverage = told ?? kind.coverageM2PerL;
  const classOf = surfaceClass(bench.setOut);
  const faces = exposedFaces(bench.setOut).map((face) => ({ face, surface: classOf(face) }));
  const classes = SURFACE_CLASSES.flatMap((surface): ClassFinish[] => {
    const areaM2 = faces.reduce((sum, f) => sum + (f.surface === surface ? f.face.areaMm2 : 0), 0) / 1e6;
    const n = coatsOf(surface);
    return areaM2 > 0
      ? [{ surface, areaM2, coats: n, litres: ((areaM2 * n) / coverage) * FINISH_WORK.withWaste }]
      : [];
  });
  const isBefore = finishedBefore(bench.setOut);
  const before = faces.filter((f) => isBefore(f.face, f.surface));
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
