import { formatOf, type JobDocument } from '../job/index.ts';
import {
  fromMm,
  KG_PER_LB,
  type LengthFormat,
  MM_PER_INCH,
  N_PER_LBF,
  parseLength,
  parseMass,
  printLength,
  type Ticks,
  toMm,
} from '../measure/index.ts';
import type { Figures } from '../snag/index.ts';

/** Sizes, masses and forces in the units of a shop: for sentences, for figures and for fields of the document. */
export class ShopWords {
  private readonly units: 'mm' | 'in';
  private readonly format: LengthFormat;

  constructor(job: JobDocument) {
    this.units = job.shop.units;
    this.format = formatOf(job.shop);
  }

  /** A length, `mm` in millimetres, as the shop prints it; one that only a finer step shows is shown by that. */
  length(mm: number): string {
    return this.ticks(fromMm(mm));
  }

  ticks(t: Ticks): string {
    const own = printLength(t, this.format);
    const fine = printLength(t, this.finest);
    return !own.exact && fine.exact ? fine.text : own.text;
  }

  /** A small length, such as a sag, as finely as can be printed. */
  fine(mm: number): string {
    const shown = printLength(fromMm(mm), this.finest).text;
    return /^0( mm|")$/.test(shown) ? `less than ${this.units === 'mm' ? '0.1 mm' : '1/64"'}` : shown;
  }

  /** The gap of a fit: in inches, what is under a sixteenth and no whole sixty-fourths stands in thousandths, as on feeler gauges. */
  gap(mm: number): string {
    if (this.units === 'mm' || mm >= MM_PER_INCH / 16 || printLength(fromMm(mm), this.finest).exact)
      return this.fine(mm);
    const inches = mm / MM_PER_INCH;
    return inches < 0.0005 ? 'less than 0.001"' : `${inches.toFixed(3)}"`;
  }

  mass(kg: number): string {
    return this.units === 'mm' ? `${tenths(kg)} kg` : `${tenths(kg / KG_PER_LB)} lb`;
  }

  force(newtons: number): string {
    return this.units === 'mm'
      ? `${newtons < 100 ? tenths(newtons) : Math.round(newtons)} N`
      : `${tenths(newtons / N_PER_LBF)} lbf`;
  }

  /** The largest length on the shop's own step that is no longer than `mm`, as it would be typed. */
  typedUpTo(mm: number): string {
    const step = this.units === 'mm' ? 1 : MM_PER_INCH / 8;
    return this.length(Math.floor(mm / step + 1e-6) * step);
  }

  /** Figures of two lengths; the margin is what is left when the value must not be more than the limit. */
  atMost(valueMm: number, limitMm: number): Figures {
    return this.figures(valueMm, limitMm, limitMm - valueMm);
  }

  /** The same when the value must not be less than the limit. */
  atLeast(valueMm: number, limitMm: number): Figures {
    return this.figures(valueMm, limitMm, valueMm - limitMm);
  }

  /** Figures of two masses, kg; the value must not be more than the limit. */
  massAtMost(valueKg: number, limitKg: number): Figures {
    const [one, unit] = this.units === 'mm' ? [1, 'kg'] : [KG_PER_LB, 'lb'];
    return figures(valueKg / one, limitKg / one, (limitKg - valueKg) / one, unit);
  }

  /** Figures of two forces, N; the value must not be more than the limit. */
  forceAtMost(valueN: number, limitN: number): Figures {
    const [one, unit] = this.units === 'mm' ? [1, 'N'] : [N_PER_LBF, 'lbf'];
    return figures(valueN / one, limitN / one, (limitN - valueN) / one, unit);
  }

  /** Figures of two moments, N mm, told in N m or lbf ft; the value must not be less than the limit. */
  momentAtLeast(valueNmm: number, limitNmm: number): Figures {
    const [one, unit] = this.units === 'mm' ? [1000, 'N m'] : [N_PER_LBF * MM_PER_INCH * 12, 'lbf ft'];
    return figures(valueNmm / one, limitNmm / one, (valueNmm - limitNmm) / one, unit);
  }

  private figures(value: number, limit: number, margin: number): Figures {
    const one = this.units === 'mm' ? 1 : MM_PER_INCH;
    return figures(value / one, limit / one, margin / one, this.units);
  }

  private get finest(): LengthFormat {
    return this.units === 'mm' ? { unit: 'mm', step: 0.1 } : { unit: 'in', denominator: 64 };
  }
}

/** A length of the checked document, in mm. */
export function lengthMm(job: JobDocument, text: string): number {
  const read = parseLength(text, job.shop.units);
  if (!read.ok) throw new Error(`unchecked length: ${text}`);
  return toMm(read.value);
}

/** A mass of the checked document, in kg. */
export function massKg(text: string): number {
  const read = parseMass(text);
  if (!read.ok) throw new Error(`unchecked mass: ${text}`);
  return read.value;
}

/** Rounded, so that they are the same on every machine. */
function figures(value: number, limit: number, margin: number, unit: string): Figures {
  return { value: thousandths(value), limit: thousandths(limit), margin: thousandths(margin), unit };
}

/** `E1, E2 and E3`; after the sixth only their number. */
export function listed(words: readonly string[]): string {
  if (words.length < 2) return words[0] ?? '';
  if (words.length > 7) return `${words.slice(0, 6).join(', ')} and ${words.length - 6} more`;
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

function thousandths(x: number): number {
  const r = Math.round(x * 1000) / 1000;
  return r === 0 ? 0 : r;
}

function tenths(x: number): string {
  return `${Math.round(x * 10) / 10}`;
}
