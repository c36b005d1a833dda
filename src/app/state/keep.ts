import { type IDBPDatabase, openDB } from 'idb';
import type { History } from './history.ts';

/** A job as it is kept in the browser, with its steps and the text it was opened from. */
export interface Kept {
  readonly name: string;
  readonly history: History;
  readonly opened: string;
}

const STORE = 'jobs';
/** The name of the job that was open last. */
const LAST = 'last';

let database: Promise<IDBPDatabase> | undefined;

function open(): Promise<IDBPDatabase> {
  database ??= openDB('casewright', 1, {
    upgrade(db) {
      db.createObjectStore(STORE);
      db.createObjectStore(LAST);
    },
  });
  return database;
}

/** Keeps a job. False when the browser doesn't let us (private windows, a full disk). */
export async function keep(job: Kept): Promise<boolean> {
  try {
    const db = await open();
    const t = db.transaction([STORE, LAST], 'readwrite');
    await Promise.all([
      t.objectStore(STORE).put(job, job.name),
      t.objectStore(LAST).put(job.name, LAST),
      t.done,
    ]);
    return true;
  } catch {
    return false;
  }
}

/** A kept job by name, or the one that was open last. */
export async function kept(name?: string): Promise<Kept | undefined> {
  try {
    const db = await open();
    const key = name ?? ((await db.get(LAST, LAST)) as string | undefined);
    return key === undefined ? undefined : ((await db.get(STORE, key)) as Kept | undefined);
  } catch {
    return undefined;
  }
}
