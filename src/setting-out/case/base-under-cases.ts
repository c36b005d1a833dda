import type { RecordOf } from '../../job/index.ts';
import { SETTING_OUT } from '../../materials/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { fitsOfFrame } from '../fits/fits-of-case.ts';
import type { Bores } from '../joints/bores.ts';
import { type FaceJointSpec, faceJoint, facesWood } from '../joints/face-joint.ts';
import { plugWish } from '../joints/plug-choice.ts';
import { mitreCorners } from '../joints/strip-joints.ts';
import type { MadeCase } from './case-in-full.ts';
import type { Cases } from './cases.ts';
import { type FrameSide, mitredFrame } from './mitred-frame.ts';
import { fixedInside } from './where-cases-meet.ts';

/** Makes the bases that carry several cases, and screws their bottoms down on them from inside. */
export function basesUnderCases(draft: Draft, bores: Bores, cases: Cases, all: readonly MadeCase[]): void {
  for (const record of draft.tree.all('base')) {
    const group = draft.tree.get(record.parent);
    if (group?.kind !== 'group') continue;
    const boxes = new Set(draft.tree.casesOf(group.id).map((box) => box.id));
    const head = draft.ledger.ticks(cases.overBase(record));
    const carried = all.filter(
      ({ frame, panels }) => boxes.has(frame.box.id) && draft.ledger.ticks(panels.bottom.box.min[2]) === head,
    );
    const strips = frameUnder(draft, cases, record, carried);
    if (strips) screwDown(draft, bores, record, strips, carried);
  }
}

/** A mitred frame set back under the outermost faces of the cases that it carries. */
function frameUnder(
  draft: Draft,
  cases: Cases,
  record: RecordOf<'base'>,
  carried: readonly MadeCase[],
): ReadonlyMap<FrameSide, DraftPart> | undefined {
  const l = draft.ledger;
  const frames = carried.map(({ frame }) => frame);
  if (frames.length === 0) return undefined;
  const lot = draft.lot(record.board!);
  const thickness = draft.thickness(lot);
  const height = draft.field(record, 'height');
  const setback = draft.field(record, 'setback');
  const behind = record.setbackBack === undefined ? setback : draft.field(record, 'setbackBack');
  const left = l.least('left side of the cases', ...frames.map((f) => f.left));
  const front = l.least('front of the cases', ...frames.map((f) => f.front));
  const width = l.less(
    'width of the base, set back on both sides',
    l.greatest('right side of the cases', ...frames.map((f) => f.right)),
    left,
    setback,
    setback,
  );
  const depth = l.less(
    'depth of the base, set back in front and behind',
    l.greatest('back of the cases', ...frames.map((f) => f.rear)),
    front,
    setback,
    behind,
  );
  const two = 2 * l.ticks(thickness);
  if (l.ticks(width) <= two || l.ticks(depth) <= two) {
    draft.stop('base.no-room', record, 'setback', 'The base is set back so far that its strips meet.', {
      says: 'Set it back less.',
      edits: [{ record: record.id, field: 'setback', value: '40 mm' }],
    });
    return undefined;
  }
  const allowance = l.row(SETTING_OUT.mitreAllowance);
  return mitredFrame(draft, {
    record: record.id,
    stem: 'base',
    of: ` of ${record.parent}`,
    family: 'base',
    lot,
    at: [
      l.sum('left end of the base', left, setback),
      l.sum('front of the base', front, setback),
      cases.floorUnder(record),
    ],
    size: [width, depth, height],
    thickness,
    sides: ['front', 'left', 'right', 'back'],
    rough: (length) => ({
      length: l.sum('length to cut before mitring', length, allowance, allowance),
      width: height,
      thickness,
    }),
  });
}

/** Every case is screwed down on the strips that its bottom covers: on two of them at least. */
function screwDown(
  draft: Draft,
  bores: Bores,
  record: RecordOf<'base'>,
  strips: ReadonlyMap<FrameSide, DraftPart>,
  carried: readonly MadeCase[],
): void {
  for (const made of carried) {
    const { bottom } = made.panels;
    let joined = 0;
    for (const strip of strips.values()) {
      const spec: FaceJointSpec = {
        part: strip,
        edge: 'far',
        mate: bottom,
        duty: 'base',
        glued: false,
        plugs: plugWish(draft, made.frame.box),
        standing: fixedInside(made).filter((p) => p !== bottom),
      };
      if (!facesWood(draft, spec) || !meets(draft, strip, bottom)) continue;
      joined++;
      faceJoint(draft, bores, spec);
    }
    if (joined < 2)
      draft.stop(
        'base.under-side',
        record,
        'setback',
        `“${made.frame.box.id}” doesn’t lie on two strips of the base, so it can’t be screwed down on it.`,
        {
          says: 'Set the base back by at least the thickness of a side, or make the case as deep as the others.',
          edits: [{ record: record.id, field: 'setback', value: '40 mm' }],
        },
      );
  }
  mitreCorners(draft, strips);
  fitsOfFrame(draft, strips);
}

/** True when a strip runs under a bottom for long enough that screws go in. */
function meets(draft: Draft, strip: DraftPart, bottom: DraftPart): boolean {
  const l = draft.ledger;
  const least = 2 * l.ticks(l.row(SETTING_OUT.connectLeast));
  return (
    ([0, 1] as const).some(
      (k) =>
        Math.min(l.ticks(strip.box.max[k]), l.ticks(bottom.box.max[k])) -
          Math.max(l.ticks(strip.box.min[k]), l.ticks(bottom.box.min[k])) >=
        least,
    ) &&
    ([0, 1] as const).every(
      (k) =>
        l.ticks(strip.box.min[k]) < l.ticks(bottom.box.max[k]) &&
        l.ticks(strip.box.max[k]) > l.ticks(bottom.box.min[k]),
    )
  );
}
