import type { JobDocument, Lot, ToolKind } from '../job/index.ts';
import { en315Sanded, FIT_LIMITS, toolAccuracy } from '../materials/index.ts';
import {
  fromMm,
  type Ledger,
  type LoopMember,
  parseLength,
  type StackUp,
  stackUp,
  type Ticks,
  toMm,
  ZERO,
} from '../measure/index.ts';
import type { FitMember, PrintedFit } from '../setting-out/index.ts';

/** How much larger and how much smaller a made dimension may turn out. */
export interface MadeError {
  readonly plus: Ticks;
  readonly minus: Ticks;
  /** What it shares its error with. */
  readonly sharedBy?: string;
}

/** A fit's loop with the errors of this shop's tools and stock: what its gap may come to at worst, and likely. */
export function stackOfFit(job: JobDocument, ledger: Ledger, fit: PrintedFit): StackUp {
  return stackUp(
    fit.loop.flatMap((m): LoopMember[] => {
      const error = memberError(job, ledger, fit, m);
      const one = { name: m.name, sign: m.sign, size: ledger.ticks(m.printed), ...error };
      return Array.from({ length: m.times ?? 1 }, () => one);
    }),
  );
}

/**
 * How far off a member of a fit may be. Where a part is cut to the measured loop, only its own cut counts, and the film that
 * comes later.
 */
export function memberError(
  job: JobDocument,
  ledger: Ledger,
  { cutLater, toFit, loop }: PrintedFit,
  member: FitMember,
): MadeError {
  const own = toFit ?? loop.find((m) => m.made.by === 'tool')?.part;
  const counts = !cutLater || member.made.by === 'finish' || member.part === own;
  return counts ? errorOf(job, ledger, member) : { plus: ZERO, minus: ZERO };
}

/** How far off this shop may make a dimension. */
function errorOf(job: JobDocument, ledger: Ledger, member: FitMember): MadeError {
  const { made } = member;
  switch (made.by) {
    case 'tool':
      return either(accuracyOf(job, made.kind));
    case 'lot':
      return { ...ofLot(job, made.lot), sharedBy: `lot ${made.lot}` };
    case 'hardware':
      return either(FIT_LIMITS.hardware.value);
    case 'finish':
      // The film was reckoned at its thickest; wood that drinks leaves none of it outside.
      return { plus: ZERO, minus: ledger.ticks(member.length), sharedBy: `finish ${made.id}` };
    case 'measured':
      return either(accuracyOf(job, 'marking'));
  }
}

function either(error: Ticks): MadeError {
  return { plus: error, minus: error };
}

/** A tool as the shop states it; until it is on the list, as a careful hand works with a sound one. */
function accuracyOf(job: JobDocument, kind: ToolKind): Ticks {
  const tool = job.shop.tools.find((t) => t.kind === kind);
  if (tool) return typed(job, tool.accuracy);
  return fromMm(toolAccuracy(INSTEAD[kind] ?? 'tape')!.lengthMm);
}

const INSTEAD: Partial<Record<ToolKind, string>> = {
  'circular-saw': 'circular-saw',
  'mitre-saw': 'mitre-saw',
  router: 'router',
  marking: 'knife',
};

/** Stock that was measured varies a little within itself; until then it may be what its standard lets it be. */
function ofLot(job: JobDocument, id: string): MadeError {
  const lot = job.shop.rack.lots.find((l) => l.id === id);
  if (!lot || lot.thickness !== undefined) return either(FIT_LIMITS.measuredStock.value);
  return unmeasured(job, lot);
}

function unmeasured(job: JobDocument, lot: Lot): MadeError {
  if (lot.form === 'strip') return either(FIT_LIMITS.unmeasuredStrip.value);
  const { plusMm, minusMm } = en315Sanded(toMm(typed(job, lot.nominal)));
  return { plus: fromMm(plusMm), minus: fromMm(minusMm) };
}

function typed(job: JobDocument, text: string): Ticks {
  const read = parseLength(text, job.shop.units);
  if (!read.ok) throw new Error(`unchecked length: ${text}`);
  return read.value;
}
