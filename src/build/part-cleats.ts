import type { Cleat } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { CAUTION } from './cautions.ts';

/** Parts the two strips of each cleat with one slanting cut, while their blank is still wide enough to be held; where either is still to be made. */
export function partCleats(bench: Bench): void {
  const made = new Set((bench.job.work.made ?? []).map((m) => m.part));
  for (const cleat of bench.setOut.cleats)
    if (!made.has(cleat.onCase) || !made.has(cleat.onWall)) partOne(bench, cleat, made);
}

function partOne(bench: Bench, { blank, onCase, onWall }: Cleat, made: ReadonlySet<string>): void {
  const part = (id: string) => bench.setOut.parts.find((p) => p.id === id)!;
  const [hung, wall] = [part(onCase), part(onWall)];
  const at = wall.width;
  const [wallToDo, hungToDo] = [!made.has(onWall), !made.has(onCase)];
  const both = wallToDo && hungToDo;
  const [one, other] = wallToDo ? [wall, hung] : [hung, wall];
  const id = `${blank.mark}/part`;
  bench.do(
    {
      id,
      kind: 'bevel',
      stage: 'strips',
      title: both
        ? `Part ${blank.mark} into ${wall.mark} and ${hung.mark} with one slanting cut`
        : `Part ${one.mark} off ${blank.mark} with one slanting cut`,
      does: {
        act: 'part',
        workpiece: blank.mark,
        at,
        angle: 45,
        yields: [wallToDo ? wall.mark : undefined, hungToDo ? hung.mark : undefined],
      },
      tool: 'circular-saw',
      faceUp: 'better face up',
      reference: 'the trued long edge',
      lines: [
        both
          ? `One cut makes both slopes while ${blank.mark} is wide enough to be held; neither strip is ever bevelled by itself.`
          : `The slope is cut while ${blank.mark} is wide enough to be held; no strip is ever bevelled by itself.`,
        'Blade tilted to 45 degrees; prove it on waste: there the slope must run in by {1}, as much as the board is thick.',
        `Mark {0} from the trued long edge, near both ends, on the upper face: up to there it is ${wallToDo ? wall.mark : 'waste'}. The slope runs in under ${wallToDo ? wall.mark : 'the waste'}.`,
        `Clamp both halves down at their ends on a sacrificial board, offcuts of the same thickness beside them to carry ${bench.tool('guide-rail') ? 'the rail' : 'the fence and the saw'}, so that neither pinches the blade nor falls.`,
        both
          ? `Write ${wall.mark} (${wall.name}) on the half along the trued edge and ${hung.mark} (${hung.name}) on the other, both on the face that lay up. Their slopes are sharp: plane the tips just blunt.`
          : `Write ${one.mark} (${one.name}) on the half ${wallToDo ? 'along the trued edge' : 'away from the trued edge'}, on the face that lay up; the other is waste, as ${other.mark} is there already. Its slope is sharp: plane the tip just blunt.`,
      ],
      lengths: [at, blank.thickness],
      cautions: [CAUTION.saw, CAUTION.bevel],
    },
    [blank.mark],
  );
  if (hungToDo) bench.comesFrom(hung.mark, id);
  if (!wallToDo) return;
  bench.comesFrom(wall.mark, id);
  const { length } = wall.cut;
  const cutId = `${wall.mark}/crosscut`;
  bench.do(
    {
      id: cutId,
      kind: 'crosscut',
      stage: 'strips',
      title: `Cut ${wall.mark} to its length`,
      does: {
        act: 'saw',
        workpiece: wall.mark,
        across: 'length',
        at: length,
        keep: 'before',
        yields: [{ name: wall.mark, turned: false }, undefined],
      },
      tool: 'circular-saw',
      reference: 'the squared end',
      lines: [
        'Mark {0} from the squared end and square the line across.',
        `Clamp it down and saw on the waste side: ${wall.mark} is shorter than ${hung.mark}, so that the case can be moved a little on the wall.`,
      ],
      lengths: [length],
      cautions: [CAUTION.saw],
    },
    [wall.mark],
  );
  bench.comesFrom(wall.mark, cutId);
}
