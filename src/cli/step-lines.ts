import type { BuildPlan } from '../build/index.ts';
import { formatOf, type Shop, toolName } from '../job/index.ts';
import { type Ledger, printSetting } from '../measure/index.ts';

/** The cards of a plan in the order of work, as text. */
export function stepLines(build: BuildPlan, ledger: Ledger, shop: Shop): string {
  const format = formatOf(shop);
  const byId = new Map(build.operations.map((o) => [o.id, o]));
  const lines: string[] = [];
  let n = 0;
  for (const stage of build.stages) {
    lines.push('', stage.title, '-'.repeat(stage.title.length));
    for (const id of stage.operations) {
      const o = byId.get(id)!;
      const tool = shop.tools.find((t) => t.id === o.tool);
      const filled = o.lines.map((l) =>
        l.replace(/\{(\d+)\}/g, (_, i) => printSetting(ledger.ticks(o.lengths[Number(i)]!), format)),
      );
      lines.push('', `${++n}. ${o.title}${tool ? `  [${toolName(tool)}]` : ''}`);
      if (o.faceUp) lines.push(`   Lying: ${o.faceUp}.`);
      if (o.reference) lines.push(`   Measure from: ${o.reference}.`);
      for (const l of filled) lines.push(`   - ${l}`);
      for (const c of o.cautions) lines.push(`   ! ${c}`);
    }
  }
  return lines.map((l) => `${l}\n`).join('');
}
