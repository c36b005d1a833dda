import { spareGroups } from '../breakdown/index.ts';
import { formatOf } from '../job/index.ts';
import { printSetting, type Traced } from '../measure/index.ts';
import type { Plan } from '../plan/index.ts';
import { joinMarks } from '../setting-out/index.ts';
import { snagLines } from './snag-lines.ts';

/** A plan on one screen. */
export function summary(plan: Plan): string {
  const { job, setOut, breakdown, hours, costs, dryFit } = plan;
  const format = formatOf(job.shop);
  const size = (t: Traced) => printSetting(setOut.ledger.ticks(t), format);
  const piece = job.design.records.find((r) => r.kind === 'piece');
  const { width, height, depth } = setOut.overall;
  const sheetsOf = (onRack: boolean) =>
    breakdown.lots.flatMap(({ lot, sheets }) =>
      lot.stock.flatMap((stock) => {
        const n = sheets.filter((s) => s.source.onRack === onRack && s.source.stock === stock).length;
        return n > 0 ? [`${n} × ${lot.name}, ${stock.name ?? stock.id}`] : [];
      }),
    );
  const count = (level: string) => plan.snags.filter((s) => s.level === level).length;
  const money = (x: number) => `${x.toFixed(2)} ${costs.currency}`;
  const lines: [string, readonly string[]][] = [
    ['Parts', [`${setOut.parts.length}, ${Math.round(plan.mass.kg)} kg together`]],
    ['Buy', or(sheetsOf(false))],
    ['From the rack', or(sheetsOf(true))],
    ['Left over', or(leftLines(plan, size))],
    [
      'If spoiled',
      spareGroups(breakdown).map((g) =>
        g.lastChance
          ? `${joinMarks(g.marks)}: ${g.says} would give ${g.marks.length > 1 ? 'them' : 'it'} again`
          : `${joinMarks(g.marks)}: again from ${g.says}`,
      ),
    ],
    ['No stock for', breakdown.missing.map((m) => `${m.part.mark}, ${m.part.name}`)],
    [
      'Dry fit',
      [
        dryFit.fits
          ? `all ${dryFit.ran} operations run; the piece is as drawn`
          : `${dryFit.faults.length} faults`,
      ],
    ],
    ['Hours', [`${(hours.active / 60).toFixed(1)} of work, besides drying (rough figures)`]],
    [
      'Cost',
      [
        `${money(costs.total)}: material ${money(costs.material)}${costs.labour ? `, work ${money(costs.labour.amount)}` : ''}`,
      ],
    ],
    ['Snags', [`${count('stop')} stop, ${count('mind')} to mind, ${count('note')} notes`]],
  ];
  const body = lines
    .filter(([, of]) => of.length > 0)
    .map(([head, of]) => of.map((l, i) => `  ${(i === 0 ? head : '').padEnd(14)}${l}`).join('\n'))
    .join('\n');
  const stops = plan.snags.filter((s) => s.level === 'stop');
  return `${piece?.name ?? 'Untitled'}  ${size(width)} wide, ${size(height)} high, ${size(depth)} deep\n\n${body}\n${stops.length ? `\n${snagLines(stops)}\n` : ''}`;
}

/** What is left of each sheet and strip, on a line. */
function leftLines({ breakdown }: Plan, size: (t: Traced) => string): readonly string[] {
  const left = new Map<string, string[]>();
  for (const l of breakdown.leftovers) {
    const [sheet = '', rest = ''] = l.name.split('-');
    left.set(sheet, [...(left.get(sheet) ?? []), `${rest} ${size(l.length)} × ${size(l.width)}`]);
  }
  return [...left].map(([sheet, sizes]) => `${sheet.padEnd(4)}${sizes.join(', ')}`);
}

function or(list: readonly string[]): readonly string[] {
  return list.length > 0 ? list : ['nothing'];
}
