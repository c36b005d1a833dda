// Runs a program of src/cli: `main` is the command line, `start` what npm start does. Their sources are TypeScript,
// bundled once for each state of them, since reading hundreds of files anew would take longer than most commands.
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { buildOnce } from './build-once.mjs';
import { ROOT, ROOT_PATH } from './install.mjs';

/** Where there is no leave to write, the sources are read as they are. */
const NO_LEAVE = ['EACCES', 'EPERM', 'EROFS'];

/** Bundles the programs where that is still to be done, and runs one of them in this process. */
export async function runProgram(name) {
  let program;
  try {
    const folder = await buildOnce({
      root: ROOT_PATH,
      name: 'command',
      takes: (path) => !path.startsWith('src/app/'),
      besides: ['package-lock.json', 'scripts/build-once.mjs', 'scripts/command.mjs'],
      make: bundle,
    });
    program = pathToFileURL(join(folder, `${name}.js`));
  } catch (error) {
    if (!NO_LEAVE.includes(error.code)) throw error;
    await import('@oxc-node/core/register');
    program = new URL(`src/cli/${name}.ts`, ROOT);
  }
  await import(program.href);
}

async function bundle(outDir) {
  const { build } = await import('vite');
  await build({
    root: ROOT_PATH,
    configFile: false,
    logLevel: 'error',
    mode: 'production',
    build: {
      outDir,
      emptyOutDir: false,
      target: 'node20',
      // Names stay as they are, for whoever reads where something went wrong.
      minify: false,
      ssr: true,
      rolldownOptions: {
        input: { main: 'src/cli/main.ts', start: 'src/cli/start.ts' },
        // All in one folder, two below the checkout like src/cli: the sources find the rest of it from there.
        output: { chunkFileNames: '[name]-[hash].js' },
      },
    },
  });
}
