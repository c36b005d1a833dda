import { toMm } from '../measure/index.ts';
import type { SetOut } from '../setting-out/index.ts';
import type { textBox } from './dimension-clashes.ts';
import { line, type Mark, type PaperPoint, rectangle } from './drawing.ts';
import { partBox } from './traced-box.ts';

export type TextBox = ReturnType<typeof textBox>;
export type Stretch = readonly [PaperPoint, PaperPoint];

/** Room left round a figure where a line is broken for it. */
const ROOM = 0.6;

/** Half the height of a hinge's mark on paper, and its width. */
const HINGE = { half: 1.2, width: 0.9 };

/**
 * Doors seen from the front, as outlines over what they close: two lines run from the free corners to the middle of
 * the edge that the hinges are on, where each hinge has its mark. Lines are broken at figures.
 */
export function doorMarks(
  setOut: SetOut,
  scale: number,
  zero: PaperPoint,
  figures: readonly TextBox[],
): Mark[] {
  const { ledger } = setOut;
  return setOut.doors.flatMap((leaf): Mark[] => {
    const part = setOut.parts.find((p) => p.id === leaf.part)!;
    const box = partBox(ledger, part);
    const x = (t: (typeof box.min)[0]) => zero[0] + toMm(ledger.ticks(t)) * scale;
    const y = (t: (typeof box.min)[0]) => zero[1] - toMm(ledger.ticks(t)) * scale;
    const [left, right] = [x(box.min[0]), x(box.max[0])];
    const [lower, upper] = [y(box.min[2]), y(box.max[2])];
    const [hung, free] = leaf.hung === 'right' ? [right, left] : [left, right];
    const middle = (lower + upper) / 2;
    const flap = leaf.hung === 'above' || leaf.hung === 'below';
    const [sill, lip] = leaf.hung === 'above' ? [upper, lower] : [lower, upper];
    const outline: readonly Stretch[] = [
      [
        [left, lower],
        [right, lower],
      ],
      [
        [right, lower],
        [right, upper],
      ],
      [
        [right, upper],
        [left, upper],
      ],
      [
        [left, upper],
        [left, lower],
      ],
    ];
    const half = Math.min(HINGE.half, 25 * scale);
    const across = (left + right) / 2;
    const swing: readonly Stretch[] = flap
      ? [
          [
            [left, lip],
            [across, sill],
          ],
          [
            [across, sill],
            [right, lip],
          ],
        ]
      : [
          [
            [free, upper],
            [hung, middle],
          ],
          [
            [hung, middle],
            [free, lower],
          ],
        ];
    const hinges = leaf.hinges.map((at) => {
      const away = toMm(ledger.ticks(at)) * scale;
      return flap
        ? rectangle(left + away - half, sill - HINGE.width / 2, 2 * half, HINGE.width, { fill: 'ink' })
        : rectangle(hung - HINGE.width / 2, lower - away - half, HINGE.width, 2 * half, { fill: 'ink' });
    });
    return [
      ...outline.flatMap((l) => clearOf(l, figures).map(([a, b]) => line(a, b, 'hidden'))),
      ...swing.flatMap((l) => clearOf(l, figures).map(([a, b]) => line(a, b, 'fine', 'quiet'))),
      ...hinges,
    ];
  });
}

/** What is left of a line outside of boxes. */
export function clearOf(whole: Stretch, boxes: readonly TextBox[]): readonly Stretch[] {
  let stretches: readonly Stretch[] = [whole];
  for (const box of boxes) stretches = stretches.flatMap((s) => around(s, box));
  return stretches;
}

function around([a, b]: Stretch, box: TextBox): readonly Stretch[] {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  let [from, to] = [0, 1];
  for (const [start, run, low, high] of [
    [a[0], dx, box.left - ROOM, box.right + ROOM],
    [a[1], dy, box.top - ROOM, box.bottom + ROOM],
  ] as const) {
    if (Math.abs(run) < 1e-9) {
      if (start <= low || start >= high) return [[a, b]];
      continue;
    }
    const [p, q] = [(low - start) / run, (high - start) / run];
    from = Math.max(from, Math.min(p, q));
    to = Math.min(to, Math.max(p, q));
  }
  if (from >= to) return [[a, b]];
  const at = (t: number): PaperPoint => [a[0] + dx * t, a[1] + dy * t];
  return [...(from > 0 ? [[a, at(from)] as const] : []), ...(to < 1 ? [[at(to), b] as const] : [])];
}
