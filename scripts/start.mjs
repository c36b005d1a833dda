// npm start: installs what is missing, then plans the example and opens the app (src/cli/start.ts).
import { spawn } from 'node:child_process';
import { install, ROOT_PATH } from './install.mjs';

try {
  install();
  const args = ['--import', '@oxc-node/core/register', 'src/cli/start.ts', ...process.argv.slice(2)];
  const child = spawn(process.execPath, args, { cwd: ROOT_PATH, stdio: 'inherit' });
  // An interrupt from the keyboard reaches the child by itself; it closes down and this follows.
  process.on('SIGINT', () => {});
  process.on('SIGTERM', () => child.kill('SIGTERM'));
  child.on('error', (error) => {
    console.error(error.message);
    process.exitCode = 3;
  });
  child.on('exit', (code, signal) => {
    process.exitCode = code ?? (signal === 'SIGINT' || signal === 'SIGTERM' ? 0 : 3);
  });
} catch (error) {
  console.error(error.message);
  process.exitCode = 3;
}
