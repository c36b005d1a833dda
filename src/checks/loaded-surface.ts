import type { JobDocument, Lot } from '../job/index.ts';
import { density, material, panelStiffness, shelfLoad } from '../materials/index.ts';
import { N_PER_KG, type Traced, toMm } from '../measure/index.ts';
import { axisOf, type Part, type Surface } from '../setting-out/index.ts';
import { BEAMS, sagMm } from './beam.ts';
import type { CheckInput } from './check-input.ts';
import { type SectionStrip, stiffnessNmm2 } from './composite.ts';
import { finalFactorOf } from './creep.ts';
import { lengthMm } from './shop-words.ts';
import { standingBox } from './standing-boxes.ts';

/** A surface with what stands on it, before anything is said of its board. */
export interface LoadedSurface {
  readonly part: Part;
  readonly surface: Surface;
  readonly spanMm: number;
  /** How the board's grain runs to the span; `either` where the cut plan may turn the part. */
  readonly grain: 'along' | 'across' | 'either';
  /** The part's size along the span (more than the span where there are several) and across it. */
  readonly runMm: number;
  readonly breadthMm: number;
  readonly loadKg: number;
  /** True when nobody said what it carries and general shelving was reckoned. */
  readonly general: boolean;
  readonly boardKg: number;
  readonly edgingKg: number;
  /** Edging glued on along the whole span, as strips of the section; heights count from the board's under face. */
  readonly edging: readonly SectionStrip[];
}

/** How a board takes it. */
export interface Bending {
  readonly thicknessMm: number;
  /** When it is loaded, and after years. */
  readonly sagMm: number;
  readonly finalMm: number;
  /** Final sag over the sag at once. */
  readonly creep: number;
  /**
   * The longest span at which `factor` times the sag is no more than span/`over`: with the load as close on it as
   * now, or (`whole`) with all of the load still on it. No longer than the span is now in the second case.
   */
  readonly spanForMm: (over: number, factor: number, whole: boolean) => number;
}

/** Reads a surface: its span, its load, how its grain runs and what stiffens it. */
export function loadedSurface(
  { job, setOut, weigh }: Pick<CheckInput, 'job' | 'setOut' | 'weigh'>,
  surface: Surface,
): LoadedSurface {
  const mm = (t: Traced) => toMm(setOut.ledger.ticks(t));
  const part = setOut.parts.find((p) => p.id === surface.part);
  if (!part) throw new Error(`no such part: ${surface.part}`);
  // A span that is the part's own width runs across its length; any other runs along it.
  const across = surface.span === part.width && surface.span !== part.length;
  const [run, breadth, axis] = across
    ? [part.width, part.length, axisOf(part.place.width).axis]
    : [part.length, part.width, axisOf(part.place.length).axis];
  const board = standingBox(setOut, part);
  const strips = setOut.joints
    .filter((j) => j.duty === 'edging' && j.mate === part.id)
    .flatMap((j) => setOut.parts.filter((p) => p.id === j.part));
  const beside = axis === 0 ? 1 : 0;
  const edging = strips.flatMap((strip): SectionStrip[] => {
    const box = standingBox(setOut, strip);
    const wood = material(job.shop.rack.lots.find((l) => l.id === strip.lot)?.material ?? '');
    const whole = box.min[axis] <= board.min[axis] && box.max[axis] >= board.max[axis];
    if (axisOf(strip.place.length).axis !== axis || !whole || wood?.kind !== 'solid') return [];
    return [
      {
        breadthMm: box.max[beside] - box.min[beside],
        lowerMm: box.min[2] - board.min[2],
        upperMm: box.max[2] - board.min[2],
        moeMpa: wood.wood.moeMpa,
      },
    ];
  });
  const areaMm2 = mm(run) * mm(breadth);
  return {
    part,
    surface,
    spanMm: mm(surface.span),
    grain: part.grain === 'free' ? 'either' : across ? 'across' : 'along',
    runMm: mm(run),
    breadthMm: mm(breadth),
    loadKg: surface.loadKg ?? (shelfLoad('general')!.pressureMpa * areaMm2) / N_PER_KG,
    general: surface.loadKg === undefined,
    boardKg: weigh(part.id).kg,
    edgingKg: strips.reduce((sum, s) => sum + weigh(s.id).kg, 0),
    edging,
  };
}

