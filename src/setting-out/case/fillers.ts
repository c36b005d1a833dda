import type { RecordOf } from '../../job/index.ts';
import { BASES } from '../../materials/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Bores } from '../joints/bores.ts';
import { faceJoint } from '../joints/face-joint.ts';
import { roomSize } from '../spaces/room.ts';
import type { MadeCase } from './case-in-full.ts';
import type { Cases } from './cases.ts';
import type { Hand } from './shared-sides.ts';
import { fixedInside } from './where-cases-meet.ts';

/** A filler, and the sides of cases that it is screwed to. */
export interface Filler {
  readonly record: RecordOf<'filler'>;
  readonly part: DraftPart;
  readonly scribe: Traced;
  readonly on: readonly { readonly made: MadeCase; readonly side: DraftPart }[];
}

/** Makes the fillers at the ends of rows: each as wide as its gap, and cut so much wider that it can be scribed to the wall. */
export function fillers(draft: Draft, cases: Cases, all: readonly MadeCase[]): readonly Filler[] {
  return draft.tree.all('filler').flatMap((record) => filler(draft, cases, all, record) ?? []);
}

function filler(
  draft: Draft,
  cases: Cases,
  all: readonly MadeCase[],
  record: RecordOf<'filler'>,
): Filler | undefined {
  const l = draft.ledger;
  const t = (x: Traced) => l.ticks(x);
  const gap = cases.gapOf(record);
  const end = l.sum('right end of the gap', gap.left, gap.width);
  const onRight = all.filter((m) => t(m.panels.left.box.min[0]) === t(end));
  const onLeft = all.filter((m) => t(m.panels.right.box.max[0]) === t(gap.left));
  const beside = onRight.length > 0 ? onRight : onLeft;
  const [first] = beside;
  if (!first || (onRight.length > 0 && onLeft.length > 0)) {
    draft.stop(
      'fillers.beside-nothing',
      record,
      'parent',
      first
        ? `“${record.id}” stands between two cases, where there is no wall to scribe it to.`
        : `“${record.id}” touches no side of a case that it could be screwed to.`,
      { says: 'Let it stand at the end of a row, beside a case whose top does not stand out there.' },
    );
    return undefined;
  }
  // The wall is on the other side; the show face looks to the front, and the near edge to the case.
  const wall: Hand = onRight.length > 0 ? 'left' : 'right';
  const lot = draft.lot(record.board);
  const thickness = draft.thickness(lot);
  const front = l.sum(
    'front of the filler',
    l.greatest('foremost place that all sides beside it have', ...beside.map((m) => m.frame.panelFront)),
    draft.field(record, 'setback'),
  );
  const foot = l.least('lower end of the cases beside it', ...beside.map((m) => m.frame.foot));
  const head = l.greatest('upper end of the cases beside it', ...beside.map((m) => m.frame.head));
  const height = l.less('height of the filler', head, foot);
  const scribe = record.scribe === undefined ? l.row(BASES.scribe) : draft.field(record, 'scribe');
  const part = draft.panel({
    record: record.id,
    role: 'filler',
    name: `filler ${record.id}`,
    family: 'filler',
    lot,
    at: [gap.left, front, foot],
    size: [gap.width, thickness, height],
    length: wall === 'left' ? '+z' : '-z',
    width: wall === 'left' ? '-x' : '+x',
    rough: {
      length: height,
      width: l.sum('width to cut, before it is scribed', gap.width, scribe),
      thickness,
    },
  });
  return {
    record,
    part,
    scribe,
    on: beside.map((made) => ({ made, side: wall === 'left' ? made.panels.left : made.panels.right })),
  };
}

/** Screws fillers on from inside the cases, clear of shelves. */
export function joinFiller(draft: Draft, bores: Bores, { part, on }: Filler): void {
  for (const { made, side } of on)
    faceJoint(draft, bores, {
      part,
      edge: 'near',
      mate: side,
      duty: 'filler',
      glued: false,
      // A filler must come off again, and its screws are inside the case.
      plugs: { wanted: false, asked: false },
      standing: fixedInside(made).filter((p) => p !== side),
    });
}

/** What the fillers are cut wider must reach the walls where the room is widest. */
export function fillersReachWalls(draft: Draft, all: readonly Filler[]): void {
  const l = draft.ledger;
  const [room] = draft.tree.all('room');
  const widest = room && roomSize(draft, room, 'widest');
  const [first] = all;
  if (!room || widest === undefined || !first) return;
  const over = l.ticks(widest) - l.ticks(draft.field(draft.piece, 'width'));
  const most = all.reduce((sum, f) => sum + l.ticks(f.scribe), 0);
  if (over <= most) return;
  const mm = (ticks: number) => `${Math.ceil(toMm(ticks) * 10) / 10} mm`;
  draft.snags.push({
    code: 'fillers.too-narrow',
    level: 'mind',
    where: { path: `design/records/${first.record.id}/scribe`, record: first.record.id },
    sentence: `“${room.id}” is ${mm(over)} wider at its widest than the piece, and the fillers are cut only ${mm(most)} wider: a gap would stay open there.`,
    rule: {
      says: 'a filler is cut wide enough to be scribed to the wall where that is furthest away',
      source: 'common practice',
      confirmed: false,
    },
    cures: [
      {
        says: 'Cut them wider by more.',
        edits: all.map(({ record }) => ({
          record: record.id,
          field: 'scribe',
          value: mm(Math.ceil(over / all.length) + l.ticks(l.row(BASES.scribeSpare))),
        })),
      },
    ],
  });
}
