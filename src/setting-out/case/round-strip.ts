import type { RecordOf } from '../../job/index.ts';
import type { Cure } from '../../snag/index.ts';
import type { Draft } from '../draft.ts';
import type { MadeCase } from './case-in-full.ts';

/**
 * Lets the sides and the lid of a case be cut from one strip, so that the grain runs up its left side, over the lid and down
 * its right side. All three are of one lot and one width, and its own; where they are not, a stop says so.
 */
export function roundStrip(draft: Draft, { frame: { box }, panels }: MadeCase): void {
  if (box.oneStrip === undefined) return;
  const { left, lid, right } = panels;
  const t = (part: typeof left) => draft.ledger.ticks(part.width);
  const three = lid && [left, lid, right];
  const isOneBlank = box.oneBlank === 'sides' || box.oneBlank === 'sides-and-dividers';
  if (!three || isOneBlank || three.some((p) => p.record !== box.id || p.lot !== left.lot)) {
    const why = three
      ? 'they are not its own three, of one board, each a blank by itself'
      : 'it has no lid of the case’s own board';
    noStrip(draft, box, why);
    return;
  }
  if (three.some((p) => t(p) !== t(left))) {
    const over: Cure = {
      says: 'Let the lid lie over the sides, as deep as they are; or let the back be laid on.',
      edits: [{ record: box.id, field: 'lid', value: 'over' }],
    };
    noStrip(draft, box, 'they are not of one depth', ...(t(lid!) < t(left) ? [over] : []));
    return;
  }
  // The upper ends of both sides lie beside the lid: the right one runs down.
  const beside = [{ end: lid.mark }, { start: left.mark, end: right.mark }, { end: lid.mark }];
  three.forEach((part, place) => {
    part.strip = { id: `${box.id}/round`, follow: 'length', place, beside: beside[place]! };
  });
}

function noStrip(draft: Draft, box: RecordOf<'case'>, why: string, ...cures: readonly Cure[]): void {
  draft.stop(
    'cases.no-strip',
    box,
    'oneStrip',
    `The sides and the lid of “${box.id}” can’t be cut from one strip: ${why}.`,
    ...cures,
    { says: 'Leave “oneStrip” out.', edits: [{ record: box.id, field: 'oneStrip' }] },
  );
}
