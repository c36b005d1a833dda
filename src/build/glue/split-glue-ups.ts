import type { Joint, Part } from '../../setting-out/index.ts';
import type { Bench } from '../bench.ts';
import { isCorner } from '../fold-work.ts';
import type { Operation } from '../operation.ts';
import { clampsNeeded, clampsThere } from './clamps-needed.ts';
import { glueTime, handsFor, minutesForCorners, minutesToGlue } from './glue-time.ts';
import { gluedJoints } from './glued-joints.ts';

/** An operation of a glue-up; one that closes no glued joint sets or screws what stands between. */
interface GlueStep {
  readonly operation: Operation;
  readonly joints: readonly Joint[];
  readonly minutes: number;
}

/** Operations that are done while one spread of glue is open. */
export interface GlueRun {
  readonly assembly: string;
  readonly steps: readonly GlueStep[];
  readonly joints: readonly Joint[];
  readonly parts: readonly Part[];
  /** From the first stroke of the brush until every joint is held. */
  readonly minutes: number;
  readonly clamps: number;
  /** True when the next part of the assembly would be too much and waits until this has set. */
  readonly more: boolean;
  /** True when the cards that follow check it and let it set. */
  readonly checked: boolean;
}

/**
 * Divides what is glued into runs that outrun neither the glue nor the clamps: part by part in the order of the build,
 * a new run wherever the next part would be too much. A part that is too much on its own stands alone. The mitred corners
 * of a case are closed together, so nothing parts them.
 */
export function splitGlueUps(bench: Bench, operations: readonly Operation[]): readonly GlueRun[] {
  const leaves = glueTime(bench.job.shop.rack.adhesives).assembly;
  const most = Math.max(1, clampsThere(bench));
  const hands = handsFor(bench);
  const byMark = new Map(bench.setOut.parts.map((p) => [p.mark, p]));
  const standing = new Map<string, Set<string>>();
  const open = new Map<string, GlueStep[]>();
  /** The first part of an assembly that is on the bench with no glue on it yet. */
  const begun = new Map<string, GlueStep>();
  const runs: GlueRun[] = [];
  const close = (assembly: string, how: Pick<GlueRun, 'more' | 'checked'>) => {
    const steps = open.get(assembly);
    open.delete(assembly);
    if (steps) runs.push(runOf(bench, assembly, steps, how));
  };
  for (const [i, o] of operations.entries()) {
    const into = assemblyOf(o);
    if (into === undefined) continue;
    // Nothing is turned over or hung on before the glue has set.
    if (o.kind === 'move' || o.does.act === 'hinge') {
      close(into, { more: false, checked: false });
      continue;
    }
    if (o.kind === 'check-square' || o.kind === 'cure') {
      close(into, { more: false, checked: true });
      continue;
    }
    const there = standing.get(into) ?? new Set<string>();
    standing.set(into, there);
    const joints = gluedJoints(bench, o, there);
    const begins = there.size === 0;
    const part = o.does.act === 'set' ? byMark.get(o.does.workpiece) : undefined;
    if (part) there.add(part.id);
    const steps = open.get(into);
    if (joints.length === 0) {
      const step = { operation: o, joints, minutes: o.minutes.active };
      if (steps) steps.push(step);
      else if (begins && part) begun.set(into, step);
      else begun.delete(into);
      continue;
    }
    const clamps = clampsNeeded(bench, joints);
    const already = (steps ?? []).flatMap((s) => s.joints);
    const minutes = minutesToGlue(bench, joints, clamps, hands) + minutesForCorners(already, joints);
    const step = { operation: o, joints, minutes };
    const together = clampsNeeded(bench, [...already, ...joints]);
    const held = step.minutes + screwsBehind(bench, operations, i, into);
    const tooMuch = steps && (sumOf(sinceGlue(steps)) + held > leaves || together > most);
    if (tooMuch && !cornersOpen(bench, already)) close(into, { more: true, checked: false });
    const before = begun.get(into);
    begun.delete(into);
    open.set(into, [...(open.get(into) ?? (before ? [before] : [])), step]);
  }
  for (const assembly of [...open.keys()]) close(assembly, { more: false, checked: false });
  return runs;
}

function runOf(
  bench: Bench,
  assembly: string,
  all: readonly GlueStep[],
  how: Pick<GlueRun, 'more' | 'checked'>,
): GlueRun {
  const last = all.findLastIndex((s) => s.joints.length > 0);
  // Behind the last joint only its screws go on at once; what is set after that can wait.
  const next = all.findIndex((s, i) => i > last && s.operation.does.act === 'set');
  const steps = next < 0 || how.checked ? all : all.slice(0, next);
  const open = sinceGlue(steps).filter((s) => steps.indexOf(s) <= last || holdsGlue(bench, s.operation));
  const joints = steps.flatMap((s) => s.joints);
  const touched = new Set(joints.flatMap((j) => [j.part, j.mate]));
  return {
    assembly,
    steps,
    joints,
    parts: bench.setOut.parts.filter((p) => touched.has(p.id)),
    minutes: sumOf(open),
    clamps: clampsNeeded(bench, joints),
    ...how,
  };
}

/** Is a corner of the case open whose first corner is in wet glue? */
function cornersOpen(bench: Bench, already: readonly Joint[]): boolean {
  const begun = new Set(already.filter(isCorner).flatMap((j) => [j.part, j.mate]));
  return bench.setOut.joints.some(
    (j) => isCorner(j) && (begun.has(j.part) || begun.has(j.mate)) && !already.includes(j),
  );
}

/** Steps from the first glue on: what only begins the assembly is done before. */
function sinceGlue(steps: readonly GlueStep[]): readonly GlueStep[] {
  return steps.slice(steps.findIndex((s) => s.joints.length > 0));
}

function sumOf(steps: readonly GlueStep[]): number {
  return steps.reduce((sum, s) => sum + s.minutes, 0);
}

/** Do these screws hold a joint that is glued as well? */
function holdsGlue(bench: Bench, { does }: Operation): boolean {
  if (does.act !== 'screw') return false;
  const id = (mark: string) => bench.setOut.parts.find((p) => p.mark === mark)?.id;
  const pair = [id(does.workpiece), id(does.mate)];
  return bench.setOut.joints.some(
    (j) => j.hold === 'glue-and-screws' && pair.includes(j.part) && pair.includes(j.mate),
  );
}

/** Minutes for the screws that hold what an operation glues in, and that follow it at once. */
function screwsBehind(bench: Bench, operations: readonly Operation[], at: number, into: string): number {
  const behind = operations.slice(at + 1).filter((o) => assemblyOf(o) === into);
  const other = behind.findIndex((o) => o.does.act !== 'screw');
  return (other < 0 ? behind : behind.slice(0, other))
    .filter((o) => holdsGlue(bench, o))
    .reduce((sum, o) => sum + o.minutes.active, 0);
}

/** What an operation builds on: the assembly it sets into, screws or checks. */
function assemblyOf(o: Operation): string | undefined {
  if (o.kind === 'check-square' || o.kind === 'cure' || o.kind === 'move') return o.id.split('/')[0];
  return o.does.act === 'set' || o.does.act === 'screw' || o.does.act === 'hinge' ? o.does.into : undefined;
}
