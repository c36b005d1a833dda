/** A strip of a section, side by side with others and glued to them: breadth, lower and upper edge, modulus. */
export interface SectionStrip {
  readonly breadthMm: number;
  readonly lowerMm: number;
  readonly upperMm: number;
  readonly moeMpa: number;
}

/**
 * Stiffness E I of a glued section, N mm2: each strip's own b t^3 / 12 and its distance from the common neutral axis
 * (which lies at the mean height weighed by E A), each times its E. Mechanics of composite beams.
 */
export function stiffnessNmm2(strips: readonly SectionStrip[]): number {
  let weight = 0;
  let moment = 0;
  for (const s of strips) {
    const ea = s.moeMpa * s.breadthMm * (s.upperMm - s.lowerMm);
    weight += ea;
    moment += (ea * (s.lowerMm + s.upperMm)) / 2;
  }
  const axis = weight === 0 ? 0 : moment / weight;
  return strips.reduce((sum, s) => {
    const t = s.upperMm - s.lowerMm;
    const away = (s.lowerMm + s.upperMm) / 2 - axis;
    return sum + s.moeMpa * s.breadthMm * (t ** 3 / 12 + t * away ** 2);
  }, 0);
}
