import { fromMm, toMm } from '../measure/index.ts';
import type { Solids } from '../solid/index.ts';
import type { Assembly, Member } from './assembly.ts';
import { sharedVolume } from './in-the-way.ts';
import type { DryFitFault } from './report.ts';
import { drawnOut } from './runners.ts';

/** What a card says of a drawer on wooden runners. */
export interface DrawOutCard {
  /** Set where the sides are guides beside one runner, and the edges of a box slide on what is below. */
  readonly guided?: { readonly on: string; readonly edges: readonly [string, string] } | undefined;
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
  const { guided } = card;
  if (guided) {
    const [left, right] = card.sides;
    const [a, b] = guided.edges;
    return [
      ...held(solids, assembly, card, left, card.runners[0], [HELD_WITHIN, 0], 'from going to the right'),
      ...held(solids, assembly, card, right, card.runners[1], [-HELD_WITHIN, 0], 'from going to the left'),
      ...[a, b].flatMap((edge) => held(solids, assembly, card, edge, guided.on, [0, -HELD_WITHIN], 'up')),
      ...drawnOut(solids, assembly, card),
    ];
  }
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
        if (!meets(solids, side, runner, out, [0, fromMm(up)]))
          faults.push({
            code: 'not-carried',
            on: mark,
            sentence: `${mark}, drawn out ${Math.round(toMm(out))} mm, is not held ${up < 0 ? 'up' : 'down'} by ${runner.mark}.`,
          });
  });
  return [...faults, ...drawnOut(solids, assembly, card)];
}

/** Whether a part is kept from moving aside or down by another, in and out. */
function held(
  solids: Solids,
  assembly: Assembly,
  card: DrawOutCard,
  mark: string,
  by: string,
  [aside, up]: readonly [number, number],
  words: string,
): readonly Omit<DryFitFault, 'operation'>[] {
  const of = (m: string) => assembly.members.find((x) => x.mark === m);
  const [part, holds] = [of(mark), of(by)];
  if (!part || !holds)
    return [{ code: 'workpiece-missing', on: mark, sentence: `${part ? by : mark} is not there.` }];
  return [0, card.travelTicks]
    .filter((out) => !meets(solids, part, holds, out, [fromMm(aside), fromMm(up)]))
    .map((out) => ({
      code: 'not-carried',
      on: mark,
      sentence: `${mark}, drawn out ${Math.round(toMm(out))} mm, is not held ${words} by ${by}.`,
    }));
}

/** Whether a side, so far out, aside and up, runs into its runner. */
function meets(
  solids: Solids,
  side: Member,
  runner: Member,
  out: number,
  [aside, up]: readonly [number, number],
): boolean {
  const [x, y, z] = side.origin;
  const moved = { ...side, origin: [x + aside, y - out, z + up] as const };
  return sharedVolume(solids, moved, runner) > IN_ITS_WAY;
}
