/** Marks that may stand between the cells of a row, the likelier first. */
const SEPARATORS = ['\t', ';', ','] as const;

/**
 * The cells of a list as spreadsheets write it (RFC 4180: quotes round a cell with a separator, two for one inside).
 * Cells are divided by whatever divides the first line most often: tabs (what is pasted from a spreadsheet),
 * semicolons or commas. Blank rows stay, so that a row keeps its number; a quote that never closes ends with the text.
 */
export function listRows(text: string): readonly (readonly string[])[] {
  const all = text.replace(/^\uFEFF/, '');
  const head = all.slice(0, all.search(/\r|\n|$/));
  const separator = SEPARATORS.reduce((best, s) =>
    head.split(s).length > head.split(best).length ? s : best,
  );
  const rows: string[][] = [];
  let row: string[] = [];
  let cell = '';
  let quoted = false;
  const endCell = () => {
    row.push(cell.trim());
    cell = '';
  };
  const endRow = () => {
    endCell();
    rows.push(row);
    row = [];
  };
  for (let i = 0; i < all.length; i++) {
    const c = all[i]!;
    if (quoted) {
      if (c !== '"') cell += c;
      else if (all[i + 1] === '"') cell += all[++i];
      else quoted = false;
    } else if (c === '"' && cell.trim() === '' && closes(all, i, separator)) quoted = true;
    else if (c === separator) endCell();
    else if (c === '\n' || c === '\r') {
      if (c === '\r' && all[i + 1] === '\n') i++;
      endRow();
    } else cell += c;
  }
  if (cell !== '' || row.length > 0) endRow();
  return rows;
}

/** Whether a quote at the start of a cell closes before a separator or a line's end: inch marks don't. */
function closes(text: string, from: number, separator: string): boolean {
  for (let i = from + 1; i < text.length; i++) {
    if (text[i] !== '"') continue;
    if (text[i + 1] === '"') {
      i++;
      continue;
    }
    const next = text.slice(i + 1, i + 40).replace(/^ */, '')[0];
    return next === undefined || next === separator || next === '\r' || next === '\n';
  }
  return false;
}
