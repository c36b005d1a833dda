import { DOORS, GLUE_WORK } from '../materials/index.ts';
import type { Traced } from '../measure/index.ts';
import { glueAreaMm2, partsToCut, type SetOut } from '../setting-out/index.ts';
import { areaWords, volumeWords } from './amounts.ts';
import type { Bench } from './bench.ts';
import { unitsOf } from './case-units.ts';
import type { FinishPlan } from './finish/finish-plan.ts';
import { markWords } from './mark-words.ts';
import { glueOf } from './setting-times.ts';
import { EACH_HOLDS } from './wall-fixings.ts';
import { capital, listWords } from './words.ts';

/** What is used up or stuck on besides screws and fittings: glue, finish, bumpers, what holds the piece to the wall. */
export function suppliesLines(bench: Bench, finishing: FinishPlan, lengths: Traced[]): readonly string[] {
  return [
    ...glueLine(bench),
    ...finishLine(bench, finishing),
    ...bumperLine(bench, lengths),
    ...smallThings(bench, finishing),
    ...wallLine(bench),
  ];
}

function glueLine(bench: Bench): readonly string[] {
  const { job, setOut } = bench;
  const m2 = (jointsM2(bench) + panelsM2(setOut)) * (1 + GLUE_WORK.waste);
  if (m2 <= 0) return [];
  const grams = Math.max(10, Math.ceil((m2 * GLUE_WORK.gramsPerM2) / 10) * 10);
  const much = job.shop.units === 'in' ? `${Math.ceil((grams / 28.35) * 2) / 2} oz` : `${grams} g`;
  const { lot, kind } = glueOf(job.shop.rack.adhesives);
  const warm =
    job.shop.units === 'in'
      ? `${Math.ceil((kind.coldestCelsius * 9) / 5) + 32} °F`
      : `${kind.coldestCelsius} °C`;
  return [
    `${capital(lot?.name ?? kind.name)}, about ${much}: it is spread over ${areaWords(job.shop.units, m2)} of joints${lot ? '' : '; there is none on the rack'}. See that it hasn’t thickened, nor stood in the frost; it sets in a shop of ${warm} or more.`,
  ];
}

/** All that is glued, but for tape, which brings its own glue. */
function jointsM2({ job, setOut }: Bench): number {
  const tape = new Set(job.shop.rack.lots.flatMap((lot) => (lot.tape === undefined ? [] : [lot.id])));
  const lotOf = new Map(setOut.parts.map((p) => [p.id, p.lot]));
  return setOut.joints.reduce(
    (sum, j) => (tape.has(lotOf.get(j.part) ?? '') ? sum : sum + (glueAreaMm2(setOut, j) ?? 0) / 1e6),
    0,
  );
}

/** The joints between the boards of glued-up panels, edge to edge. */
function panelsM2({ gluedPanels, ledger }: SetOut): number {
  const mm = (t: Traced) => ledger.ticks(t) / 3200;
  return gluedPanels.reduce((sum, { boards }) => {
    const [first] = boards;
    return first ? sum + ((boards.length - 1) * mm(first.cut.length) * mm(first.thickness)) / 1e6 : sum;
  }, 0);
}

function finishLine({ job }: Bench, { lot, kind, litres, areaM2, coats }: FinishPlan): readonly string[] {
  if (litres <= 0) return [];
  const { units } = job.shop;
  return [
    `${capital(lot?.name ?? kind.name)}, ${volumeWords(units, litres)}: ${coats} coat${coats > 1 ? 's' : ''} on ${areaWords(units, areaM2)}, with what brush and tin keep${lot ? '' : '; there is none on the rack'}.`,
  ];
}

/** Two to each door that closes before the case. */
function bumperLine(bench: Bench, lengths: Traced[]): readonly string[] {
  const doors = bench.setOut.doors.filter((d) => d.hang === 'overlay').length;
  if (doors === 0) return [];
  const n = lengths.push(bench.rule(DOORS.standOff)) - 1;
  return [
    `${2 * doors} × bumper, {${n}} thick: two for the free side of each door, where it closes on the case.`,
  ];
}

/** What the cards ask for that is no fitting, and that nobody wants to go out for in the middle. */
function smallThings({ job, setOut }: Bench, { before }: FinishPlan): readonly string[] {
  const { drawers, sliding } = setOut;
  const sawn = new Set(job.shop.rack.lots.flatMap((lot) => (lot.form === 'sheet' ? [lot.id] : [])));
  const lots = new Map(job.shop.rack.lots.map((lot) => [lot.id, lot.tape]));
  const edging = setOut.parts.filter((p) =>
    setOut.joints.some((j) => j.duty === 'edging' && j.part === p.id),
  );
  const isSolid = (lot: string) => !sawn.has(lot) && lots.get(lot) === undefined;
  const things = [
    ...(partsToCut(setOut).some((p) => sawn.has(p.lot)) ? ['a scrap of board for the test cut'] : []),
    ...(edging.some((p) => lots.get(p.lot) === undefined) || before.length > 0 ? ['masking tape'] : []),
    ...(edging.some((p) => lots.get(p.lot) === 'iron-on')
      ? ['an iron and a block of hardwood for the tape']
      : []),
    `sandpaper from ${setOut.parts.some((p) => isSolid(p.lot)) ? 120 : 150} to 320`,
    ...(drawers.length > 0 ? ['double-sided tape for the fronts of drawers'] : []),
    ...(sliding.length > 0 || drawers.some((d) => !d.runner)
      ? ['candle wax or paraffin for what slides']
      : []),
    ...(setOut.joints.some((j) => j.duty === 'filler') ? ['compasses to scribe with'] : []),
  ];
  return things.length === 0 ? [] : [`${capital(listWords(things))}.`];
}

function wallLine(bench: Bench): readonly string[] {
  const { setOut } = bench;
  const units = unitsOf(bench).length;
  const wall = new Set(setOut.cleats.map((c) => c.onWall));
  const onCase = new Set(setOut.cleats.flatMap((c) => [c.onCase, c.spacer]));
  const held = setOut.parts
    .filter((p) => wall.has(p.id) || (p.mark.startsWith('T') && !onCase.has(p.id)))
    .map((p) => p.mark);
  return held.length > 0
    ? [
        `Anchors for the wall it hangs on, or screws for its studs: two at least for ${held.length > 1 ? 'each of ' : ''}${markWords(held)}. ${EACH_HOLDS}`,
      ]
    : setOut.lids.length > 0
      ? ['Two angle brackets, one for each side, and for each an anchor for the wall, or a screw for a stud.']
      : units > 1
        ? [
            `${units} angle brackets, one for each case, and for each an anchor for the wall behind it, or a screw for a stud.`,
          ]
        : ['An angle bracket, and an anchor for the wall behind it, or a screw for a stud.'];
}
