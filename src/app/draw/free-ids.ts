import type { JobDocument } from '../../job/index.ts';

/** Ids that nothing else has, counted on from what is there. */
export class Ids {
  private readonly taken: Set<string>;

  constructor(job: JobDocument) {
    this.taken = new Set(job.design.records.map((r) => r.id));
  }

  next(stem: string): string {
    for (let n = 1; ; n++) {
      const id = `${stem}${n}`;
      if (this.taken.has(id) || (n === 1 && this.taken.has(stem))) continue;
      this.taken.add(id);
      return id;
    }
  }
}
