import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { smallCase } from '../../test/book/small-case.ts';
import { builtExample } from '../../test/build/built.ts';
import type { LengthFormat } from '../measure/index.ts';
import { type Dimension, dimensionClashes, PLEX, view } from './index.ts';

const FORMATS: readonly LengthFormat[] = [
  { unit: 'mm', step: 0.5 },
  { unit: 'in', denominator: 16 },
  { unit: 'in', denominator: 64 },
];

describe('views', () => {
  const setOut = smallCase();
  const shown = (name: 'front' | 'side' | 'plan') =>
    view(setOut, name, 0.1, FORMATS[0]!, PLEX).marks.filter((m): m is Dimension => m.kind === 'dimension');

  it('read clearly at any scale and in any format', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('front', 'side', 'plan'),
        fc.integer({ min: 4, max: 28 }),
        fc.constantFrom(...FORMATS),
        (name, scale, format) => {
          expect(dimensionClashes(view(setOut, name, 1 / scale, format, PLEX), PLEX)).toEqual([]);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('show the overall sizes, the bays, the steps of the outline and the clear heights', () => {
    const words = shown('front').map((d) => d.label.text);
    expect(words.sort()).toEqual(
      ['800', '620', '70', '550', '40', '720', '40', '373.6', '373.6', '514.8', '240', '257.2'].sort(),
    );
    expect(
      shown('side')
        .map((d) => d.label.text)
        .sort(),
    ).toEqual(['280', '320', '40', '620']);
    expect(
      shown('plan')
        .map((d) => d.label.text)
        .sort(),
    ).toEqual(['320', '800']);
  });

  it('refer every figure to the ledger entry that it shows', () => {
    for (const d of shown('front')) {
      const mm = setOut.ledger.ticks(d.trace) / 3200;
      expect(`${Math.round(mm * 10) / 10}`).toBe(d.label.text);
    }
  });

  it('draw each dimension as long as it says', () => {
    for (const d of shown('front')) {
      const mm = setOut.ledger.ticks(d.trace) / 3200;
      const ticks = d.strokes.filter((s) => s.pen === 'thin');
      const middle = ticks.map((s) => [(s.from[0] + s.to[0]) / 2, (s.from[1] + s.to[1]) / 2] as const);
      const [a, b] = middle as [readonly [number, number], readonly [number, number]];
      expect(Math.hypot(b[0] - a[0], b[1] - a[1])).toBeCloseTo(mm / 10, 6);
    }
  });
});

it('measures no space behind another from the front, and the depth once, without handles', () => {
  const { drawn } = builtExample('radio-station');
  for (const name of ['front', 'side', 'plan'] as const)
    expect(dimensionClashes(view(drawn, name, 1 / 10, FORMATS[0]!, PLEX), PLEX)).toEqual([]);
  const plan = view(drawn, 'plan', 1 / 10, FORMATS[0]!, PLEX);
  expect(plan.marks.filter((m) => m.kind === 'dimension' && m.label.text === '430').length).toBe(1);
});
