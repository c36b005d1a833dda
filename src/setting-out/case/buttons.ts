import type { RecordOf } from '../../job/index.ts';
import { BUTTONS, SETTING_OUT } from '../../materials/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Face } from '../feature.ts';
import { addFit, setBy, thick } from '../fits/fit.ts';
import type { Bores } from '../joints/bores.ts';
import { inPart, sideLooking } from '../joints/contact.ts';
import { LEAST_ROOM } from '../joints/driver-room.ts';
import { depthIn } from '../joints/let-in.ts';
import { type ChosenScrew, connectingScrew } from '../joints/screw-choice.ts';
import { axisOf } from '../place.ts';
import { type ButtonSizes, type ButtonSpot, type ButtonsSpec, buttonSpots } from './button-spots.ts';
import { movementOfTop } from './free-top.ts';
import { screwUp } from './screw-up.ts';
import { slotsInstead } from './slots-instead.ts';

/**
 * Holds a top of solid wood on the inner faces of its uprights: mortises, and buttons whose tongues go with the top in
 * them. The screws in front hold the top already.
 */
export function holdByButtons(draft: Draft, bores: Bores, spec: ButtonsSpec): void {
  const { frame, board, uprights } = spec;
  const top = frame.top!;
  const movement = movementOfTop(draft, top);
  const lot = draft.lot(top.buttons!);
  const thickness = draft.thickness(lot);
  if (!movement || !isSuited(draft, top, thickness)) return;
  const screw = connectingScrew(draft, thickness, board.thickness);
  if (!screw) {
    noScrew(draft, top, thickness, board);
    return;
  }
  let count = 0;
  for (const upright of uprights) {
    if (axisOf(upright.place.thickness).axis !== 0) continue;
    if (frame.sides.left.shared || frame.sides.right.shared) {
      shared(draft, top);
      return;
    }
    const sizes = sizesAt(draft, top, upright, thickness);
    if (!sizes) {
      tooThin(draft, top, upright);
      return;
    }
    // A divider has them on one side, whichever has room.
    const ways = upright === uprights[0] ? ['+x'] : upright === uprights.at(-1) ? ['-x'] : ['+x', '-x'];
    let spots: readonly ButtonSpot[] | undefined;
    for (const towards of ways as readonly ('+x' | '-x')[])
      spots ??= buttonSpots(draft, bores, { ...spec, upright, towards, sizes, movement, screw });
    if (!spots) noPlace(draft, top, upright);
    for (const spot of spots ?? [])
      oneButton(draft, bores, spec, { upright, sizes, screw, spot, n: ++count });
  }
}

function sizesAt(
  draft: Draft,
  top: RecordOf<'top'>,
  upright: DraftPart,
  thickness: Traced,
): ButtonSizes | undefined {
  const l = draft.ledger;
  const lot = draft.lot(top.buttons!);
  const marked = (t: Traced) => l.round('as it is marked', t, draft.stepOf('marking'), 'nearest');
  const lip = marked(l.row(BUTTONS.lip));
  // A divider is cut to fit in, and may end a step below the top: its tongue still goes in with the button against that.
  const inset = upright.between
    ? l.less('nearer to its end, which may come short of the top', lip, draft.stepOf('marking'))
    : lip;
  const deep = depthIn(draft, 'depth of the mortise', upright.thickness, BUTTONS.deep);
  if (l.ticks(deep) < l.ticks(l.row(BUTTONS.deepLeast))) return undefined;
  const inside = l.round(
    'as it is marked',
    l.less('how deep the tongue stands in its mortise', deep, l.row(BUTTONS.floor)),
    draft.stepOf('marking'),
    'down',
  );
  const tongue = marked(l.sum('length of the tongue', inside, l.row(BUTTONS.shoulder)));
  return {
    thick: thickness,
    wide: draft.typed(`shop/rack/lots/${lot.id}/width`, lot.width!),
    lip,
    inset,
    deep,
    inside,
    tongue,
    // Rounding may not use up the play.
    mortise: l.round(
      'as fine as the router is set',
      l.sum(
        'width of the mortise: the tongue and its play',
        l.less('from the mortise’s upper wall to the tongue’s lower side', thickness, inset),
        l.row(BUTTONS.play),
      ),
      draft.stepOf('router'),
      'up',
    ),
    long: l.sum('length of the button', tongue, l.row(BUTTONS.body)),
  };
}

interface OneButton {
  readonly upright: DraftPart;
  readonly sizes: ButtonSizes;
  readonly screw: ChosenScrew;
  readonly spot: ButtonSpot;
  readonly n: number;
}

