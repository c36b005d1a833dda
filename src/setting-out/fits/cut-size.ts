import type { Shop } from '../../job/index.ts';
import { SETTING_OUT } from '../../materials/index.ts';
import { type Ledger, parseLength, type Traced } from '../../measure/index.ts';
import type { Part } from '../part.ts';

/** A part's sizes as they are cut: rough where it has a rough size, and on the grid of what the saw can set. */
export interface CutSize {
  readonly length: Traced;
  /** Of strips, the strip's own width, which isn't cut. */
  readonly width: Traced;
}

/** The finest step the shop's saw is set to; whole millimetres until one is listed. */
export function sawStep(ledger: Ledger, { tools, units }: Pick<Shop, 'tools' | 'units'>): Traced {
  const saw = tools.find((t) => t.kind === 'circular-saw') ?? tools.find((t) => t.kind === 'mitre-saw');
  if (!saw) return ledger.row(SETTING_OUT.setStep);
  const read = parseLength(saw.step, units);
  if (!read.ok) throw new Error(`unchecked length: ${saw.step}`);
  return ledger.document(`shop/tools/${saw.id}/step`, read.value, saw.step);
}

/** How much the shop's saw takes away; the usual until one is listed. */
export function sawKerf(ledger: Ledger, { tools, units }: Pick<Shop, 'tools' | 'units'>): Traced {
  const saw = tools.find((t) => t.kind === 'circular-saw') ?? tools.find((t) => t.kind === 'mitre-saw');
  if (!saw) return ledger.row(SETTING_OUT.kerf);
  const read = parseLength(saw.kerf, units);
  if (!read.ok) throw new Error(`unchecked length: ${saw.kerf}`);
  return ledger.document(`shop/tools/${saw.id}/kerf`, read.value, saw.kerf);
}

/**
 * What a cut takes between two parts: the kerf of the cut, and of the one that brings what stays to its own mark, on the grid
 * of what the saw can set.
 */
export function twoKerfs(ledger: Ledger, shop: Shop): Traced {
  return ledger.round(
    'both kerfs, as fine as the saw is set',
    ledger.times(
      'kerf of the cut, and of the one that brings what stays to its own mark',
      sawKerf(ledger, shop),
      2,
    ),
    sawStep(ledger, shop),
    'up',
  );
}

/**
 * A part's sizes by the saw alone: what stands between two others is rounded down, all else to the nearest step.
 * @param spaces true for what keeps others apart, whose length goes to the nearest step as well
 */
export function sawnSize(
  ledger: Ledger,
  step: Traced,
  part: Pick<Part, 'form' | 'length' | 'width' | 'rough' | 'between'>,
  spaces = false,
): CutSize {
  const sawn = (which: 'length' | 'width') =>
    ledger.round(
      `${which} to cut, as fine as the saw is set`,
      part.rough?.[which] ?? part[which],
      step,
      part.between && !(spaces && which === 'length') ? 'down' : 'nearest',
    );
  return {
    length: sawn('length'),
    width: part.form === 'strip' ? (part.rough?.width ?? part.width) : sawn('width'),
  };
}
