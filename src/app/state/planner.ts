import type { JobDocument, Shop } from '../../job/index.ts';
import type { ListPlan } from '../../plan/index.ts';
import type { ListCut } from '../worker/list-work.ts';
import type { Answer, Request } from '../worker/messages.ts';
import { unpack } from '../worker/packed-plan.ts';

/** The worker that does the heavy work, behind a few calls. */
export class Planner {
  private readonly worker: Worker;
  private job = 0;
  private lists = 0;
  private listed: { resolve: (cut: ListCut) => void; reject: (e: Error) => void } | undefined;
  private waiting: { resolve: (bytes: Uint8Array<ArrayBuffer>) => void; reject: (e: Error) => void }[] = [];

  /** `heard` gets every answer to the latest job. */
  constructor(heard: (answer: Answer) => void) {
    this.worker = new Worker(new URL('../worker/plan-worker.ts', import.meta.url), { type: 'module' });
    this.worker.onmessage = ({ data }: MessageEvent<Answer>) => {
      if (data.tell === 'file') this.waiting.shift()?.resolve(data.bytes);
      else if (data.tell === 'file-failed') this.waiting.shift()?.reject(new Error(data.sentence));
      else if (data.tell === 'list' || data.tell === 'list-failed') this.hearList(data);
      else if (data.job === this.job) heard(data);
    };
    this.worker.onerror = (event) => heard({ tell: 'failed', job: this.job, sentence: event.message });
  }

  /** Begins to plan a job; whatever it was at is dropped. */
  plan(document: JobDocument): void {
    this.job++;
    this.send({ ask: 'plan', job: this.job, document });
  }

  /** Ends the search for better cutting; the best plan so far stays. */
  enough(): void {
    this.send({ ask: 'enough', job: this.job });
  }

  /** Cuts a pasted list from a shop's rack; an older one that isn't done never ends. */
  list(text: string, shop: Shop): Promise<ListCut> {
    const list = ++this.lists;
    return new Promise((resolve, reject) => {
      this.listed = { resolve, reject };
      this.send({ ask: 'list', list, text, shop });
    });
  }

  private hearList(data: Answer & { readonly tell: 'list' | 'list-failed' }): void {
    if (data.list !== this.lists) return;
    if (data.tell === 'list-failed') this.listed?.reject(new Error(data.sentence));
    else
      this.listed?.resolve(data.cut.ok ? { ...data.cut, plan: unpack<ListPlan>(data.cut.plan) } : data.cut);
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
