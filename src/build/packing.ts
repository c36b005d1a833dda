import { treeOf } from '../job/index.ts';
import { BASES } from '../materials/index.ts';
import type { Traced } from '../measure/index.ts';
import type { Bench } from './bench.ts';

/** How a piece is brought level on a floor that falls: where to begin, and how thick the packing becomes. */
export function packingLines(bench: Bench, lengths: Traced[]): readonly string[] {
  const [room] = treeOf(bench.job).all('room');
  if (room?.floorFall === undefined || room.fallsTo === undefined) return [];
  const ticks = bench.ticksOf(room.floorFall);
  if (ticks === 0) return [];
  const fall = bench.ledger.document(`design/records/${room.id}/floorFall`, ticks, room.floorFall);
  const put = (t: Traced) => `{${lengths.push(t) - 1}}`;
  const sideways = room.fallsTo === 'left' || room.fallsTo === 'right';
  return [
    `The floor falls ${put(bench.set('marking', fall))} to the ${room.fallsTo}. Begin at the other end, where it is highest, and draw a level line from there${sideways ? ' along the wall' : ''}.`,
    `Pack under the base, and under both ends of every case, every ${put(bench.rule(BASES.packApart))} at most: thicker by degrees, up to the whole fall at the low end, wedges in pairs or sawn slips, glued in and cut off level with the base.`,
  ];
}
