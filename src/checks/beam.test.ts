import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { panelStiffness, shelfLoad, species } from '../materials/index.ts';
import { MM_PER_INCH, MPA_PER_PSF, MPA_PER_PSI } from '../measure/index.ts';
import {
  BEAMS,
  type BeamCase,
  bendingStressMpa,
  momentNmm,
  sagMm,
  secondMomentMm4,
  shelfSagMm,
  spanForMm,
  thicknessForMm,
} from './beam.ts';

describe('Architectural Woodwork Standards, 1st ed. (2009), section 10, 4.4.14.10.11 to .13 (read)', () => {
  // Modulus in psi, thickness in inches, load in lb/ft2, the published longest span in inches at span/144.
  // One of the twelve is rounded and the others are cut down to a whole inch, so the formula lies up to 0.75 above.
  test.each([
    [950_000, 0.75, 40, 40],
    [950_000, 0.75, 50, 37],
    [950_000, 1, 40, 53],
    [950_000, 1, 50, 49],
    [1_800_000, 0.75, 40, 49],
    [1_800_000, 0.75, 50, 46],
    [1_800_000, 1, 40, 66],
    [1_800_000, 1, 50, 61],
    [1_820_000, 0.75, 40, 49],
    [1_820_000, 0.75, 50, 46],
    [1_820_000, 1, 40, 66],
    [1_820_000, 1, 50, 61],
  ])('%d psi, %d in, %d lb/ft2: %d in', (psi, thickness, psf, published) => {
    const span = spanForMm(psf * MPA_PER_PSF, thickness * MM_PER_INCH, psi * MPA_PER_PSI, 144) / MM_PER_INCH;
    expect(span).toBeGreaterThan(published - 0.05);
    expect(span).toBeLessThan(published + 0.75);
  });

  test('the tables of materials and loads give the same spans as their own psi and lb/ft2', () => {
    const fir = panelStiffness('fir-plywood', 19.05)!.parallelMpa;
    const faced = panelStiffness('fir-core-hardwood-plywood', 19.05)!.parallelMpa;
    const spans = [
      spanForMm(shelfLoad('general')!.pressureMpa, 19.05, fir, 144),
      spanForMm(shelfLoad('books')!.pressureMpa, 25.4, fir, 144),
      spanForMm(shelfLoad('general')!.pressureMpa, 25.4, faced, 144),
    ];
    expect(spans[0]! / MM_PER_INCH).toBeCloseTo(40.03, 1);
    expect(spans[1]! / MM_PER_INCH).toBeCloseTo(49.54, 1);
    expect(spans[2]! / MM_PER_INCH).toBeCloseTo(66.04, 1);
  });
});

describe('worked examples', () => {
  test('2 kN/m over 6 m, E 200 GPa, I 8e-6 m4: 21.09 mm (published study note prints 21 mm)', () => {
    expect(sagMm('simple-uniform', 2, 6000, 200_000 * 8e6)).toBeCloseTo(21.09, 2);
  });

  test.each([
    ['red oak', 1_820_000, 0.0949],
    ['fir-core plywood', 950_000, 0.1819],
  ])('%s, 3/4 in, 36 in, 40 lb/ft2: %d psi sags %d in (arithmetic)', (_, psi, sag) => {
    const depthMm = 300;
    const shelf = {
      spanMm: 36 * MM_PER_INCH,
      depthMm,
      thicknessMm: 0.75 * MM_PER_INCH,
      moeMpa: psi * MPA_PER_PSI,
    };
    const sagged = shelfSagMm('simple-uniform', 40 * MPA_PER_PSF * depthMm, shelf) / MM_PER_INCH;
    expect(Math.abs(sagged - sag)).toBeLessThan(0.0002);
    expect(sagged).toBeLessThan(36 / 144);
  });

  test('the depth of a shelf does not matter when its load is spread over its face', () => {
    const oak = species('oak-northern-red')!.moeMpa;
    const sag = (depthMm: number) =>
      shelfSagMm('simple-uniform', 0.002 * depthMm, { spanMm: 900, depthMm, thicknessMm: 19, moeMpa: oak });
    expect(sag(400)).toBeCloseTo(sag(200), 10);
  });

  test('the classic test of wood, E = P l^3 / (4 D b h^3), is the centre-loaded simple span (timber text, 1914)', () => {
    const [p, l, e, b, h] = [500, 700, 12_000, 50, 50];
    const d = sagMm('simple-centre', p, l, e * secondMomentMm4(b, h));
    expect((p * l ** 3) / (4 * d * b * h ** 3)).toBeCloseTo(e, 6);
  });
});

