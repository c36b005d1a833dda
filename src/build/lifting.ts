import type { Lot } from '../job/index.ts';
import { reckonedDensity } from '../materials/index.ts';
import { toMm } from '../measure/index.ts';
import type { Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { CAUTION } from './cautions.ts';

/** One person lifts and turns so much (kg) alone, and half of it when it is longer than this (mm). Common practice. */
const LIGHT_KG = 10;
const LIGHT_MM = 1200;

interface Board {
  readonly mm: readonly [length: number, width: number, thickness: number];
  readonly material: string | undefined;
}

/** Does it take two to lift these parts together? */
export function takesTwo(bench: Bench, parts: readonly Part[]): boolean {
  return isMuch(
    parts.map((p) => ({
      mm: [p.length, p.width, p.thickness].map((t) => toMm(bench.ledger.ticks(t))) as [
        number,
        number,
        number,
      ],
      material: bench.job.shop.rack.lots.find((lot) => lot.id === p.lot)?.material,
    })),
  );
}

/** The caution for lifting parts together: none where one person does it alone. */
export function liftCautions(bench: Bench, parts: readonly Part[]): readonly string[] {
  return takesTwo(bench, parts) ? [byTwo(bench)] : [];
}

/** The caution for the sheets and boards of lots, as they lie on the rack. */
export function liftStock(bench: Bench, lots: readonly Lot[]): readonly string[] {
  const mm = (text: string | undefined) => (text === undefined ? 0 : toMm(bench.ticksOf(text)));
  const much = lots.some((lot) =>
    lot.stock.some((s) =>
      isMuch([
        {
          mm: [
            mm(s.length),
            mm(lot.form === 'strip' ? lot.width : s.width),
            mm(lot.thickness ?? lot.nominal),
          ],
          material: lot.material,
        },
      ]),
    ),
  );
  return much ? [byTwo(bench)] : [];
}

function byTwo(bench: Bench): string {
  return bench.job.shop.people.length === 1 ? CAUTION.liftAlone : CAUTION.lift;
}

function isMuch(boards: readonly Board[]): boolean {
  const kg = boards.reduce(
    (sum, { mm: [length, width, thickness], material }) =>
      sum + (length * width * thickness * reckonedDensity(material)) / 1e9,
    0,
  );
  const long = boards.some(({ mm: [length, width] }) => Math.max(length, width) > LIGHT_MM);
  return kg > (long ? LIGHT_KG / 2 : LIGHT_KG);
}
