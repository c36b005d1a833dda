import { spareGroups } from '../breakdown/index.ts';
import { toMm } from '../measure/index.ts';
import { joinMarks } from '../setting-out/index.ts';
import type { BookInput } from './book-input.ts';
import { type NumberedCut, numberedCuts, type PlannedCut, piecesUnder } from './cut-order.ts';
import { type Mark, text } from './drawing.ts';
import type { Block } from './flow.ts';
import { grainArrow } from './grain-arrow.ts';
import { type Lengths, lengthsOf } from './lengths.ts';
import { sheetLayout, sheetScale } from './sheet-layout.ts';
import { type Cell, table } from './table.ts';
import type { TextMeasure } from './text-measure.ts';
import { heading, note } from './words.ts';

const TALLEST = 100;
const WHY = {
  'stock-used-up': 'the stock is used up',
  'larger-than-all-stock': 'it is larger than all stock',
  rules: 'the shop’s rules for cuts leave no way',
} as const;

/** The sheets and strips of every lot: how they lie, and their cuts in order below. */
export function sheetBlocks(input: BookInput, width: number, type: TextMeasure): Block[] {
  const { ledger } = input.setOut;
  const lengths = lengthsOf(ledger, input.format);
  const cards = input.build.operations;
  const blocks: Block[] = [
    note(
      'As the sheet lies: grain from left to right, the trued edge at the bottom, the squared end at the left. Distances run from the lower edge or the left end of what is being cut. The number in a ring is the number of the step card that makes the cut; cuts that only true or trim are on the cards alone. The blue line beside a cut is the side on which the rail lies; the stubs at the rim show where the battens run that carry the sheet, at most 600 mm (24 in) apart. Hatched is what is left over, a crossed box a flaw, a dashed cut one made roughly at the yard.',
      width,
      type,
    ),
  ];
  for (const { lot, problem, sheets } of input.breakdown.lots) {
    if (sheets.length === 0) continue;
    blocks.push(heading(lot.name, width, type));
    const strip = lot.form === 'strip';
    const longest = Math.max(...sheets.map((s) => toMm(ledger.ticks(s.source.length))));
    // Offcuts are drawn a little larger than full sheets would be, but not so large that they look like one.
    const least = Math.min(
      ...sheets.map((s) =>
        sheetScale(toMm(ledger.ticks(s.source.length)), toMm(ledger.ticks(s.source.width)), {
          width,
          height: TALLEST,
        }),
      ),
    );
    for (const sheet of sheets) {
      const { source } = sheet;
      const cuts = numberedCuts(sheet, cards);
      const size = strip
        ? lengths.bare(source.length)
        : `${lengths.bare(source.length)} × ${lengths.bare(source.width)}`;
      const kind = source.stock.name ?? (strip ? 'strip' : 'sheet');
      const from = source.onRack ? 'from the rack' : 'to buy';
      blocks.push({
        ...sheetTitle(sheet.name, `${kind}, ${size}`, from, width, type),
        before: 5,
        keep: true,
      });
      const wide = strip ? undefined : toMm(ledger.ticks(source.width));
      const long = strip ? longest : toMm(ledger.ticks(source.length));
      const fit = sheetScale(long, wide, { width, height: TALLEST });
      const scale = strip ? fit : Math.min(fit, least * 1.6);
      const rough = problem.yard ? { roughKerf: problem.yard.kerf } : {};
      const drawn = { sheet, form: lot.form, kerf: problem.kerf, ...rough, cuts, ledger, lengths };
      const layout = sheetLayout(drawn, scale, type);
      blocks.push({
        marks: layout.marks,
        height: layout.height - (strip ? 2 : 1),
        keep: cuts.length > 0,
      });
      if (cuts.length > 0) blocks.push(...cutTable(cuts, lengths, width, type));
    }
  }
  blocks.push(...spareTable(input, width, type));
  for (const { part, why } of input.breakdown.missing)
    blocks.push(note(`${part.mark}, ${part.name}, is not placed: ${WHY[why]}.`, width, type, 'warn'));
  return blocks;
}

/** For each part, whether it could be cut once more, and from what. */
function spareTable(input: BookInput, width: number, type: TextMeasure): Block[] {
  const groups = spareGroups(input.breakdown);
  if (groups.length === 0) return [];
  const last = groups.some((g) => g.lastChance);
  return [
    heading('If a part is spoiled', width, type),
    note(
      last
        ? 'One at a time. For the parts of the first line there is no second chance: cut them early, while something can still be changed, and with care.'
        : 'One at a time: what each part could be cut from again.',
      width,
      type,
    ),
    ...table(
      [{ title: 'Parts', width: 80, face: 'semibold' }, { title: 'Cut again from' }],
      groups.map((g): Cell[] => [joinMarks(g.marks), g.says]),
      width,
      type,
    ),
  ];
}

function sheetTitle(name: string, kind: string, from: string, width: number, type: TextMeasure): Block {
  const x = type.width(name, 4.2, 'semibold') + 3;
  const marks: Mark[] = [
    text([0, 3.9], name, 4.2, { face: 'semibold' }),
    text([x, 3.9], kind, 3.5),
    ...grainArrow(x + type.width(kind, 3.5, 'regular') + 7, 2.9, 12),
    text([width, 3.9], from, 3.3, { anchor: 'end', tone: 'quiet' }),
  ];
  return { marks, height: 5 };
}

/** The cuts in the order of their cards. */
function cutTable(cuts: readonly NumberedCut[], lengths: Lengths, width: number, type: TextMeasure): Block[] {
  const columns = [
    { title: 'Card', width: 9, face: 'semibold', tone: 'measure' },
    { title: 'Cut', width: 32 },
    { title: 'Distance', width: 24, align: 'end', face: 'semibold' },
    { title: 'measured from', width: 32, tone: 'quiet' },
    { title: 'Gives' },
  ] as const;
  const rows = cuts.map(({ number, node, marked }): Cell[] => {
    const rip = node.across === 'width';
    const first = node.parts[0];
    const distance = marked ?? (rip ? first.width : first.length);
    return [
      `${number}`,
      `${rip ? 'along the grain' : 'across the grain'}${node.yard ? ', roughly, at the yard' : ''}`,
      [{ text: lengths.bare(distance), face: 'semibold', whole: true, trace: distance }],
      rip ? 'the lower edge' : 'the left end',
      gives(node),
    ];
  });
  return table(columns, rows, width, type);
}

/** What the two halves of a cut are. */
function gives(cut: PlannedCut): string {
  return cut.parts
    .map((half) => {
      if (half.kind === 'piece') return half.part.mark;
      if (half.kind === 'left') return half.name ?? '';
      return `a piece for ${piecesUnder(half)
        .map((p) => p.part.mark)
        .join(', ')}`;
    })
    .filter((w) => w !== '')
    .join('; ');
}
