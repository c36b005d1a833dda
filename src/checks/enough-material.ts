import { type Breakdown, goodFacesOf } from '../breakdown/index.ts';
import type { JobDocument, Lot } from '../job/index.ts';
import { toMm } from '../measure/index.ts';
import {
  fixingsUsed,
  goodFaces,
  hingesUsed,
  type Part,
  partsToCut,
  pinsUsed,
  pullsUsed,
  runnersUsed,
  type SetOut,
  screwsUsed,
  staysUsed,
} from '../setting-out/index.ts';
import type { Cure, Snag } from '../snag/index.ts';
import type { CheckInput } from './check-input.ts';
import { lotOf } from './loaded-surface.ts';
import { fieldThatNames } from './lot-field.ts';
import { practice } from './rule.ts';
import { lengthMm, ShopWords } from './shop-words.ts';

/** Whether there is stock and a sound cut plan for every part, and what has to be bought or measured first. */
export function enoughMaterial(input: Pick<CheckInput, 'job' | 'setOut' | 'breakdown'>): readonly Snag[] {
  return [
    ...partsWithoutStock(input),
    ...plansThatFail(input.breakdown),
    ...notMeasured(input),
    ...toBuy(input),
  ];
}

function partsWithoutStock({
  job,
  setOut,
  breakdown,
}: Pick<CheckInput, 'job' | 'setOut' | 'breakdown'>): Snag[] {
  const words = new ShopWords(job);
  if (breakdown.missing.length === 0) return [];
  const faces = goodFaces(setOut);
  return breakdown.missing.map(({ part, why }) => {
    const lot = lotOf(job, part.lot);
    const [length, width] = sizeOf(setOut, part);
    const size =
      part.form === 'strip' ? words.length(length) : `${words.length(length)} × ${words.length(width)}`;
    const seen = lot.stock.some((s) => s.goodFaces !== undefined) ? faces(part) : 0;
    if (seen > Math.max(...lot.stock.map(goodFacesOf)))
      return {
        code: 'stock.too-few-good-faces',
        level: 'stop',
        where: { path: `shop/rack/lots/${lot.id}`, part: part.id, record: part.record, lot: lot.id },
        sentence: `${part.mark}, the ${part.name}, is seen from ${seen === 2 ? 'both sides' : 'one side'}, and no sheet of “${lot.name}” is good on ${seen === 2 ? 'both faces' : 'any face'}.`,
        rule: practice('a face that is seen is cut from a face that may be seen'),
        cures: [
          {
            says: `Put a sheet of “${lot.name}” on the list that is good on ${seen === 2 ? 'both faces' : 'one face'}, or make the part of another lot.`,
          },
        ],
      };
    if (why === 'rules')
      return {
        code: 'stock.rules-forbid',
        level: 'stop',
        where: { path: 'shop/cutting', part: part.id, record: part.record, lot: lot.id },
        sentence:
          part.strip === undefined
            ? `The limits set for cutting leave no way to ${part.mark}, the ${part.name} (${size}), from “${lot.name}”.`
            : `No stock of “${lot.name}” takes all parts that are cut from one strip with ${part.mark}, the ${part.name} (${size}), or the limits set for cutting leave no way to it.`,
        rule: practice('cuts keep to what the shop’s saw, rail and people can do'),
        cures: [
          ...(part.strip === undefined
            ? []
            : [{ says: 'Cut fewer parts from one strip, or list larger stock.' }]),
          {
            says: job.shop.cutting?.yard
              ? 'Allow more cuts at the yard or find a larger vehicle (and a rail as long as what comes home), more stages, a narrower hold or more cuts before everything can be carried.'
              : 'Allow more stages, a narrower hold or more cuts before everything can be carried.',
          },
        ],
      };
    const tooLarge = why === 'larger-than-all-stock';
    const other =
      tooLarge || lot.stock.every((s) => s.price === undefined) ? otherLot(job, setOut, part) : undefined;
    const cures: Cure[] = [
      {
        says: tooLarge
          ? `Put stock of “${lot.name}” on the list that is larger than ${size}, or make the part smaller.`
          : `Put a size of “${lot.name}” on the list that can be bought, with its price.`,
      },
    ];
    if (other)
      cures.unshift({
        says: `Make it of “${other.lot.name}”, which can be had large enough.`,
        edits: [{ record: other.record, field: other.field, value: other.lot.id }],
      });
    return {
      code: 'stock.none-for-part',
      level: 'stop',
      where: { path: `shop/rack/lots/${lot.id}`, part: part.id, record: part.record, lot: lot.id },
      sentence: tooLarge
        ? `${part.mark}, the ${part.name}, is ${size}, larger than any stock of “${lot.name}”${holdsRaw(job, lot, [length, width]) ? ' once that is trimmed' : ''}.`
        : `The stock of “${lot.name}”${seen === 2 ? ' that is good on both faces' : seen === 1 ? ' that has a good face' : ''} is used up before ${part.mark}, the ${part.name} (${size}), is cut.`,
      rule: practice('every part is cut from stock that is on the rack or can be bought'),
      cures,
    };
  });
}

