import { FINISH_WORK } from '../../materials/index.ts';
import type { Bench } from '../bench.ts';
import { apartWords, unitsOf } from '../case-units.ts';
import { CAUTION, finishCautions } from '../cautions.ts';
import { markWords } from '../mark-words.ts';
import { stand } from '../turning.ts';
import { capital, listWords } from '../words.ts';
import type { FinishPlan } from './finish-plan.ts';

const TIMES = ['First', 'Second', 'Third', 'Fourth', 'Fifth', 'Sixth'] as const;

/** What each class is called on a card. */
const PLACES = {
  inside: 'insides',
  hidden: 'what won’t be seen',
  edges: 'edges',
  show: 'outside',
  top: 'top',
} as const;

/** How a coat goes on; common practice. */
const HOW = {
  wiped: 'Thin and even, with the grain; take off what stands after the time on the tin.',
  brushed:
    'Thin and even, with the grain, from the dry into the wet edge; leave it alone once it begins to set, and brush runs out before.',
} as const;

/** Finishes, before they are put together, the parts that no hand reaches later. Their glue faces are masked. */
export function prefinishParts(bench: Bench, plan: FinishPlan): void {
  const { before } = plan;
  if (before.length === 0) return;
  const name = nameOf(plan);
  const taped = before.filter((mark) => !plan.solidTops.includes(mark));
  if (taped.length > 0)
    bench.do(
      {
        id: 'prefinish/mask',
        kind: 'mask',
        stage: 'prefinish',
        title: `Mask the glue faces of ${listWords(taped)}`,
        does: { act: 'other', on: taped },
        times: taped.length,
        lines: [
          'Lay the parts against one another dry and pencil round every place where glue or another part will come.',
          'Tape inside the lines, the tape’s edge pressed down with a fingernail; channels are filled with a slip of waste or folded tape. Glue doesn’t hold on finish.',
        ],
      },
      taped,
    );
  for (let coat = 1; coat <= plan.coats; coat++) {
    if (coat > 1) rub(bench, 'prefinish', coat, before, listWords(before));
    bench.do(
      {
        id: `prefinish/coat-${coat}`,
        kind: 'prefinish',
        stage: 'prefinish',
        title: `${TIMES[coat - 1] ?? `${coat}th`} coat of ${name} on ${listWords(before)}, before ${before.length > 1 ? 'they are' : 'it is'} put together`,
        does: { act: 'other', on: before },
        times: before.length,
        lines: [
          ...(coat === 1
            ? ['Try it on the test pieces of the same lots first, all coats of it, sanded the same way.']
            : []),
          `Both faces, one as much as the other: a panel finished on one face only goes hollow. ${taped.length > 0 ? 'Later no hand reaches in here' : 'Later the under face is covered'}.`,
          ...(coat === plan.coats && taped.length > 0
            ? ['Pull the tape off while the coat is still soft, then let it dry.']
            : []),
        ],
        cautions: finishCautions(plan.kind),
      },
      before,
    );
  }
}

