import fc from 'fast-check';

/** A shop's units. */
export type Units = 'mm' | 'in';
/** Fields of a record, as a file holds them. */
export type Field = Readonly<Record<string, unknown>>;

/** A length as typed, with what it means in ticks, worked out here and not by the product's reader. */
export interface Typed {
  readonly text: string;
  readonly ticks: number;
}

/** A length between two sizes in mm: whole or tenths of a millimetre, or sixteenths of an inch, as the shop has it. */
export function length(units: Units, fromMm: number, toMm: number): fc.Arbitrary<Typed> {
  if (units === 'in')
    return fc
      .integer({ min: Math.ceil((fromMm * 16) / 25.4), max: Math.floor((toMm * 16) / 25.4) })
      .map((n) => ({ text: inches(n), ticks: n * 5080 }));
  return fc.oneof(
    {
      weight: 3,
      arbitrary: fc.integer({ min: Math.ceil(fromMm), max: Math.floor(toMm) }).map((n) => mm(10 * n)),
    },
    { weight: 1, arbitrary: fc.integer({ min: Math.ceil(10 * fromMm), max: Math.floor(10 * toMm) }).map(mm) },
  );
}

function mm(tenths: number): Typed {
  return { text: `${tenths / 10} mm`, ticks: tenths * 320 };
}

function inches(sixteenths: number): string {
  const whole = Math.floor(sixteenths / 16);
  const rest = sixteenths % 16;
  if (rest === 0) return `${whole}"`;
  return whole === 0 ? `${rest}/16"` : `${whole} ${rest}/16"`;
}
