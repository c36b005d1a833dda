import { createHash } from 'node:crypto';
import { existsSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, statSync } from 'node:fs';
import { mkdir, readFile } from 'node:fs/promises';
import { createServer, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

/** How the app is to be served. */
export interface ServeApp {
  /** 0 takes any free port. */
  readonly port: number;
  /** The job to open, as the text of its file; the page finds it at `job.json`. */
  readonly jobText?: string;
  readonly jobName?: string;
}

export interface ServedApp {
  readonly url: string;
  close(): Promise<void>;
}

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const BUILDS = join(ROOT, 'dist', 'app');
/** What the app is built from, besides everything under src. */
const SOURCES = ['package-lock.json', 'vite.config.ts', 'examples/glaze-cabinet.json'];

/**
 * Serves the app on this machine alone, built anew when its sources have changed since. Rejects when the port is
 * taken.
 */
export async function serveApp({ port, jobText, jobName }: ServeApp): Promise<ServedApp> {
  const folder = await builtApp();
  const server = createServer((request, response) => {
    const path = decodeURIComponent(new URL(request.url ?? '/', 'http://localhost').pathname);
    if (request.method !== 'GET' && request.method !== 'HEAD') send(response, 405, 'text/plain', 'Only GET.');
    else if (path === '/job.json') sendJob(response, jobText, jobName);
    else void sendFile(response, folder, path === '/' ? '/index.html' : path);
  });
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', resolve);
  });
  const { port: taken } = server.address() as AddressInfo;
  return {
    url: `http://localhost:${taken}/`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

function sendJob(response: ServerResponse, text: string | undefined, name = 'job'): void {
  if (text === undefined) {
    response.writeHead(204).end();
    return;
  }
  response.setHeader('job-name', encodeURIComponent(name));
  send(response, 200, 'application/json', text);
}

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.wasm': 'application/wasm',
  '.ttf': 'font/ttf',
};

async function sendFile(response: ServerResponse, folder: string, path: string): Promise<void> {
  const file = normalize(join(folder, path));
  try {
    if (!file.startsWith(folder + sep)) throw new Error('outside');
    send(response, 200, TYPES[extname(file)] ?? 'application/octet-stream', await readFile(file));
  } catch {
    send(response, 404, 'text/plain', 'Nothing here.');
  }
}

function send(response: ServerResponse, status: number, type: string, body: string | Uint8Array): void {
  response.writeHead(status, { 'content-type': type, 'cache-control': 'no-cache' }).end(body);
}

/** The folder of the built app, named by the content of its sources; built on first need. */
async function builtApp(): Promise<string> {
  const folder = join(BUILDS, contentOf());
  if (existsSync(folder)) return folder;
  const { build } = await import('vite');
  await mkdir(BUILDS, { recursive: true });
  // Built beside its place and renamed: whoever looks meanwhile never sees half an app.
  const making = mkdtempSync(join(BUILDS, 'making-'));
  try {
    await build({
      configFile: join(ROOT, 'vite.config.ts'),
      logLevel: 'error',
      mode: 'production',
      build: { outDir: making },
    });
    renameSync(making, folder);
    clearOld();
  } catch (error) {
    rmSync(making, { recursive: true, force: true });
    if (!existsSync(folder)) throw error;
  }
  return folder;
}

/** How many builds are kept: another server may still be handing out an older one. */
const KEPT = 4;

function clearOld(): void {
  const builds = readdirSync(BUILDS)
    .filter((name) => !name.startsWith('making-'))
    .map((name) => ({ path: join(BUILDS, name), time: statSync(join(BUILDS, name)).mtimeMs }))
    .sort((a, b) => b.time - a.time);
  for (const { path } of builds.slice(KEPT)) rmSync(path, { recursive: true, force: true });
}

function contentOf(): string {
  const hash = createHash('sha256');
  const sources = readdirSync(join(ROOT, 'src'), { recursive: true, withFileTypes: true })
    .filter((f) => f.isFile() && !/\.test\.tsx?$/.test(f.name))
    .map((f) => join(f.parentPath, f.name).slice(ROOT.length))
    .filter((path) => !path.startsWith(join('src', 'cli')))
    .sort();
  for (const path of [...sources, ...SOURCES]) {
    hash.update(path.replaceAll(sep, '/')).update('\0');
    hash.update(readFileSync(join(ROOT, path))).update('\0');
  }
  return hash.digest('hex').slice(0, 16);
}
