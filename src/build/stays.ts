import type { Lid } from '../setting-out/index.ts';
import { massWords, momentWords } from './amounts.ts';
import type { Bench } from './bench.ts';
import { CAUTION } from './cautions.ts';

/** A lid or a flap that stays hold: its part, what it weighs and asks for, and which of the three it is. */
interface HeldOpen extends Pick<Lid, 'part' | 'kg' | 'momentNm'> {
  readonly says: 'lid' | 'flap' | 'drop-down flap';
}

/** Fits the stays that hold a lid or a flap open. */
export function fitStays(bench: Bench, held: HeldOpen, stays: NonNullable<Lid['stays']>): void {
  const part = bench.setOut.parts.find((p) => p.id === held.part)!;
  const stay = bench.job.shop.rack.stays?.find((s) => s.id === stays.id);
  const { units } = bench.job.shop;
  bench.do(
    {
      id: `${part.mark}/stays`,
      kind: 'hang',
      stage: 'hang',
      title: `Fit the ${stays.count > 1 ? 'stays' : 'stay'} of ${part.mark}`,
      does: { act: 'other', on: [part.mark, 'case'] },
      tool: 'drill',
      times: stays.count,
      lines: [
        `${stays.count} × ${stay?.name ?? stays.id}, ${stays.count > 1 ? 'one at each side' : 'at one side'}, by the maker’s own template and screws.`,
        `The ${held.says === 'lid' ? 'lid' : 'flap'} weighs ${massWords(units, held.kg)}: lying level it asks for ${momentWords(units, held.momentNm)} about its hinges. ${stays.count > 1 ? 'Together they hold' : 'It holds'} ${momentWords(units, stays.holdNm)}.`,
        TRY[held.says],
      ],
      cautions: [held.says === 'lid' ? CAUTION.pinch : CAUTION.pinchFlap],
    },
    [part.mark, 'case'],
  );
}

const TIGHTER = 'If it sinks, set the stays tighter; if it still sinks, use stronger ones.';

const TRY: Readonly<Record<HeldOpen['says'], string>> = {
  lid: `Try it: let go a hand’s breadth above the closed lid, half way, and nearly upright, it must stay where it is let go each time. ${TIGHTER}`,
  flap: `Try it: lift it half way and let go, then level, then as far as it opens; it must stay where it is let go each time. ${TIGHTER}`,
  'drop-down flap': `Try it: let it down slowly, it must come to rest level; then press on its free edge with one hand. ${TIGHTER}`,
};
