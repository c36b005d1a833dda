import type { Pen, Tone } from './drawing.ts';

/** Line widths and dashes in millimetres. Widths follow the steps of ISO 128-2 (0.13, 0.18, 0.25, 0.35, 0.5). */
export const PENS: Readonly<Record<Pen, { readonly width: number; readonly dash: readonly number[] }>> = {
  outline: { width: 0.5, dash: [] },
  edge: { width: 0.35, dash: [] },
  thin: { width: 0.25, dash: [] },
  fine: { width: 0.13, dash: [] },
  hidden: { width: 0.18, dash: [1.6, 0.9] },
  centre: { width: 0.18, dash: [4, 0.8, 0.6, 0.8] },
  cut: { width: 0.7, dash: [] },
};

/**
 * The book's colours. Warm wood tones for what is made, a quiet blue for what is measured, and a red earth kept
 * for cautions alone; all of them hold up in a black and white print.
 */
export const TONES: Readonly<Record<Tone, string>> = {
  ink: '#1e2329',
  quiet: '#626b74',
  faint: '#c3c9ce',
  measure: '#1d4f76',
  paper: '#ffffff',
  wood: '#f1dfc0',
  'wood-side': '#e2c99f',
  'wood-top': '#f8ecd6',
  board: '#f6f5f1',
  'board-side': '#eae8e1',
  'board-top': '#fcfbf9',
  shade: '#f0f2f3',
  warn: '#9c3d17',
  'warn-paper': '#fbf0ea',
};
