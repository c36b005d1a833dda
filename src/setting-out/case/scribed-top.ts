import type { RecordOf } from '../../job/index.ts';
import { BASES } from '../../materials/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { Draft } from '../draft.ts';
import { roomSize } from '../spaces/room.ts';

/** A top that is cut longer than it is drawn, and scribed to the walls when its cases stand in their place. */
export interface ScribedTop {
  /** The top, and the strips on its front, which are sawn with it: parts by id. */
  readonly part: string;
  readonly strips: readonly string[];
  /** The ends that meet a wall; its start is on the left. */
  readonly ends: readonly ('start' | 'end')[];
  /** How much longer it is cut at each. */
  readonly scribe: Traced;
}

/** What a top that is scribed must reach: the walls where the room is widest. */
export function topReachesWalls(draft: Draft, record: RecordOf<'top'>, scribed: ScribedTop): void {
  const l = draft.ledger;
  const [room] = draft.tree.all('room');
  const widest = room && roomSize(draft, room, 'widest');
  if (!room || widest === undefined) return;
  const over = l.ticks(widest) - l.ticks(draft.field(draft.piece, 'width'));
  const walls = scribed.ends.length;
  if (over <= walls * l.ticks(scribed.scribe)) return;
  const mm = (ticks: number) => `${Math.ceil(toMm(ticks) * 10) / 10} mm`;
  draft.snags.push({
    code: 'tops.too-short',
    level: 'mind',
    where: { path: `design/records/${record.id}/scribe`, record: record.id },
    sentence: `“${room.id}” is ${mm(over)} wider at its widest than the piece, and “${record.id}” is cut only ${mm(walls * l.ticks(scribed.scribe))} longer: a gap would stay open there.`,
    rule: {
      says: 'what is scribed to a wall is cut large enough to reach it where that is furthest away',
      source: 'common practice',
      confirmed: false,
    },
    cures: [
      {
        says: 'Cut it longer by more.',
        edits: [
          {
            record: record.id,
            field: 'scribe',
            value: mm(Math.ceil(over / walls) + l.ticks(l.row(BASES.scribeSpare))),
          },
        ],
      },
    ],
  });
}
