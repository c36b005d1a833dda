import { treeOf } from '../job/index.ts';
import type { Traced } from '../measure/index.ts';
import type { Levellers } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { liftCautions } from './lifting.ts';
import { listWords } from './words.ts';

/** Lets the sleeves of levellers into the bottoms of cases, and turns the levellers right in, ready to be carried. */
export function fitLevellers(bench: Bench): void {
  const { setOut, job } = bench;
  for (const one of setOut.levellers) {
    const part = setOut.parts.find((p) => p.id === one.part)!;
    const name = job.shop.rack.fixings?.find((f) => f.id === one.fixing)?.name ?? one.fixing;
    bench.do(
      {
        id: `${part.mark}/levellers`,
        kind: 'adjust',
        stage: 'finish',
        title: `Put the levellers into ${part.mark} (${part.name})`,
        does: {
          act: 'levellers',
          workpiece: part.mark,
          into: 'case',
          fixing: one.fixing,
          count: one.at.length,
          diameter: one.diameter,
          deep: one.deep,
        },
        times: one.at.length * 0.5,
        lines: [
          'Lay the piece on its back, on blankets.',
          `${one.at.length} × ${name}: drive a sleeve into each hole from below, {0} wide and {1} deep, until it lies level with the wood.`,
          'Turn the levellers in by hand as far as they go, so that none breaks off on the way.',
        ],
        lengths: [one.diameter, one.deep],
        cautions: liftCautions(bench, setOut.parts),
      },
      [part.mark, 'case'],
    );
  }
}

/** How a piece is brought level on its levellers: how far each is turned out, where the floor falls. */
export function levellerLines(bench: Bench, lengths: Traced[]): readonly string[] {
  const { levellers } = bench.setOut;
  const put = (t: Traced) => `{${lengths.push(t) - 1}}`;
  const fall = floorFall(bench);
  const all = levellers.flatMap((one) => {
    const on = bench.setOut.parts.find((p) => p.id === one.part)!.mark;
    const where = levellers.length > 1 ? ` under ${on}` : '';
    if (!fall)
      return [
        `Turn every leveller${where} out until the wood stands ${put(bench.set('marking', one.height))} above the floor.`,
      ];
    const rows = [one.at.filter((_, i) => i % 2 === 0), one.at.filter((_, i) => i % 2 === 1)];
    return rows.map(
      (row, i) =>
        `Turn the levellers ${i === 0 ? 'in front' : 'behind'}${where}, from the left, to ${listWords(
          row.map((at) => put(bench.set('marking', turnedOut(bench, one, at, fall)))),
        )} from the floor to the wood.`,
    );
  });
  return [
    ...(fall
      ? [
          `The floor falls ${put(bench.set('marking', fall.by))} to the ${fall.to}, and the levellers take that up.`,
        ]
      : []),
    ...all,
    'Then set the level on it from side to side and from front to back, and turn until it stands true and every foot carries.',
  ];
}

type At = Levellers['at'][number];

interface Fall {
  readonly by: Traced;
  readonly to: 'left' | 'right' | 'front' | 'back';
}

function floorFall(bench: Bench): Fall | undefined {
  const [room] = treeOf(bench.job).all('room');
  if (room?.floorFall === undefined || room.fallsTo === undefined) return undefined;
  const ticks = bench.ticksOf(room.floorFall);
  if (ticks === 0) return undefined;
  const path = `design/records/${room.id}/floorFall`;
  return { by: bench.ledger.document(path, ticks, room.floorFall), to: room.fallsTo };
}

/** The floor falls from one end of the piece to the other, and by its share as far as a leveller stands. */
function turnedOut({ setOut, ledger: l }: Bench, one: Levellers, at: At, { by, to }: Fall): Traced {
  const sideways = to === 'left' || to === 'right';
  const whole = l.ticks(sideways ? setOut.overall.width : setOut.overall.depth);
  const from = l.ticks(sideways ? at.x : at.y);
  const low = to === 'left' || to === 'front' ? whole - from : from;
  const share = l.share('what the floor falls as far as that', by, [low, whole - low], 0);
  return l.sum('from the low floor to the wood', one.height, share);
}
