/** A task as the critical path sees it: how long it takes, and what it needs. */
export interface Step {
  readonly id: string;
  readonly duration: number;
  readonly after: readonly string[];
}

/** How early and how late a step may begin and end without making the whole longer. */
export interface StepTimes {
  readonly earliestStart: number;
  readonly earliestFinish: number;
  readonly latestStart: number;
  readonly latestFinish: number;
  /** How long it may be put off: latest less earliest start. */
  readonly slack: number;
}

/** The times of a network of steps. */
export interface CriticalPath {
  readonly duration: number;
  readonly times: ReadonlyMap<string, StepTimes>;
  /** Steps without slack, by their start; those that take no time are left out. */
  readonly critical: readonly string[];
}

/**
 * Forward and backward pass over a network of steps, hands and tools being no limit. Steps must stand after all they
 * need; throws where one doesn't. Source: the critical path method (Kelley and Walker 1959), activity on node.
 */
export function criticalPath(steps: readonly Step[]): CriticalPath {
  const early = new Map<string, number>();
  let duration = 0;
  for (const { id, duration: long, after } of steps) {
    let start = 0;
    for (const need of after) {
      const finish = early.get(need);
      if (finish === undefined) throw new Error(`${id} stands before ${need}, which it needs`);
      start = Math.max(start, finish);
    }
    early.set(id, start + long);
    duration = Math.max(duration, start + long);
  }
  const late = new Map<string, number>();
  for (const { id, duration: long, after } of [...steps].reverse()) {
    const finish = late.get(id) ?? duration;
    late.set(id, finish);
    for (const need of after) late.set(need, Math.min(late.get(need) ?? duration, finish - long));
  }
  const times = new Map(
    steps.map(({ id, duration: long }): [string, StepTimes] => {
      const [earliestFinish, latestFinish] = [early.get(id)!, late.get(id)!];
      return [
        id,
        {
          earliestStart: earliestFinish - long,
          earliestFinish,
          latestStart: latestFinish - long,
          latestFinish,
          slack: latestFinish - earliestFinish,
        },
      ];
    }),
  );
  const critical = steps
    .filter((s) => s.duration > 0 && times.get(s.id)!.slack === 0)
    .sort((a, b) => times.get(a.id)!.earliestStart - times.get(b.id)!.earliestStart)
    .map((s) => s.id);
  return { duration, times, critical };
}
