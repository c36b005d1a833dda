import type { FinishLot } from '../../job/index.ts';
import { FINISH_WORK, type Finish } from '../../materials/index.ts';
import { toMm } from '../../measure/index.ts';
import {
  closesBehind,
  coatsOn,
  type ExposedFace,
  exposedFaces,
  finishedBefore,
  finishOf,
  type Part,
  SURFACE_CLASSES,
  type SurfaceClass,
  surfaceClass,
} from '../../setting-out/index.ts';
import type { Bench } from '../bench.ts';
import { overlap, planesOf } from '../boxes.ts';
import { looks } from '../words.ts';
import { betweenCases } from './between-cases.ts';

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
  /** Marks of parts whose upper face wears as a top does. */
  readonly tops: readonly string[];
  /** Marks of parts with a face that no hand reaches once the piece stands. */
  readonly before: readonly string[];
  /** Of these, solid tops that lie on a panel: no glue comes on them. */
  readonly solidTops: readonly string[];
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
  const between = betweenCases(
    bench,
    faces.map((f) => f.face),
  ).reduce((sum, f) => sum + f.areaMm2, 0);
  const classes = SURFACE_CLASSES.flatMap((surface): ClassFinish[] => {
    const own = faces.reduce((sum, f) => sum + (f.surface === surface ? f.face.areaMm2 : 0), 0);
    const areaM2 = (own + (surface === 'hidden' ? between : 0)) / 1e6;
    const n = coatsOf(surface);
    return areaM2 > 0
      ? [{ surface, areaM2, coats: n, litres: ((areaM2 * n) / coverage) * FINISH_WORK.withWaste }]
      : [];
  });
  const isBefore = finishedBefore(bench.setOut);
  const closed = faces.filter((f) => isBefore(f.face, f.surface)).map((f) => f.face);
  const inside = [...closed.map((f) => f.part), ...closingBehind(bench, closed.filter(closesBehind))];
  const solidTops = coveredSolidTops(
    bench,
    faces.map((f) => f.face),
  ).map((p) => p.mark);
  return {
    kind,
    lot,
    coats,
    coverageM2PerL: coverage,
    coverageFrom: told === undefined ? 'table' : 'label',
    classes,
    areaM2: classes.reduce((sum, c) => sum + c.areaM2, 0),
    litres: classes.reduce((sum, c) => sum + c.litres, 0),
    tops: [...new Set(faces.flatMap((f) => (f.surface === 'top' ? [f.face.part.mark] : [])))],
    before: [...new Set([...inside.map((p) => p.mark), ...solidTops])],
    solidTops,
    hidden: hiddenFaces(bench, faces),
  };
}

/** The backs that close what is behind panels from the other side, and rails that stand between the two. */
function closingBehind({ setOut, ledger: l }: Bench, panels: readonly ExposedFace[]): readonly Part[] {
  const backs = new Set(setOut.joints.filter((j) => j.duty === 'back').map((j) => j.part));
  const behind = (p: Part, other: Part) =>
    overlap(l, other, p, 0) &&
    overlap(l, other, p, 2) &&
    l.ticks(planesOf(l, other).planes['+y']) <= l.ticks(planesOf(l, p).planes['-y']);
  const closed = setOut.parts.filter((p) => backs.has(p.id) && panels.some(({ part }) => behind(p, part)));
  const rails = setOut.parts.filter(
    (p) =>
      p.mark.startsWith('T') &&
      panels.some(({ part }) => behind(p, part)) &&
      closed.some((back) => behind(back, p)),
  );
  return [...closed, ...rails];
}

/** Tops of solid wood whose under face another panel covers: finished above alone they would go hollow. */
function coveredSolidTops({ setOut, ledger: l }: Bench, faces: readonly ExposedFace[]): readonly Part[] {
  const solid = new Set(setOut.gluedPanels.map((g) => g.panel));
  return setOut.parts.filter((p) => {
    if (!solid.has(p.id) || looks(p, 'under') !== '-z') return false;
    const free = faces.find((f) => f.part.id === p.id && f.side === 'under')?.areaMm2 ?? 0;
    return 2 * free < toMm(l.ticks(p.length)) * toMm(l.ticks(p.width));
  });
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
