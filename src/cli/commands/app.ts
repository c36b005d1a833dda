import { basename } from 'node:path';
import type { Command } from '../command.ts';
import { jobTextOf } from '../job-file.ts';
import { BadInput, EXIT } from '../output.ts';

/** `app [JOB]`: serves the app on this machine until it is interrupted. */
export const app: Command = {
  options: { port: { type: 'string' } },
  takes: [0, 1],
  async run(given, output) {
    const file = given.arguments[0];
    const port = given.options.port === undefined ? 5174 : Number(given.options.port);
    if (!Number.isInteger(port) || port < 0 || port > 65535)
      throw new BadInput(`--port takes a number from 0 to 65535, not “${given.options.port}”.`);
    if (file === undefined && given.options.shop !== undefined)
      throw new BadInput('--shop goes with a job: name the job first.');
    const job =
      file === undefined ? {} : { jobText: (await jobTextOf(given)).text, jobName: basename(file, '.json') };
    const { serveApp } = await import('../serve-app.ts');
    const server = await serveApp({ port, ...job });
    output.out(`Casewright is open at ${server.url} (Ctrl+C ends it).\n`);
    await new Promise<void>((resolve) => {
      for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve());
    });
    await server.close();
    return EXIT.fine;
  },
};
