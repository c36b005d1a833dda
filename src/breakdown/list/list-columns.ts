import type { Units } from '../../measure/index.ts';

/** What a column of a cut list can hold. */
export type ListField = 'name' | 'length' | 'width' | 'thickness' | 'count' | 'grain' | 'stock' | 'strip';

/** A column that was understood: where it stands, and the unit of its bare numbers if its heading names one. */
export interface ListColumn {
  readonly at: number;
  readonly field: ListField;
  readonly units?: Units | 'cm';
}

/** Headings a maker may write. */
const WORDS: Readonly<Record<ListField, readonly string[]>> = {
  name: ['name', 'part', 'parts', 'piece', 'what', 'item', 'description', 'part name', 'label'],
  length: ['length', 'long', 'len', 'l'],
  width: ['width', 'wide', 'w', 'breadth', 'depth'],
  thickness: ['thickness', 'thick', 'th', 't'],
  count: [
    'count',
    'qty',
    'quantity',
    'number',
    'no',
    'no.',
    'nr',
    'pcs',
    'pieces',
    'how many',
    'times',
    '#',
    'x',
  ],
  grain: ['grain', 'grain direction', 'direction'],
  strip: ['strip', 'set', 'group', 'together'],
  stock: ['stock', 'lot', 'material', 'board', 'sheet', 'wood', 'from'],
};

const FIELD_OF = new Map<string, ListField>(
  (Object.keys(WORDS) as ListField[]).flatMap((f) => WORDS[f].map((w) => [w, f] as const)),
);

const UNITS: Readonly<Record<string, Units | 'cm'>> = {
  mm: 'mm',
  millimetres: 'mm',
  millimeters: 'mm',
  cm: 'cm',
  in: 'in',
  inch: 'in',
  inches: 'in',
  '"': 'in',
};

/** What a heading means; nothing when it is not understood. A unit may stand in brackets or behind a comma. */
export function columnOf(heading: string, at: number): ListColumn | undefined {
  const plain = heading.toLowerCase().trim();
  const unit = /[([,]?\s*(mm|millimetres|millimeters|cm|inches|inch|in|")\s*[)\]]?$/.exec(plain);
  const rest = unit ? plain.slice(0, unit.index).trim() : plain;
  const field = FIELD_OF.get(plain) ?? FIELD_OF.get(rest);
  if (field === undefined) return undefined;
  const units = unit && !FIELD_OF.has(plain) ? UNITS[unit[1]!] : undefined;
  return units === undefined ? { at, field } : { at, field, units };
}

/** The first heading that would be understood, for a sentence that asks for it. */
export function headingFor(field: ListField): string {
  return WORDS[field][0]!;
}
