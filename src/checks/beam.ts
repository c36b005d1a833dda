/** How a shelf is held and loaded. */
export type BeamCase =
  | 'simple-uniform'
  | 'simple-centre'
  | 'fixed-uniform'
  | 'fixed-centre'
  | 'fixed-simple-uniform'
  | 'two-spans-uniform'
  | 'three-spans-uniform'
  | 'cantilever-uniform'
  | 'cantilever-end';

/** A row of the beam tables. */
export interface BeamFormula {
  /** Whether the load is spread along the beam (N/mm) or stands in one place (N). */
  readonly load: 'uniform' | 'point';
  /** Largest sag over w L^4 / (E I), or over P L^3 / (E I). */
  readonly sag: number;
  /** Largest moment over w L^2, or over P L. */
  readonly moment: number;
  readonly source: string;
  readonly confirmed: boolean;
}

function row(
  load: 'uniform' | 'point',
  sag: number,
  moment: number,
  source: string,
  confirmed: boolean,
): BeamFormula {
  return { load, sag, moment, source: `AISC Manual Table 3-23${source}`, confirmed };
}

/** Sag and moment of straight beams of one section. With several spans, all are equal and all are loaded. */
export const BEAMS: Readonly<Record<BeamCase, BeamFormula>> = {
  'simple-uniform': row('uniform', 5 / 384, 1 / 8, ' case 1; Wood Handbook Table 9-1', true),
  'simple-centre': row('point', 1 / 48, 1 / 4, ' case 7', true),
  'fixed-uniform': row('uniform', 1 / 384, 1 / 12, '; Wood Handbook Table 9-1', true),
  'fixed-centre': row('point', 1 / 192, 1 / 8, '', true),
  'fixed-simple-uniform': row('uniform', 1 / 185, 1 / 8, ' case 12; from memory', false),
  'two-spans-uniform': row('uniform', 1 / 185, 1 / 8, ' case 39; from memory', false),
  'three-spans-uniform': row('uniform', 0.0069, 0.1, ' case 42; from memory', false),
  'cantilever-uniform': row('uniform', 1 / 8, 1 / 2, ' case 19', true),
  'cantilever-end': row('point', 1 / 3, 1, ' case 22', true),
};

/** A beam of rectangular section lying flat: a shelf. */
export interface FlatBeam {
  /** Between supports; for several spans one of them, for a cantilever its free length. */
  readonly spanMm: number;
  /** Of the section, front to back. */
  readonly depthMm: number;
  readonly thicknessMm: number;
  readonly moeMpa: number;
}

/** Second moment of area of a rectangle lying flat, b t^3 / 12, mm4. */
export function secondMomentMm4(depthMm: number, thicknessMm: number): number {
  return (depthMm * thicknessMm ** 3) / 12;
}

/**
 * The largest sag in mm of a beam of stiffness E I (N mm2) over a span; `load` in N/mm where the case is uniform,
 * in N where it is a point. Bending only: tabulated moduli of wood have the shear of a span/depth of 14 in them.
 */
export function sagMm(which: BeamCase, load: number, spanMm: number, stiffnessNmm2: number): number {
  const { load: kind, sag } = BEAMS[which];
  return (sag * load * spanMm ** (kind === 'uniform' ? 4 : 3)) / stiffnessNmm2;
}

/** The largest bending moment, N mm; `load` as for `sagMm`. */
export function momentNmm(which: BeamCase, load: number, spanMm: number): number {
  const { load: kind, moment } = BEAMS[which];
  return moment * load * spanMm ** (kind === 'uniform' ? 2 : 1);
}

/** The sag of a shelf in mm; `load` as for `sagMm`. */
export function shelfSagMm(which: BeamCase, load: number, shelf: FlatBeam): number {
  return sagMm(which, load, shelf.spanMm, shelf.moeMpa * secondMomentMm4(shelf.depthMm, shelf.thicknessMm));
}

/** Bending stress at the faces of a flat beam, M t / (2 I), MPa. */
export function bendingStressMpa(momentNmm: number, depthMm: number, thicknessMm: number): number {
  return (momentNmm * thicknessMm) / (2 * secondMomentMm4(depthMm, thicknessMm));
}

/**
 * The longest simple span of a shelf under a load spread over its face (MPa) that keeps the sag within span/`over`,
 * in mm to a thousandth: (384 E t^3 / 12 / (5 over p creep))^(1/3). `creep` multiplies the sag at once; 1 is none.
 */
export function spanForMm(
  pressureMpa: number,
  thicknessMm: number,
  moeMpa: number,
  over: number,
  creep = 1,
): number {
  const cube = (384 * moeMpa * thicknessMm ** 3) / 12 / (5 * over * pressureMpa * creep);
  return Math.round(Math.cbrt(cube) * 1000) / 1000;
}

/** The least thickness that carries the load over the span within span/`over`, mm to a thousandth (rounded up). */
export function thicknessForMm(
  pressureMpa: number,
  spanMm: number,
  moeMpa: number,
  over: number,
  creep = 1,
): number {
  const cube = (12 * 5 * over * pressureMpa * creep * spanMm ** 3) / (384 * moeMpa);
  return Math.ceil(Math.round(Math.cbrt(cube) * 1e6) / 1e3) / 1000;
}
