import type { BookBreakdown } from '../../src/book/index.ts';
import type { PlannedNode, PlannedSheet } from '../../src/breakdown/index.ts';
import { fromMm } from '../../src/measure/index.ts';
import type { Part, SetOut } from '../../src/setting-out/index.ts';

/** The small case laid on stock by hand: rows of parts ripped off a sheet, one sheet of thin plywood, two strips. */
export function smallCaseSheets(setOut: SetOut): BookBreakdown {
  const l = setOut.ledger;
  const typed = (path: string, mm: number) => l.document(path, fromMm(mm), `${mm} mm`);
  const kerf = typed('shop.saw.kerf', 2.2);
  const none = typed('design.floor', 0);
  const part = (mark: string): Part => setOut.parts.find((p) => p.mark === mark)!;

  type Area = Pick<PlannedNode, 'x' | 'y' | 'length' | 'width' | 'needs'>;
  let kept = 0;
  const row = (marks: readonly string[], area: Area, sheet: string): PlannedNode => {
    const [mark, ...rest] = marks;
    if (mark === undefined) return { ...area, kind: 'left', name: `${sheet}-left${++kept}` };
    const p = part(mark);
    const piece = { ...area, length: p.length, kind: 'piece' as const, part: p, size: p, turned: false };
    const at = l.sum('end of the piece', area.x, p.length);
    const left = l.less('rest of the row', area.length, p.length, kerf);
    const behind = { ...area, x: l.sum('behind the kerf', at, kerf), length: left };
    return { ...area, kind: 'cut', across: 'length', at, parts: [piece, row(rest, behind, sheet)] };
  };
  const rows = (list: readonly (readonly string[])[], area: Area, sheet: string): PlannedNode => {
    const [first, ...rest] = list;
    if (!first) return { ...area, kind: 'left', name: `${sheet}-left${++kept}` };
    const high = part(first[0]!).width;
    const at = l.sum('far edge of the row', area.y, high);
    const left = l.less('rest of the sheet', area.width, high, kerf);
    const behind = { ...area, y: l.sum('behind the kerf', at, kerf), width: left };
    return {
      ...area,
      kind: 'cut',
      across: 'width',
      at,
      parts: [row(first, { ...area, width: high }, sheet), rows(rest, behind, sheet)],
    };
  };
  const sheet = (
    name: string,
    lot: string,
    size: readonly [number, number, number],
    onRack: boolean,
    cut: (area: Area) => PlannedNode,
  ): PlannedSheet => {
    const length = typed(`shop.rack.${name}.length`, size[0]);
    const width = typed(`shop.rack.${name}.width`, size[1]);
    const trim = typed(`shop.rack.${name}.trim`, size[2]);
    const area = {
      needs: {},
      x: trim,
      y: size[2] === 0 ? none : trim,
      length: l.less('length inside the trim', length, trim, trim),
      width: size[2] === 0 ? width : l.less('width inside the trim', width, trim, trim),
    };
    const stock = { id: `${name}-stock`, name: onRack ? 'offcut' : 'full sheet', length: `${size[0]} mm` };
    return { name, lot, source: { stock, onRack, length, width, trim, flaws: [] }, root: cut(area) };
  };

  const main = sheet('S1', 'birch18', [2500, 1250, 10], false, (a) =>
    rows(
      [
        ['A', 'B', 'C'],
        ['D', 'F'],
      ],
      a,
      'S1',
    ),
  );
  const divider = sheet('S2', 'birch18', [700, 360, 0], true, (a) => rows([['E']], a, 'S2'));
  const back = sheet('S3', 'birch6', [1250, 1250, 10], true, (a) => rows([['G']], a, 'S3'));
  const strips = [
    sheet('L1', 'birch70', [2400, 70, 0], true, (a) => row(['H', 'I', 'J', 'K'], a, 'L1')),
    sheet('L2', 'birch70', [1100, 70, 0], true, (a) => row(['H'], a, 'L2')),
  ];
  const lot = (id: string, name: string, form: 'sheet' | 'strip', sheets: PlannedSheet[]) => ({
    lot: { id, name, form, stock: sheets.map((s) => s.source.stock) },
    problem: { kerf },
    sheets,
  });
  return {
    lots: [
      lot('birch18', 'Birch plywood 18 mm, measured 17.6 mm', 'sheet', [main, divider]),
      lot('birch6', 'Birch plywood 6 mm, measured 6.2 mm', 'sheet', [back]),
      lot('birch70', 'Birch plywood strips 70 mm', 'strip', strips),
    ],
    missing: [],
    spares: setOut.parts.map((part) =>
      part.lot === 'birch70'
        ? { part, from: 'nothing' }
        : { part, from: 'buy', name: part.lot === 'birch18' ? 'S1-stock' : 'S3-stock' },
    ),
  };
}