function oneButton(draft: Draft, bores: Bores, { frame, board }: ButtonsSpec, one: OneButton): void {
  const l = draft.ledger;
  const { upright, sizes, screw, spot, n } = one;
  const { towards } = spot;
  const top = frame.top!;
  const positive = axisOf(towards).sign > 0;
  const part = draft.panel({
    record: top.id,
    role: `button:${n}`,
    name: `button ${n} of the ${board.name}`,
    family: 'handle',
    lot: draft.lot(top.buttons!),
    at: spot.box.min,
    size: [sizes.long, sizes.wide, sizes.thick],
    // From the tip of its tongue inward; the face against the top is uppermost.
    length: towards,
    width: positive ? '+y' : '-y',
  });
  part.features.push({
    kind: 'rabbet',
    id: `${part.id}#${upright.id}`,
    purpose: 'so that a tongue is left',
    face: 'show',
    edge: 'start',
    width: sizes.tongue,
    depth: sizes.lip,
    from: draft.nothing,
    to: part.width,
  });
  const face = sideLooking(upright.place, towards) as Face;
  const along = (y: Traced) => inPart(draft, upright, 1, y, 'end of the mortise');
  const [front, rear] = [along(spot.mortise[0]), along(spot.mortise[1])];
  const turned = axisOf(upright.place.width).sign < 0;
  const groove = {
    kind: 'groove' as const,
    id: `${upright.id}#${part.id}`,
    purpose: `for a button of the ${board.name}`,
    face,
    edge: sideLooking(upright.place, '+z') as 'start' | 'end',
    inset: sizes.inset,
    width: sizes.mortise,
    depth: sizes.deep,
    from: turned ? rear : front,
    to: turned ? front : rear,
  };
  upright.features.push(groove);
  bores.hollow(upright.id, spot.hollow);
  screwUp(draft, bores, { part, mate: board, screw, at: spot.screw, tongue: sizes.tongue });
  addFit(draft, {
    id: `${part.id}/tongue`,
    kind: 'button',
    name: `the tongue of the ${part.name} in its mortise in the ${upright.name}`,
    gap: l.less(
      'how much wider the mortise is than the tongue',
      groove.width,
      l.less('thickness of the tongue', sizes.thick, sizes.lip),
    ),
    least: l.row(BUTTONS.playLeast),
    most: l.sum(
      'and what the tongue may lie deeper',
      l.row(BUTTONS.playMost),
      l.less('so much', sizes.lip, sizes.inset),
    ),
    loop: [
      setBy('router', `width of the mortise in the ${upright.name}`, groove.width, 1, upright.id),
      thick(part, -1),
      setBy('marking', `how much is sawn off above the tongue of the ${part.name}`, sizes.lip, 1, part.id),
    ],
    toFit: part.id,
  });
}

function isSuited(draft: Draft, top: RecordOf<'top'>, thickness: Traced): boolean {
  const l = draft.ledger;
  const lot = draft.lot(top.buttons!);
  const t = (x: Traced) => l.ticks(x);
  const wide = draft.typed(`shop/rack/lots/${lot.id}/width`, lot.width!);
  const least = l.sum('least thickness of a button', l.row(BUTTONS.lip), l.row(BUTTONS.tongueLeast));
  const fine =
    t(thickness) >= t(least) &&
    t(thickness) <= t(l.row(BUTTONS.thickest)) &&
    t(wide) >= t(l.row(BUTTONS.widthLeast));
  if (!fine)
    draft.stop(
      'top.buttons-too-small',
      top,
      'buttons',
      `“${lot.id}” is no stock for buttons: they are ${mm(draft, least)} to ${mm(draft, l.row(BUTTONS.thickest))} mm thick, and at least ${mm(draft, l.row(BUTTONS.widthLeast))} mm wide.`,
      { says: 'Name strips of such a section.' },
    );
  return fine;
}

function noScrew(draft: Draft, top: RecordOf<'top'>, thickness: Traced, board: DraftPart): void {
  const long = Math.floor(
    mm(draft, thickness) + mm(draft, board.thickness) - mm(draft, draft.ledger.row(SETTING_OUT.farFace)),
  );
  draft.stop(
    'top.no-button-screw',
    top,
    'buttons',
    `No countersunk screw on the shop’s list goes through a button and holds in “${top.id}” without coming through.`,
    { says: `Put one on the list that is about ${long} mm long.` },
  );
}

function shared(draft: Draft, top: RecordOf<'top'>): void {
  draft.stop(
    'top.buttons-shared',
    top,
    'moves',
    `“${top.id}” is to be held by buttons at a side that two cases share, which has another top beside it.`,
    slotsInstead(top.id),
  );
}

function tooThin(draft: Draft, top: RecordOf<'top'>, upright: DraftPart): void {
  draft.stop(
    'top.buttons-thin',
    top,
    'moves',
    `The ${upright.name} is too thin for mortises that hold the buttons of “${top.id}”.`,
    slotsInstead(top.id),
  );
}

function noPlace(draft: Draft, top: RecordOf<'top'>, upright: DraftPart): void {
  draft.stop(
    'top.no-place-for-button',
    top,
    'moves',
    `A button of “${top.id}” finds no place at the ${upright.name} where nothing meets it and a driver gets under it.`,
    {
      says: `Leave ${Math.ceil(toMm(LEAST_ROOM))} mm clear under its button for a short driver, or move what stands there.`,
    },
    slotsInstead(top.id),
  );
}

function mm(draft: Draft, t: Traced): number {
  return toMm(draft.ledger.ticks(t));
}
