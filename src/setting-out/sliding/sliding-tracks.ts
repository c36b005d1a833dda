import type { RecordOf } from '../../job/index.ts';
import { SETTING_OUT, SLIDING } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { CaseFrame } from '../case/frame-of-case.ts';
import type { Draft } from '../draft.ts';

/** The tracks of sliding doors, reckoned from the front of the panels to the back. */
export interface Tracks {
  readonly count: number;
  /** Thickness of a door, and of what of it runs in the grooves. */
  readonly door: Traced;
  readonly tongue: Traced;
  /** How deep the rabbets are that leave the tongue; absent where the whole door runs. */
  readonly rabbet: Traced | undefined;
  readonly groove: Traced;
  /** How far a groove is wider than what runs in it. */
  readonly play: Traced;
  /** Air between doors that pass, and wood between grooves. */
  readonly gap: Traced;
  readonly web: Traced;
  /** Nearer walls of the grooves behind the front of the panels, foremost first. */
  readonly walls: readonly Traced[];
  /** What the tracks take of the depth, air behind the last door included. */
  readonly depth: Traced;
}

/** How the tracks of sliding doors lie one behind the other. */
export function tracksOf(draft: Draft, frame: CaseFrame, record: RecordOf<'sliding-doors'>): Tracks {
  const l = draft.ledger;
  const door = draft.thickness(draft.lot(record.board));
  const step = draft.stepOf('router');
  const asRouted = (t: Traced, how: 'up' | 'nearest') =>
    l.round('as fine as the router is set', t, step, how);
  const asked = record.tongue === undefined ? undefined : draft.field(record, 'tongue');
  // A tongue as thick as the door is the door itself.
  const rabbet =
    asked !== undefined && l.ticks(asked) < l.ticks(door)
      ? asRouted(l.less('what is taken off behind the tongue', door, asked), 'nearest')
      : undefined;
  const tongue = rabbet === undefined ? door : l.less('tongue that runs in the grooves', door, rabbet);
  const groove = asRouted(
    l.sum('width of the groove: what runs in it, and room to run', tongue, l.row(SLIDING.runs)),
    'up',
  );
  const play = l.less('how much wider the groove is than what runs in it', groove, tongue);
  const gap =
    record.gap === undefined
      ? l.greatest(
          'air between doors that pass, and wood enough between the grooves',
          l.row(SLIDING.passing),
          l.less(
            'air that leaves this much wood',
            l.sum('groove and wood', groove, l.row(SLIDING.web)),
            door,
          ),
        )
      : draft.field(record, 'gap');
  const pitch = asRouted(l.sum('from one track to the next: a door and the air', door, gap), 'up');
  const count = record.tracks ?? 2;
  const walls = [record.setIn === undefined ? usualSetIn(draft, frame) : draft.field(record, 'setIn')];
  while (walls.length < count) walls.push(l.sum('front wall of the next groove', walls.at(-1)!, pitch));
  return {
    count,
    door,
    tongue,
    rabbet,
    groove,
    play,
    gap: l.less('air between doors that pass', pitch, door),
    web: l.less('wood between two grooves', pitch, groove),
    walls,
    depth: l.sum(
      'depth of the tracks, and air behind the last door',
      walls.at(-1)!,
      l.greatest('groove or door', groove, l.sum('a door at the back of its groove', door, play)),
      l.row(SLIDING.behind),
    ),
  };
}

/** Where the first groove begins, unless that is asked for: behind wood enough, in the board of an edged top as well. */
function usualSetIn(draft: Draft, frame: CaseFrame): Traced {
  const l = draft.ledger;
  const usual = l.row(SLIDING.setIn);
  if (frame.lidded || frame.top?.edging === undefined) return usual;
  const edging = draft.thickness(draft.lot(frame.top.edging));
  const board = l.sum(
    'front of the first groove, in the board of the top',
    frame.site.front,
    edging,
    l.row(SLIDING.web),
  );
  return l.greatest(
    'behind wood enough below and above',
    usual,
    l.less('the same, behind the front of the panels', board, frame.panelFront),
  );
}

/** How far a door's front stands behind the front of the panels, in the middle of its groove. */
export function frontOfDoor(draft: Draft, tracks: Tracks, track: number): Traced {
  const l = draft.ledger;
  return l.sum(
    'front of the door, in the middle of its groove',
    tracks.walls[track]!,
    l.ratio('half of what the groove is wider', tracks.play, SETTING_OUT.half),
  );
}
