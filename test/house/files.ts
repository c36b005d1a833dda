import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const LEFT_OUT = new Set(['node_modules', '.git', 'dist', 'out', 'coverage', '.cache']);
const TEXT = /\.(?:[cm]?[jt]sx?|json|md|css|html|yml|yaml|svg|csv|txt)$|(?:^|\/)(?:\.[a-z]+|run)$/;

/** A text file of the checkout; its path is from the root. */
export interface TextFile {
  readonly path: string;
  readonly text: string;
}

/** Every text file we keep, in order of path: what is installed, built or written by a run is left out. */
export function ourFiles(): readonly TextFile[] {
  const found: string[] = [];
  const walk = (folder: string) => {
    for (const entry of readdirSync(ROOT + folder, { withFileTypes: true })) {
      if (LEFT_OUT.has(entry.name)) continue;
      const path = folder + entry.name;
      if (entry.isDirectory()) walk(`${path}/`);
      else if (entry.isFile() && TEXT.test(path)) found.push(path);
    }
  };
  walk('');
  return found.sort().map((path) => ({ path, text: readFileSync(ROOT + path, 'utf8') }));
}
