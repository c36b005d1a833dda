import { formatOf, toolName } from '../job/index.ts';
import { parseLength } from '../measure/index.ts';
import type { Plan } from '../plan/index.ts';
import { screwsUsed } from '../setting-out/index.ts';
import type { BookInput, RackRow, ShoppingRow } from './book-input.ts';
import { lengthsOf } from './lengths.ts';

const SIGNS: Readonly<Record<string, string>> = { EUR: '€', USD: '$', GBP: '£' };

/** What the plan book tells of a plan. */
export function bookInputOf(plan: Plan): BookInput {
  const { job, breakdown, dryFit } = plan;
  const piece = job.design.records.find((r) => r.kind === 'piece');
  const format = formatOf(job.shop);
  const judged = breakdown.lots.filter((l) => l.verdict.holds).length;
  return {
    title: piece?.name ?? 'Untitled piece',
    paper: job.shop.paper === 'A4' ? 'a4' : 'letter',
    format,
    setOut: plan.setOut,
    breakdown,
    build: plan.build,
    tools: job.shop.tools.map((t) => ({ id: t.id, name: toolName(t) })),
    ...railOf(plan),
    people: job.shop.people.map((p) => ({ id: p.id, name: p.name ?? p.id })),
    shopping: {
      currency: SIGNS[plan.costs.currency] ?? `${plan.costs.currency} `,
      buy: plan.costs.bought.map(
        (b): ShoppingRow => ({ what: b.what, count: b.count, each: b.each, from: b.from }),
      ),
      rack: rackRows(plan),
      cost: [
        ...plan.costs.bought.map((b) => ({
          what: b.what,
          amount: b.amount,
          from: `${b.count} at ${b.each.toFixed(2)}`,
        })),
        ...(plan.costs.labour
          ? [
              {
                what: 'Work',
                amount: plan.costs.labour.amount,
                from: `${plan.costs.labour.count} hours at ${plan.costs.labour.each.toFixed(2)}; ${plan.costs.labour.from}`,
              },
            ]
          : []),
      ],
    },
    minutesFrom:
      'Times are rough figures from small-shop practice, setting up included; your own will differ.',
    proof: [
      dryFit.fits
        ? `The dry fit ran all ${dryFit.ran} operations on virtual stock, as printed here, and found the piece as drawn.`
        : `The dry fit ran ${dryFit.ran} operations and found ${dryFit.faults.length} things that are not as drawn: see the snags.`,
      `${judged} of ${breakdown.lots.length} cutting plans were checked again by a program that did not make them.`,
      `The finished piece weighs about ${Math.round(plan.mass.kg)} kg.`,
    ],
    cautions: [
      'Read each tool’s own manual; eyes, ears and lungs protected; nobody works at a saw tired.',
      'Fix the finished piece to the wall, especially where children are about; local codes come first.',
    ],
    snags: plan.snags,
  };
}

function railOf({ job }: Plan): Pick<BookInput, 'railWidth'> {
  const rail = job.shop.tools.find((t) => t.kind === 'guide-rail');
  const width = rail && parseLength(rail.width, job.shop.units);
  return width?.ok ? { railWidth: width.value } : {};
}

function rackRows(plan: Plan): readonly RackRow[] {
  const { job, breakdown, setOut } = plan;
  const lengths = lengthsOf(setOut.ledger, formatOf(job.shop));
  const sheets = breakdown.lots.flatMap(({ lot, sheets: used }) =>
    lot.stock
      .filter((s) => (s.have ?? 0) > 0)
      .flatMap((stock): RackRow[] => {
        const from = used.filter((u) => u.source.onRack && u.source.stock === stock);
        if (from.length === 0) return [];
        const left = breakdown.leftovers.filter((l) => from.some((f) => f.name === l.sheet));
        const sizes = left.map(
          (l) =>
            `${l.name}: ${lengths.bare(l.length)} × ${lengths.bare(l.width)}${lengths.unit === 'mm' ? ' mm' : ''}`,
        );
        return [
          {
            what: `${lot.name}, ${stock.name ?? stock.id} (${from.map((f) => f.name).join(', ')})`,
            used: `${from.length} of ${stock.have}`,
            ...(sizes.length ? { left: sizes.join('; ') } : {}),
          },
        ];
      }),
  );
  const screws = [...screwsUsed(setOut)].flatMap(([id, count]): RackRow[] => {
    const screw = job.shop.rack.screws.find((s) => s.id === id);
    const have = screw?.have ?? 0;
    return screw && have > 0 ? [{ what: screw.name ?? id, used: `${Math.min(count, have)} of ${have}` }] : [];
  });
  return [...sheets, ...screws];
}
