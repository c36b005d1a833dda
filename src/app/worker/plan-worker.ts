import regularUrl from '@expo-google-fonts/ibm-plex-sans/400Regular/IBMPlexSans_400Regular.ttf?url';
import semiboldUrl from '@expo-google-fonts/ibm-plex-sans/600SemiBold/IBMPlexSans_600SemiBold.ttf?url';
import wasmUrl from 'manifold-3d/manifold.wasm?url';
import { writePdf } from '../../adaptors/pdf-pdfkit.ts';
import { openSolids } from '../../adaptors/solids-manifold.ts';
import { book, bookInputOf, cuttingListCsv } from '../../book/index.ts';
import { formatOf, type JobDocument, type Shop } from '../../job/index.ts';
import { type Plan, planJob, planOn, searchOn } from '../../plan/index.ts';
import { setOut, shapeOf } from '../../setting-out/index.ts';
import type { Solids } from '../../solid/index.ts';
import { cutList } from './list-work.ts';
import type { Answer, PartMesh, Request } from './messages.ts';
import { pack } from './packed-plan.ts';

/** Planning begins when the document has rested for so long (ms). */
const REST = 180;
/** Work at a stretch before messages are looked at (ms). */
const STRETCH = 30;

const opening = openSolids({ wasmUrl });
let latest = 0;
let latestList = 0;
let plan: Plan | undefined;
/** Set when the page has had enough of the search that is going on. */
let enough = { requested: false };

self.onmessage = ({ data }: MessageEvent<Request>) => {
  if (data.ask === 'enough') enough.requested = data.job === latest;
  else if (data.ask === 'plan') void work(data.job, data.document);
  else if (data.ask === 'list') void workList(data.list, data.text, data.shop);
  else void giveFile(data.file);
};

function tell(answer: Answer, moved: Transferable[] = []): void {
  self.postMessage(answer, { transfer: moved });
}

async function work(number: number, job: JobDocument): Promise<void> {
  latest = number;
  enough.requested = true;
  enough = { requested: false };
  try {
    const solids = await opening;
    if (number !== latest) return;
    sendMeshes(number, job, solids);
    await pause(REST);
    // A small edit should not reshuffle every sheet: what was shown last is kept where it is as good.
    const planning = planJob(job, { solids }, plan ? { last: plan.breakdown } : {});
    let rested = performance.now();
    let step = planning.next();
    while (!step.done) {
      if (performance.now() - rested > STRETCH) {
        tell({ tell: 'progress', job: number, progress: step.value });
        await pause(0);
        rested = performance.now();
      }
      if (number !== latest) return;
      step = planning.next();
    }
    plan = step.value;
    tell({ tell: 'plan', job: number, plan: pack(plan) });
    await searchForBetter(number, plan, solids, enough);
  } catch (error) {
    tell({ tell: 'failed', job: number, sentence: sentenceOf(error) });
  }
}

/** Goes on looking for better cutting; each find becomes a plan of its own, proven like the first. */
async function searchForBetter(
  number: number,
  first: Plan,
  solids: Solids,
  stop: { requested: boolean },
): Promise<void> {
  const search = searchOn(first, stop);
  let rested = performance.now();
  let step = search.next();
  while (!step.done) {
    if ('better' in step.value) {
      const proving = planOn(first.job, first.setOut, step.value.better, { solids });
      let proof = proving.next();
      while (!proof.done) {
        if (performance.now() - rested > STRETCH) {
          await pause(0);
          rested = performance.now();
        }
        if (number !== latest) return;
        proof = proving.next();
      }
      plan = proof.value;
      tell({ tell: 'plan', job: number, plan: pack(plan) });
    } else if (performance.now() - rested > STRETCH) {
      tell({ tell: 'search', job: number, search: step.value });
      await pause(0);
      rested = performance.now();
    }
    if (number !== latest) return;
    step = search.next();
  }
  tell({ tell: 'search', job: number, search: undefined });
}

/** Plans a pasted list; a newer one takes its place. */
async function workList(number: number, text: string, shop: Shop): Promise<void> {
  latestList = number;
  try {
    const cutting = cutList(text, shop);
    let rested = performance.now();
    let step = cutting.next();
    while (!step.done) {
      if (performance.now() - rested > STRETCH) {
        await pause(0);
        rested = performance.now();
      }
      if (number !== latestList) return;
      step = cutting.next();
    }
    const cut = step.value;
    tell({ tell: 'list', list: number, cut: cut.ok ? { ...cut, plan: pack(cut.plan) } : cut });
  } catch (error) {
    tell({ tell: 'list-failed', list: number, sentence: sentenceOf(error) });
  }
}

function sendMeshes(number: number, job: JobDocument, solids: Solids): void {
  const drawn = setOut(job);
  const parts: PartMesh[] = drawn.parts.map((part) => {
    const mesh = solids.within(() => solids.make(shapeOf(drawn, part)).mesh());
    return { part: part.id, positions: mesh.positions, triangles: mesh.triangles };
  });
  tell(
    { tell: 'meshes', job: number, parts },
    parts.flatMap((p) => [p.positions.buffer as ArrayBuffer, p.triangles.buffer as ArrayBuffer]),
  );
}

async function giveFile(file: 'pdf' | 'csv'): Promise<void> {
  try {
    if (!plan) throw new Error('the plan is not finished yet');
    const bytes = file === 'pdf' ? await pdf(plan) : csv(plan);
    tell({ tell: 'file', file, bytes: new Uint8Array(bytes) });
  } catch (error) {
    tell({ tell: 'file-failed', file, sentence: sentenceOf(error) });
  }
}

async function pdf(of: Plan): Promise<Uint8Array> {
  const [regular, semibold] = await Promise.all([regularUrl, semiboldUrl].map(font));
  return writePdf(book(bookInputOf(of)), { regular: regular!, semibold: semibold! });
}

function csv(of: Plan): Uint8Array {
  // The mark at the start tells spreadsheets that this is UTF-8.
  return new TextEncoder().encode(`\uFEFF${cuttingListCsv(of, formatOf(of.job.shop))}`);
}

async function font(url: string): Promise<Uint8Array> {
  return new Uint8Array(await (await fetch(url)).arrayBuffer());
}

function pause(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms));
}

function sentenceOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
