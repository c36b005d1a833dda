import type { Lot } from '../job/index.ts';
import { reckonedDensity } from '../materials/index.ts';
import { parseMass, type Traced, toMm } from '../measure/index.ts';
import type { Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { numberWord } from './words.ts';

/** One person sets so much (kg) in its place alone, whatever they can carry, and half of it when it is longer than this (mm). Common practice. */
const LIGHT_KG = 10;
const LIGHT_MM = 1200;

/** What has to be held still and exactly is a half of what can be carried: our own choice. */
const HELD = 0.5;

interface Board {
  readonly mm: readonly [length: number, width: number, thickness: number];
  readonly material: string | undefined;
}

/** How many people it takes to lift these parts together, or a share of them when they are only tipped. */
export function liftedBy(bench: Bench, parts: readonly Part[], share = 1): number {
  return peopleFor(bench, boardsOf(bench, parts), share);
}

/** The caution for lifting parts together: none where one person does it alone. */
export function liftCautions(bench: Bench, parts: readonly Part[], share = 1): readonly string[] {
  return byPeople(bench, liftedBy(bench, parts, share));
}

/** What parts weigh together, kg. */
export function weightOf(bench: Bench, parts: readonly Part[]): number {
  return massOf(boardsOf(bench, parts));
}

function boardsOf(bench: Bench, parts: readonly Part[]): readonly Board[] {
  const mm = (t: Traced) => toMm(bench.ledger.ticks(t));
  return parts.map((p) => ({
    mm: [mm(p.length), mm(p.width), mm(p.thickness)],
    material: bench.job.shop.rack.lots.find((lot) => lot.id === p.lot)?.material,
  }));
}

/** The caution for the sheets and boards of lots, as they lie on the rack. */
export function liftStock(bench: Bench, lots: readonly Lot[]): readonly string[] {
  const mm = (text: string | undefined) => (text === undefined ? 0 : toMm(bench.ticksOf(text)));
  const most = lots.flatMap((lot) =>
    lot.stock.map((s) =>
      peopleFor(
        bench,
        [
          {
            mm: [
              mm(s.length),
              mm(lot.form === 'strip' ? lot.width : s.width),
              mm(lot.thickness ?? lot.nominal),
            ],
            material: lot.material,
          },
        ],
        1,
      ),
    ),
  );
  return byPeople(bench, Math.max(1, ...most));
}

function byPeople(bench: Bench, people: number): readonly string[] {
  if (people < 2) return [];
  const lift = `ift with ${numberWord(people)} people and straight backs.`;
  return [people > bench.job.shop.people.length ? `Ask somebody to help: l${lift}` : `L${lift}`];
}

/** As many as lift it by what they say they can, the strongest first; two at least of what is too much for one to hold still. */
function peopleFor(bench: Bench, boards: readonly Board[], share: number): number {
  const lifts = bench.job.shop.people.map((p) => massIn(p.lift)).sort((a, b) => b - a);
  const kg = massOf(boards) * share;
  const long = boards.some(({ mm: [length, width] }) => Math.max(length, width) > LIGHT_MM);
  const alone = Math.max(LIGHT_KG, (lifts[0] ?? 0) * HELD);
  if (kg <= (long ? alone / 2 : alone)) return 1;
  let [people, lifted] = [0, 0];
  // Whoever comes to help is taken to be as strong as the weakest who is there.
  while (people < 2 || (lifts.length > 0 && lifted < kg)) lifted += lifts[people++] ?? lifts.at(-1) ?? 0;
  return people;
}

function massIn(text: string): number {
  const read = parseMass(text);
  if (!read.ok) throw new Error(`unchecked mass: ${text}`);
  return read.value;
}

function massOf(boards: readonly Board[]): number {
  return boards.reduce(
    (sum, { mm: [length, width, thickness], material }) =>
      sum + (length * width * thickness * reckonedDensity(material)) / 1e9,
    0,
  );
}
