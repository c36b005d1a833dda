import { DRAWERS } from '../../materials/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Carriage } from '../drawers/carriage.ts';
import type { CentreChoice } from '../drawers/centre-choice.ts';
import type { Drawer } from '../drawers/drawer.ts';
import type { DrawerBox } from '../drawers/drawer-box.ts';
import { outerSize } from '../edging/outer-box.ts';
import type { Space } from '../spaces/openings.ts';
import { theName } from '../the-name.ts';
import { betweenOf, type ClearLoops } from './clear-loops.ts';
import { alike } from './cut-alike.ts';
import { addFit, between, cut, type FitMember, setBy, thick, withEdging } from './fit.ts';

/** A drawer with what it must fit. */
export interface FittedDrawer {
  readonly drawer: Drawer;
  readonly box: DrawerBox;
  readonly face: DraftPart;
  readonly space: Space;
  readonly carriage: Carriage;
  /** Whether its front is the only one of its opening. */
  readonly single: boolean;
}

/** The box between its runners, the bottom in its grooves, and an inset front in its opening. */
export function fitsOfDrawer(
  draft: Draft,
  { drawer, box, face, space, carriage, single }: FittedDrawer,
  loops: ClearLoops,
): void {
  const l = draft.ledger;
  acrossFit(draft, { drawer, box, space, carriage }, loops);
  alike(draft, [box.front, box.back]);
  alike(draft, [box.left, box.right]);
  if (box.groove !== undefined)
    addFit(draft, {
      id: `${box.bottom.id}/length`,
      kind: 'panel',
      name: `the ${box.bottom.name} in its grooves, across`,
      gap: l.less(
        'room across',
        l.sum('from groove to groove', box.inside.width, box.groove, box.groove),
        box.bottom.length,
      ),
      least: draft.nothing,
      most: box.groove,
      loop: [
        cut(draft, box.front, 'length', 1),
        ...(box.deep === undefined
          ? []
          : [
              setBy('router', 'depth of the corners', box.deep, -1, box.left.id),
              setBy('router', 'depth of the corners', box.deep, -1, box.right.id),
            ]),
        setBy('router', 'depth of the left groove', box.groove, 1, box.left.id),
        setBy('router', 'depth of the right groove', box.groove, 1, box.right.id),
        cut(draft, box.bottom, 'length', -1),
      ],
      toFit: box.bottom.id,
    });
  if (drawer.hang !== 'inset') return;
  addFit(draft, {
    id: `${face.id}/width`,
    kind: 'drawer',
    name: `the ${face.name} in its opening, across`,
    gap: l.less('both gaps', space.size[0], outerSize(draft, face, 'length')),
    least: l.row(DRAWERS.slideRoom),
    loop: [...loops.of(betweenOf('width', space)), ...withEdging(draft, face, 'length')],
    toFit: face.id,
    faces: [...between(space.left, '+x', space.right, '-x'), ...between(face, '-x', face, '+x')],
  });
  if (single)
    addFit(draft, {
      id: `${face.id}/height`,
      kind: 'drawer',
      name: `the ${face.name} in its opening, in height`,
      gap: l.less('both gaps', space.size[2], outerSize(draft, face, 'width')),
      least: l.row(DRAWERS.slideRoom),
      loop: [...loops.of(betweenOf('height', space)), ...withEdging(draft, face, 'width')],
      toFit: face.id,
      faces: [...between(space.below, '+z', space.above, '-z'), ...between(face, '-z', face, '+z')],
    });
}

/** The box between its uprights, with what carries it on either side. */
function acrossFit(
  draft: Draft,
  { drawer, box, space, carriage }: Pick<FittedDrawer, 'drawer' | 'box' | 'space' | 'carriage'>,
  loops: ClearLoops,
): void {
  const l = draft.ledger;
  const width = l.less('width of the box', box.right.box.max[0], box.left.box.min[0]);
  const common = { id: `${box.left.id}/across`, kind: 'drawer', toFit: box.front.id } as const;
  const loop = [...loops.of(betweenOf('width', space)), ...widthOfBox(draft, box)];
  if (carriage.by.kind === 'bought') {
    const { runner, thickness } = carriage.by.runner;
    addFit(draft, {
      name: `${theName(drawer)} on its runners, across`,
      gap: l.less(
        'room beside box and runners',
        space.size[0],
        l.sum('box and runners', width, thickness, thickness),
      ),
      least: draft.nothing,
      most: l.times('1/32 in a side', l.row(DRAWERS.runnerWider), 2),
      keepsLeast: true,
      loop: [
        ...loop,
        {
          name: `thickness of ${runner.name ?? runner.id}`,
          length: thickness,
          sign: -1,
          times: 2,
          made: { by: 'hardware', id: runner.id },
        },
      ],
      // The halves on the box come off for the finish; those on the uprights stay, under tape.
      faces: between(box.left, '-x', box.right, '+x'),
      ...common,
    });
    return;
  }
  addFit(draft, {
    name: `${theName(drawer)} between its uprights, across`,
    gap: l.less('room beside the box', space.size[0], width),
    least: l.row(DRAWERS.slideRoom),
    most: l.times('on both sides', l.row(DRAWERS.runnerWider), 4),
    loop,
    faces: [...between(space.left, '+x', space.right, '-x'), ...between(box.left, '-x', box.right, '+x')],
    ...common,
  });
  if (carriage.by.kind === 'centre') {
    guideFit(draft, drawer, carriage.by.strips);
    return;
  }
  const { groove, high, lot } = carriage.by.strips;
  addFit(draft, {
    id: `${box.left.id}/runner`,
    kind: 'panel',
    name: `the runners of ${theName(drawer)} in their grooves`,
    gap: l.less('play of the runner', groove.width, high),
    least: draft.nothing,
    most: l.row(DRAWERS.woodMost),
    loop: [
      setBy('router', 'width of the groove', groove.width, 1, box.left.id),
      { name: `width of ${lot.name}`, length: high, sign: -1, made: { by: 'lot', lot: lot.id } },
    ],
  });
}

/** The runner between its guides, which are set to it with a slip of card on either side. */
function guideFit(draft: Draft, { name, centre }: Drawer, { lot, wide }: CentreChoice): void {
  if (!centre) return;
  const l = draft.ledger;
  const [left, right] = centre.guides.map((id) => draft.part(id)) as [DraftPart, DraftPart];
  addFit(draft, {
    id: `${centre.runner}/guides`,
    kind: 'panel',
    name: `the centre runner of ${theName({ name })} between its guides`,
    gap: centre.play,
    least: draft.nothing,
    most: l.row(DRAWERS.centreMost),
    loop: [
      {
        name: 'from guide to guide, with slips of card beside the runner',
        length: l.less('from guide to guide', right.box.min[0], left.box.max[0]),
        sign: 1,
        made: { by: 'measured' },
      },
      { name: `width of ${lot.name}`, length: wide, sign: -1, made: { by: 'lot', lot: lot.id } },
    ],
  });
}

/** How wide a box comes out: its front, both sides, less what the front stands in them. */
function widthOfBox(draft: Draft, { front, left, right, deep }: DrawerBox): readonly FitMember[] {
  return [
    cut(draft, front, 'length', -1),
    thick(left, -1),
    thick(right, -1),
    ...(deep === undefined
      ? []
      : [
          setBy('router', 'depth of the left corner', deep, 1, left.id),
          setBy('router', 'depth of the right corner', deep, 1, right.id),
        ]),
  ];
}
