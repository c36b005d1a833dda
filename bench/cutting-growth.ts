/**
 * How the time to a first plan, and the plan after a second's work, grow with the number of parts.
 *
 *   node --import @oxc-node/core/register bench/cutting-growth.ts
 *
 * Parts like those of casework, drawn with a seed: 60 to 900 mm by 60 to 600 mm, half of them free to turn.
 */
import { type CutProblem, ONE_SECOND, planCuts } from '../src/breakdown/index.ts';
import { fromMm } from '../src/measure/index.ts';

function casework(parts: number): CutProblem {
  let state = 7;
  const below = (n: number) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state % n;
  };
  return {
    kerf: fromMm(2.2),
    stock: [{ id: 'sheet', length: fromMm(2440), width: fromMm(1220), cost: 1, trim: fromMm(5) }],
    pieces: Array.from({ length: parts }, (_, i) => ({
      id: `p${i}`,
      length: fromMm(60 + below(841)),
      width: fromMm(60 + below(541)),
      count: 1,
      turn: below(2) === 0,
    })),
  };
}

function used(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

console.log('parts  first plan  sheets   then  sheets  bound  proven');
for (const parts of [20, 20, 50, 100, 200, 500, 1000]) {
  const start = used();
  const steps = planCuts(casework(parts), { effort: ONE_SECOND, tidy: false });
  let step = steps.next();
  const first = used() - start;
  const sheets = step.done ? step.value.cost : step.value.cost;
  while (!step.done) step = steps.next();
  const end = step.value;
  const row = [
    parts,
    `${Math.round(first)} ms`,
    sheets,
    `${Math.round(used() - start)} ms`,
    end.cost,
    end.bound.cost,
    end.proven,
  ];
  console.log(row.join('  '));
}
