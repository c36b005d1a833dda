import type { RecordOf } from '../../job/index.ts';
import { FACE_SCREWS, SETTING_OUT } from '../../materials/index.ts';
import { toMm } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { fitsOfFrame } from '../fits/fits-of-case.ts';
import type { Bores } from '../joints/bores.ts';
import { type FaceJointSpec, faceJoint, facesWood, isShutOff } from '../joints/face-joint.ts';
import { plugWish } from '../joints/plug-choice.ts';
import { mitreCorners } from '../joints/strip-joints.ts';
import { boxTicks } from '../place.ts';
import type { MadeCase } from './case-in-full.ts';
import type { Cases } from './cases.ts';
import type { FrameSide } from './mitred-frame.ts';
import { setBackFrame } from './set-back-frame.ts';
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
    if (carried.length === 0) continue;
    const strips = frameUnder(draft, cases, record, carried);
    if (strips.size > 0) screwDown(draft, bores, record, strips, carried);
  }
}

/** A mitred frame set back under the outermost faces of the cases that it carries. */
function frameUnder(
  draft: Draft,
  cases: Cases,
  record: RecordOf<'base'>,
  carried: readonly MadeCase[],
): ReadonlyMap<FrameSide, DraftPart> {
  const l = draft.ledger;
  const frames = carried.map(({ frame }) => frame);
  const left = l.least('left side of the cases', ...frames.map((f) => f.left));
  const front = l.least('front of the cases', ...frames.map((f) => f.front));
  const right = l.greatest('right side of the cases', ...frames.map((f) => f.right));
  const rear = l.greatest('back of the cases', ...frames.map((f) => f.rear));
  return setBackFrame(draft, record, {
    left,
    front,
    width: l.less('width of the cases', right, left),
    depth: l.less('depth of the cases', rear, front),
    floor: cases.floorUnder(record),
    of: ` of ${record.parent}`,
  });
}

/**
 * Every case stands on two strips at least, and is screwed down on those where screws find a place: on one at least,
 * for its neighbours hold it as well.
 */
function screwDown(
  draft: Draft,
  bores: Bores,
  record: RecordOf<'base'>,
  strips: ReadonlyMap<FrameSide, DraftPart>,
  carried: readonly MadeCase[],
): void {
  for (const made of carried) {
    const { bottom } = made.panels;
    let [carrying, screwed, shutOff] = [0, 0, 0];
    for (const strip of strips.values()) {
      const spec: FaceJointSpec = {
        part: strip,
        edge: 'far',
        mate: bottom,
        duty: 'base',
        glued: false,
        plugs: plugWish(draft, made.frame.box),
        standing: fixedInside(made).filter((p) => p !== bottom),
        besides: true,
      };
      if (!facesWood(draft, spec) || !meets(draft, strip, bottom)) continue;
      carrying++;
      if (isShutOff(draft, spec)) shutOff++;
      const before = draft.joints.length;
      faceJoint(draft, bores, spec);
      if (draft.joints.length > before) screwed++;
    }
    if (carrying >= 2 && screwed < 1 && shutOff === carrying) noDriver(draft, record, made);
    else if (carrying < 2 || screwed < 1)
      draft.stop(
        'base.under-side',
        record,
        'setback',
        carrying < 2
          ? `“${made.frame.box.id}” doesn’t lie on two strips of the base, so it can’t be screwed down on it.`
          : `No screw finds a place to hold “${made.frame.box.id}” down on the base: grooves run over its strips, or panels stand there.`,
        {
          says: 'Set the base back by at least the thickness of a side, or make the case as deep as the others.',
          edits: [{ record: record.id, field: 'setback', value: '40 mm' }],
        },
      );
  }
  mitreCorners(draft, strips);
  fitsOfFrame(draft, strips);
}

/** What lies low over a bottom keeps every driver from it, however far the base is set back. */
function noDriver(draft: Draft, record: RecordOf<'base'>, { frame }: MadeCase): void {
  const room = toMm(draft.ledger.ticks(draft.ledger.row(FACE_SCREWS.driverRoom)));
  draft.stop(
    'base.under-side',
    record,
    'parent',
    `No driver gets to the bottom of “${frame.box.id}” to screw it down on the base: what lies above it is too near.`,
    { says: `Leave ${room} mm clear above that bottom, or give each case a base of its own.` },
  );
}

/** True when a strip runs under a bottom for long enough that screws go in. */
function meets(draft: Draft, strip: DraftPart, bottom: DraftPart): boolean {
  const least = 2 * draft.ledger.ticks(draft.ledger.row(SETTING_OUT.connectLeast));
  const [a, b] = [boxTicks(draft.ledger, strip.box), boxTicks(draft.ledger, bottom.box)];
  const along = ([0, 1] as const).map((k) => Math.min(a.max[k], b.max[k]) - Math.max(a.min[k], b.min[k]));
  return Math.min(...along) > 0 && Math.max(...along) >= least;
}