/** Finishes the piece: insides first, what wears most and is seen most last, with one coat more. */
export function finishPiece(bench: Bench, plan: FinishPlan): void {
  stand(bench, 'finish');
  const whole = ['case'];
  const everything = [...whole, ...bench.setOut.parts.map((p) => p.mark)];
  const order = (['hidden', 'inside', 'edges', 'show', 'top'] as const).filter((s) =>
    plan.classes.some((c) => c.surface === s),
  );
  const name = nameOf(plan);
  const times = Math.max(0.25, plan.areaM2 / FINISH_WORK.m2PerCard);
  bench.do(
    {
      id: 'finish/prepare',
      kind: 'inspect',
      stage: 'finish',
      title: 'Look the piece over before the finish',
      does: { act: 'other', on: whole },
      lines: [
        'With a lamp held low: glue spots, pencil lines, dents. What shows now will show more under the finish. Scrape glue off; finish doesn’t take on it.',
        'Sand by hand with the grain, outside and top with the last grit again, and wipe the dust off.',
        ...comesOut(bench),
        ...(unitsOf(bench).length > 1
          ? [
              `${capital(apartWords(bench))}: faces that lie against each other are finished, too, and the cases go home one by one.`,
            ]
          : []),
        `Try the finish on the test pieces of the same lots first (the largest waste where there is none), all coats of it. ${plan.kind.note}`,
      ],
      cautions: [CAUTION.dust],
    },
    everything,
  );
  for (let coat = 1; coat <= plan.coats; coat++) {
    if (coat > 1) rub(bench, 'finish', coat, whole, 'it', everything);
    bench.do(
      {
        id: `finish/coat-${coat}`,
        kind: 'finish',
        stage: 'finish',
        title: `${TIMES[coat - 1] ?? `${coat}th`} coat of ${name}`,
        does: { act: 'other', on: whole },
        times,
        lines: [
          `In this order, so that what is seen most comes last: ${listWords(order.map((s) => PLACES[s]))}. ${HOW[plan.kind.wiped ? 'wiped' : 'brushed']}`,
          `What won’t be seen gets as many coats as the rest: a panel finished on one face only goes hollow.${plan.kind.wiped ? ' Edges and end grain drink: go over them again after a minute.' : ''}`,
          ...(coat === 1 && !plan.kind.wiped
            ? [
                'It seals the wood, thinned as far as the label lets it. Edges and end grain drink: they get a second thin coat when this one is dry.',
              ]
            : []),
          ...(coat === 1 ? finishedAlready(plan) : []),
        ],
        cautions: finishCautions(plan.kind),
      },
      everything,
    );
  }
  const top = plan.classes.find((c) => c.surface === 'top');
  if (!top) return;
  const tops = plan.tops.length > 1 ? 'tops' : 'top';
  rub(bench, 'finish', plan.coats + 1, whole, `the ${tops}`, everything);
  bench.do(
    {
      id: 'finish/top-coat',
      kind: 'finish',
      stage: 'finish',
      title: `One more coat of ${name} on the ${tops}, which wear${plan.tops.length > 1 ? '' : 's'} most`,
      does: { act: 'other', on: whole },
      times: Math.max(0.25, top.areaM2 / FINISH_WORK.m2PerCard),
      lines: [
        `The upper face of ${markWords(plan.tops)} alone, in one go from end to end. Stand away when it is done: dust falls on wet tops.`,
      ],
      cautions: finishCautions(plan.kind),
    },
    everything,
  );
}

/** What got its coats before it was put together. */
function finishedAlready({ before, solidTops }: FinishPlan): readonly string[] {
  const inside = before.filter((mark) => !solidTops.includes(mark));
  return [
    ...(inside.length > 0 ? [`${listWords(inside)}: finished already, inside.`] : []),
    ...(solidTops.length > 0
      ? [`${listWords(solidTops)}: finished already; the last coat is still to come.`]
      : []),
  ];
}

/** What comes out first, so that everything can be reached and nothing that must run gets finish. */
function comesOut({ setOut }: Bench): readonly string[] {
  const shelves = setOut.pinned.map((s) => setOut.parts.find((p) => p.id === s.part)!.mark);
  return [
    ...(setOut.doors.length > 0 ? ['Doors and their hinges come off and are finished lying down.'] : []),
    ...(setOut.lids.length > 0
      ? [
          'The lid, its hinges and its stays come off as well: nobody reaches under a lid that stands open over wet finish.',
        ]
      : []),
    ...(setOut.drawers.length > 0
      ? [
          `Drawers come out and are finished by themselves${setOut.drawers.some((d) => d.runner) ? ', the halves of the runners off them' : ''}. Tape over the runners that stay in the case: a coat gums them up.`,
        ]
      : []),
    ...(shelves.length > 0
      ? [
          shelves.length === 1
            ? `${shelves[0]} and its pins come out.`
            : `${listWords(shelves)} and their pins come out.`,
        ]
      : []),
  ];
}

/** Rubbing down before another coat. */
function rub(
  bench: Bench,
  stage: 'finish' | 'prefinish',
  coat: number,
  on: readonly string[],
  what: string,
  works: readonly string[] = on,
): void {
  bench.do(
    {
      id: `${stage}/rub-${coat}`,
      kind: 'rub',
      stage,
      title: `Rub ${what} down`,
      does: { act: 'other', on },
      lines: [
        'By hand with 320, with the grain, only until it feels smooth; not through at edges. Wipe the dust off with a damp cloth and let it dry.',
      ],
      cautions: [CAUTION.dust],
    },
    works,
  );
}

function nameOf({ lot, kind }: FinishPlan): string {
  return lot?.name ?? kind.name;
}
