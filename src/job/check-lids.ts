import type { Snag } from '../snag/index.ts';
import type { RecordOf } from './records/design-record.ts';
import type { RecordTree } from './tree.ts';

/** What closes a case that a fixed front closes already. */
const FRONTS = ['door', 'sliding-doors'] as const;

/** Whether a hinged top has something to hang on, and nothing that keeps it from opening. */
export function badLid(top: RecordOf<'top'>, tree: RecordTree): readonly Snag[] {
  if (!top.hinged)
    return (['hinge', 'stay'] as const)
      .filter((field) => top[field] !== undefined)
      .map((field) =>
        fault(
          top.id,
          field,
          `“${top.id}” names a ${field}, but is no lid.`,
          `Take “${field}” out, or add “hinged”.`,
        ),
      );
  const snags: Snag[] = [];
  const box = tree.caseOf(top.id);
  if (!box)
    return [
      fault(
        top.id,
        'hinged',
        `“${top.id}” lies over several cases and can’t be hinged.`,
        'Let a lid belong to a case of its own.',
      ),
    ];
  const ofBays = tree.all('back').filter((b) => b.parent !== box.id && tree.caseOf(b.id) === box);
  if (!tree.childOf(box.id, 'back'))
    snags.push(
      ofBays.length > 0
        ? fault(
            top.id,
            'hinged',
            `“${top.id}” is to be hinged, but the backs of “${box.id}” belong to its bays, and none goes from side to side.`,
            'Give the whole case one back in their place, of a board as thick as the leaves of the hinges are wide.',
          )
        : fault(
            top.id,
            'hinged',
            `“${top.id}” is to be hinged, but the case has no back to hang it on.`,
            'Add a back of a board as thick as the leaves of the hinges are wide.',
          ),
    );
  if (top.overhangBack !== undefined)
    snags.push(
      fault(
        top.id,
        'overhangBack',
        `“${top.id}” would stand out behind its hinges and could not open.`,
        'Take “overhangBack” out.',
      ),
    );
  if (top.edging !== undefined && top.edgedSides === 'all-round')
    snags.push(
      fault(
        top.id,
        'edgedSides',
        `“${top.id}” would hang on the strip behind it, which is only glued on.`,
        'Edge the front and the sides alone.',
      ),
    );
  if (box.parent !== tree.piece?.id)
    snags.push(
      fault(
        top.id,
        'hinged',
        `“${top.id}” is a lid, and its case stands among others that it might not open between.`,
        'Let a case with a lid stand alone.',
      ),
    );
  return snags;
}

/** Whether a fixed front closes a case under a lid, and nothing else does. */
export function badFront(front: RecordOf<'front'>, tree: RecordTree): readonly Snag[] {
  const box = tree.caseOf(front.id);
  if (!box) return [];
  const snags: Snag[] = [];
  if (!tree.childOf(box.id, 'top')?.hinged)
    snags.push(
      fault(
        front.id,
        'parent',
        `“${front.id}” closes the case in front, and nothing opens it above.`,
        'Give the case a top that is “hinged”.',
      ),
    );
  if (!tree.childOf(box.id, 'opening'))
    snags.push(
      fault(
        front.id,
        'parent',
        `“${front.id}” closes a case whose inside is nowhere said.`,
        'Give the case an opening.',
      ),
    );
  const edging = tree.childOf(box.id, 'edging');
  if (edging)
    snags.push(
      fault(
        front.id,
        'parent',
        `“${front.id}” stands between the sides, and “${edging.id}” would stand out before it.`,
        'Leave the front edging out.',
      ),
    );
  const other = [
    ...FRONTS.flatMap((kind) => [...tree.childrenOf(box.id, kind)]),
    ...tree.all('drawers').filter((d) => tree.caseOf(d.id) === box),
  ][0];
  if (other)
    snags.push(
      fault(
        front.id,
        'parent',
        `“${front.id}” and “${other.id}” both close the front of the case.`,
        'Keep one of the two.',
      ),
    );
  return snags;
}

function fault(record: string, field: string, sentence: string, cure: string): Snag {
  return {
    code: 'design.lid',
    level: 'stop',
    where: { path: `design/records/${record}/${field}`, record },
    sentence,
    cures: [{ says: cure }],
  };
}
