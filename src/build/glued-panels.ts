import { GLUE_WORK } from '../materials/index.ts';
import { toMm } from '../measure/index.ts';
import type { GluedPanel, Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { CAUTION, glueCautions } from './cautions.ts';
import { clampsAlong, clampsThere } from './glue/clamps-needed.ts';
import { glueTime, handsFor, minutesOf } from './glue/glue-time.ts';
import { markWords } from './mark-words.ts';
import { underRail } from './rail.ts';
import { glueOf } from './setting-times.ts';
import { listWords } from './words.ts';

/** Glues up what is made of boards: their edges are planed, they are clamped, the panel is planed flat and cut to its size. */
export function glueUpPanels(bench: Bench): void {
  const made = new Set((bench.job.work.made ?? []).map((m) => m.part));
  const toDo = bench.setOut.gluedPanels
    .filter((g) => !made.has(g.panel))
    .map((glued) => ({ glued, panel: bench.setOut.parts.find((p) => p.id === glued.panel)! }));
  for (const { glued, panel } of toDo) {
    planeEdges(bench, glued, panel);
    glueBoards(bench, glued, panel);
  }
  // While the last is in its clamps, the first sets.
  for (const { glued, panel } of toDo) {
    planeFlat(bench, glued, panel);
    cutToSize(bench, glued, panel);
  }
}

const named = (p: Part) => `${p.mark} (${p.name})`;

/** Straight, square edges: two boards that meet are planed as a pair. */
function planeEdges(bench: Bench, { boards, jointed }: GluedPanel, panel: Part): void {
  const marks = boards.map((b) => b.mark);
  const pairs = marks.slice(1).map((m, i) => `${marks[i]} with ${m}`);
  bench.do(
    {
      id: `${panel.mark}/joint`,
      kind: 'plane',
      stage: 'panels',
      title: `Plane the edges of ${markWords(marks)} straight for ${panel.mark}`,
      does: { act: 'plane', workpieces: marks, across: 'width', to: jointed },
      times: boards.length,
      lines: [
        `Lay them side by side in this order, ${marks[0]} in front, better faces up. Turn board by board so that the growth rings at the ends curve up and down by turns, and the grain runs out the same way in all, so that the panel can be planed in one direction. Draw the cabinetmaker’s triangle across.`,
        ...(pairs.length > 0
          ? [
              `Fold together two that meet, better faces outward, and plane both edges at once: ${listWords(pairs)}. Where the plane leans, one edge leans as much the other way, and they still make a flat joint.`,
            ]
          : []),
        'A long plane, set fine; a straightedge shows no light along the edge, a square none across it. Never hollow at the ends.',
        `Plane until each board is {0} wide, about as much off either edge. A router with a straight bit along a straight board clamped on does the same.`,
      ],
      lengths: [jointed],
      cautions: [CAUTION.chisel],
    },
    marks,
  );
}

/** How a panel’s boards are clamped up: all at once, or so many at a time as the glue leaves time for. */
function glueBoards(bench: Bench, glued: GluedPanel, panel: Part): void {
  const marks = glued.boards.map((b) => b.mark);
  if (marks.length === 1) {
    const id = `${panel.mark}/name`;
    bench.do(
      {
        id,
        kind: 'mark',
        stage: 'panels',
        title: `${marks[0]} alone is wide enough for ${named(panel)}`,
        does: { act: 'name', workpiece: marks[0]!, as: { name: panel.mark, turned: false } },
        lines: [`There is nothing to glue: write ${panel.mark} on it.`],
      },
      marks,
    );
    bench.comesFrom(panel.mark, id);
    return;
  }
  const most = boardsAtOnce(bench, glued);
  let count = 0;
  let pieces: readonly string[] = marks;
  while (pieces.length > most)
    pieces = inGroups(pieces, most).map((group) => {
      if (group.length === 1) return group[0]!;
      const name = `${panel.mark}.${++count}`;
      clampUp(bench, glued, panel, group, name);
      return name;
    });
  clampUp(bench, glued, panel, pieces, panel.mark);
  tooFewClamps(bench, glued, panel);
}

/** Neighbours together, so many at most, in groups as even as can be. */
function inGroups(pieces: readonly string[], most: number): readonly (readonly string[])[] {
  const groups = Math.ceil(pieces.length / most);
  const each = Math.ceil(pieces.length / groups);
  return Array.from({ length: groups }, (_, i) => pieces.slice(i * each, (i + 1) * each)).filter(
    (g) => g.length > 0,
  );
}

/** Boards that can be spread and clamped before the glue sets, two at least. */
function boardsAtOnce(bench: Bench, glued: GluedPanel): number {
  const { assembly } = glueTime(bench.job.shop.rack.adhesives);
  const length = toMm(bench.ledger.ticks(glued.raw.length)) / 1000;
  const across = clampsOn(bench, glued);
  const clamps = across + caulsFor(bench, across) * GLUE_WORK.caulClamps;
  const hands = handsFor(bench);
  const minutes = (joints: number) =>
    minutesOf({ parts: joints, joints, metres: joints * length, clamps, pegs: 0 }, hands);
  let joints = 1;
  while (joints + 1 < glued.boards.length && minutes(joints + 1) <= assembly) joints++;
  return joints + 1;
}

/** Clamps along a panel, as many as there are at most. */
function clampsOn(bench: Bench, glued: GluedPanel): number {
  const there = clampsThere(bench);
  return there > 0 ? Math.min(clampsWanted(bench, glued), there) : clampsWanted(bench, glued);
}

function clampsWanted({ ledger }: Bench, { raw }: GluedPanel): number {
  return clampsAlong(toMm(ledger.ticks(raw.length)));
}

/** Fewer clamps than close a joint along its whole length. */
function tooFewClamps(bench: Bench, glued: GluedPanel, panel: Part): void {
  const [wanted, there] = [clampsWanted(bench, glued), clampsThere(bench)];
  if (there === 0 || there >= wanted) return;
  bench.snags.push({
    code: 'glue-up.too-few-clamps',
    level: 'mind',
    where: { operation: `${panel.mark}/glue-up`, path: 'shop/tools' },
    sentence: `To glue up ${named(panel)} takes ${wanted} clamps; the shop has ${there}.`,
    figures: { value: there, limit: wanted, margin: there - wanted, unit: 'clamps' },
    rule: {
      says: 'a clamp at both ends of every joint, and more between where it is long',
      source: 'common practice',
      confirmed: true,
    },
    cures: [{ says: `Borrow ${wanted - there} more ${wanted - there === 1 ? 'clamp' : 'clamps'}.` }],
  });
}

/** Pairs of cauls across a panel, each with a clamp at either end: as many as the clamps that are left hold, two at most. */
function caulsFor(bench: Bench, clamps: number): 0 | 1 | 2 {
  const there = clampsThere(bench);
  const left = there - clamps;
  return there === 0 || left >= 2 * GLUE_WORK.caulClamps ? 2 : left >= GLUE_WORK.caulClamps ? 1 : 0;
}

const CAULS = {
  0: { ready: '', done: 'tap the boards level along each joint with a mallet and a block,' },
  1: {
    ready: ', and a pair of cauls with a clamp for either end',
    done: 'clamp the cauls across the middle, above and below,',
  },
  2: {
    ready: ', and two pairs of cauls with a clamp for either end of each',
    done: 'clamp the cauls across near both ends, above and below,',
  },
} as const;

function clampUp(bench: Bench, glued: GluedPanel, panel: Part, pieces: readonly string[], as: string): void {
  const clamps = clampsOn(bench, glued);
  const pairs = caulsFor(bench, clamps);
  const cauls = CAULS[pairs];
  const asWords = clamps === 1 ? '1 clamp' : `${clamps} clamps`;
  const id = `${as}/glue-up`;
  const whole = as === panel.mark;
  const joints = pieces.length - 1;
  bench.do(
    {
      id,
      kind: 'glue-up',
      stage: 'panels',
      title: `Glue up ${whole ? named(panel) : `${as}, a part of ${panel.mark},`} from ${markWords(pieces)}`,
      does: { act: 'glue-up', boards: pieces, as },
      tool: 'clamp',
      spans: glued.raw.width,
      clamps: clamps + pairs * GLUE_WORK.caulClamps,
      // Of the minutes of a glue-up; from memory.
      times: 0.6 + 0.4 * joints,
      lines: [
        `From the front: ${listWords(pieces)}, as the triangle says, ends level.`,
        `Clamp it up dry first: every joint closes along its whole length with ${asWords} pulled by hand. What must be forced is planed again.`,
        `Lying ready: glue, brush, ${glueOf(bench.job.shop.rack.adhesives).kind.cloth}, ${asWords} opened to size with pads, ${clamps === 1 ? 'across the middle' : 'below and above the boards by turns'}${cauls.ready}${pairs > 0 ? ': straight battens {0} long, tape along the side that lies on the wood' : ''}.`,
        `A thin even film on both edges of ${joints > 1 ? 'each joint. Close the joints, rub them a little until they hold' : 'the joint. Close it, rub it a little until it holds'}, ${cauls.done} then tighten ${clamps === 1 ? 'the clamp' : 'the clamps from the middle outward'} until a thin line of glue stands out.`,
        'Look along it for wind, and see that it lies flat on the clamps. Scrape the squeezed glue off as soon as it is like rubber.',
        ...(whole ? [`Write ${panel.mark} on it.`] : [`Write ${as} on it.`]),
      ],
      lengths: pairs > 0 ? [bench.set('marking', glued.raw.width, 'up')] : [],
      cautions: glueCautions(bench),
    },
    pieces,
  );
  bench.comesFrom(as, id);
}

/** Both faces flat, once glue and wood have come to rest. */
function planeFlat(bench: Bench, { boards }: GluedPanel, panel: Part): void {
  const thickness = panel.thickness;
  bench.do(
    {
      id: `${panel.mark}/flatten`,
      kind: 'plane',
      stage: 'panels',
      title: `Plane ${named(panel)} flat`,
      does: { act: 'plane', workpieces: [panel.mark], across: 'thickness', to: thickness },
      // Of the minutes of an edge planed; from memory.
      times: 2 + boards.length / 2,
      lines: [
        // A tutorial on finishing; the reference pack has it.
        'Wait a few days after the glue has set, if you can: it swells the wood beside a joint, and what is planed level too soon sinks there later.',
        'Scrape the glue off first: it blunts a plane. Two straight battens on edge, one across either end, show wind: sight along their upper edges.',
        'Plane the under face first, across and at a slant until the steps at the joints are gone, then with the grain; then the upper one.',
        `It comes out {0} thick: gauge that from the under face all round.`,
      ],
      lengths: [thickness],
      cautions: [CAUTION.chisel],
    },
    [panel.mark],
  );
}

/** A fresh front edge, an end square to it, then width and length. */
function cutToSize(bench: Bench, { off, raw }: GluedPanel, panel: Part): void {
  const l = bench.ledger;
  const { mark } = panel;
  const cut = (
    id: string,
    title: string,
    kind: 'true-edge' | 'square-end' | 'rip' | 'crosscut',
    at: GluedPanel['jointed'],
    more: { readonly across: 'length' | 'width'; readonly keep: 'before' | 'behind'; readonly from: string },
    lines: readonly string[],
  ) => {
    const own = { name: mark, turned: false };
    const kept = more.keep === 'behind' ? l.less('what the rail lies on', raw[more.across], at) : at;
    bench.do(
      {
        id: `${mark}/${id}`,
        kind,
        stage: 'panels',
        title,
        does: {
          act: 'saw',
          workpiece: mark,
          across: more.across,
          at,
          keep: more.keep,
          yields: more.keep === 'behind' ? [undefined, own] : [own, undefined],
        },
        tool: 'circular-saw',
        faceUp: 'better face down',
        reference: more.from,
        lines: [
          `Mark {0} from ${more.from}, near both ${more.across === 'width' ? 'ends' : 'long edges'}.`,
          `${bench.tool('guide-rail') ? 'The rail’s edge on both marks, on the part to keep' : 'A straight board clamped to the part to keep guides the saw, as far from both marks as the shoe reaches beside its blade'}; the kerf falls on the ${more.keep === 'before' ? 'far' : 'near'} side of the line.`,
          ...(underRail(bench, kept)
            ? [
                'What is kept is narrower than the rail: lay a board of the same thickness beside it to carry the rail.',
              ]
            : []),
          ...lines,
        ],
        lengths: [at],
        cautions: [CAUTION.saw],
      },
      [mark],
    );
  };
  cut(
    'true-edge',
    `Rip the front edge of ${named(panel)} straight`,
    'true-edge',
    bench.set('circular-saw', off.near),
    { across: 'width', keep: 'behind', from: 'the front edge, as it was glued' },
    ['This is the edge that everything is measured from: mark it with a wavy line.'],
  );
  cut(
    'square-end',
    `Square the left end of ${mark} to it`,
    'square-end',
    bench.set('circular-saw', off.start),
    { across: 'length', keep: 'behind', from: 'the left end of the shortest board' },
    ['Square the line to the trued edge.'],
  );
  cut(
    'rip',
    `Rip ${mark} to its width`,
    'rip',
    panel.cut.width,
    { across: 'width', keep: 'before', from: 'the trued front edge' },
    [],
  );
  cut(
    'crosscut',
    `Cut ${mark} to its length`,
    'crosscut',
    panel.cut.length,
    { across: 'length', keep: 'before', from: 'the squared left end' },
    ['A fine blade, or a knife line across the grain first: the last fibres of solid wood tear.'],
  );
}
