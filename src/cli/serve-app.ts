import { readFile } from 'node:fs/promises';
import { createServer, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildOnce } from '../../scripts/build-once.mjs';

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

/** The folder of the built app. */
function builtApp(): Promise<string> {
  return buildOnce({
    root: ROOT,
    name: 'app',
    takes: (path) => !path.startsWith('src/cli/'),
    besides: ['package-lock.json', 'vite.config.ts', 'examples/glaze-cabinet.json'],
    make: async (outDir) => {
      const { build } = await import('vite');
      await build({
        configFile: join(ROOT, 'vite.config.ts'),
        logLevel: 'error',
        mode: 'production',
        build: { outDir },
      });
    },
  });
}
