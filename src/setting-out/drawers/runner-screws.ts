import type { RecordOf } from '../../job/index.ts';
import { DRAWERS, SETTING_OUT } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Bore, Bores } from '../joints/bores.ts';
import { inPart, sideLooking } from '../joints/contact.ts';
import { axisOf } from '../place.ts';
import type { Space } from '../spaces/openings.ts';
import type { DrawerBox } from './drawer-box.ts';
import type { ChosenRunner } from './runner-choice.ts';

/** A box between its uprights, to be put on runners. */
export interface RunnerSpec {
  readonly record: RecordOf<'drawers'>;
  readonly name: string;
  readonly box: DrawerBox;
  readonly space: Space;
  readonly runner: ChosenRunner;
}

/** Steps up and down from the middle of the box, the shortest first. */
const STEPS = [0, 1, -1, 2, -2, 3, -3, 4, -4];

/**
 * Bores the pilots of a drawer's runners: in the middle of the box's height, or so many steps above or below it that
 * no screw meets what is bored already. The line above the box's lower edge, and in the piece; a stop where there is none.
 */
export function runnerLine(
  draft: Draft,
  bores: Bores,
  spec: RunnerSpec,
): { readonly aboveBox: Traced; readonly at: Traced } | undefined {
  const l = draft.ledger;
  const { box, runner } = spec;
  const middle = l.round(
    'middle of the runner above the box’s edge',
    l.share('half the height of the side', box.left.width, [1, 1], 0),
    draft.stepOf('marking'),
    'down',
  );
  const aside = l.row(DRAWERS.aside);
  const half = l.ticks(runner.height) / 2;
  const foot = l.ticks(box.left.box.min[2]);
  const steps = STEPS.find((n) => {
    const up = l.ticks(middle) + n * l.ticks(aside);
    const inside = up >= half && up + half <= l.ticks(box.left.width);
    return inside && boresAt(draft, spec, foot + up).every((b) => !bores.meets(b));
  });
  if (steps === undefined) {
    draft.stop(
      'drawers.no-place',
      spec.record,
      'runner',
      `The runners of the ${spec.name} find no place clear of other screws.`,
      { says: 'Give the drawer another height, or use runners with other screw places.' },
    );
    return undefined;
  }
  const by = steps === 0 ? undefined : l.times('steps aside', aside, Math.abs(steps));
  const aboveBox =
    by === undefined
      ? middle
      : steps > 0
        ? l.sum('line of the runner, moved clear of others', middle, by)
        : l.less('line of the runner, moved clear of others', middle, by);
  const at = l.sum('line of the runner', box.left.box.min[2], aboveBox);
  for (const b of boresAt(draft, spec, l.ticks(at))) bores.add(b);
  for (const hand of ['left', 'right'] as const) pilots(draft, spec, hand, at);
  return { aboveBox, at };
}

function boresAt(draft: Draft, { box, space, runner }: RunnerSpec, z: number): readonly Bore[] {
  const l = draft.ledger;
  const front = l.ticks(box.left.box.min[1]);
  const long = l.ticks(runner.screwLength);
  const radius = l.ticks(runner.screwDiameter) / 2;
  const row = (part: DraftPart, x: number, into: number, places: readonly Traced[]) =>
    places.map((p): Bore => {
      const y = front + l.ticks(p);
      return { parts: [part.id], from: [x, y, z], to: [x + into * long, y, z], radius };
    });
  return [
    ...row(space.left, l.ticks(space.left.box.max[0]), -1, runner.caseScrews),
    ...row(space.right, l.ticks(space.right.box.min[0]), 1, runner.caseScrews),
    ...row(box.left, l.ticks(box.left.box.min[0]), 1, runner.drawerScrews),
    ...row(box.right, l.ticks(box.right.box.max[0]), -1, runner.drawerScrews),
  ];
}

function pilots(draft: Draft, spec: RunnerSpec, hand: 'left' | 'right', z: Traced): void {
  const l = draft.ledger;
  const { box, space, runner, name } = spec;
  const post = hand === 'left' ? space.left : space.right;
  const side = hand === 'left' ? box.left : box.right;
  const put = (
    part: DraftPart,
    looks: '+x' | '-x',
    cause: string,
    places: readonly Traced[],
    deep: (y: Traced) => Traced,
  ) => {
    const face = sideLooking(part.place, looks);
    places.forEach((place, i) => {
      const y = l.sum('screw of the runner behind the box’s front', box.left.box.min[1], place);
      const along = (axis: 1 | 2) => (axis === 1 ? y : z);
      const on = (of: 'length' | 'width') => {
        const { axis } = axisOf(part.place[of]);
        return inPart(draft, part, axis, along(axis as 1 | 2), 'screw of the runner');
      };
      part.features.push({
        kind: 'hole',
        use: 'pilot',
        id: `${part.id}#${cause}:${i + 1}`,
        purpose: `runner of the ${name}`,
        side: face,
        at: [on('length'), on('width')],
        diameter: runner.pilot,
        depth: deep(y),
      });
    });
  };
  const cause = `${box.left.id}-${hand}-runner`;
  put(post, hand === 'left' ? '+x' : '-x', cause, runner.caseScrews, () => runner.screwLength);
  put(side, hand === 'left' ? '-x' : '+x', cause, runner.drawerScrews, (y) => deepInSide(draft, spec, y));
}

/** How deep a pilot goes in a box's side: not through where an end stands in it, whose wood the screw finds later. */
function deepInSide(draft: Draft, { box, runner }: RunnerSpec, y: Traced): Traced {
  const l = draft.ledger;
  if (box.deep === undefined) return runner.screwLength;
  const radius = l.ticks(runner.pilot);
  const letIn = [box.front, box.back].some(
    (end) => l.ticks(y) + radius > l.ticks(end.box.min[1]) && l.ticks(y) - radius < l.ticks(end.box.max[1]),
  );
  if (!letIn) return runner.screwLength;
  const left = l.less('wood left beside what is let in', box.left.thickness, box.deep);
  return l.least(
    'as deep as the screw, and not through',
    runner.screwLength,
    l.greatest(
      'deep enough to guide the screw',
      l.ratio('half of it', left, SETTING_OUT.half),
      l.less('wood kept before what is let in', left, l.row(SETTING_OUT.farFace)),
    ),
  );
}
