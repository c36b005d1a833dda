import { species } from '../materials/index.ts';
import type { Snag } from '../snag/index.ts';
import type { JobDocument } from './document.ts';
import type { RecordOf } from './records/design-record.ts';
import type { RecordTree } from './tree.ts';

/** What a case with mitred corners can't have, and what goes into these. */
export function badMitres(job: JobDocument, box: RecordOf<'case'>, tree: RecordTree): readonly Snag[] {
  return [...badSplines(job, box), ...badCorners(box, tree)];
}

/** Splines need a lot to be cut from, and one that doesn't split along the corner. */
function badSplines(job: JobDocument, box: RecordOf<'case'>): readonly Snag[] {
  const lot = job.shop.rack.lots.find((l) => l.id === box.splineBoard);
  const wrong = (sentence: string, ...says: readonly string[]): readonly Snag[] => [
    {
      code: 'design.mitred-case',
      level: 'stop',
      where: { path: `design/records/${box.id}/splineBoard`, record: box.id },
      sentence,
      cures: says.map((s) => ({ says: s })),
    },
  ];
  if (box.inMitres !== 'spline')
    return box.splineBoard === undefined
      ? []
      : wrong(
          `“${box.id}” has no splines that could be cut from “${box.splineBoard}”.`,
          'Leave “splineBoard” out, or let “inMitres” be “spline”.',
        );
  if (box.splineBoard === undefined)
    return wrong(
      `The splines in the mitres of “${box.id}” need a lot to be cut from.`,
      'Name as “splineBoard” a lot of plywood, at most a third as thick as the case’s board.',
    );
  return lot?.form === 'sheet' && species(lot.material)
    ? wrong(
        `Splines of “${lot.name}” would have their grain along the corner, and split there.`,
        'Name a lot of plywood: half its plies run across.',
      )
    : [];
}

function badCorners(box: RecordOf<'case'>, tree: RecordTree): readonly Snag[] {
  if (box.joints !== 'mitre') return box.inMitres === undefined ? [] : [noMitres(box)];
  const snags: Snag[] = [];
  const refuse = (record: string, field: string, sentence: string, says: string) =>
    snags.push({
      code: 'design.mitred-case',
      level: 'stop',
      where: { path: `design/records/${record}/${field}`, record },
      sentence,
      cures: [
        { says },
        {
          says: 'Join the case in another way.',
          edits: [{ record: box.id, field: 'joints', value: 'rabbet' }],
        },
      ],
    });
  for (const field of ['bottom', 'lid'] as const)
    if (box[field] !== undefined)
      refuse(
        box.id,
        field,
        `At the mitred corners of “${box.id}” no panel runs through.`,
        `Leave out “${field}”.`,
      );
  const top = tree.childOf(box.id, 'top');
  if (top?.fit === 'inset')
    refuse(
      top.id,
      'fit',
      'Mitred panels are folded round what is inside: a top between them would have no way in.',
      'Let the top lie on the case.',
    );
  const base = tree.childOf(box.id, 'base');
  if (base?.form === 'toe-kick')
    refuse(
      base.id,
      'form',
      `Sides that are mitred with the bottom can’t run to the floor.`,
      'Use a base of another form.',
    );
  const edging = tree.childOf(box.id, 'edging');
  if (edging)
    refuse(
      edging.id,
      'strip',
      'Edging glued on after the mitres are cut would not meet at the corners.',
      'Leave the edging out, and finish the front edges as they are.',
    );
  return snags;
}

/** Biscuits or splines in mitres, where there are none. */
function noMitres(box: RecordOf<'case'>): Snag {
  return {
    code: 'design.mitred-case',
    level: 'stop',
    where: { path: `design/records/${box.id}/inMitres`, record: box.id },
    sentence: `“${box.id}” has no mitred corners that ${box.inMitres === 'spline' ? 'splines' : 'biscuits'} could hold.`,
    cures: [
      { says: 'Leave “inMitres” out.' },
      { says: 'Mitre the corners.', edits: [{ record: box.id, field: 'joints', value: 'mitre' }] },
    ],
  };
}

/** Ways of joining that close in one direction alone, or all round at once: what stands already is in their way. */
const CLOSED_AT_ONCE: readonly (string | undefined)[] = ['mitre', 'dowels', 'biscuits'];

/** Whether a case that shares a side is joined in a way in which it can be built on to that side. */
export function closedOnShared(box: RecordOf<'case'>, tree: RecordTree): readonly Snag[] {
  const shares = (
    [
      ['left', 'right'],
      ['right', 'left'],
    ] as const
  ).some(
    ([hand, other]) =>
      box[`${hand}Side`] === 'shared' || tree.neighbourOf(box, hand)?.[`${other}Side`] === 'shared',
  );
  if (!shares || !CLOSED_AT_ONCE.includes(box.joints)) return [];
  return [
    {
      code: 'design.side-not-shared',
      level: 'stop',
      where: { path: `design/records/${box.id}/joints`, record: box.id },
      sentence: `Joined by “${box.joints}”, the panels of “${box.id}” can’t be put on to a side that stands already.`,
      cures: [
        { says: 'Let its panels into dados.', edits: [{ record: box.id, field: 'joints', value: 'dado' }] },
        { says: 'Let each case have a side of its own.' },
      ],
    },
  ];
}
