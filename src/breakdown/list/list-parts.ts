import type { Shop } from '../../job/index.ts';
import { SETTING_OUT } from '../../materials/index.ts';
import { Ledger, parseLength, type Traced } from '../../measure/index.ts';
import { Dimensions, type Part, type SetOut, sawnSize, sawStep } from '../../setting-out/index.ts';
import type { ListRow } from './read-list.ts';

/**
 * The pieces of a list as loose parts: they belong to no piece of furniture, so there are no joints and no places.
 * Marks are `P1`, `P2`, ... in the order of the list; every size leads back to its row.
 */
export function listParts(rows: readonly ListRow[], shop: Shop): SetOut {
  const ledger = new Ledger();
  const nothing = ledger.row(SETTING_OUT.nothing);
  const typed = (path: string, text: string): Traced => {
    const read = parseLength(text, shop.units);
    if (!read.ok) throw new Error(`unchecked length at ${path}: ${read.problem}`);
    return ledger.document(path, read.value, text);
  };
  const step = sawStep(ledger, shop);
  const parts: Part[] = [];
  for (const row of rows) {
    const { lot } = row;
    const at = `list/row${row.row}`;
    const inLot = `shop/rack/lots/${lot.id}`;
    const width = row.width
      ? ledger.document(`${at}/width`, row.width.value, row.width.typed)
      : typed(`${inLot}/width`, lot.width!);
    for (let i = 1; i <= row.count; i++) {
      const part = {
        id: `row${row.row}/piece:${i}`,
        record: `row${row.row}`,
        role: `piece:${i}`,
        name: row.name,
        mark: `P${parts.length + 1}`,
        lot: lot.id,
        form: lot.form,
        length: ledger.document(`${at}/length`, row.length.value, row.length.typed),
        width,
        thickness:
          lot.thickness === undefined
            ? typed(`${inLot}/nominal`, lot.nominal)
            : typed(`${inLot}/thickness`, lot.thickness),
        grain: row.grain,
        place: { origin: [nothing, nothing, nothing], length: '+x', width: '+y', thickness: '+z' },
        features: [],
        hand: 'none',
        between: false,
        ...(row.strip === undefined ? {} : { strip: { id: row.strip, follow: followOf(row, rows, shop) } }),
      } as const;
      parts.push({ ...part, cut: sawnSize(ledger, step, part) });
    }
  }
  return {
    ledger,
    parts,
    gluedPanels: [],
    cleats: [],
    joinedBlanks: [],
    splines: [],
    joints: [],
    fasteners: [],
    pegs: [],
    openings: [],
    surfaces: [],
    doors: [],
    pinned: [],
    drawers: [],
    lids: [],
    scribedTops: [],
    pulls: [],
    levellers: [],
    fits: [],
    sliding: [],
    overall: { width: nothing, height: nothing, depth: nothing },
    sides: [],
    joinery: [],
    dimensions: new Dimensions(
      parts.flatMap((p) => [
        [`${p.mark}.length`, p.length],
        [`${p.mark}.width`, p.width],
      ]),
    ),
    snags: [],
  };
}

/**
 * Pieces of one length stand side by side in their strip; pieces of one width, if not, end to end. So do those that are alike both
 * ways and side by side too wide for all stock.
 */
function followOf(row: ListRow, rows: readonly ListRow[], shop: Shop): 'length' | 'width' {
  const strip = rows.filter((r) => r.strip === row.strip);
  const alike = (of: (r: ListRow) => number | undefined) => strip.every((r) => of(r) === of(strip[0]!));
  if (!alike((r) => r.width?.value)) return 'width';
  if (!alike((r) => r.length.value)) return 'length';
  const wide = strip.reduce((sum, r) => sum + r.count * (r.width?.value ?? 0), 0);
  const widths = row.lot.stock.flatMap((s) => {
    const read = s.width === undefined ? undefined : parseLength(s.width, shop.units);
    return read?.ok ? [read.value] : [];
  });
  return widths.every((w) => wide > w) ? 'length' : 'width';
}
