import type { RecordOf } from '../../job/index.ts';
import { BASES, SETTING_OUT } from '../../materials/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { sawKerf } from '../fits/cut-size.ts';
import { type CasePanels, sideDepth } from './case-panels.ts';
import { type CaseFrame, ofCase } from './frame-of-case.ts';

/** The strips of a cleat that belong to its case. */
export interface OnCase {
  readonly strip: DraftPart;
  /** One as thick at the foot of a case whose back is laid on, where no sides come to the wall. */
  readonly spacer?: DraftPart;
}

/**
 * The strips of a bevelled cleat. Behind a back in grooves the upper one goes between the sides, level with their back
 * edges; behind one in rabbets, or laid on, it lies on the back, which its screws pass. The lower one, a little shorter,
 * will be on the wall. Undefined where there is no room for them (a stop says so).
 */
export function bevelledCleat(
  draft: Draft,
  frame: CaseFrame,
  panels: CasePanels,
  record: RecordOf<'hanging'>,
): OnCase | undefined {
  const l = draft.ledger;
  const t = (x: Traced) => l.ticks(x);
  const lot = draft.lot(record.board);
  const thick = draft.thickness(lot);
  const step = draft.stepOf('circular-saw');
  const rear = l.sum('back edges of the sides', frame.panelFront, sideDepth(draft, frame));
  if (t(frame.backSetIn) < t(thick)) {
    const by = `${Math.ceil(toMm(t(thick)) * 10) / 10} mm`;
    draft.stop(
      'hanging.recess-shallow',
      frame.back!,
      'setIn',
      'The back stands in less than the strips of the cleat are thick, so the sides would not come to the wall.',
      {
        says: `Set the back in by ${by}, as much as they are thick; or leave “setIn” out, and it is.`,
        edits: [{ record: frame.back!.id, field: 'setIn', value: by }],
      },
    );
    return undefined;
  }
  const asked = record.height === undefined ? l.row(BASES.cleatHeight) : draft.field(record, 'height');
  const low = l.sum('as high as a strip must be', thick, l.row(BASES.cleatFlat));
  if (t(asked) < t(low)) {
    const high = `${Math.ceil(toMm(t(low)))} mm`;
    draft.stop(
      'hanging.strips-low',
      record,
      'height',
      'The strips of this cleat are so low that their slopes leave no wood for screws.',
      {
        says: `Make them ${high} high; or leave “height” out.`,
        edits: [{ record: record.id, field: 'height', value: high }],
      },
    );
    return undefined;
  }
  const wallWidth = l.round('as fine as the saw is set', asked, step, 'up');
  // At 45 degrees the slope takes as much of either strip as they are thick.
  const kerf = l.ratio(
    'kerf of a blade tilted to 45 degrees',
    sawKerf(l, draft.job.shop),
    SETTING_OUT.slantKerf,
  );
  const blankWidth = l.round(
    'as fine as the saw is set',
    l.sum('both strips and the kerf between', l.less('less what they share', wallWidth, thick), asked, kerf),
    step,
    'up',
  );
  const width = l.less(
    'what the slanting cut leaves for the case',
    l.sum('blank with what the slope shares out', blankWidth, thick),
    wallWidth,
    kerf,
  );
  const { fitting } = frame.back!;
  const laidOn = fitting === 'applied';
  // A lid that runs on over a back that is let in closes the recess above.
  const top = panels.lid && !panels.lid.between && !laidOn ? panels.lid.box.min[2] : frame.head;
  const [left, inside] = laidOn ? [frame.left, frame.width] : [panels.inside.left, panels.inside.width];
  const space = l.less('height of the recess', top, frame.under, ...(laidOn ? [low] : []));
  const shared = l.less('how high both strips stand', l.sum('both', wallWidth, width), thick);
  const free = l.row(BASES.cleatFree);
  const onWallLength = l.less('strip on the wall, free at both ends', inside, free, free);
  if (t(space) <= t(shared) || t(onWallLength) < t(l.row(BASES.cleatLeast))) {
    draft.stop(
      'hanging.no-room',
      record,
      record.height === undefined ? 'by' : 'height',
      'Behind this case there is no room for a cleat.',
      { says: 'Make its strips lower, or hang the case by rails.' },
      { says: 'Hang it by rails.', edits: [{ record: record.id, field: 'by', value: 'rails' }] },
    );
    return undefined;
  }
  const y =
    fitting === 'groove'
      ? l.less('front of the strip, level with the back edges', rear, thick)
      : l.sum('front of the strip, on the back', frame.panelFront, frame.insideDepth, frame.backThickness);
  const strip = (role: string, name: string, family: 'rail' | 'wall strip', spec: StripSpec) =>
    draft.panel({
      record: record.id,
      role,
      name: `${name}${ofCase(frame)}`,
      family,
      lot,
      at: [spec.left, y, spec.foot],
      size: [spec.long, thick, spec.high],
      length: '+x',
      width: '+z',
      // What lies on a back is as long as it is drawn.
      between: fitting === 'groove',
    });
  const foot = l.less('lower edge of the strip on the case', top, width);
  const onCase = strip('cleat', 'cleat strip', 'rail', {
    left,
    long: inside,
    foot,
    high: width,
  });
  const upper = l.sum('upper edge of the strip on the wall', foot, thick);
  const onWall = strip('wall-strip', 'wall strip', 'wall strip', {
    left: l.sum('left end of the strip on the wall', left, free),
    long: onWallLength,
    foot: l.less('lower edge of the strip on the wall', upper, wallWidth),
    high: wallWidth,
  });
  // The hook of the case hangs down at the wall, that of the wall stands up away from it.
  onCase.features.push({
    kind: 'bevel',
    id: `${onCase.id}#${onWall.id}`,
    purpose: 'to hook over the wall strip',
    edge: 'near',
    angle: 45,
    fullFace: 'under',
  });
  onWall.features.push({
    kind: 'bevel',
    id: `${onWall.id}#${onCase.id}`,
    purpose: 'to take the hook of the case',
    edge: 'far',
    angle: 45,
    fullFace: 'show',
  });
  const blank = draft.panel({
    record: record.id,
    role: 'cleat-blank',
    name: `blank of the cleat${ofCase(frame)}`,
    family: 'cleat blank',
    lot,
    at: [left, y, l.less('lower edge of both strips', top, blankWidth)],
    size: [inside, thick, blankWidth],
    length: '+x',
    width: '+z',
    between: true,
    apart: true,
  });
  const spacer = laidOn
    ? draft.panel({
        record: record.id,
        role: 'spacer',
        name: `spacer strip${ofCase(frame)}`,
        family: 'rail',
        lot,
        at: [left, y, frame.under],
        size: [inside, thick, low],
        length: '+x',
        width: '+z',
      })
    : undefined;
  draft.cleats.push({
    record: record.id,
    ...(fitting === 'groove' ? {} : { onBack: `${frame.back!.id}/back` }),
    ...(spacer ? { spacer: spacer.id } : {}),
    blank,
    onCase: onCase.id,
    onWall: onWall.id,
    lift: l.sum('how much higher it is lifted to hook over', thick, l.row(BASES.cleatLift)),
  });
  return { strip: onCase, ...(spacer ? { spacer } : {}) };
}

interface StripSpec {
  readonly left: Traced;
  readonly long: Traced;
  readonly foot: Traced;
  readonly high: Traced;
}
