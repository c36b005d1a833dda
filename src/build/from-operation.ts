import type { BuildPlan } from './build-plan.ts';

/** The rest of a build: from an operation on, by its id. Undefined when there is none of that id. */
export function fromOperation(build: BuildPlan, id: string): BuildPlan | undefined {
  const at = build.operations.findIndex((o) => o.id === id);
  if (at < 0) return undefined;
  const operations = build.operations.slice(at);
  const left = new Set(operations.map((o) => o.id));
  return {
    ...build,
    operations,
    stages: build.stages
      .map((s) => ({ ...s, operations: s.operations.filter((o) => left.has(o)) }))
      .filter((s) => s.operations.length > 0),
    schedule: { ...build.schedule, operations: build.schedule.operations.slice(at) },
  };
}
