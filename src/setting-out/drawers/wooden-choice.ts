import type { Lot, RecordOf } from '../../job/index.ts';
import { DRAWERS, SETTING_OUT } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft } from '../draft.ts';
import { depthIn } from '../joints/let-in.ts';
import type { Carriage } from './carriage.ts';

/** Strips for wooden runners, and the grooves that they ask for. */
export interface WoodenChoice {
  readonly lot: Lot;
  /** How far a strip stands out of the upright, and how high it is. */
  readonly thick: Traced;
  readonly high: Traced;
  readonly groove: { readonly width: Traced; readonly depth: Traced };
}

/** Wooden runners for a depth behind the fronts; a stop where the sides are too thin for their grooves. */
export function chooseWooden(draft: Draft, record: RecordOf<'drawers'>, depth: Traced): Carriage | undefined {
  const l = draft.ledger;
  if (record.runnerStrip === undefined) {
    draft.stop(
      'drawers.no-runner',
      record,
      'runnerStrip',
      `“${record.id}” is to run on wooden runners, and it isn’t said what they are cut from.`,
      { says: 'Name a lot of strips in “runnerStrip”, of hard, straight wood.' },
    );
    return undefined;
  }
  const lot = draft.lot(record.runnerStrip);
  const [thick, high] = [draft.thickness(lot), draft.typed(`shop/rack/lots/${lot.id}/width`, lot.width!)];
  const beside = l.row(DRAWERS.woodBeside);
  const fine = draft.stepOf('router');
  const groove = {
    width: l.round(
      'as fine as the router is set',
      l.sum('width of the groove: the runner, and air', high, l.row(DRAWERS.woodClear)),
      fine,
      'up',
    ),
    depth: l.round(
      'as fine as the router is set',
      l.sum(
        'depth of the groove for the runner, and air behind it',
        l.less('how far the runner stands in the side', thick, beside),
        l.row(DRAWERS.woodBehind),
      ),
      fine,
      'up',
    ),
  };
  if (!isThickEnough(draft, record, groove.depth)) return undefined;
  const free = l.less('depth for the box of a drawer', depth, l.row(DRAWERS.behindBox));
  const length = draft.asSawn(free, 'down');
  const edge = l.row(DRAWERS.woodEdge);
  const long = l.less('length of the runner', length, l.row(DRAWERS.woodStop), l.row(DRAWERS.woodAhead));
  if (l.ticks(long) <= 4 * l.ticks(l.row(DRAWERS.woodScrew))) {
    draft.stop(
      'drawers.no-runner',
      record,
      'carriedBy',
      `“${record.parent}” is too shallow for wooden runners that would carry a drawer.`,
      { says: 'Make the piece deeper, or use runners of the rack.' },
    );
    return undefined;
  }
  return {
    length,
    beside,
    lowest: l.sum('groove and the wood above and below it', groove.width, edge, edge),
    travel: l.ratio('two thirds of the runner', long, DRAWERS.woodTravel),
    by: { kind: 'wooden', strips: { lot, thick, high, groove } },
  };
}

/** What is let into the inner face of a side mustn't meet the groove for the runner in its outer face. */
function isThickEnough(draft: Draft, record: RecordOf<'drawers'>, deep: Traced): boolean {
  const l = draft.ledger;
  const joint = jointOf(record);
  const screwed = joint === 'screws' || joint === 'pocket-screws';
  const board = draft.thickness(draft.lot(record.board));
  const inner = depthIn(
    draft,
    'depth of what is let into the inner face',
    board,
    joint === 'rabbet' ? SETTING_OUT.cornerRabbet : SETTING_OUT.dadoDepth,
  );
  const together = l.ticks(deep) + l.ticks(inner) + l.ticks(l.row(DRAWERS.woodWeb));
  if (!screwed && draft.isSome(deep) && together <= l.ticks(board)) return true;
  draft.stop(
    'drawers.groove-too-deep',
    record,
    screwed ? 'joint' : 'runnerStrip',
    screwed
      ? `The screws at the corners of “${record.id}” would come out in the grooves for its wooden runners.`
      : `The grooves for the wooden runners of “${record.id}” would nearly meet what is let into the other face of its sides.`,
    {
      says: screwed
        ? 'Join the boxes by dados: only their front corners are rabbeted, where the groove stops.'
        : 'Use thinner strips, a thicker board for the boxes, or join them by dados, which are less deep.',
      ...(record.joint === 'dado' || (!screwed && record.joint === undefined)
        ? {}
        : { edits: [{ record: record.id, field: 'joint', value: 'dado' }] }),
    },
  );
  return false;
}

/** How the corners of boxes are joined: by dados at the back where grooves for runners run out there. */
export function jointOf(record: RecordOf<'drawers'>): NonNullable<RecordOf<'drawers'>['joint']> {
  return record.joint ?? (record.carriedBy === 'wooden-runners' ? 'dado' : 'rabbet');
}
