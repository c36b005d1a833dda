import { spawnSync } from 'node:child_process';
import {
  accessSync,
  constants,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium, type Page } from 'playwright-core';

/** A Chromium that can be started, and what it needs round it. */
export interface FoundChromium {
  readonly executable: string;
  readonly env: Readonly<Record<string, string>>;
  /** Where it came from, for a test's message. */
  readonly from: 'package' | 'system';
}

/** A page in a browser of its own; `close` ends both. */
export interface OpenPage {
  readonly page: Page;
  /** What the page wrote to its console as errors, and what it threw. */
  readonly errors: readonly string[];
  close(): Promise<void>;
}

/**
 * Flags for a browser in a container: no sandbox (tests open only our own pages), and WebGL drawn by software
 * (SwiftShader), so that the 3D view works without a graphics card and looks the same everywhere.
 */
const FLAGS = [
  '--no-sandbox',
  '--disable-dev-shm-usage',
  '--font-render-hinting=none',
  '--force-color-profile=srgb',
  '--use-gl=angle',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--ignore-gpu-blocklist',
];

/** Starts a browser. Throws with a sentence when no Chromium can be had. */
export function launchBrowser(): Promise<Browser> {
  const { executable, env } = findChromium();
  return chromium.launch({
    executablePath: executable,
    args: FLAGS,
    env: { ...definedEnvironment(), ...env },
    headless: true,
  });
}

/** Opens `url` in a new browser with a window of the given size. */
export async function openPage(url: string, size: { width: number; height: number }): Promise<OpenPage> {
  const browser = await launchBrowser();
  try {
    const page = await browser.newPage({ viewport: size });
    const errors: string[] = [];
    page.on('console', (message) => {
      if (message.type() === 'error') errors.push(message.text());
    });
    page.on('pageerror', (error) => errors.push(error.message));
    await page.goto(url);
    return { page, errors, close: () => browser.close() };
  } catch (error) {
    await browser.close();
    throw error;
  }
}

const SYSTEM_NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];
const MAC_CHROME = '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome';

/** The package's Chromium where it runs (Linux on x64), else one of the system; `CHROMIUM` names another. */
export function findChromium(): FoundChromium {
  const named = process.env.CHROMIUM;
  if (named) return { executable: named, env: {}, from: 'system' };
  if (process.platform === 'linux' && process.arch === 'x64') return unpackedChromium();
  const places = (process.env.PATH ?? '').split(delimiter);
  const executable = [
    ...places.flatMap((place) => SYSTEM_NAMES.map((name) => join(place, name))),
    MAC_CHROME,
  ].find(canRun);
  if (executable === undefined) throw new Error('No Chromium found: install one, or name it in CHROMIUM.');
  return { executable, env: {}, from: 'system' };
}

/**
 * Unpacks the browser of @sparticuz/chromium into a temporary folder named by its version, once for all runs. A
 * process of its own does it, because the package takes the place and the need for libraries from the environment.
 */
function unpackedChromium(): FoundChromium {
  const entry = fileURLToPath(import.meta.resolve('@sparticuz/chromium'));
  const { version } = JSON.parse(readFileSync(join(entry, '../../../package.json'), 'utf8'));
  const folder = join(tmpdir(), `casewright-chromium-${version}-${process.getuid?.() ?? 'user'}`);
  if (!existsSync(folder)) {
    // Unpacked beside its place and renamed: another run never sees half a browser.
    const making = mkdtempSync(`${folder}-`);
    const script = "import('@sparticuz/chromium').then((m) => m.default.executablePath())";
    const done = spawnSync(process.execPath, ['-e', script], {
      cwd: fileURLToPath(new URL('.', import.meta.url)),
      env: { ...process.env, TMPDIR: making, AWS_EXECUTION_ENV: 'AWS_Lambda_nodejs22.x' },
      encoding: 'utf8',
    });
    if (done.status !== 0) throw new Error(`The packaged Chromium can't be unpacked: ${done.stderr}`);
    mkdirSync(join(making, 'home'));
    writeFileSync(join(making, 'fonts', 'fonts.conf'), fontSettings(folder));
    try {
      renameSync(making, folder);
    } catch (error) {
      rmSync(making, { recursive: true, force: true });
      if (!existsSync(folder)) throw error;
    }
  }
  return { executable: join(folder, 'chromium'), env: surroundings(folder), from: 'package' };
}

/** The package's settings look for its fonts in a folder of the cloud service it was made for. */
function fontSettings(folder: string): string {
  const [fonts, cache] = [join(folder, 'fonts'), join(folder, 'home', 'fonts-cache')];
  return `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig><dir>${fonts}</dir><cachedir>${cache}</cachedir></fontconfig>
`;
}

/** The package's own libraries where the system has none, its own fonts always: so text measures the same. */
function surroundings(folder: string): Record<string, string> {
  const env: Record<string, string> = { FONTCONFIG_PATH: join(folder, 'fonts'), HOME: join(folder, 'home') };
  if (!NEEDED_LIBRARIES.every(hasLibrary)) env.LD_LIBRARY_PATH = join(folder, 'al2023', 'lib');
  return env;
}

const NEEDED_LIBRARIES = ['libnss3.so', 'libnssutil3.so', 'libnspr4.so', 'libexpat.so.1'];
const LIBRARY_PLACES = [
  '/lib',
  '/usr/lib',
  '/lib64',
  '/usr/lib64',
  '/lib/x86_64-linux-gnu',
  '/usr/lib/x86_64-linux-gnu',
];

function hasLibrary(name: string): boolean {
  return LIBRARY_PLACES.some((place) => existsSync(join(place, name)));
}

function canRun(file: string): boolean {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

function definedEnvironment(): Record<string, string> {
  const env: Record<string, string> = {};
  for (const [name, value] of Object.entries(process.env)) if (value !== undefined) env[name] = value;
  return env;
}