/** Sag found by integrating the bending of a beam by Simpson's rule: no table, no shared code. */
function integratedSag(moment: (x: number) => number, simple: boolean): number {
  // Unit span, E I = 1. Slope and deflection by cumulative integration; ends at rest.
  const n = 20_000;
  const h = 1 / n;
  let slope = 0;
  let y = 0;
  const ys = [0];
  for (let i = 0; i < n; i++) {
    const x = i * h;
    const mid = slope + (h / 2) * moment(x + h / 4);
    slope += h * moment(x + h / 2);
    y += h * mid;
    ys.push(y);
  }
  const tilt = simple ? y : 0;
  return Math.max(...ys.map((v, i) => Math.abs(v - tilt * i * h)));
}

describe('the coefficients follow from the bending moment of each case (integrated here)', () => {
  const cases: [BeamCase, (x: number) => number, boolean][] = [
    ['simple-uniform', (x) => (x * (1 - x)) / 2, true],
    ['simple-centre', (x) => Math.min(x, 1 - x) / 2, true],
    ['fixed-uniform', (x) => (x * (1 - x)) / 2 - 1 / 12, false],
    ['fixed-centre', (x) => Math.min(x, 1 - x) / 2 - 1 / 8, false],
    ['fixed-simple-uniform', (x) => (5 / 8) * x - 1 / 8 - (x * x) / 2, false],
    ['two-spans-uniform', (x) => (3 / 8) * x - (x * x) / 2, true],
    ['three-spans-uniform', (x) => 0.4 * x - (x * x) / 2, true],
    ['cantilever-uniform', (x) => (1 - x) ** 2 / 2, false],
    ['cantilever-end', (x) => 1 - x, false],
  ];
  test.each(cases)('%s', (which, moment, simple) => {
    const row = BEAMS[which];
    expect(integratedSag(moment, simple) / row.sag).toBeCloseTo(1, 2);
    const largest = Math.max(...Array.from({ length: 1001 }, (_, i) => Math.abs(moment(i / 1000))));
    expect(largest).toBeCloseTo(momentNmm(which, 1, 1), 3);
  });

  test('every case was integrated', () => {
    expect(cases.map(([c]) => c).sort()).toEqual(Object.keys(BEAMS).sort());
  });
});

test('bending stress is M / W, W = b t^2 / 6 for a rectangle', () => {
  expect(bendingStressMpa(60_000, 100, 6)).toBeCloseTo(60_000 / ((100 * 36) / 6), 9);
});

test('the span for a limit and the thickness for a span agree, and sag exactly to the limit', () => {
  const some = { noNaN: true, noDefaultInfinity: true };
  fc.assert(
    fc.property(
      fc.double({ min: 0.0002, max: 0.01, ...some }),
      fc.double({ min: 6, max: 60, ...some }),
      fc.double({ min: 2000, max: 16_000, ...some }),
      fc.constantFrom(144, 250, 384),
      fc.double({ min: 1, max: 3.5, ...some }),
      (pressure, thicknessMm, moeMpa, over, creep) => {
        const spanMm = spanForMm(pressure, thicknessMm, moeMpa, over, creep);
        const sag =
          creep * shelfSagMm('simple-uniform', pressure * 300, { spanMm, depthMm: 300, thicknessMm, moeMpa });
        expect((sag * over) / spanMm).toBeCloseTo(1, 4);
        expect(Math.abs(thicknessForMm(pressure, spanMm, moeMpa, over, creep) - thicknessMm)).toBeLessThan(
          0.003,
        );
      },
    ),
  );
});
