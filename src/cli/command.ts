import type { Output } from './output.ts';

/** One command: what it takes, and what it does. It gives the exit code. */
export interface Command {
  readonly options: Readonly<Record<string, { readonly type: 'string' | 'boolean' }>>;
  /** How many arguments besides the options: at least, at most. */
  readonly takes: readonly [number, number];
  readonly run: (given: Given, output: Output) => Promise<number>;
}

/** The arguments and options of a call. */
export interface Given {
  readonly arguments: readonly string[];
  readonly options: Readonly<Record<string, string | boolean | undefined>>;
}
