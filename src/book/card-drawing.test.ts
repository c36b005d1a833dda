import { expect, test } from 'vitest';
import { smallCaseBook } from '../../test/book/small-case-book.ts';
import { builtExample } from '../../test/build/built.ts';
import { Progress } from './card-drawing.ts';
import { lengthsOf, PLEX } from './index.ts';

test('the card that parts a blank draws both its cuts, each measured from its own edge', () => {
  const { drawn, build, breakdown } = builtExample('writing-cabinet');
  const apart = build.operations.find((o) => o.does.act === 'rip-apart')!;
  const progress = new Progress({ ...smallCaseBook(), setOut: drawn, build, breakdown });
  const lengths = lengthsOf(drawn.ledger, { unit: 'mm', step: 0.5 });
  const drawing = progress.next(apart, lengths, PLEX)!;
  const measured = drawing.marks.flatMap((m) => (m.kind === 'dimension' ? [m.trace] : []));
  expect(measured).toEqual(apart.lengths);
  expect(drawing.marks.filter((m) => m.kind === 'line' && m.pen === 'cut')).toHaveLength(2);
  // It fits in the room beside the card’s words.
  expect(drawing.width).toBeLessThan(58);
});
