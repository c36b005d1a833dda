import type { Traced } from '../measure/index.ts';
import type { Direction, Drawer, Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { type PartPlanes, planesOf } from './boxes.ts';
import { CAUTION } from './cautions.ts';
import { hangingScrews } from './drawer-screws.ts';
import type { Touch } from './operation.ts';
import { offset, touchWords } from './seating.ts';
import { stand } from './turning.ts';
import { listWords } from './words.ts';

/** Makes the boxes of the drawers, puts them on their runners and their fronts on. */
export function fitDrawers(bench: Bench): void {
  const { drawers } = bench.setOut;
  for (const drawer of drawers) box(bench, drawer);
  if (drawers.length > 0) stand(bench, 'fill');
  for (const drawer of drawers) hangBox(bench, drawer);
  for (const drawer of drawers) front(bench, drawer);
}

/** The name of a box while it is one, and no drawer yet. */
function boxName(bench: Bench, drawer: Drawer): string {
  return `box of ${partOf(bench, drawer.parts.face).mark}`;
}

function partOf(bench: Bench, id: string): Part {
  return bench.setOut.parts.find((p) => p.id === id)!;
}

function named(part: Part): string {
  return `${part.mark} (${part.name})`;
}

/** A part brought to its place by the planes of another: against it, level with it, or so far from it. */
function by(bench: Bench, mine: PartPlanes, other: PartPlanes, side: Direction): Touch {
  const l = bench.ledger;
  const face = `${side[0] === '+' ? '-' : '+'}${side[1]}` as Direction;
  const meets = l.ticks(mine.planes[side]) === l.ticks(other.planes[face]);
  return meets ? { side, of: other.part.mark, face } : offset(bench, mine, side, other);
}

/** The box on the bench: a side, the two ends, the other side, and the bottom last. */
function box(bench: Bench, drawer: Drawer): void {
  const { left, right, front: end, back, bottom } = drawer.parts;
  const into = boxName(bench, drawer);
  const first = planesOf(bench.ledger, partOf(bench, left));
  const order = [left, end, back, right, bottom];
  order.forEach((id, i) => {
    const part = partOf(bench, id);
    const mine = planesOf(bench.ledger, part);
    const touches: readonly [Touch, Touch, Touch] =
      i === 0
        ? [
            { side: '-x', of: 'bench', face: '+x' },
            { side: '-y', of: 'bench', face: '+y' },
            { side: '-z', of: 'bench', face: '+z' },
          ]
        : [
            by(bench, mine, first, '-x'),
            by(bench, mine, first, id === back ? '+y' : '-y'),
            by(bench, mine, first, '-z'),
          ];
    const lengths: Traced[] = [];
    const told =
      i === 0
        ? []
        : touches.map((t) => {
            const { words, lengths: more } = touchWords(bench, t, lengths.length);
            lengths.push(...more);
            return words;
          });
    bench.do(
      {
        id: `${part.mark}/set`,
        kind: 'assemble',
        stage: 'fill',
        title: i === 0 ? `Begin the ${into} with ${named(part)}` : `Set ${named(part)} in the ${into}`,
        does: {
          act: 'set',
          workpiece: part.mark,
          into,
          turn: { length: part.place.length, width: part.place.width },
          touches,
          glue: true,
        },
        tool: 'clamp',
        lines:
          i === 0
            ? firstLines(bench, drawer)
            : [...HOW[roleOf(drawer, id)](drawer), `Where it comes: ${listWords(told)}.`],
        lengths,
        cautions: [CAUTION.glue],
      },
      i === 0 ? [part.mark] : [part.mark, into],
    );
    if (i === 0) bench.comesFrom(into, `${part.mark}/set`);
  });
  for (const j of bench.setOut.joints)
    if (
      j.duty === 'drawer' &&
      j.fasteners.length > 0 &&
      [left, right].some((s) => s === j.part || s === j.mate)
    ) {
      const ends = [end, back];
      if (ends.includes(j.part) || ends.includes(j.mate)) hangingScrews(bench, j, into);
    }
  bench.do(
    {
      id: `${into}/cure`,
      kind: 'cure',
      stage: 'fill',
      title: `Check the ${into} for square and let it set`,
      does: { act: 'other', on: order.map((id) => partOf(bench, id).mark) },
      lines: [
        'Both diagonals alike, and flat: sight over the four corners, or it will rock on its runners. The bottom keeps it square once the glue has set.',
      ],
      cautions: [CAUTION.glue],
    },
    [into],
  );
}

type Role = keyof Drawer['parts'];

function roleOf(drawer: Drawer, id: string): Role {
  return (Object.keys(drawer.parts) as Role[]).find((r) => drawer.parts[r] === id)!;
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
    `${listWords(marks)} lie ready; put them together dry first, measure both diagonals, and take them apart again.`,
    'It lies on its outer face, lower edge to the front of the bench. Cards speak of the box as it stands in the case.',
  ];
}

