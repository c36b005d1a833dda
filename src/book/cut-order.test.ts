import { describe, expect, it } from 'vitest';
import { smallCaseBook } from '../../test/book/small-case-book.ts';
import type { Operation } from '../build/index.ts';
import { numberedCuts, piecesUnder } from './cut-order.ts';

describe('the numbers of cuts', () => {
  const input = smallCaseBook();
  const sheet = input.breakdown.lots[0]!.sheets[0]!;
  const cards = input.build.operations;
  const first = (c: ReturnType<typeof numberedCuts>[number]) =>
    piecesUnder(c.node.parts[0])
      .map((p) => p.part.mark)
      .join(' ');

  it('are those of the cards, each on the cut that its card makes', () => {
    const cuts = numberedCuts(sheet, cards).map((c) => `${c.number} ${first(c)}`);
    expect(cuts).toEqual(['1 A B C', '2 A', '3 B', '4 C', '5 D F', '6 D', '7 F']);
  });

  it('pass over a card that only trims a piece, which keeps its name', () => {
    const rip = cards[0]!;
    const trim: Operation = {
      ...rip,
      id: 'trim',
      title: 'Trim piece S1.2 to width',
      does: {
        ...(rip.does as Operation['does'] & { act: 'saw' }),
        workpiece: 'S1.2',
        yields: [{ name: 'S1.2', turned: false }, undefined],
      },
    };
    const cuts = numberedCuts(sheet, [rip, trim, ...cards.slice(1)]).map((c) => `${c.number} ${first(c)}`);
    expect(cuts).toEqual(['1 A B C', '3 A', '4 B', '5 C', '6 D F', '7 D', '8 F']);
  });

  it('go on after the last card where no card makes the cut', () => {
    expect(numberedCuts(sheet, []).map((c) => c.number)).toEqual([1, 2, 3, 4, 5, 6, 7]);
  });
});
