import { toMm } from '../measure/index.ts';
import type { SetOut } from '../setting-out/index.ts';
import { clearOf, type Stretch, type TextBox } from './door-marks.ts';
import { line, type Mark, type PaperPoint } from './drawing.ts';
import { partBox } from './traced-box.ts';

/** Length of an arrow that shows which way a door slides, and of its barbs, on paper. */
const ARROW = 12;
const BARB = 1.6;

/**
 * Sliding doors seen from the front, as outlines over what they close, each with an arrow both ways: those in front
 * above the middle of their height, those behind below it. Lines are broken at figures.
 */
export function slidingMarks(
  setOut: SetOut,
  scale: number,
  zero: PaperPoint,
  figures: readonly TextBox[],
): Mark[] {
  const { ledger } = setOut;
  return setOut.sliding.flatMap((set) =>
    set.leaves.flatMap(({ part: id, track }): Mark[] => {
      const box = partBox(ledger, setOut.parts.find((p) => p.id === id)!);
      const x = (t: (typeof box.min)[0]) => zero[0] + toMm(ledger.ticks(t)) * scale;
      const y = (t: (typeof box.min)[0]) => zero[1] - toMm(ledger.ticks(t)) * scale;
      const [left, right, lower, upper] = [x(box.min[0]), x(box.max[0]), y(box.min[2]), y(box.max[2])];
      const corners: readonly PaperPoint[] = [
        [left, lower],
        [right, lower],
        [right, upper],
        [left, upper],
      ];
      const outline = corners.map((c, i): Stretch => [c, corners[(i + 1) % 4]!]);
      const half = Math.min(ARROW, (right - left) * 0.6) / 2;
      const [cx, cy] = [(left + right) / 2, (lower + upper) / 2 + (track - (set.tracks - 1) / 2) * 4];
      const arrow = [
        [
          [cx - half, cy],
          [cx + half, cy],
        ],
        ...[-1, 1].flatMap((way) =>
          [-1, 1].map((side) => [
            [cx + way * half, cy],
            [cx + way * (half - BARB), cy + side * BARB * 0.5],
          ]),
        ),
      ] as unknown as readonly Stretch[];
      return [
        ...outline.flatMap((l) => clearOf(l, figures).map(([a, b]) => line(a, b, 'hidden'))),
        ...arrow.flatMap((l) => clearOf(l, figures).map(([a, b]) => line(a, b, 'fine', 'quiet'))),
      ];
    }),
  );
}
