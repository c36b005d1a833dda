import { ONE_SECOND } from '../breakdown/index.ts';
import { BadInput } from './output.ts';

/** Asks for an end once the seconds are over; never, when none are given. */
export function clockFor(seconds: number | undefined): {
  readonly stop: { requested: boolean };
  readonly look: () => void;
} {
  const stop = { requested: false };
  const end = performance.now() + (seconds ?? Number.POSITIVE_INFINITY) * 1000;
  return {
    stop,
    look: () => {
      stop.requested = performance.now() >= end;
    },
  };
}

/** The seconds of `--seconds`. */
export function secondsOf(text: string | boolean | undefined): number | undefined {
  if (text === undefined) return undefined;
  const seconds = Number(text);
  if (!(seconds > 0 && seconds <= 86400))
    throw new BadInput(`--seconds takes a number above 0, not “${text}”.`);
  return seconds;
}

/** Counted work that takes about so many seconds, shared by `parts` searches. */
export function effortOf(seconds: number, parts = 1): number {
  return Math.max(1, Math.round((seconds * ONE_SECOND) / parts));
}
