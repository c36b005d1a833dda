import { describe, it } from 'vitest';
import { expectGolden } from '../../test/book/golden.ts';
import { smallCase } from '../../test/book/small-case.ts';
import { smallCaseBook } from '../../test/book/small-case-book.ts';
import type { LengthFormat } from '../measure/index.ts';
import { numberedCuts } from './cut-order.ts';
import { book, isometric, lengthsOf, PLEX, partDrawing, sheetLayout, view } from './index.ts';

const MM: LengthFormat = { unit: 'mm', step: 0.5 };
const INCHES: LengthFormat = { unit: 'in', denominator: 16 };

describe('views', () => {
  const setOut = smallCase();
  for (const name of ['front', 'side', 'plan'] as const) {
    it(`${name} in millimetres`, () => expectGolden(`${name}-mm`, view(setOut, name, 1 / 7.5, MM, PLEX)));
    it(`${name} in inches`, () => expectGolden(`${name}-inches`, view(setOut, name, 1 / 8, INCHES, PLEX)));
  }
  it('front, very small', () => expectGolden('front-small', view(setOut, 'front', 1 / 20, MM, PLEX)));
});

describe('pictures', () => {
  const setOut = smallCase();
  const room = { width: 120, height: 120 };
  it('the whole piece', () => expectGolden('isometric', isometric(setOut, { room })));
  it('the mitred base', () => {
    const parts = setOut.parts.filter((p) => p.record === 'base').map((p) => p.id);
    expectGolden('isometric-base', isometric(setOut, { parts, room }));
  });
  it('the shelf going in', () => {
    const parts = setOut.parts.slice(0, 6).map((p) => p.id);
    expectGolden('isometric-shelf', isometric(setOut, { parts, marked: ['shelf/shelf'], room }));
  });
  it('the back, seen from behind', () => {
    const parts = setOut.parts.slice(0, 7).map((p) => p.id);
    expectGolden('isometric-back', isometric(setOut, { parts, marked: ['back/back'], room }));
  });
});

describe('sheets and parts', () => {
  const input = smallCaseBook();
  const { ledger } = input.setOut;
  const lengths = lengthsOf(ledger, MM);
  const [plywood, , strips] = input.breakdown.lots;
  it('a sheet with cuts numbered by their cards', () => {
    const sheet = plywood!.sheets[0]!;
    const cuts = numberedCuts(sheet, input.build.operations);
    const drawn = { sheet, form: 'sheet', kerf: plywood!.problem.kerf, cuts, ledger, lengths } as const;
    expectGolden('sheet', sheetLayout(drawn, 0.065, PLEX));
  });
  it('a strip', () => {
    const sheet = strips!.sheets[0]!;
    const cuts = numberedCuts(sheet, []);
    const drawn = { sheet, form: 'strip', kerf: strips!.problem.kerf, cuts, ledger, lengths } as const;
    expectGolden('strip', sheetLayout(drawn, 0.065, PLEX));
  });
  it('a part with its pockets', () => {
    const part = input.setOut.parts.find((p) => p.mark === 'C')!;
    expectGolden('part', partDrawing(part, ledger, lengths, { width: 100, height: 60 }, PLEX));
  });
});

describe('pages', () => {
  const pages = book(smallCaseBook()).pages;
  it('cover', () => expectGolden('page-cover', pages[0]!));
  for (const kind of ['cutting-list', 'sheets', 'shopping', 'time', 'steps', 'labels', 'snags'] as const)
    it(`first page of ${kind}`, () => expectGolden(`page-${kind}`, pages.find((p) => p.kind === kind)!));
});
