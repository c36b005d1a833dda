import type { Bit } from '../../job/index.ts';
import { fromMm, parseLength, type Traced } from '../../measure/index.ts';
import type { Draft } from '../draft.ts';
import { onceADraft } from '../once-a-draft.ts';

/** A hole may be this much wider or narrower than reckoned (common practice: drills come in steps of 0.5 mm). */
const NEAR_ENOUGH = fromMm(0.3);

/**
 * The bit of the shop that is nearest to a size and near enough to serve; the size as reckoned where there is none. A
 * hole that a screw only passes may be wider.
 */
export function bitNear(draft: Draft, kind: Bit['kind'], wanted: Traced, wider = NEAR_ENOUGH): Traced {
  const at = draft.ledger.ticks(wanted);
  const near = sizedBits(draft, kind)
    .map(({ bit, size }) => ({ bit, over: size - at }))
    .filter(({ over }) => over >= -NEAR_ENOUGH && over <= wider)
    .sort((a, b) => Math.abs(a.over) - Math.abs(b.over) || (a.bit.id < b.bit.id ? -1 : 1))[0];
  return near ? draft.typed(`shop/rack/bits/${near.bit.id}/diameter`, near.bit.diameter) : wanted;
}

/** The narrowest bit of the shop that is at least so wide, and not much wider; the size as reckoned where there is none. */
export function bitAtLeast(draft: Draft, kind: 'twist' | 'straight', wanted: Traced, wider: Traced): Traced {
  const at = draft.ledger.ticks(wanted);
  const bit = sizedBits(draft, kind)
    .map(({ bit, size }) => ({ bit, over: size - at }))
    .filter(({ over }) => over >= 0 && over <= draft.ledger.ticks(wider))
    .sort((a, b) => a.over - b.over || (a.bit.id < b.bit.id ? -1 : 1))[0]?.bit;
  return bit ? draft.typed(`shop/rack/bits/${bit.id}/diameter`, bit.diameter) : wanted;
}

/** The bits of a kind with their diameters in ticks. */
const sizedBits = onceADraft((draft, kind: Bit['kind']) =>
  draft.job.shop.rack.bits
    .filter((b) => b.kind === kind)
    .map((bit) => {
      const read = parseLength(bit.diameter, draft.job.shop.units);
      if (!read.ok) throw new Error(`unchecked length: ${bit.diameter}`);
      return { bit, size: read.value };
    }),
);
