import { DRAWERS } from '../../materials/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Drawer } from '../drawers/drawer.ts';
import type { DrawerBox } from '../drawers/drawer-box.ts';
import type { ChosenRunner } from '../drawers/runner-choice.ts';
import type { Space } from '../spaces/openings.ts';
import { betweenOf, type ClearLoops } from './clear-loops.ts';
import { addFit, cut, type FitMember, setBy, thick } from './fit.ts';

/** A drawer with what it must fit. */
export interface FittedDrawer {
  readonly drawer: Drawer;
  readonly box: DrawerBox;
  readonly face: DraftPart;
  readonly space: Space;
  readonly runner: ChosenRunner;
  /** Whether its front is the only one of its opening. */
  readonly single: boolean;
}

/** The box between its runners, the bottom in its grooves, and an inset front in its opening. */
export function fitsOfDrawer(
  draft: Draft,
  { drawer, box, face, space, runner, single }: FittedDrawer,
  loops: ClearLoops,
): void {
  const l = draft.ledger;
  const hardware = { by: 'hardware', id: runner.runner.id } as const;
  const ends = widthOfBox(draft, box);
  addFit(draft, {
    id: `${box.left.id}/across`,
    kind: 'drawer',
    name: `the ${drawer.name} on its runners, across`,
    gap: l.less(
      'room beside box and runners',
      space.size[0],
      l.sum(
        'box and runners',
        l.less('width of the box', box.right.box.max[0], box.left.box.min[0]),
        runner.thickness,
        runner.thickness,
      ),
    ),
    least: draft.nothing,
    most: l.times('1/32 in a side', l.row(DRAWERS.runnerWider), 2),
    loop: [
      ...loops.of(betweenOf('width', space)),
      ...ends,
      {
        name: `thickness of ${runner.runner.name ?? runner.runner.id}`,
        length: runner.thickness,
        sign: -1,
        times: 2,
        made: hardware,
      },
    ],
    toFit: box.front.id,
  });
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
    gap: l.less('both gaps', space.size[0], face.length),
    least: l.row(DRAWERS.slideRoom),
    loop: [...loops.of(betweenOf('width', space)), cut(draft, face, 'length', -1)],
    toFit: face.id,
    faces: 4,
  });
  if (single)
    addFit(draft, {
      id: `${face.id}/height`,
      kind: 'drawer',
      name: `the ${face.name} in its opening, in height`,
      gap: l.less('both gaps', space.size[2], face.width),
      least: l.row(DRAWERS.slideRoom),
      loop: [...loops.of(betweenOf('height', space)), cut(draft, face, 'width', -1)],
      toFit: face.id,
      faces: 4,
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
