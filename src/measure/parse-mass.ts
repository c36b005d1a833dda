import { type Misread, Reader } from './read-number.ts';

/** A mass that was read, in kilograms. `exact` is false when it had to go to the nearest double. */
export interface ReadMass {
  readonly ok: true;
  readonly value: number;
  readonly exact: boolean;
}

/** Kilograms as a fraction; the pound is 0.45359237 kg exactly (international yard and pound agreement, 1959). */
const KG_IN: ReadonlyMap<string, readonly [bigint, bigint]> = new Map([
  ['kg', [1n, 1n]],
  ['g', [1n, 1000n]],
  ['lb', [45359237n, 100000000n]],
  ['lbs', [45359237n, 100000000n]],
]);

/**
 * Reads a mass such as `60 kg`, `2.5 kg`, `130 lb` or `1 1/2 lb`, in kilograms. A unit is always needed, since a
 * bare number can't be told apart from a length. Never throws; a mass below zero is refused.
 */
export function parseMass(text: string): ReadMass | Misread {
  const r = new Reader(text);
  if (r.tooLong) return r.misread('this is too long for a mass', 0);
  r.skipSpace();
  if (r.atEnd) return r.misread('a mass is missing; write 60 kg or 130 lb', 0);
  const from = r.place;
  if (r.take('-')) return r.misread('a mass is not below zero', from);
  r.take('+');
  r.skipSpace();
  const figure = r.figure();
  if (!figure.ok) return figure;
  if (figure.doubtful)
    return r.misread(
      'a comma with three digits behind it could set thousands apart; write 1580 or 1,58',
      from,
    );
  r.skipSpace();
  const unitAt = r.place;
  const word = r.word();
  const kg = KG_IN.get(word);
  if (word === '') return r.misread('the unit is missing; write kg or lb', unitAt);
  if (kg === undefined) return r.misread(`${word} is not a unit of mass here; use kg, g or lb`, unitAt);
  r.skipSpace();
  if (!r.atEnd) return r.misread('this is left over', r.place);

  const over = figure.over * kg[0];
  const under = figure.under * kg[1];
  const value = Number(over) / Number(under);
  if (!Number.isFinite(value) || value > 1e6) return r.misread('this is more than 1000 t', from);
  // Decimals are called exact when twelve of them hold the value; nobody weighs finer than that.
  return { ok: true, value, exact: (over * 10n ** 12n) % under === 0n };
}
