import { type Breakdown, breakDown } from '../breakdown/index.ts';
import { planBuild } from '../build/index.ts';
import { checkPlan } from '../checks/index.ts';
import { dryFit } from '../dry-fit/index.ts';
import type { JobDocument } from '../job/index.ts';
import { reckonedDensity } from '../materials/index.ts';
import { type SetOut, setOut, shapeOf } from '../setting-out/index.ts';
import type { Snag } from '../snag/index.ts';
import { type Mass, massOf, massTogether, type Solids } from '../solid/index.ts';
import { costsOf } from './costs.ts';
import { curesThatHelp } from './cures-that-help.ts';
import { dryFitInput } from './dry-fit-input.ts';
import { dryFitSnags } from './dry-fit-snags.ts';
import type { Hours, Plan, PlanProgress } from './plan.ts';

/** How planning is asked for. */
export interface PlanOptions {
  /** Work to spend on each lot's cutting, in the planner's own units; enough for a plan within a blink when absent. */
  readonly effort?: number;
  /** An earlier breakdown of the job: among cutting plans as good, the one nearest to it is taken. */
  readonly last?: Breakdown;
  /** Looked at whenever planning pauses: set `requested` and the search for better cutting ends. */
  readonly stop?: { requested: boolean };
}

/**
 * Takes a job through all rooms: sets it out, breaks the stock down, writes the build, runs it dry and checks it.
 * Pauses after counted work with its progress. Never throws for what a maker can mend: that comes as snags.
 */
export function* planJob(
  job: JobDocument,
  tools: { readonly solids: Solids },
  options: PlanOptions = {},
): Generator<PlanProgress, Plan> {
  yield { room: 'setting-out', share: 0 };
  const drawn = setOut(job);
  const cutting = breakDown(job, drawn, {
    ...(options.effort === undefined ? {} : { effort: options.effort }),
    ...(options.stop ? { stop: options.stop } : {}),
    ...(options.last ? { last: options.last } : {}),
  });
  let step = cutting.next();
  while (!step.done) {
    yield { room: 'breakdown', share: step.value.share };
    step = cutting.next();
  }
  return yield* planOn(job, drawn, step.value, tools);
}

/** The way on from a breakdown: writes the build, runs it dry and checks it. */
export function* planOn(
  job: JobDocument,
  drawn: SetOut,
  breakdown: Breakdown,
  { solids }: { readonly solids: Solids },
): Generator<PlanProgress, Plan> {
  yield { room: 'build', share: 0 };
  const build = planBuild(job, drawn, breakdown);
  const run = dryFit(dryFitInput(job, drawn, breakdown, build, solids));
  let done = run.next();
  while (!done.done) {
    yield { room: 'dry-fit', share: done.value };
    done = run.next();
  }
  const report = done.value;
  yield { room: 'checks', share: 0 };
  const masses = massesOf(job, drawn, solids);
  const weigh = (id: string) => {
    const mass = masses.get(id);
    if (!mass) throw new Error(`no such part: ${id}`);
    return { kg: mass.kg, centreMm: mass.centre };
  };
  const checked = checkPlan({ job, setOut: drawn, breakdown, build, weigh });
  const hours = hoursOf(build);
  return {
    job,
    setOut: drawn,
    breakdown,
    build,
    dryFit: report,
    masses,
    mass: massTogether([...masses.values()]),
    costs: costsOf(job, drawn, breakdown, hours.active, build.finishing),
    hours,
    snags: worstFirst([
      ...curesThatHelp(job, drawn),
      ...build.snags,
      ...dryFitSnags(job, report, drawn, breakdown, checked),
      ...checked,
    ]),
  };
}

function massesOf(job: JobDocument, drawn: SetOut, solids: Solids): ReadonlyMap<string, Mass> {
  const materials = new Map(job.shop.rack.lots.map((l) => [l.id, l.material]));
  const masses = new Map<string, Mass>();
  for (const part of drawn.parts) {
    const kgM3 = reckonedDensity(materials.get(part.lot));
    masses.set(
      part.id,
      solids.within(() =>
        massOf({ body: solids.make(shapeOf(drawn, part, { fastenerHoles: false })), density: kgM3 }),
      ),
    );
  }
  return masses;
}

function hoursOf(build: Plan['build']): Hours {
  const sum = (
    list: readonly { readonly minutes: { readonly active: number; readonly waiting: number } }[],
    key: 'active' | 'waiting',
  ) => list.reduce((total, o) => total + o.minutes[key], 0);
  return {
    active: sum(build.operations, 'active'),
    waiting: sum(build.operations, 'waiting'),
    byStage: build.stages.map((s) => ({
      title: s.title,
      active: sum(
        build.operations.filter((o) => o.stage === s.id),
        'active',
      ),
    })),
  };
}

const LEVELS = ['stop', 'mind', 'note'] as const;

function worstFirst(snags: readonly Snag[]): readonly Snag[] {
  return LEVELS.flatMap((level) => snags.filter((s) => s.level === level));
}
