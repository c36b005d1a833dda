import type { Traced } from '../../measure/index.ts';
import type { Drawer } from '../../setting-out/index.ts';
import type { Bench } from '../bench.ts';
import { planesOf } from '../boxes.ts';
import { glueCautions } from '../cautions.ts';
import { driveScrews } from '../drive-screws.ts';
import { squareLines } from '../glue/square-lines.ts';
import { markWords } from '../mark-words.ts';
import type { Touch } from '../operation.ts';
import { touchesTold } from '../touch-words.ts';
import { listWords } from '../words.ts';
import { frontOnOpenBox } from './front.ts';
import { boxName, by, named, partOf } from './in-words.ts';
import { isShallow } from './shallow.ts';

type Role = keyof Drawer['parts'];

/** A side, the two ends, the other side, and the bottom last. */
const USUAL: readonly Role[] = ['left', 'front', 'back', 'right', 'bottom'];

/** Where no drill goes in once the back is there, the front is screwed on before it. */
const SHALLOW: readonly Role[] = ['left', 'front', 'right', 'face', 'back', 'bottom'];

/** The box on the bench, part by part, checked for square. */
export function makeBox(bench: Bench, drawer: Drawer): void {
  const into = boxName(bench, drawer);
  const shallow = isShallow(bench, drawer);
  const order = shallow ? SHALLOW : USUAL;
  for (const role of order) {
    if (role === 'face') {
      // Its corners are screwed first: the front covers them.
      cornerScrews(bench, drawer, 'front', into);
      frontOnOpenBox(bench, drawer);
    } else setPart(bench, drawer, role, shallow, into);
  }
  if (!shallow) cornerScrews(bench, drawer, 'front', into);
  cornerScrews(bench, drawer, 'back', into);
  const square = boxSquare(bench, drawer, `the ${into}`);
  bench.do(
    {
      id: `${into}/cure`,
      kind: 'cure',
      stage: 'fill',
      title: `Check the ${into} for square and let it set`,
      does: { act: 'other', on: order.map((role) => partOf(bench, drawer.parts[role]).mark) },
      lines: [
        ...square.lines,
        'And flat: sight over the four corners, or it will rock on its runners. The bottom keeps it square once the glue has set.',
      ],
      lengths: square.lengths,
      cautions: glueCautions(bench),
    },
    [into],
  );
}

/** Lines that check a box by the diagonals of its upper edges, and the lengths they print. */
export function boxSquare(bench: Bench, drawer: Drawer, what: string): ReturnType<typeof squareLines> {
  const l = bench.ledger;
  const roles: readonly Role[] = ['left', 'right', 'front', 'back', 'bottom'];
  const [left, right, ...rest] = roles.map((role) => partOf(bench, drawer.parts[role]));
  return squareLines(bench, {
    what,
    width: l.less('width of the box', planesOf(l, right!).planes['+x'], planesOf(l, left!).planes['-x']),
    height: left!.length,
    parts: [left!, right!, ...rest],
    wet: true,
  });
}

/** A part brought to its place beside the left side, which lies on the bench. */
function setPart(
  bench: Bench,
  drawer: Drawer,
  role: Exclude<Role, 'face'>,
  shallow: boolean,
  into: string,
): void {
  const begins = role === 'left';
  const first = planesOf(bench.ledger, partOf(bench, drawer.parts.left));
  const part = partOf(bench, drawer.parts[role]);
  const mine = planesOf(bench.ledger, part);
  const touches: readonly [Touch, Touch, Touch] = begins
    ? [
        { side: '-x', of: 'bench', face: '+x' },
        { side: '-y', of: 'bench', face: '+y' },
        { side: '-z', of: 'bench', face: '+z' },
      ]
    : [
        role === 'right' ? onFrontsEnd(bench, drawer) : by(bench, mine, first, '-x'),
        by(bench, mine, first, role === 'back' ? '+y' : '-y'),
        by(bench, mine, first, '-z'),
      ];
  const lengths: Traced[] = [];
  const told = begins ? [] : touchesTold(bench, touches, lengths, part);
  bench.do(
    {
      id: `${part.mark}/set`,
      kind: 'assemble',
      stage: 'fill',
      title: begins ? `Begin the ${into} with ${named(part)}` : `Set ${named(part)} in the ${into}`,
      does: {
        act: 'set',
        workpiece: part.mark,
        into,
        turn: { length: part.place.length, width: part.place.width },
        touches,
        glue: true,
      },
      tool: 'clamp',
      lines: begins
        ? firstLines(bench, drawer)
        : [...HOW[role](drawer, shallow), `Where it comes: ${listWords(told)}.`],
      lengths,
      cautions: glueCautions(bench),
    },
    // It is begun when the case stands, and its opening can be measured.
    begins ? [part.mark, 'case'] : [part.mark, into],
  );
  if (begins) bench.comesFrom(into, `${part.mark}/set`);
}