/** Whether some stock would hold a size if nothing were taken off its sides. */
function holdsRaw(job: JobDocument, lot: Lot, [length, width]: readonly [number, number]): boolean {
  return lot.stock.some(
    (s) => lengthMm(job, s.length) >= length && (s.width === undefined || lengthMm(job, s.width) >= width),
  );
}

/** Length and width to be cut, in mm. */
function sizeOf(setOut: SetOut, part: Part): readonly [number, number] {
  const l = setOut.ledger;
  return [toMm(l.ticks(part.rough?.length ?? part.length)), toMm(l.ticks(part.rough?.width ?? part.width))];
}

/** A lot to buy from that holds every part on this part's lot, and the field that names it. Same material first. */
function otherLot(
  job: JobDocument,
  setOut: SetOut,
  part: Part,
): { readonly lot: Lot; readonly record: string; readonly field: string } | undefined {
  const lot = lotOf(job, part.lot);
  const at = fieldThatNames(job, part);
  if (!at) return undefined;
  const sizes = partsToCut(setOut)
    .filter((p) => p.lot === lot.id)
    .map((p) => ({ part: p, size: sizeOf(setOut, p) }));
  const holds = (candidate: Lot) =>
    sizes.every(({ part: p, size: [length, width] }) =>
      candidate.stock.some((s) => {
        if (s.price === undefined) return false;
        const trim = 2 * lengthMm(job, candidate.trim ?? '0 mm');
        const long = lengthMm(job, s.length) - trim;
        if (candidate.form === 'strip') return long >= length;
        const wide = lengthMm(job, s.width!) - trim;
        return (long >= length && wide >= width) || (p.grain === 'free' && long >= width && wide >= length);
      }),
    );
  const nominal = lengthMm(job, lot.nominal);
  const away = (l: Lot) => Math.abs(lengthMm(job, l.nominal) - nominal);
  const fit = job.shop.rack.lots
    .filter((l) => l.id !== lot.id && l.form === lot.form && holds(l))
    .sort(
      (a, b) =>
        Number(b.material === lot.material) - Number(a.material === lot.material) ||
        away(a) - away(b) ||
        (a.id < b.id ? -1 : 1),
    )[0];
  return fit && { lot: fit, ...at };
}

/** A plan that our own judge rejects must never reach the saw; the maker is told, and told that it is our fault. */
function plansThatFail(breakdown: Breakdown): Snag[] {
  return breakdown.lots
    .filter(({ verdict }) => !verdict.holds)
    .map(({ lot, verdict }) => ({
      code: 'breakdown.not-verified',
      level: 'stop',
      where: { path: `shop/rack/lots/${lot.id}`, lot: lot.id },
      sentence: `The cut plan of “${lot.name}” does not hold: ${(verdict.findings[0]?.says ?? 'the judge rejects it').replace(/\.$/, '')}. This is a fault of the program, not of the piece.`,
      rule: practice('a cut plan is used only when code that did not make it finds nothing wrong'),
      cures: [{ says: 'Do not cut by it. Report the fault with this job’s file.' }],
    }));
}

function notMeasured({ job, setOut }: Pick<CheckInput, 'job' | 'setOut'>): Snag[] {
  return job.shop.rack.lots
    .filter((lot) => lot.thickness === undefined && partsToCut(setOut).some((p) => p.lot === lot.id))
    .map((lot) => ({
      code: 'stock.not-measured',
      level: 'note',
      where: { path: `shop/rack/lots/${lot.id}/thickness`, lot: lot.id },
      sentence: `“${lot.name}” was never measured; it is reckoned at its nominal ${new ShopWords(job).length(lengthMm(job, lot.nominal))}.`,
      rule: practice('boards are seldom as thick as their name says: measure before anything is cut'),
      cures: [
        {
          says: 'Measure it at several places and enter its thickness; every size that depends on it follows.',
        },
      ],
    }));
}

