import { toMm } from '../measure/index.ts';
import type { SetOut } from '../setting-out/index.ts';
import { clearOf, type Stretch, type TextBox } from './door-marks.ts';
import { line, type Mark, type PaperPoint } from './drawing.ts';
import { partBox } from './traced-box.ts';

/** Length of the arrow that shows that a front is drawn out, its barbs, and the bar that it starts from, on paper. */
const ARROW = 5;
const BARB = 1.4;
const BAR = 3;

/**
 * Drawers seen from the front: on each front a bar, as of a grip, with an arrow toward who stands before it. Lines are
 * broken at figures.
 */
export function drawerMarks(
  setOut: SetOut,
  scale: number,
  zero: PaperPoint,
  figures: readonly TextBox[],
): Mark[] {
  const { ledger } = setOut;
  return setOut.drawers.flatMap(({ parts }): Mark[] => {
    const box = partBox(ledger, setOut.parts.find((p) => p.id === parts.face)!);
    const mm = (t: (typeof box.min)[0]) => toMm(ledger.ticks(t)) * scale;
    const [left, right, lower, upper] = [mm(box.min[0]), mm(box.max[0]), mm(box.min[2]), mm(box.max[2])];
    const x = zero[0] + (left + right) / 2;
    const half = Math.min(ARROW, (upper - lower) * 0.6) / 2;
    const y = zero[1] - (lower + upper) / 2;
    const bar = Math.min(BAR, (right - left) * 0.4);
    const arrow: readonly Stretch[] = [
      [
        [x - bar, y - half],
        [x + bar, y - half],
      ],
      [
        [x, y - half],
        [x, y + half],
      ],
      ...[-1, 1].map(
        (side): Stretch => [
          [x, y + half],
          [x + side * BARB * 0.5, y + half - BARB],
        ],
      ),
    ];
    return arrow.flatMap((l) => clearOf(l, figures).map(([a, b]) => line(a, b, 'fine', 'quiet')));
  });
}