const CORNER: Record<Drawer['joint'], string> = {
  rabbet: 'Glue in the rabbet, a thin even film on its floor and its shoulder; press it home square.',
  dado: 'Glue on the walls of the channel that takes it; press it home square.',
  screws: 'Glue on its end; clamp it flush with the edges, and screw it before the clamp comes off.',
  'pocket-screws': 'No glue on the face; clamp it flush with the edges before any screw is driven.',
};

const HOW: Record<Role, (drawer: Drawer) => readonly string[]> = {
  left: () => [],
  front: (d) => [CORNER[d.joint]],
  back: (d) => [
    CORNER[d.joint],
    ...(d.bottomFitting === 'groove'
      ? ['Its lower edge lies on the bottom, level with the upper wall of the grooves.']
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
  right: (d) => [
    CORNER[d.joint],
    'It closes the four sides: bring both ends home together, clamps across front and back.',
  ],
  face: () => [],
};

/** Runners on, box in, and along its whole way. */
function hangBox(bench: Bench, drawer: Drawer): void {
  const l = bench.ledger;
  const into = boxName(bench, drawer);
  const [left, right] = [partOf(bench, drawer.parts.left), partOf(bench, drawer.parts.right)];
  const posts = [partOf(bench, drawer.posts[0]), partOf(bench, drawer.posts[1])] as const;
  const below = partOf(bench, drawer.below);
  const runner = bench.job.shop.rack.runners?.find((r) => r.id === drawer.runner.id);
  const name = runner?.name ?? drawer.runner.id;
  const screw = bench.job.shop.rack.screws.find((s) => s.id === drawer.runner.screw)!;
  const mine = planesOf(l, left);
  const post = planesOf(l, posts[0]);
  const floor = planesOf(l, below);
  const gapX = bench.set('marking', l.less('room for the runner', mine.planes['-x'], post.planes['+x']));
  const touches: readonly [Touch, Touch, Touch] = [
    { part: left.mark, side: '-x', of: posts[0].mark, face: '+x', gap: gapX },
    { ...offset(bench, mine, '-y', post), part: left.mark },
    {
      part: left.mark,
      side: '-z',
      of: below.mark,
      face: '+z',
      gap: bench.set('marking', l.less('box above what is below', mine.planes['-z'], floor.planes['+z'])),
    },
  ];
  const line = bench.set('marking', drawer.runner.line);
  const height = bench.set(
    'marking',
    l.less('line of the runner above what is below', drawer.runner.height, floor.planes['+z']),
  );
  const stick = bench.gauges.use(height, `${left.mark}/runners`, left.mark);
  const lengths: Traced[] = [];
  const told = touches.map((t) => {
    const { words, lengths: more } = touchWords(bench, t, lengths.length);
    lengths.push(...more);
    return words;
  });
  const put = (t: Traced) => `{${lengths.push(t) - 1}}`;
  bench.do(
    {
      id: `${left.mark}/runners`,
      kind: 'hang',
      stage: 'fill',
      title: `Put the ${into} on its runners, between ${posts[0].mark} and ${posts[1].mark}`,
      does: {
        act: 'set',
        workpiece: into,
        into: 'case',
        turn: { length: '+x', width: '+y' },
        touches,
        glue: false,
      },
      tool: 'drill',
      lines: [
        `Take a pair of ${name} apart. The drawer’s halves go on ${left.mark} and ${right.mark}, front ends level with the box’s front: their middle ${put(line)} above the lower edge, over the pilots.`,
        `The case’s halves on ${posts[0].mark} and ${posts[1].mark}: cut ${stick.name} twice, ${put(stick.length)} long, from what is below up to the middle of the runner; both sides by the same stick, so that both are level.`,
        'Only the screws in slotted holes at first, two to each half, until the drawer runs; then the others.',
        `Slide the box in. Where it stands: ${listWords(told)}.`,
      ],
      lengths,
      cautions: [CAUTION.lift],
    },
    [into, 'case'],
  );
  const travel = bench.set('marking', drawer.travel, 'down');
  const screws = 2 * (drawer.runner.caseScrews.length + drawer.runner.drawerScrews.length);
  const beside = drawer.beside;
  bench.do(
    {
      id: `${left.mark}/travel`,
      kind: 'hang',
      stage: 'fill',
      title: `Screw the runners of the ${into}, and try its whole way`,
      does: {
        act: 'runners',
        sides: [left.mark, right.mark],
        posts: [posts[0].mark, posts[1].mark],
        into: 'case',
        thickness: beside,
        screw: drawer.runner.screw,
        length: drawer.runner.screwLength,
        diameter: drawer.runner.screwDiameter,
        count: screws,
        travel,
        moves: [
          drawer.parts.left,
          drawer.parts.right,
          drawer.parts.front,
          drawer.parts.back,
          drawer.parts.bottom,
        ].map((id) => partOf(bench, id).mark),
      },
      tool: 'drill',
      times: 2,
      lines: [
        `${screws} × ${screw.name ?? screw.id}, {0} long and {1} thick, in the pilots: by hand at the end, they strip easily.`,
        'Between box and upright each runner has {2}, up to 0.8 mm (1/32 in) more: where the case came out wider, pack the runner with card; where it is narrower, plane the box, not the runner.',
        'Draw it out {3}, load it with a few kilograms, and push it in again: nothing may rub or drop.',
      ],
      lengths: [drawer.runner.screwLength, drawer.runner.screwDiameter, beside, travel],
    },
    ['case'],
  );
}

/** The front goes on last, by its gaps, and is screwed from inside. */
function front(bench: Bench, drawer: Drawer): void {
  const l = bench.ledger;
  const face = partOf(bench, drawer.parts.face);
  const end = partOf(bench, drawer.parts.front);
  const mine = planesOf(l, face);
  const inner = planesOf(l, end);
  const gap = bench.set('marking', drawer.gap);
  const touches: readonly [Touch, Touch, Touch] = [
    offset(bench, mine, '-x', inner),
    { side: '+y', of: end.mark, face: '-y' },
    offset(bench, mine, '-z', inner),
  ];
  const lengths: Traced[] = [];
  const told = touches.map((t) => {
    const { words, lengths: more } = touchWords(bench, t, lengths.length);
    lengths.push(...more);
    return words;
  });
  const n = lengths.push(gap) - 1;
  bench.do(
    {
      id: `${face.mark}/set`,
      kind: 'hang',
      stage: 'fill',
      title: `Fit ${named(face)} to its opening and hold it against ${end.mark}`,
      does: {
        act: 'set',
        workpiece: face.mark,
        into: 'case',
        turn: { length: face.place.length, width: face.place.width },
        touches,
        glue: false,
      },
      tool: 'clamp',
      lines: [
        drawer.hang === 'inset'
          ? `Measure the opening as it was built: plane the front to {${n}} less on every side. Slips of that thickness under it and beside it hold it there.`
          : `Slips of {${n}} between it and the front beside or below; two dabs of hot glue or double-sided tape on the box hold it meanwhile.`,
        `Drawn: ${listWords(told)}.`,
        'Clamp it to the box’s front from inside, draw the drawer out, and look at the gaps once more.',
      ],
      lengths,
    },
    [face.mark, 'case'],
  );
  const joint = bench.setOut.joints.find(
    (j) => j.part === drawer.parts.front && j.mate === drawer.parts.face,
  );
  if (joint) hangingScrews(bench, joint, 'case');
}
