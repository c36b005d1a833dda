import type { BuildPlan } from '../build/index.ts';
import { formatOf, type Shop, toolName } from '../job/index.ts';
import { type Ledger, printSetting } from '../measure/index.ts';

/** The cards of a plan in the order of work, as text; the first of them has the number that it has among all. */
export function stepLines(build: BuildPlan, ledger: Ledger, shop: Shop, first = 1): string {
  const format = formatOf(shop);
  const byId = new Map(build.operations.map((o) => [o.id, o]));
  const lines: string[] = [];
  let n = first - 1;
  let last: readonly string[] = [];
  for (const stage of build.stages) {
    lines.push('', stage.title, '-'.repeat(stage.title.length));
    for (const id of stage.operations) {
      const o = byId.get(id)!;
      const tool = shop.tools.find((t) => t.id === o.tool);
      const filled = o.lines.map((l) =>
        l.replace(/\{(\d+)\}/g, (_, i) => printSetting(ledger.ticks(o.lengths[Number(i)]!), format)),
      );
      lines.push('', `${++n}. ${o.title}${tool ? `  [${toolName(tool)}]` : ''}`);
      const words = [...filled.map((l) => `   - ${l}`), ...o.cautions.map((c) => `   ! ${c}`)];
      if (o.faceUp) lines.push(`   Lying: ${o.faceUp}.`);
      if (o.reference) lines.push(`   Measure from: ${o.reference}.`);
      // Of a mirrored pair the second card reads like the first.
      if (words.length > 1 && sameWords(words, last)) lines.push(`   - All as on card ${n - 1}.`);
      else lines.push(...words);
      last = words;
    }
  }
  return lines.map((l) => `${l}\n`).join('');
}

function sameWords(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && a.every((w, i) => w === b[i]);
}
