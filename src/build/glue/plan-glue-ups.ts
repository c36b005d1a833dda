import type { Snag } from '../../snag/index.ts';
import type { Bench } from '../bench.ts';
import { markWords } from '../mark-words.ts';
import type { Operation } from '../operation.ts';
import { listWords } from '../words.ts';
import { clampsThere } from './clamps-needed.ts';
import { type GlueTime, glueTime, handsFor, slowEnough } from './glue-time.ts';
import type { GlueUp } from './glue-up.ts';
import { cureCard, rehearsalCard, waitsForMore } from './rehearsal.ts';
import { type GlueRun, splitGlueUps } from './split-glue-ups.ts';

/** Operations with the cards of their glue-ups among them. */
export interface GluedBuild {
  readonly operations: readonly Operation[];
  readonly glueUps: readonly GlueUp[];
  readonly snags: readonly Snag[];
}

/**
 * Groups what is glued so that nothing outruns the glue’s open time or the clamps, and puts a card before each
 * glue-up that rehearses it and one behind it that lets it set, where none stands there yet.
 */
export function planGlueUps(bench: Bench): GluedBuild {
  const runs = splitGlueUps(bench, bench.operations);
  const time = glueTime(bench.job.shop.rack.adhesives);
  const glueUps: GlueUp[] = [];
  const count = new Map<string, number>();
  let operations: readonly Operation[] = bench.operations;
  for (const run of runs) {
    const n = (count.get(run.assembly) ?? 0) + 1;
    count.set(run.assembly, n);
    const glueUp: GlueUp = {
      id: `${run.assembly}/glue-${n}`,
      assembly: run.assembly,
      operations: run.steps.map((s) => s.operation.id),
      parts: run.parts.map((p) => p.mark),
      minutes: run.minutes,
      leaves: time.assembly,
      clamps: run.clamps,
      laterStandDry: waitsForMore(run) && run.clamps > 0,
    };
    glueUps.push(glueUp);
    operations = withCards(bench, operations, run, glueUp, time);
  }
  return {
    operations,
    glueUps,
    snags: glueUps.flatMap((g) => snagsOf(bench, g, time)),
  };
}

/** The operations with a glue-up’s minutes, its rehearsal before it, and its setting behind it. */
function withCards(
  bench: Bench,
  operations: readonly Operation[],
  run: GlueRun,
  glueUp: GlueUp,
  time: GlueTime,
): readonly Operation[] {
  const [first, last] = [glueUp.operations[0]!, glueUp.operations.at(-1)!];
  const minutes = new Map(run.steps.map((s) => [s.operation.id, s.minutes]));
  const ends = operations.findIndex((o) => o.id === last);
  const checks = run.checked ? checkedBy(operations, ends, run.assembly) : [];
  const rehearsal = rehearsalCard(bench, run, glueUp, time);
  const cure = run.checked || run.clamps === 0 ? undefined : cureCard(bench, run, glueUp, last);
  return operations.flatMap((o, i): Operation[] => {
    const timed = minutes.has(o.id)
      ? { ...o, minutes: { active: minutes.get(o.id)!, waiting: o.minutes.waiting }, together: glueUp.id }
      : o;
    if (o.id === first) {
      const before = { ...rehearsal, after: o.after };
      const itself = { ...timed, after: [rehearsal.id] };
      return cure && first === last ? [before, itself, cure] : [before, itself];
    }
    if (cure && o.id === last) return [timed, cure];
    if (checks.includes(o))
      return [{ ...timed, together: glueUp.id, ...(o.kind === 'cure' ? { clamps: run.clamps } : {}) }];
    // What came after the glue-up now waits until it has set.
    if (cure && i > ends && o.after.includes(last))
      return [{ ...timed, after: o.after.map((id) => (id === last ? cure.id : id)).sort() }];
    return [timed];
  });
}

/** The cards that follow a glue-up to check it and let it set. */
function checkedBy(operations: readonly Operation[], ends: number, assembly: string): readonly Operation[] {
  const behind = operations.slice(ends + 1);
  const next = behind.findIndex(
    (o) =>
      // What is set or screwed after that is no part of it, nor are the checks that follow.
      ('into' in o.does && o.does.into === assembly) ||
      (o.id.startsWith(`${assembly}/`) && o.kind !== 'check-square' && o.kind !== 'cure'),
  );
  return (next < 0 ? behind : behind.slice(0, next)).filter((o) => o.id.startsWith(`${assembly}/`));
}

function snagsOf(bench: Bench, glueUp: GlueUp, time: GlueTime): readonly Snag[] {
  const snags: Snag[] = [];
  const marks = markWords(glueUp.parts);
  const where = { operation: glueUp.operations[0]!, path: 'shop/rack/adhesives' };
  if (glueUp.minutes > glueUp.leaves) {
    const slower = slowEnough(glueUp.minutes).filter((kind) => kind !== time.kind);
    const alone = handsFor(bench) < 2;
    snags.push({
      code: 'glue-up.outruns-glue',
      level: 'mind',
      where,
      sentence: `To glue ${marks} takes about ${glueUp.minutes} minutes, and they can’t be glued one after the other; ${time.name} leaves ${glueUp.leaves}.`,
      figures: {
        value: glueUp.minutes,
        limit: glueUp.leaves,
        margin: glueUp.leaves - glueUp.minutes,
        unit: 'min',
      },
      rule: {
        says: 'every joint is closed and clamped before the glue of the first begins to set',
        source: time.from === 'label' ? 'label of the glue' : 'typical of published labels; from memory',
        confirmed: false,
      },
      cures: [
        ...(slower.length > 0
          ? [{ says: `Use a slower glue; long enough by their usual labels: ${listWords(slower)}.` }]
          : []),
        ...(alone ? [{ says: 'Have another pair of hands: two spread and clamp in half the time.' }] : []),
        { says: 'Enter the times on your glue’s own label; many leave more than is reckoned with here.' },
      ],
    });
  }
  const there = clampsThere(bench);
  if (there > 0 && glueUp.clamps > there)
    snags.push({
      code: 'glue-up.too-few-clamps',
      level: 'mind',
      where: { ...where, path: 'shop/tools' },
      sentence: `To glue ${marks} takes ${glueUp.clamps} clamps; the shop has ${there}.`,
      figures: { value: there, limit: glueUp.clamps, margin: there - glueUp.clamps, unit: 'clamps' },
      rule: {
        says: 'a clamp at both edges of every joint, and one between where it is long; screws hold their own',
        source: 'common practice',
        confirmed: true,
      },
      cures: [
        {
          says: `Borrow ${glueUp.clamps - there} more clamps, or press two joints at once with a batten across.`,
        },
        { says: 'Join the case with screws: they hold while the glue sets.' },
      ],
    });
  return snags;
}
