import type { JobDocument } from '../../job/index.ts';
import type { Answer, Request } from '../worker/messages.ts';

/** The worker that does the heavy work, behind a few calls. */
export class Planner {
  private readonly worker: Worker;
  private job = 0;
  private waiting: { resolve: (bytes: Uint8Array<ArrayBuffer>) => void; reject: (e: Error) => void }[] = [];

  /** `heard` gets every answer to the latest job. */
  constructor(heard: (answer: Answer) => void) {
    this.worker = new Worker(new URL('../worker/plan-worker.ts', import.meta.url), { type: 'module' });
    this.worker.onmessage = ({ data }: MessageEvent<Answer>) => {
      if (data.tell === 'file') this.waiting.shift()?.resolve(data.bytes);
      else if (data.tell === 'file-failed') this.waiting.shift()?.reject(new Error(data.sentence));
      else if (data.job === this.job) heard(data);
    };
    this.worker.onerror = (event) => heard({ tell: 'failed', job: this.job, sentence: event.message });
  }

  /** Begins to plan a job; whatever it was at is dropped. */
  plan(document: JobDocument): void {
    this.job++;
    this.send({ ask: 'plan', job: this.job, document });
  }

  /** A file of the latest plan. */
  file(file: 'pdf' | 'csv'): Promise<Uint8Array<ArrayBuffer>> {
    return new Promise((resolve, reject) => {
      this.waiting.push({ resolve, reject });
      this.send({ ask: 'file', file });
    });
  }

  private send(request: Request): void {
    this.worker.postMessage(request);
  }
}
