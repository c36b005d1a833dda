/** Where a command writes. JSON and results go out; messages go to err. */
export interface Output {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
}

/** Exit codes. */
export const EXIT = {
  fine: 0,
  /** A stop snag, or something unplaced. */
  snag: 1,
  badInput: 2,
  ourFault: 3,
} as const;

/** Input that the user can mend; the message says how. */
export class BadInput extends Error {}

/** JSON as it is written everywhere: two spaces, a newline at the end. */
export function writeJson(output: Output, value: unknown): void {
  output.out(`${JSON.stringify(value, null, 2)}\n`);
}
