import { SETTING_OUT, VENEER } from '../materials/index.ts';
import { type Traced, ticks } from '../measure/index.ts';
import {
  fixingsUsed,
  groupParts,
  hingesUsed,
  joinMarks,
  type Part,
  pinsUsed,
  pullsUsed,
  runnersUsed,
  screwsUsed,
  staysUsed,
} from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { CAUTION } from './cautions.ts';
import type { FinishPlan } from './finish/finish-plan.ts';
import { finishPiece } from './finish/finish-work.ts';
import { packingLines } from './packing.ts';
import { fitPulls } from './pulls.ts';
import { waxGrooves } from './sliding.ts';
import { listWords } from './words.ts';

/** Begins the work: what must be there and measured before anything is cut. */
export function gather(bench: Bench): void {
  const screws = screwsUsed(bench.setOut);
  const lots = bench.job.shop.rack.lots.filter((lot) => bench.setOut.parts.some((p) => p.lot === lot.id));
  bench.do(
    {
      id: 'gather/stock',
      kind: 'gather',
      stage: 'gather',
      title: 'Gather and measure the stock',
      does: { act: 'other', on: [] },
      lines: [
        ...lots.map(
          (lot, i) =>
            `${lot.name}: reckoned ${lot.thickness === undefined ? 'at its nominal' : 'as measured, at'} {${i}} thick.`,
        ),
        ...cutAlready(bench),
        `Measure all of it again before the first cut, sheets at the four corners, strips at both ends. Where it differs by {${lots.length}} or more, enter what you find and plan again.`,
        ...[...screws].map(([id, n]) => {
          const screw = bench.job.shop.rack.screws.find((s) => s.id === id)!;
          return `${n} × ${screw.name ?? screw.id} (on the rack: ${screw.have ?? 0}).`;
        }),
        ...[...fixingsUsed(bench.setOut)].map(([id, n]) => {
          const fixing = bench.job.shop.rack.fixings?.find((f) => f.id === id);
          return `${n} × ${fixing?.name ?? id} (on the rack: ${fixing?.have ?? 0}).`;
        }),
        ...[...hingesUsed(bench.setOut)].map(([id, n]) => {
          const hinge = bench.job.shop.rack.hinges?.find((h) => h.id === id);
          return `${n} × ${hinge?.name ?? id} (on the rack: ${hinge?.have ?? 0}). Have them in the hand and measure them before anything is bored.`;
        }),
        ...[...pullsUsed(bench.setOut)].map(([id, n]) => {
          const pull = bench.job.shop.rack.pulls?.find((p) => p.id === id);
          return `${n} × ${pull?.name ?? id} (on the rack: ${pull?.have ?? 0}). Measure its holes from middle to middle, and try how deep a screw goes in, before any front is bored.`;
        }),
        ...[...staysUsed(bench.setOut)].map(([id, n]) => {
          const stay = bench.job.shop.rack.stays?.find((s) => s.id === id);
          return `${n} × ${stay?.name ?? id} (on the rack: ${stay?.have ?? 0}). See that its maker’s figure is what one holds, not a pair.`;
        }),
        ...[...runnersUsed(bench.setOut)].map(([id, n]) => {
          const runner = bench.job.shop.rack.runners?.find((r) => r.id === id);
          return `${n} × ${runner?.name ?? id}, a pair each (on the rack: ${runner?.have ?? 0}). Have them in the hand, measured and taken apart once, before a drawer is cut.`;
        }),
        ...[...pinsUsed(bench.setOut)].map(([id, n]) => {
          const pin = bench.job.shop.rack.pins?.find((p) => p.id === id);
          return `${n} × ${pin?.name ?? id} (on the rack: ${pin?.have ?? 0}). Try one in an offcut before any row is bored.`;
        }),
      ],
      lengths: [
        ...lots
          .map((lot) => bench.setOut.parts.find((p) => p.lot === lot.id)!)
          .map((p) => (p.form === 'strip' ? (p.rough?.thickness ?? p.thickness) : p.thickness)),
        bench.ledger.row(SETTING_OUT.measureAgain),
      ],
      cautions: [CAUTION.lift],
    },
    [],
  );
}

/** What is cut and good from an earlier day. */
function cutAlready({ job, setOut }: Bench): readonly string[] {
  const made = new Set((job.work.made ?? []).map((m) => m.part));
  const marks = setOut.parts.filter((p) => made.has(p.id)).map((p) => p.mark);
  return marks.length === 0 ? [] : [`Cut already, to be laid out: ${joinMarks(marks)}.`];
}

