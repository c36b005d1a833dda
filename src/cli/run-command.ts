import { parseArgs } from 'node:util';
import type { Command, Given } from './command.ts';
import { HELP } from './help.ts';
import { BadInput, EXIT, type Output } from './output.ts';

/** Each command's code is read only when it is called, so that a small one starts quickly. */
const COMMANDS: Readonly<Record<string, () => Promise<Command>>> = {
  plan: async () => (await import('./commands/plan.ts')).plan,
  check: async () => (await import('./commands/check.ts')).check,
  parts: async () => (await import('./commands/parts.ts')).parts,
  steps: async () => (await import('./commands/steps.ts')).steps,
  why: async () => (await import('./commands/why.ts')).why,
  cut: async () => (await import('./commands/cut.ts')).cut,
  'dry-fit': async () => (await import('./commands/dry-fit.ts')).dryFit,
  app: async () => (await import('./commands/app.ts')).app,
};

/** Runs a command line. Bad input gives a sentence and exit code 2, our own mistakes 3. */
export async function runCommand(args: readonly string[], output: Output): Promise<number> {
  const [name, ...rest] = args;
  if (name === undefined || name === 'help' || asksForHelp(args)) {
    output.out(HELP);
    return EXIT.fine;
  }
  const load = Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
  if (!load)
    return refuse(
      output,
      `There is no command “${name}”. The commands are ${Object.keys(COMMANDS).join(', ')}.`,
    );
  try {
    const command = await load();
    return await command.run(read(name, command, rest), output);
  } catch (e) {
    if (e instanceof BadInput) return refuse(output, e.message);
    output.err(
      `This is our mistake, not yours: ${e instanceof Error ? (e.stack ?? e.message) : String(e)}\n`,
    );
    return EXIT.ourFault;
  }
}

function read(name: string, command: Command, args: readonly string[]): Given {
  let parsed: ReturnType<typeof parseArgs>;
  try {
    parsed = parseArgs({
      args: [...args],
      options: { ...command.options, shop: { type: 'string' } },
      allowPositionals: true,
    });
  } catch (e) {
    throw new BadInput(`${misused(name, command, e)} See “casewright help”.`);
  }
  const [least, most] = command.takes;
  const n = parsed.positionals.length;
  if (n < least || n > most)
    throw new BadInput(
      `“casewright ${name}” takes ${least === most ? least : `${least} to ${most}`} argument${most === 1 ? '' : 's'}, not ${n}. See “casewright help”.`,
    );
  return { arguments: parsed.positionals, options: parsed.values as Given['options'] };
}

function asksForHelp(args: readonly string[]): boolean {
  const options = args.includes('--') ? args.slice(0, args.indexOf('--')) : args;
  return options.includes('--help') || options.includes('-h');
}

/** What is wrong with the options of a call, as a sentence. */
function misused(name: string, command: Command, e: unknown): string {
  if (!(e instanceof Error)) return `${String(e)}.`;
  const unknown = 'code' in e && e.code === 'ERR_PARSE_ARGS_UNKNOWN_OPTION' && /'(-[^']*)'/.exec(e.message);
  if (!unknown) return e.message.split('\n').join(' ').replace(/\.?$/, '.');
  const known = [...Object.keys(command.options), 'shop'].map((o) => `--${o}`).join(', ');
  return `“casewright ${name}” has no option “${unknown[1]}”; it takes ${known}.`;
}

function refuse(output: Output, sentence: string): number {
  output.err(`${sentence}\n`);
  return EXIT.badInput;
}