/** The second side comes home on the front, however long that is cut: so far in as its channel is deep, or against it. */
function onFrontsEnd(bench: Bench, { parts }: Drawer): Touch {
  const [front, side] = [partOf(bench, parts.front), partOf(bench, parts.right)];
  const deep = bench.setOut.joints.find((j) => j.part === front.id && j.mate === side.id)?.letIn?.depth;
  const touch: Touch = { side: '-x', of: front.mark, face: '+x' };
  return deep === undefined
    ? touch
    : { ...touch, gap: bench.set('router', bench.ledger.times('so deep in the other', deep, -1)) };
}

/** The screws between an end of the box and its sides, where it is screwed. */
function cornerScrews(bench: Bench, drawer: Drawer, end: 'front' | 'back', into: string): void {
  const [id, sides] = [drawer.parts[end], [drawer.parts.left, drawer.parts.right]];
  for (const j of bench.setOut.joints) {
    const pair = [j.part, j.mate];
    if (
      j.duty === 'drawer' &&
      j.fasteners.length > 0 &&
      pair.includes(id) &&
      pair.some((p) => sides.includes(p))
    )
      driveScrews(bench, into, j, 'fill');
  }
}

function firstLines(bench: Bench, drawer: Drawer): readonly string[] {
  const marks = [
    drawer.parts.left,
    drawer.parts.right,
    drawer.parts.front,
    drawer.parts.back,
    drawer.parts.bottom,
  ].map((id) => partOf(bench, id).mark);
  return [
    `${markWords(marks)} lie ready.`,
    'It lies on its outer face, lower edge to the front of the bench. Cards speak of the box as it stands in the case.',
  ];
}

const CORNER: Record<Drawer['joint'], string> = {
  rabbet: 'Glue in the rabbet, a thin even film on its floor and its shoulder; press it home square.',
  dado: 'Glue on the walls of the channel that takes it; press it home square.',
  screws: 'Glue on its end; clamp it flush with the edges, and screw it before the clamp comes off.',
  'pocket-screws': 'No glue on the face; clamp it flush with the edges before any screw is driven.',
};

const HOW: Record<Exclude<Role, 'face'>, (drawer: Drawer, shallow: boolean) => readonly string[]> = {
  left: () => [],
  front: (d) => [CORNER[d.joint]],
  back: (d, shallow) => [
    CORNER[d.joint],
    ...(shallow ? ['It goes in from behind, or down its channels from above, and closes the box.'] : []),
    ...(d.bottomFitting === 'groove'
      ? ['Its lower edge comes level with the upper wall of the grooves: the bottom slides in under it.']
      : []),
  ],
  bottom: (d) =>
    d.bottomFitting === 'groove'
      ? [
          'Slide it into the grooves from behind, under the back, with a thin line of glue in the grooves and on the back’s edge; tap it home until its rear edge is level with the back.',
        ]
      : [
          'Glue on all lower edges; lay it on from below, flush all round, weights or clamps along every edge.',
        ],
  right: (d, shallow) => [
    CORNER[d.joint],
    shallow
      ? 'The back comes later: a stick as long as the box is wide inside holds the open ends apart.'
      : 'It closes the four sides: bring both ends home together, clamps across front and back.',
  ],
};
