import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readCutProblem } from '../cut-contract.ts';
import { judgeCuts } from './judge-cuts.ts';
import { readCutPlan } from './read-cut-plan.ts';

const folder = new URL('../../../test/broken-plans/', import.meta.url);
const files = readdirSync(folder).filter((f) => f.endsWith('.json'));

interface BrokenPlan {
  readonly says: string;
  /** Codes the judge must find. */
  readonly finds: readonly string[];
  readonly problem: unknown;
  readonly plan: unknown;
}

describe('judgeCuts', () => {
  it.each(files)('rejects %s for its own reason', (file) => {
    const broken = JSON.parse(readFileSync(new URL(file, folder), 'utf8')) as BrokenPlan;
    const problem = readCutProblem(broken.problem);
    if (!problem.ok) throw new Error(problem.snags.map((s) => s.sentence).join('\n'));
    const read = readCutPlan(problem.problem, broken.plan);
    const verdict = read.plan ? judgeCuts(problem.problem, read.plan) : { findings: [] };
    const codes = new Set([...read.findings, ...verdict.findings].map((f) => f.code));
    expect([...codes].sort()).toEqual([...broken.finds].sort());
  });

  it('has a broken plan for every rule', () => {
    const found = new Set(
      files.flatMap((f) => (JSON.parse(readFileSync(new URL(f, folder), 'utf8')) as BrokenPlan).finds),
    );
    const rules =
      'unknown-stock unknown-piece sheet-count sheet-size cut-outside cut-direction part-size piece-size piece-grain ' +
      'piece-count false-reason stock-exceeded area-sum cost bound proven format placed-list left-list bought-list ' +
      'stages first-cut cut-too-long hold carry yard-cuts vehicle flaw faces group worth';
    expect([...found].sort()).toEqual(rules.split(' ').sort());
  });
});
