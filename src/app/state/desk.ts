import { type Edit, type JobDocument, readJob, type Shop } from '../../job/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Plan } from '../../plan/index.ts';
import { type SetOut, setOut } from '../../setting-out/index.ts';
import type { Snag } from '../../snag/index.ts';
import type { ListCut } from '../worker/list-work.ts';
import type { Answer } from '../worker/messages.ts';
import { unpack } from '../worker/packed-plan.ts';
import type { AppState } from './app-state.ts';
import type { FirstJob } from './first-job.ts';
import { begin, commit, type History, redo, undo } from './history.ts';
import { keep } from './keep.ts';
import type { PlaceName } from './places.ts';
import { Planner } from './planner.ts';
import { Store } from './store.ts';

/** What a maker can do with the open job. One object for the whole page. */
export class Desk {
  readonly store: Store<AppState>;
  private readonly planner: Planner;
  private opened: string;

  constructor(first: FirstJob) {
    this.opened = first.opened;
    this.store = new Store<AppState>({
      place: 'Draw',
      name: first.name,
      history: first.history,
      setOut: setOut(first.history.job),
      meshes: undefined,
      plan: undefined,
      working: { room: 'setting-out', share: 0 },
      search: undefined,
      failure: undefined,
      part: undefined,
      asked: undefined,
      snagsOpen: false,
      wanted: undefined,
      refused: first.refused,
      kept: false,
    });
    this.planner = new Planner((answer) => this.hear(answer));
    this.planner.plan(first.history.job);
    void this.keepIt();
  }

  get job(): JobDocument {
    return this.store.get().history.job;
  }

  /** Makes an edit; gives the reasons when it can't be made, and then nothing has changed. */
  edit(edit: Edit): readonly Snag[] {
    const done = commit(this.store.get().history, edit);
    if (!done.ok) return done.snags;
    let drawn: SetOut;
    try {
      drawn = setOut(done.history.job);
    } catch (error) {
      return [ours(error)];
    }
    this.show(done.history, drawn);
    return [];
  }

  undo(): void {
    this.go(undo(this.store.get().history));
  }

  redo(): void {
    this.go(redo(this.store.get().history));
  }

  /** Back to the file as it was opened. Undo leads out of it again. */
  startAgain(): void {
    const read = readJob(this.opened);
    if (!read.ok) return;
    const { job } = read;
    this.edit({
      edit: 'all',
      of: (['design', 'shop', 'work'] as const).map((at) => ({ edit: 'set', at, value: job[at] })),
    });
  }

  /** Opens a file's text in place of the open job; a broken one is refused with all reasons. */
  open(file: string, text: string): void {
    const read = readJob(text);
    if (!read.ok) {
      this.store.set({ refused: { file, snags: read.snags } });
      return;
    }
    this.opened = text;
    this.store.set({
      name: file.replace(/\.json$/i, ''),
      refused: undefined,
      part: undefined,
      meshes: undefined,
      plan: undefined,
    });
    this.go(begin(read.job));
  }

  file(kind: 'pdf' | 'csv'): Promise<Uint8Array<ArrayBuffer>> {
    return this.planner.file(kind);
  }

  /** Cuts a list of the maker's own from a rack. */
  cutList(text: string, shop: Shop): Promise<ListCut> {
    return this.planner.list(text, shop);
  }

  /** The cutting plan is good enough: the search for a better one ends. */
  enough(): void {
    this.planner.enough();
  }

  goTo(place: PlaceName): void {
    this.store.set({ place, asked: undefined });
  }

  ask(from: SetOut, traced: Traced): void {
    this.store.set({ asked: { setOut: from, traced }, snagsOpen: false });
  }

  choose(part: string | undefined): void {
    this.store.set({ part });
  }

  /** Brings the field that stands at a path of the document into sight. */
  goToField(path: string): void {
    const place = path.startsWith('design/') ? 'Draw' : 'Rack';
    this.store.set({ place, wanted: path, asked: undefined, snagsOpen: false });
  }

  private go(history: History): void {
    if (history !== this.store.get().history) this.show(history, setOut(history.job));
  }

  private show(history: History, drawn: SetOut): void {
    const { part } = this.store.get();
    this.store.set({
      history,
      setOut: drawn,
      part: drawn.parts.some((p) => p.id === part) ? part : undefined,
      asked: undefined,
      failure: undefined,
      search: undefined,
      working: { room: 'setting-out', share: 0 },
    });
    this.planner.plan(history.job);
    void this.keepIt();
  }

  private async keepIt(): Promise<void> {
    const { name, history } = this.store.get();
    const kept = await keep({ name, history, opened: this.opened });
    if (this.store.get().history === history) this.store.set({ kept });
  }

  private hear(answer: Answer): void {
    switch (answer.tell) {
      case 'meshes':
        this.store.set({ meshes: { of: this.store.get().setOut, parts: answer.parts } });
        return;
      case 'progress':
        this.store.set({ working: answer.progress });
        return;
      case 'plan':
        this.store.set({ plan: unpack<Plan>(answer.plan), working: undefined });
        return;
      case 'search':
        this.store.set({ search: answer.search });
        return;
      case 'failed':
        this.store.set({ failure: answer.sentence, working: undefined });
    }
  }
}

function ours(error: unknown): Snag {
  const words = error instanceof Error ? error.message : String(error);
  return {
    code: 'app.our-mistake',
    level: 'stop',
    where: { path: '' },
    sentence: `This can’t be set out, and that is our mistake: ${words}.`,
    cures: [{ says: 'Nothing was changed. Try another size.' }],
  };
}
