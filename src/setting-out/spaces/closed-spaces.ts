import type { RecordOf } from '../../job/index.ts';
import { DOORS } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { CaseFrame } from '../case/frame-of-case.ts';
import type { Draft } from '../draft.ts';
import { tracksOf } from '../sliding/sliding-tracks.ts';
import type { Space } from './openings.ts';

/** Doors that stand inside an opening. */
type Inside = RecordOf<'door' | 'sliding-doors'>;

/** How far what is inside stays back behind an inset door, or behind the tracks of sliding ones. */
interface SetBack {
  readonly front: (y: Traced) => Traced;
  readonly depth: (depth: Traced) => Traced;
}

/** The spaces of a case as they are found, for the doors that close them; and what doors inside them leave behind them. */
export class ClosedSpaces {
  private readonly draft: Draft;
  private readonly found = new Map<string, Space>();
  private readonly frame: CaseFrame;
  private readonly inset = new Map<string, Inside>();

  constructor(draft: Draft, frame: CaseFrame) {
    this.draft = draft;
    this.frame = frame;
    for (const door of [...frame.doors.filter((d) => d.hang === 'inset'), ...frame.sliding])
      for (const id of door.over) this.inset.set(id, door);
  }

  /** Keeps a space as it is without its door. */
  note(space: Space): void {
    this.found.set(space.record.id, space);
  }

  /** All of them, in the order in which they were found. */
  get all(): readonly Space[] {
    return [...this.found.values()];
  }

  get(opening: string): Space | undefined {
    return this.found.get(opening);
  }

  /** A space without what its own inset door takes of its depth; undefined when nothing is left. */
  behindDoor(space: Space): Space | undefined {
    const door = this.inset.get(space.record.id);
    if (!door) return space;
    const back = this.setBack(door);
    const depth = back.depth(space.size[1]);
    if (!this.draft.isSome(depth)) {
      this.draft.stop(
        'doors.no-room',
        door,
        'board',
        `“${door.id}” fills all the depth of “${space.record.id}”.`,
        door.kind === 'door'
          ? {
              says: 'Make the piece deeper, or let the door lie before the case.',
              edits: [{ record: door.id, field: 'hang', value: 'overlay' }],
            }
          : { says: 'Make the piece deeper, or the doors of thinner board.' },
      );
      return undefined;
    }
    return {
      ...space,
      at: [space.at[0], back.front(space.at[1]), space.at[2]],
      size: [space.size[0], depth, space.size[2]],
    };
  }

  /** What stands between two openings stays back when one door inside closes both. */
  behindOneDoor(one: string, other: string): SetBack | undefined {
    const door = this.inset.get(one);
    return door && door === this.inset.get(other) ? this.setBack(door) : undefined;
  }

  private setBack(door: Inside): SetBack {
    return door.kind === 'door' ? this.behindInset(door) : this.behindTracks(door);
  }

  private behindTracks(doors: RecordOf<'sliding-doors'>): SetBack {
    const l = this.draft.ledger;
    const { depth: tracks } = tracksOf(this.draft, this.frame, doors);
    // The front edging of what is behind stands before its panel.
    const { edgingThickness } = this.frame;
    return {
      front: (y) => l.sum('front of what is behind the tracks', y, tracks, edgingThickness),
      depth: (depth) => l.less('depth behind the tracks', depth, tracks, edgingThickness),
    };
  }

  private behindInset(door: RecordOf<'door'>): SetBack {
    const l = this.draft.ledger;
    const thickness = this.draft.thickness(this.draft.lot(door.board));
    const clear = l.row(DOORS.behindClear);
    return {
      front: (y) => l.sum('front of what is behind the door', y, thickness, clear),
      depth: (depth) => l.less('depth behind the door', depth, thickness, clear),
    };
  }
}
