import { type Ticks, toMm, toStep } from '../measure/index.ts';
import { type PrintedFit, partsAndBoards, type SetOut, sawStep } from '../setting-out/index.ts';
import type { Snag } from '../snag/index.ts';
import type { CheckInput } from './check-input.ts';
import { ShopWords } from './shop-words.ts';

/** A fit that no longer comes right with what is already made: by which part, and what to cut it to. */
export function lostFit(job: CheckInput['job'], setOut: SetOut, fit: PrintedFit): Snag | undefined {
  const l = setOut.ledger;
  const t = (x: typeof fit.gap): number => l.ticks(x);
  const all = partsAndBoards(setOut);
  const members = fit.loop.flatMap((m) => {
    const part = all.find((p) => p.id === m.part);
    return part && m.made.by === 'measured' ? [{ ...m, part }] : [];
  });
  // What closes the gap can be cut down or anew; what opens it comes second.
  const worst = members.find((m) => m.sign < 0) ?? members[0];
  const [printed, least, most] = [
    t(fit.printed),
    t(fit.least),
    fit.most === undefined ? undefined : t(fit.most),
  ];
  const tight = printed < least;
  if (!worst || (!tight && (most === undefined || printed <= most))) return undefined;
  const words = new ShopWords(job);
  const { part, sign } = worst;
  // Back to the gap as drawn, on what the saw can set.
  const right = t(worst.printed) + sign * (t(fit.gap) - printed);
  const size = toStep(right, l.ticks(sawStep(l, job.shop)), sign < 0 ? 'down' : 'up');
  const down = size < t(worst.printed);
  const limit = tight ? least : most!;
  const { operation, reason } = l.entry(worst.printed);
  return {
    code: 'fits.lost',
    level: 'stop',
    where: {
      path: operation === 'measured' ? `work/measured/${reason}` : reason.split('/').slice(0, 3).join('/'),
      record: part.record,
      part: part.id,
    },
    sentence: `${part.mark}, the ${part.name}, is made, and no longer goes with the rest: ${fit.name} would be left ${words.fine(toMm(Math.abs(printed)))}${printed < 0 ? ' too tight' : ''}.`,
    figures: (tight ? words.atLeast : words.atMost).call(words, toMm(printed), toMm(limit)),
    cures: [
      { says: `Cut ${part.mark} ${down ? 'down to' : 'anew,'} ${words.ticks(size as Ticks)}.` },
      ...fit.loop.flatMap((m) => {
        const other = all.find((p) => p.id === m.part);
        if (!other || other.id === part.id || m.made.by !== 'tool' || !/saw/.test(m.made.kind)) return [];
        const to = t(m.printed) + m.sign * (t(fit.gap) - printed);
        return [
          { says: `Or cut ${other.mark} to ${words.ticks(to as Ticks)}, if nothing else rests on it.` },
        ];
      }),
    ],
  };
}