/** The modulus of a lot's board the way a span runs over it; undefined where none is known. */
export function moeOf(
  lot: Lot,
  nominalMm: number,
  grain: LoadedSurface['grain'],
): { readonly moeMpa: number; readonly creepKind: string } | undefined {
  const found = material(lot.material);
  if (found?.kind === 'solid')
    return grain === 'along' ? { moeMpa: found.wood.moeMpa, creepKind: 'solid' } : undefined;
  const row = found && panelStiffness(found.id, nominalMm);
  if (!row) return undefined;
  const { parallelMpa: along, perpendicularMpa: cross } = row;
  const moeMpa =
    grain === 'along'
      ? along
      : grain === 'across'
        ? cross
        : cross === undefined
          ? undefined
          : Math.min(along, cross);
  return moeMpa === undefined ? undefined : { moeMpa, creepKind: found.sheet.kind };
}

/**
 * Bends a surface made of a lot's board. The load and the board's own weight are spread evenly over it; its ends
 * rest only, which is what screws leave of them after years. Undefined where the board's stiffness isn't known.
 */
export function bend({ job }: Pick<CheckInput, 'job'>, s: LoadedSurface, lot: Lot): Bending | undefined {
  const nominalMm = lengthMm(job, lot.nominal);
  const thicknessMm = lengthMm(job, lot.thickness ?? lot.nominal);
  const board = moeOf(lot, nominalMm, s.grain);
  if (!board) return undefined;
  const own =
    lot.id === s.part.lot
      ? s.boardKg
      : ((density(lot.material)?.kgM3 ?? 0) * s.runMm * s.breadthMm * thicknessMm) / 1e9;
  const stiffness = stiffnessNmm2([
    { breadthMm: s.breadthMm, lowerMm: 0, upperMm: thicknessMm, moeMpa: board.moeMpa },
    // Edging is as high as its board, whichever board that is.
    ...s.edging.map((e) => (lot.id === s.part.lot ? e : { ...e, lowerMm: 0, upperMm: thicknessMm })),
  ]);
  const nPerMm = ((s.loadKg + own + s.edgingKg) * N_PER_KG) / s.runMm;
  const sag = sagMm('simple-uniform', nPerMm, s.spanMm, stiffness);
  // What isn't meant for a heated room has no factor; such a row doesn't exist for class 1.
  const creep = finalFactorOf(board.creepKind, 1) ?? 1;
  return {
    thicknessMm,
    sagMm: sag,
    finalMm: sag * creep,
    creep,
    spanForMm: (over, factor, whole) => {
      const perMm = factor * BEAMS['simple-uniform'].sag * over;
      if (!whole) return thousandths(Math.cbrt(stiffness / (perMm * nPerMm)));
      // (W / L + own) L^3 grows with L, so the longest span is closed in on from both sides.
      const ownPerMm = nPerMm - (s.loadKg * N_PER_KG) / s.runMm;
      let [does, fails] = [0, s.spanMm];
      for (let i = 0; i < 40; i++) {
        const span = (does + fails) / 2;
        const sags = perMm * (s.loadKg * N_PER_KG + ownPerMm * span) * span * span;
        if (sags <= stiffness) does = span;
        else fails = span;
      }
      return thousandths(does);
    },
  };
}

function thousandths(mm: number): number {
  return Math.round(mm * 1000) / 1000;
}

/** A lot of the checked document. */
export function lotOf(job: JobDocument, id: string): Lot {
  const lot = job.shop.rack.lots.find((l) => l.id === id);
  if (!lot) throw new Error(`unchecked lot: ${id}`);
  return lot;
}
