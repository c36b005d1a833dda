export type { Book, BookPage } from './book.ts';
export type { Dimension, Drawing, Face, Mark, PaperPoint, Pen, Stroke, Text, Tone } from './drawing.ts';
export { strokesOf } from './drawing.ts';
export { PENS, TONES } from './pens.ts';
export { toSvg } from './svg.ts';
export type { TextMeasure } from './text-measure.ts';
export { PLEX } from './text-measure.ts';
export type { View, ViewName } from './views.ts';
export { view } from './views.ts';
