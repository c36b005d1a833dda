import type { CaseJoints, JobDocument, ToolKind } from '../job/index.ts';
import type { Cure, CureEdit } from '../snag/index.ts';
import { capital, listWords } from './words.ts';

/** What to do without a tool, the cheapest first: another joint, a cut at the yard, a jig to make; or the tool itself. */
export function waysRound(job: JobDocument, kind: ToolKind): readonly Cure[] {
  const others = otherWays(job, kind);
  const edits = others.flatMap((o) => o.edits);
  const named =
    edits.length === 0
      ? []
      : [{ says: `${capital(listWords([...new Set(others.map((o) => o.says))]))}.`, edits }];
  const slides = kind === 'router' && job.design.records.some((r) => r.kind === 'sliding-doors');
  const inMitres = job.design.records.some(
    (r) =>
      r.kind === 'case' &&
      ((kind === 'biscuit-joiner' && r.inMitres === 'biscuits') ||
        (kind === 'router' && r.inMitres === 'spline')),
  );
  return [
    ...named,
    ...(slides ? [{ says: 'Hang the doors on hinges: what slides needs grooves.' }] : []),
    ...(inMitres ? [{ says: 'Leave “inMitres” out: glue alone holds mitres that are folded up.' }] : []),
    { says: `${WITHOUT[kind]}; then add it to the list of tools.` },
  ];
}

/** What is done instead, and the fields that say so. */
interface OtherWay {
  readonly says: string;
  readonly edits: readonly CureEdit[];
}

/** Joints that the tools of the shop can make, in place of those that need the missing one. */
function otherWays({ design, shop }: JobDocument, kind: ToolKind): readonly OtherWay[] {
  const owns = (tool: ToolKind) => tool !== kind && shop.tools.some((t) => t.kind === tool);
  const easier: CaseJoints | undefined = owns('pocket-jig')
    ? 'pocket-screws'
    : owns('drill')
      ? 'face-screws'
      : undefined;
  return design.records.flatMap((r): OtherWay[] => {
    if (kind === 'router' && r.kind === 'back' && r.fitting === 'groove')
      return [
        {
          says: 'lay the back over the case’s edges',
          edits: [{ record: r.id, field: 'fitting', value: 'applied' }],
        },
      ];
    if (kind === 'router' && r.kind === 'drawers') {
      const edits: CureEdit[] = [];
      if (r.bottomFitting !== 'applied')
        edits.push({ record: r.id, field: 'bottomFitting', value: 'applied' });
      if (r.joint === 'dado') edits.push({ record: r.id, field: 'joint', value: 'rabbet' });
      return [{ says: 'glue the bottoms of drawers on from below', edits }];
    }
    if (r.kind !== 'case' || r.joints === undefined || easier === undefined) return [];
    const needs =
      kind === 'router' ? ROUTED.has(r.joints) : kind === 'pocket-jig' && r.joints === 'pocket-screws';
    return needs
      ? [
          {
            says: kind === 'router' ? 'join without channels' : 'screw the panels through their faces',
            edits: [{ record: r.id, field: 'joints', value: easier }],
          },
        ]
      : [];
  });
}

const ROUTED: ReadonlySet<CaseJoints> = new Set(['rabbet', 'dado', 'stopped-dado', 'tongue']);

const WITHOUT: Record<ToolKind, string> = {
  'pocket-jig': 'A pocket-hole jig costs little; until then screw from outside',
  'dowel-jig': 'A dowelling jig costs little; without one, screw the case or let its panels into dados',
  'biscuit-joiner':
    'A slot cutter in the router, with a bearing, cuts edges alike; without one, screw the case or let its panels into dados',
  router: 'Borrow or buy a router with a straight bit and an edge guide',
  'circular-saw': 'Have the sheets cut at the yard',
  'guide-rail': 'A straight board clamped to the sheet guides the saw as well',
  sander: 'Sand by hand with a cork block',
  'mitre-saw': 'A mitre box and a fine handsaw cost little and cut the same',
  drill: 'A brace or a borrowed drill does; glue alone holds only joints that are let in',
  clamp: 'Join with screws, which hold while glue sets; tape and wedges hold edging',
  marking: 'A steel rule and a square are where every number begins: buy them first',
};
