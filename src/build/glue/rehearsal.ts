import type { Traced } from '../../measure/index.ts';
import type { Bench } from '../bench.ts';
import { unitsOf } from '../case-units.ts';
import { glueCautions } from '../cautions.ts';
import { boxSquare } from '../drawers/box.ts';
import { boxName } from '../drawers/in-words.ts';
import { timeWords } from '../duration-words.ts';
import { cornerKit } from '../fold-work.ts';
import { MINUTES } from '../minutes.ts';
import type { Operation } from '../operation.ts';
import { clampTime, glueOf } from '../setting-times.ts';
import { listWords } from '../words.ts';
import { caseSquare } from './check-square.ts';
import type { GlueTime } from './glue-time.ts';
import type { GlueUp } from './glue-up.ts';
import type { GlueRun } from './split-glue-ups.ts';

/** The card before a glue-up: everything once without glue, and what must lie ready. */
export function rehearsalCard(bench: Bench, run: GlueRun, glueUp: GlueUp, time: GlueTime): Operation {
  const set = run.steps.flatMap(({ operation: o }) => (o.does.act === 'set' ? [o.does.workpiece] : []));
  const stands = glueUp.parts.filter((m) => !set.includes(m));
  const by =
    time.from === 'label' ? `says the label of ${time.name}` : `is the least that ${time.name} leaves`;
  const lengths: Traced[] = [];
  const corners = cornerKit(bench, run.joints, lengths);
  const screws = run.joints.some((j) => j.hold === 'glue-and-screws');
  return {
    id: `${glueUp.id}/rehearse`,
    kind: 'rehearse',
    stage: run.steps[0]!.operation.stage,
    title: `Rehearse the gluing of ${listWords(set)}`,
    does: { act: 'other', on: glueUp.parts.filter((m) => set.includes(m)) },
    after: [],
    lines: [
      `Put ${set.length > 1 ? `these together once without glue, in order: ${set.join(', ')}` : 'it in once without glue'}${stands.length > 0 ? `, against ${listWords(stands)}` : ''}. Every joint must close by hand or with one clamp; mend what doesn’t now.`,
      `Lying ready: ${listWords([
        listWords(set),
        ...pegsReady(bench, run),
        ...(glueUp.clamps > 0
          ? [`${glueUp.clamps} clamps opened to size with pads taped to their jaws`, 'battens to spread them']
          : []),
        ...corners,
        ...(screws && glueUp.clamps === 0 ? ['a clamp that holds each joint while it is screwed'] : []),
        ...(screws ? ['drill, driver and the screws'] : []),
        time.name,
        'brush',
        glueOf(bench.job.shop.rack.adhesives).kind.cloth,
        'square',
        'tape for the diagonals',
      ])}.`,
      `From the first glue to the last clamp it takes about ${timeWords(glueUp.minutes)}; ${timeWords(time.assembly)} ${by}.${glueUp.minutes > time.assembly ? ' That is too long: see the snags before any glue is spread.' : ''}`,
      ...(glueUp.laterStandDry
        ? [
            'The parts that come later stand in dry while this sets: they hold it square, and no glue goes near them.',
          ]
        : []),
    ],
    lengths,
    together: glueUp.id,
    minutes: { active: bench.job.shop.timings?.rehearse?.active ?? MINUTES.rehearse.active, waiting: 0 },
    cautions: glueCautions(bench),
  };
}

/** Splines by their marks, dowels and biscuits by their number, that go in with the parts. */
function pegsReady({ setOut }: Bench, { steps }: GlueRun): readonly string[] {
  const sets = steps.flatMap(({ operation: { does } }) => (does.act === 'set' ? [does] : []));
  const splines = sets.flatMap((does) => (does.splines ?? []).map((s) => s.strip));
  const pegs = sets.reduce((sum, does) => sum + (does.pegs ?? []).reduce((n, p) => n + p.count, 0), 0);
  const kind = setOut.pegs.some((p) => p.kind === 'biscuit') ? 'biscuit' : 'dowel';
  return [
    ...(splines.length > 0 ? [`the spline${splines.length > 1 ? 's' : ''} ${listWords(splines)}`] : []),
    ...(pegs > 0 ? [`${pegs} ${kind}${pegs > 1 ? 's' : ''}`] : []),
  ];
}

/** Do other panels of the same frame come later? A back before another one waits for nothing. */
export function waitsForMore({ more, joints }: GlueRun): boolean {
  return more && joints.some((j) => j.duty !== 'back');
}

/**
 * How a glue-up is held square before it sets. What comes later stands in dry, so the diagonals are all there: once the first
 * parts have set, nothing draws the case square any more.
 */
function squareBefore(bench: Bench, run: GlueRun): ReturnType<typeof caseSquare> {
  if (!waitsForMore(run)) return { lines: [], lengths: [] };
  const set = new Set(run.parts.map((p) => p.id));
  const unit = unitsOf(bench).find((u) => u.name === run.assembly);
  const box = unit?.boxes.find((b) => b.parts.some((p) => set.has(p.id)));
  if (box)
    return caseSquare(bench, box, `the open side of ${box.words}, with what comes later in it dry,`, true);
  const drawer = bench.setOut.drawers.find((d) => boxName(bench, d) === run.assembly);
  if (drawer) return boxSquare(bench, drawer, `the ${run.assembly}, with what comes later in it dry,`);
  return {
    lines: ['Check with the square between the parts, and pull the clamps aslant where it isn’t.'],
    lengths: [],
  };
}

/** The card behind a glue-up that has none yet: it sets. */
export function cureCard(bench: Bench, run: GlueRun, glueUp: GlueUp, after: string): Operation {
  const own = bench.job.shop.timings?.cure;
  const setting = clampTime(bench.job.shop.rack.adhesives, own?.waiting);
  const square = squareBefore(bench, run);
  return {
    id: `${glueUp.id}/cure`,
    kind: 'cure',
    stage: run.steps[0]!.operation.stage,
    title: `Let ${listWords(glueUp.parts)} set`,
    does: { act: 'other', on: glueUp.parts },
    after: [after],
    lines: [
      'Look along every joint: closed, and level with its marks.',
      ...square.lines,
      glueOf(bench.job.shop.rack.adhesives).kind.squeezedOut,
      setting.says,
    ],
    lengths: square.lengths,
    clamps: glueUp.clamps,
    together: glueUp.id,
    minutes: { active: own?.active ?? MINUTES.cure.active, waiting: setting.minutes },
    cautions: [],
  };
}
