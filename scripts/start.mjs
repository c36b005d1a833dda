// npm start: installs what is missing, then plans the example and opens the app (src/cli/start.ts).
import { install, ROOT_PATH } from './install.mjs';

try {
  install();
} catch (error) {
  console.error(error.message);
  process.exit(3);
}
process.chdir(ROOT_PATH);
const { runProgram } = await import('./command.mjs');
await runProgram('start');
