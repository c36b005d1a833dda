import { fromMm, toMm } from '../measure/index.ts';
import type { Solids } from '../solid/index.ts';
import type { Assembly, Member } from './assembly.ts';
import { sharedVolume } from './in-the-way.ts';
import type { DryFitFault } from './report.ts';
import { drawnOut } from './runners.ts';

/** What a card says of a drawer on wooden runners. */
export interface DrawOutCard {
  readonly sides: readonly [string, string];
  readonly runners: readonly [string, string];
  readonly travelTicks: number;
  readonly moves: readonly string[];
}

/** A side that sinks or rises by this much without meeting its runner is not held, mm. */
const HELD_WITHIN = 1.5;

/** Wood that must then be in its way, mm³: a few centimetres of a narrow strip. */
const IN_ITS_WAY = 50;

/** Draws a drawer out on wooden runners: its way is free, and each side is held from below and above, in and out. */
export function drawOut(
  solids: Solids,
  assembly: Assembly,
  card: DrawOutCard,
): readonly Omit<DryFitFault, 'operation'>[] {
  const of = (mark: string) => assembly.members.find((m) => m.mark === mark);
  const faults: Omit<DryFitFault, 'operation'>[] = [];
  card.sides.forEach((mark, hand) => {
    const [side, runner] = [of(mark), of(card.runners[hand]!)];
    if (!side || !runner) {
      faults.push({
        code: 'workpiece-missing',
        on: mark,
        sentence: `${side ? card.runners[hand] : mark} is not there.`,
      });
      return;
    }
    for (const out of [0, card.travelTicks])
      for (const up of [-HELD_WITHIN, HELD_WITHIN])
        if (!meets(solids, side, runner, out, fromMm(up)))
          faults.push({
            code: 'not-carried',
            on: mark,
            sentence: `${mark}, drawn out ${Math.round(toMm(out))} mm, is not held ${up < 0 ? 'up' : 'down'} by ${runner.mark}.`,
          });
  });
  return [...faults, ...drawnOut(solids, assembly, card)];
}

/** Whether a side, so far out and so far up, runs into its runner. */
function meets(solids: Solids, side: Member, runner: Member, out: number, up: number): boolean {
  const moved = { ...side, origin: [side.origin[0], side.origin[1] - out, side.origin[2] + up] as const };
  return sharedVolume(solids, moved, runner) > IN_ITS_WAY;
}