/** Sands all parts before they are put together, where every face can still be reached. */
export function sandParts(bench: Bench): void {
  const edging = new Set(bench.setOut.joints.filter((j) => j.duty === 'edging').map((j) => j.part));
  const loose = (p: Part) => !edging.has(p.id);
  const groups = groupParts(bench.setOut).map((g) => ({ ...g, parts: g.parts.filter(loose) }));
  for (const form of ['sheet', 'strip'] as const) {
    const here = groups.filter(
      (g) => g.parts[0] !== undefined && (g.parts[0].form === 'strip') === (form === 'strip'),
    );
    const marks = here.flatMap((g) => g.parts.map((p) => p.mark));
    if (marks.length === 0) continue;
    const lengths: Traced[] = [];
    const veneers = veneerLines(
      bench,
      here.flatMap((g) => g.parts),
      lengths,
    );
    bench.do(
      {
        id: `${marks[0]}/sand`,
        kind: 'sand',
        stage: 'sand',
        title: `Sand ${listWords(here.map((g) => g.marks))}`,
        does: { act: 'other', on: marks },
        tool: 'sander',
        times: marks.length,
        lines: [
          form === 'sheet'
            ? 'From 150 or 180 on to 220. The veneer of a panel is thin: pencil a few lines across and stop when they are gone.'
            : 'By hand with a block, with the grain, from 120 on to 220.',
          ...veneers,
          'Edges by hand, arrises eased a little; no sanding where glue or another part will come.',
          'Write the mark and the triangle again where they were sanded off, on a face that won’t be seen.',
        ],
        lengths,
        cautions: [CAUTION.dust],
      },
      marks,
    );
  }
}

/** What may be sanded off where it was said how thick the face veneer is. */
function veneerLines(bench: Bench, parts: readonly Part[], lengths: Traced[]): readonly string[] {
  return bench.job.shop.rack.lots.flatMap((lot) => {
    if (lot.veneer === undefined || !parts.some((p) => p.lot === lot.id)) return [];
    const veneer = bench.ledger.document(
      `shop/rack/lots/${lot.id}/veneer`,
      ticks(bench.ticksOf(lot.veneer)),
      lot.veneer,
    );
    const most = bench.ledger.ratio('a quarter of the veneer', veneer, VENEER.mayGo);
    const n = lengths.push(veneer, most) - 2;
    return [
      `${lot.name}: its face veneer is {${n}} thick, so all sanding together may take {${n + 1}}${bench.ledger.ticks(veneer) < VENEER.byHand.value ? '. That is too little for a machine: by hand with a block, 180 and 220' : ': a light pass of each grit, the machine always moving'}. Nothing coarser near an edge.`,
    ];
  });
}

/** Finish, and the way to its place. */
export function finishAndSetUp(bench: Bench, plan: FinishPlan): void {
  finishPiece(bench, plan);
  fitPulls(bench);
  const everything = ['case', ...bench.setOut.parts.map((p) => p.mark)];
  setUp(bench, everything);
  waxGrooves(bench);
}

/** The way to its place: on the floor, or on the wall. */
function setUp(bench: Bench, everything: readonly string[]): void {
  const rails = bench.setOut.parts.filter((p) => p.mark.startsWith('T'));
  const hung = rails[0];
  const { drawers, sliding, pinned } = bench.setOut;
  const out = [
    ...(drawers.length > 0 ? ['drawers'] : []),
    ...(sliding.length > 0 ? ['sliding doors'] : []),
    ...(pinned.length > 0 ? ['loose shelves'] : []),
  ];
  const light =
    out.length > 0
      ? [`It is carried without its ${listWords(out)}: lighter, and nothing slides out on the stairs.`]
      : [];
  const lengths: Traced[] = [];
  const half = hung && bench.ledger.ratio('middle of the rail', hung.width, SETTING_OUT.half);
  bench.do(
    {
      id: 'home/set-up',
      kind: 'anchor',
      stage: 'home',
      title: hung ? 'Hang it on the wall' : 'Set it in its place, level, and fix it to the wall',
      does: { act: 'other', on: ['case'] },
      lines: half
        ? [
            ...light,
            'Find the studs, or sound out the masonry; look for pipes and cables before any hole is drilled.',
            `Draw a level line where the middles of ${listWords(rails.map((p) => p.mark))} come: {0} below the underside of the top.`,
            'Bore through the rail, and the back where there is one, at every stud and near both ends: two anchors in each rail at least, each as wide as its maker asks.',
            'Rest it on a batten screwed to the wall while the anchors go in; then take the batten away, pull at the front edge, and load it by degrees.',
          ]
        : [
            ...light,
            ...packingLines(bench, lengths),
            'Level it both ways with thin packing, then fix it to the wall near its top: with an angle bracket, or through a batten screwed under the top. A thin back alone doesn’t hold it.',
            'Load the lowest shelves first.',
          ],
      lengths: half ? [bench.set('marking', half)] : lengths,
      cautions: [CAUTION.lift, hung ? CAUTION.hang : CAUTION.tip],
    },
    everything,
  );
}
