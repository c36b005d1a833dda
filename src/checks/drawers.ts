import { shelfLoad } from '../materials/index.ts';
import { N_PER_KG, parseMass, toMm } from '../measure/index.ts';
import type { Drawer } from '../setting-out/index.ts';
import type { Snag } from '../snag/index.ts';
import type { CheckInput } from './check-input.ts';
import { lotOf, moeOf } from './loaded-surface.ts';
import { plateSagMm } from './plate.ts';
import { practice } from './rule.ts';
import { lengthMm, ShopWords } from './shop-words.ts';

/** A bottom that sags more than this share of its shorter side rubs on what is below, or is seen to (common practice). */
const BOTTOM_OVER = 100;

/** Whether the bottoms of drawers stay flat under what lies in them, and whether their runners carry it. */
export function drawers(input: Pick<CheckInput, 'job' | 'setOut' | 'weigh'>): readonly Snag[] {
  return input.setOut.drawers.flatMap((d) => [...bottomSags(input, d), ...overloaded(input, d)]);
}

type Input = Pick<CheckInput, 'job' | 'setOut' | 'weigh'>;

/** What lies in a drawer: as stated, or as general shelving over its bottom. */
function loadKg({ setOut }: Input, d: Drawer): { readonly kg: number; readonly general: boolean } {
  if (d.loadKg !== undefined) return { kg: d.loadKg, general: false };
  const mm = (t: Drawer['travel']) => toMm(setOut.ledger.ticks(t));
  return {
    kg: (shelfLoad('general')!.pressureMpa * mm(d.inside.width) * mm(d.inside.depth)) / N_PER_KG,
    general: true,
  };
}

function bottomSags(input: Input, d: Drawer): readonly Snag[] {
  const { job, setOut } = input;
  const words = new ShopWords(job);
  const mm = (t: Drawer['travel']) => toMm(setOut.ledger.ticks(t));
  const part = setOut.parts.find((p) => p.id === d.parts.bottom)!;
  const lot = lotOf(job, part.lot);
  const sides = [mm(d.inside.width), mm(d.inside.depth)] as const;
  // Of the two ways of the grain the weaker counts.
  const across =
    moeOf(lot, lengthMm(job, lot.nominal), 'across') ?? moeOf(lot, lengthMm(job, lot.nominal), 'along');
  if (!across) return [];
  const { kg, general } = loadKg(input, d);
  const sag = plateSagMm((kg * N_PER_KG) / (sides[0] * sides[1]), sides, mm(part.thickness), across.moeMpa);
  const limit = Math.min(...sides) / BOTTOM_OVER;
  if (sag <= limit) return [];
  return [
    {
      code: 'drawers.bottom-sags',
      level: 'mind',
      where: { path: `design/records/${d.record}/bottomBoard`, record: d.record, part: part.id },
      sentence: `${part.mark}, the ${part.name}, would sag ${words.fine(sag)} under ${words.mass(kg)}${general ? ' (as general shelving, since no load is stated)' : ''}; ${words.fine(limit)} (1/${BOTTOM_OVER} of its shorter side) is the limit.`,
      figures: words.atMost(sag, limit),
      rule: {
        says: 'a plate on four edges under an even load sags alpha q a^4 / (E t^3)',
        source: 'Roark’s Formulas for Stress and Strain, flat plates; from memory',
        confirmed: false,
      },
      cures: [{ says: 'Make the bottom of a thicker board, or put a rail under its middle.' }],
    },
  ];
}

function overloaded(input: Input, d: Drawer): readonly Snag[] {
  const { job, weigh } = input;
  const runner = job.shop.rack.runners?.find((r) => r.id === d.runner?.id);
  const carries = runner?.carries === undefined ? undefined : parseMass(runner.carries);
  if (!runner || !carries?.ok) return [];
  const words = new ShopWords(job);
  const own = Object.values(d.parts).reduce((sum, id) => sum + weigh(id).kg, 0);
  const kg = loadKg(input, d).kg + own;
  if (Math.round(kg * 10) <= Math.round(carries.value * 10)) return [];
  return [
    {
      code: 'drawers.runner-overloaded',
      level: 'mind',
      where: { path: `design/records/${d.record}/load`, record: d.record },
      sentence: `The ${d.name} weighs ${words.mass(kg)} with what lies in it; “${runner.id}” is made for ${words.mass(carries.value)}.`,
      rule: practice('a pair of runners carries what its maker says, the drawer itself included'),
      cures: [
        {
          says: `Put no more than ${words.mass(Math.max(0, Math.floor(carries.value - own)))} in it, or use stronger runners.`,
        },
      ],
    },
  ];
}
