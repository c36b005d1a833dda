import { describe, expect, test } from 'vitest';
import { cupboard } from '../../test/doors/door-job.ts';
import { setOut } from '../setting-out/index.ts';
import { dimensionClashes, PLEX, type View, view } from './index.ts';

const piece = setOut(cupboard());
const front = (scale: number) => view(piece, 'front', scale, { unit: 'mm', step: 0.5 }, PLEX);
const swings = (v: View) =>
  v.marks.filter((m) => m.kind === 'line' && m.pen === 'fine' && m.tone === 'quiet');

describe('doors from the front', () => {
  test('are outlines: what is behind them is seen, and figures stay clear of their lines', () => {
    for (const scale of [1 / 5, 1 / 10, 1 / 12.5, 1 / 20])
      expect(dimensionClashes(front(scale), PLEX)).toEqual([]);
    const words = front(0.1).marks.flatMap((m) => (m.kind === 'dimension' ? [m.label.text] : []));
    expect(words).toContain('620');
  });

  test('have a mark at every hinge, and lines that meet on the hinges’ edge', () => {
    const v = front(0.1);
    const hinges = v.marks.filter((m) => m.kind === 'polygon' && m.fill === 'ink');
    expect(hinges).toHaveLength(6);
    expect(swings(v).length).toBeGreaterThanOrEqual(6);
  });
});
