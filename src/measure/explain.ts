import type { Entry, Ledger, Traced } from './ledger.ts';
import { type LengthFormat, printLength } from './print.ts';
import type { Ticks } from './ticks.ts';

/** How far down the reasons go before only what they rest on is named. */
const DEEPEST = 8;
/** How many resting points are named at that depth. */
const NAMED = 4;

/**
 * Why a number is what it is, in short indented lines: the number first, then what it is made of, down to choices
 * in the document, measured values and rules of the trade.
 *
 *     1544.8 mm  clear width between the sides
 *       = 1580 mm  typed as 1580 at case/width
 *       - 2 x 17.6 mm  measured: lot/birch/thickness
 *
 * What was explained once is not explained again (`as above`). A print that isn't the value says `about`.
 */
export function explain(ledger: Ledger, traced: Traced, format: LengthFormat): string[] {
  const lines: string[] = [];
  const said = new Set<Traced>();

  const size = (t: Ticks): string => {
    const print = printLength(t, format);
    return print.exact ? print.text : `about ${print.text}`;
  };

  const say = (t: Traced, lead: string, depth: number): void => {
    const entry = ledger.entry(t);
    const times = entry.operation === 'times' ? entry : undefined;
    // Three of a thing are said in one line, "3 x 17.6 mm", and then the thing is explained.
    const shown = times === undefined ? t : times.operands[0]!;
    const inner = ledger.entry(shown);
    const count = times === undefined ? '' : `${times.numbers[0]} x `;
    const again = said.has(shown);
    const name = label(inner, !again) + (again ? ' (as above)' : '');
    const all = times === undefined || times.reason === inner.reason ? name : `${times.reason}; ${name}`;
    lines.push(`${'  '.repeat(depth)}${lead}${count}${size(inner.value)}  ${all}`);
    if (again) return;
    said.add(shown);
    if (inner.operands.length === 0) return;
    if (depth >= DEEPEST) {
      lines.push(`${'  '.repeat(depth + 1)}= ... from ${restingOn(ledger, shown, size)}`);
      return;
    }
    for (const [operand, how] of terms(inner)) say(operand, how, depth + 1);
    // The note of a proportion is its row's id, then what the row says and its source.
    if (inner.operation === 'ratio')
      lines.push(`${'  '.repeat(depth + 1)}rule: ${inner.note.replace(/^[^:]*: /, '')}`);
  };

  const top = ledger.entry(traced);
  if (top.operation === 'times') {
    // The number asked for is always said as itself, even when it is a count of something.
    lines.push(`${size(top.value)}  ${top.reason}`);
    said.add(traced);
    say(top.operands[0]!, `= ${top.numbers[0]} x `, 1);
  } else say(traced, '', 0);
  return lines;
}

/** The name of an entry: why it is there, or where it comes from; in full with what was typed. */
function label(entry: Entry, full: boolean): string {
  switch (entry.operation) {
    case 'document': {
      // A length inside a formula has the number of its first character behind the path.
      const [path, inside] = entry.reason.split('@');
      const where = inside === undefined ? `at ${path}` : `in the formula at ${path}`;
      return full && entry.note !== '' ? `typed as ${entry.note} ${where}` : `typed ${where}`;
    }
    case 'measured':
      return `measured: ${entry.reason}`;
    case 'row':
      return `rule: ${entry.note}`;
    default:
      return entry.reason;
  }
}

/** What an entry is made of: each operand with the words that lead to it. Equal operands are counted. */
function terms(entry: Entry): [Traced, string][] {
  const [first, second] = entry.operands as [Traced, Traced];
  switch (entry.operation) {
    case 'sum':
      return counted(entry.operands).map(([t, n], i) => [t, `${i === 0 ? '=' : '+'} ${n}`]);
    case 'less':
      return [
        [first, '= '],
        ...counted(entry.operands.slice(1)).map(([t, n]): [Traced, string] => [t, `- ${n}`]),
      ];
    case 'ratio':
    case 'fraction': {
      const [over, under] = entry.numbers;
      return [[first, `= ${over}/${under} of `]];
    }
    case 'share':
      return [[first, `= ${shareWords(entry.numbers)} of `]];
    case 'greatest':
    case 'least':
      return entry.operands.map((t, i) => [t, i === 0 ? `= the ${entry.operation} of ` : 'and ']);
    case 'round': {
      const way = ['down to', 'up to', 'to the nearest of'][entry.numbers[0]!]!;
      return [
        [first, '= '],
        [second, `${way} steps of `],
      ];
    }
    default:
      return entry.operands.map((t) => [t, '= ']);
  }
}

/** `share 2 out of 4 equal shares`, or `share 2 out of shares 1 : 2 : 1`. */
function shareWords(numbers: readonly number[]): string {
  const [index, ...weights] = numbers as [number, ...number[]];
  const place = index + 1;
  if (weights.length === 1) return 'the whole';
  if (weights.every((w) => w === weights[0])) return `share ${place} out of ${weights.length} equal shares`;
  const most = weights.reduce(commonDivisor);
  return `share ${place} out of shares ${weights.map((w) => w / most).join(' : ')}`;
}

/** The greatest number that goes into both. */
function commonDivisor(a: number, b: number): number {
  return b === 0 ? a : commonDivisor(b, a % b);
}

/** Each different operand once, in order, with `2 x ` before it where it comes twice. */
function counted(operands: readonly Traced[]): [Traced, string][] {
  const count = new Map<Traced, number>();
  for (const t of operands) count.set(t, (count.get(t) ?? 0) + 1);
  return [...count].map(([t, n]) => [t, n === 1 ? '' : `${n} x `]);
}

/** The first few leaves under an entry, for where explaining stops. */
function restingOn(ledger: Ledger, t: Traced, size: (t: Ticks) => string): string {
  const seen = new Set<Traced>();
  const leaves: string[] = [];
  const visit = (at: Traced): void => {
    if (seen.has(at)) return;
    seen.add(at);
    const entry = ledger.entry(at);
    if (entry.operands.length === 0) leaves.push(`${size(entry.value)} ${label(entry, false)}`);
    for (const o of entry.operands) visit(o);
  };
  visit(t);
  const rest = leaves.length - NAMED;
  return leaves.slice(0, NAMED).join(', ') + (rest > 0 ? ` and ${rest} more` : '');
}
