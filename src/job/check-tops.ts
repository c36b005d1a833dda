import { BUTTONS, INDOORS, material, movementBetween } from '../materials/index.ts';
import { toMm } from '../measure/index.ts';
import type { Cure, Snag } from '../snag/index.ts';
import type { RecordOf } from './records/design-record.ts';
import type { Rack } from './shop/rack.ts';
import type { RecordTree } from './tree.ts';

/** What a top can't say of itself that comes level with its case, or lies between its sides. */
export const TOP_LACKS = {
  applied: [],
  flush: ['overhangFront', 'overhangSides', 'overhangBack'],
  inset: [
    'overhangFront',
    'overhangSides',
    'overhangBack',
    'edging',
    'edgedSides',
    'hinged',
    'moves',
    'buttons',
  ],
} as const;

/** Whether a top says what goes with the way it lies, and no more. */
export function badFit(top: RecordOf<'top'>, tree: RecordTree): readonly Snag[] {
  const fit = top.fit ?? 'applied';
  const say = (field: string, sentence: string, says: string): Snag => ({
    code: 'design.top-fit',
    level: 'stop',
    where: { path: `design/records/${top.id}/${field}`, record: top.id },
    sentence,
    cures: [{ says }],
  });
  return [
    ...TOP_LACKS[fit]
      .filter((field) => top[field] !== undefined)
      .map((field) =>
        say(
          field,
          fit === 'flush'
            ? `“${top.id}” comes level with its case all round, so it has no “${field}”.`
            : `“${top.id}” lies between the sides of its case, so “${field}” says nothing of it.`,
          `Take “${field}” out, or let the top be applied.`,
        ),
      ),
    ...(fit === 'inset' && tree.get(top.parent)?.kind === 'group'
      ? [
          say(
            'fit',
            `“${top.id}” lies over several cases: it can’t lie between the sides of one.`,
            'Let it be applied, or give each case a top of its own.',
          ),
        ]
      : []),
  ];
}

/** A top of strips is glued up from solid wood, and lies on its case, where it can move. */
export function badGlueUp(top: RecordOf<'top'>, rack: Rack): readonly Snag[] {
  const lot = rack.lots.find((l) => l.id === top.board);
  if (lot?.form !== 'strip' || lot.tape !== undefined) return [];
  const where = { path: `design/records/${top.id}/board`, record: top.id };
  if (material(lot.material)?.kind !== 'solid')
    return [
      {
        code: 'design.glued-up-top',
        level: 'stop',
        where,
        sentence: `“${top.id}” is to be glued up from “${lot.id}”, which is no solid wood.`,
        cures: [{ says: 'Name a lot of boards of solid wood, or of sheets.' }],
      },
    ];
  if (top.fit !== 'inset') return [];
  return [
    {
      code: 'design.glued-up-top',
      level: 'stop',
      where: { ...where, path: `design/records/${top.id}/fit` },
      sentence: `“${top.id}” is glued up from boards, which move: between the sides of its case it can’t.`,
      cures: [
        {
          says: 'Lay it on the case, or make it of a panel.',
          edits: [{ record: top.id, field: 'fit', value: 'applied' }],
        },
      ],
    },
  ];
}

/** Only a top that moves, and is held down, says how it can; one on buttons lies on a single case, and says what they are made of. */
export function badMoves(top: RecordOf<'top'>, tree: RecordTree, rack: Rack): readonly Snag[] {
  if ((top.moves === undefined && top.buttons === undefined) || top.fit === 'inset') return [];
  const say = (field: string, sentence: string, ...cures: Cure[]): readonly Snag[] => [
    {
      code: 'design.top-moves',
      level: 'stop',
      where: { path: `design/records/${top.id}/${field}`, record: top.id },
      sentence,
      cures,
    },
  ];
  const onButtons = top.moves === 'buttons';
  if (top.buttons !== undefined && !onButtons)
    return say('buttons', `“${top.id}” isn’t held by buttons, so “buttons” says nothing of it.`, {
      says: 'Take “buttons” out, or let “moves” be “buttons”.',
      edits: [{ record: top.id, field: 'moves', value: 'buttons' }],
    });
  const out = top.buttons === undefined ? 'Take “moves” out.' : 'Take “moves” and “buttons” out.';
  if (top.hinged) return say('moves', `“${top.id}” is hinged, so it moves as it likes.`, { says: out });
  const lot = rack.lots.find((l) => l.id === top.board);
  if (lot && !movementBetween(lot.material, INDOORS.dryest, INDOORS.dampest))
    return say(
      'moves',
      `“${top.id}” is of “${lot.id}”, which is not known to move, so “moves” says nothing of it.`,
      { says: out },
    );
  if (onButtons && top.buttons === undefined)
    return say('moves', `“${top.id}” is held by buttons, and doesn’t say what they are made of.`, {
      says: `Name a lot of strips, ${toMm(BUTTONS.lip.value + BUTTONS.tongueLeast.value)} to ${toMm(BUTTONS.thickest.value)} mm thick and at least ${toMm(BUTTONS.widthLeast.value)} mm wide, as its “buttons”.`,
    });
  if (onButtons && tree.get(top.parent)?.kind === 'group')
    return say(
      'moves',
      `“${top.id}” lies over several cases, which close under it with lids: buttons hold a top on uprights.`,
      {
        says: 'Let its screws stand in slots.',
        edits: [
          { record: top.id, field: 'moves', value: 'slots' },
          { record: top.id, field: 'buttons' },
        ],
      },
    );
  return [];
}

/** One top over several cases lies on a row of them, and none of those that reach it has a top of its own. */
export function topOverCases(top: RecordOf<'top'>, tree: RecordTree): readonly Snag[] {
  const group = tree.get(top.parent);
  if (group?.kind !== 'group') return [];
  if (top.hinged)
    return [
      {
        code: 'design.hinged-over-cases',
        level: 'stop',
        where: { path: `design/records/${top.id}/hinged`, record: top.id },
        sentence: `“${top.id}” lies over several cases, and is screwed to them: it can’t be hinged.`,
        cures: [{ says: 'Give each case a hinged top of its own.' }],
      },
    ];
  if (group.lay === 'up')
    return [
      {
        code: 'design.top-over-stack',
        level: 'stop',
        where: { path: `design/records/${top.id}/parent`, record: top.id },
        sentence: `“${group.id}” is a stack, so “${top.id}” would lie on its uppermost case alone.`,
        cures: [{ says: 'Let it belong to that case.' }],
      },
    ];
  return uppermost(group, tree).flatMap((box): Snag[] => {
    const own = tree.childOf(box.id, 'top');
    return own
      ? [
          {
            code: 'design.top-under-top',
            level: 'stop',
            where: { path: `design/records/${own.id}`, record: own.id },
            sentence: `“${own.id}” would lie between “${box.id}” and “${top.id}”, the top over all of “${group.id}”.`,
            cures: [{ says: 'Take one of the two out.' }],
          },
        ]
      : [];
  });
}

/** The cases of a group that reach its upper end: all of a row, the last of a stack. */
function uppermost(
  group: RecordOf<'group'>,
  tree: RecordTree,
  under: readonly string[] = [],
): readonly RecordOf<'case'>[] {
  // A design that isn't checked yet may go round in a circle.
  if (under.includes(group.id)) return [];
  const members = tree.membersOf(group.id);
  const reach = group.lay === 'across' ? members : members.slice(-1);
  return reach.flatMap((m) => (m.kind === 'case' ? [m] : uppermost(m, tree, [...under, group.id])));
}
