import type { RecordOf } from '../job/index.ts';
import { DOORS } from '../materials/index.ts';
import type { Traced } from '../measure/index.ts';
import type { Draft } from './draft.ts';
import type { Space } from './openings.ts';

/** How far what is inside stays back behind an inset door. */
interface SetBack {
  readonly front: (y: Traced) => Traced;
  readonly depth: (depth: Traced) => Traced;
}

/** The spaces of a case as they are found, for the doors that close them; and what inset doors leave behind them. */
export class ClosedSpaces {
  private readonly draft: Draft;
  private readonly found = new Map<string, Space>();
  private readonly inset = new Map<string, RecordOf<'door'>>();

  constructor(draft: Draft, doors: readonly RecordOf<'door'>[]) {
    this.draft = draft;
    for (const door of doors) if (door.hang === 'inset') for (const id of door.over) this.inset.set(id, door);
  }

  /** Keeps a space as it is without its door. */
  note(space: Space): void {
    this.found.set(space.record.id, space);
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
        {
          says: 'Make the piece deeper, or let the door lie before the case.',
          edits: [{ record: door.id, field: 'hang', value: 'overlay' }],
        },
      );
      return undefined;
    }
    return {
      ...space,
      at: [space.at[0], back.front(space.at[1]), space.at[2]],
      size: [space.size[0], depth, space.size[2]],
    };
  }

  /** What stands between two openings stays back when one inset door closes both. */
  behindOneDoor(one: string, other: string): SetBack | undefined {
    const door = this.inset.get(one);
    return door && door === this.inset.get(other) ? this.setBack(door) : undefined;
  }

  private setBack(door: RecordOf<'door'>): SetBack {
    const l = this.draft.ledger;
    const thickness = this.draft.thickness(this.draft.lot(door.board));
    const clear = l.row(DOORS.behindClear);
    return {
      front: (y) => l.sum('front of what is behind the door', y, thickness, clear),
      depth: (depth) => l.less('depth behind the door', depth, thickness, clear),
    };
  }
}