function toBuy({ job, setOut, breakdown }: Pick<CheckInput, 'job' | 'setOut' | 'breakdown'>): Snag[] {
  const words = new ShopWords(job);
  const size = (typed: string) => words.length(lengthMm(job, typed));
  const snags: Snag[] = breakdown.purchases.map(({ lot: id, stock: stockId, count }) => {
    const lot = lotOf(job, id);
    const stock = lot.stock.find((s) => s.id === stockId)!;
    return {
      code: 'stock.to-buy',
      level: 'note',
      where: { path: `shop/rack/lots/${id}/stock/${stockId}`, lot: id },
      sentence: `To buy: ${count} × “${lot.name}”, ${stock.name ?? stockId}, ${size(stock.length)}${stock.width === undefined ? '' : ` × ${size(stock.width)}`} (on the rack: ${stock.have ?? 0}).`,
      cures: [],
    };
  });
  const used = screwsUsed(setOut);
  for (const screw of job.shop.rack.screws) {
    const need = used.get(screw.id) ?? 0;
    const have = screw.have ?? 0;
    if (need <= have) continue;
    snags.push({
      code: 'screws.to-buy',
      level: 'note',
      where: { path: `shop/rack/screws/${screw.id}` },
      sentence: `To buy: ${need - have} × ${screw.name ?? screw.id}; the piece takes ${need}, the rack has ${have}.`,
      figures: { value: have, limit: need, margin: have - need, unit: 'screws' },
      cures: [],
    });
  }
  const fixings = fixingsUsed(setOut);
  for (const fixing of job.shop.rack.fixings ?? []) {
    const need = fixings.get(fixing.id) ?? 0;
    const have = fixing.have ?? 0;
    if (need <= have) continue;
    snags.push({
      code: 'fixings.to-buy',
      level: 'note',
      where: { path: `shop/rack/fixings/${fixing.id}` },
      sentence: `To buy: ${need - have} × ${fixing.name ?? fixing.id}; the piece takes ${need}, the rack has ${have}.`,
      figures: { value: have, limit: need, margin: have - need, unit: 'fixings' },
      cures: [],
    });
  }
  const hinges = hingesUsed(setOut);
  for (const hinge of job.shop.rack.hinges ?? []) {
    const need = hinges.get(hinge.id) ?? 0;
    const have = hinge.have ?? 0;
    if (need <= have) continue;
    snags.push({
      code: 'hinges.to-buy',
      level: 'note',
      where: { path: `shop/rack/hinges/${hinge.id}` },
      sentence: `To buy: ${need - have} × ${hinge.name ?? hinge.id}; the doors take ${need}, the rack has ${have}.`,
      figures: { value: have, limit: need, margin: have - need, unit: 'hinges' },
      cures: [],
    });
  }
  const runners = runnersUsed(setOut);
  for (const runner of job.shop.rack.runners ?? []) {
    const need = runners.get(runner.id) ?? 0;
    const have = runner.have ?? 0;
    if (need <= have) continue;
    snags.push({
      code: 'runners.to-buy',
      level: 'note',
      where: { path: `shop/rack/runners/${runner.id}` },
      sentence: `To buy: ${need - have} × ${runner.name ?? runner.id}, in pairs; the drawers take ${need}, the rack has ${have}.`,
      figures: { value: have, limit: need, margin: have - need, unit: 'pairs' },
      cures: [],
    });
  }
  for (const [code, used, rack, unit] of [
    ['stays.to-buy', staysUsed(setOut), job.shop.rack.stays, 'stays'],
    ['pulls.to-buy', pullsUsed(setOut), job.shop.rack.pulls, 'pulls'],
  ] as const)
    for (const one of rack ?? []) {
      const need = used.get(one.id) ?? 0;
      const have = one.have ?? 0;
      if (need <= have) continue;
      snags.push({
        code,
        level: 'note',
        where: { path: `shop/rack/${unit}/${one.id}` },
        sentence: `To buy: ${need - have} × ${one.name ?? one.id}; the piece takes ${need}, the rack has ${have}.`,
        figures: { value: have, limit: need, margin: have - need, unit },
        cures: [],
      });
    }
  const pins = pinsUsed(setOut);
  for (const pin of job.shop.rack.pins ?? []) {
    const need = pins.get(pin.id) ?? 0;
    const have = pin.have ?? 0;
    if (need <= have) continue;
    snags.push({
      code: 'pins.to-buy',
      level: 'note',
      where: { path: `shop/rack/pins/${pin.id}` },
      sentence: `To buy: ${need - have} × ${pin.name ?? pin.id}; the loose shelves take ${need}, the rack has ${have}.`,
      figures: { value: have, limit: need, margin: have - need, unit: 'pins' },
      cures: [],
    });
  }
  return snags;
}
