import type { Breakdown } from '../breakdown/index.ts';
import { SETTING_OUT, VENEER } from '../materials/index.ts';
import { type Traced, ticks } from '../measure/index.ts';
import {
  fixingsUsed,
  groupParts,
  hingesUsed,
  joinMarks,
  type Part,
  partsAndBoards,
  partsToCut,
  pinsUsed,
  pullsUsed,
  runnersUsed,
  screwsUsed,
  staysUsed,
  stillJoined,
  stockThickness,
} from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { CAUTION } from './cautions.ts';
import type { FinishPlan } from './finish/finish-plan.ts';
import { liftStock } from './lifting.ts';
import { markWords } from './mark-words.ts';
import { glueOf } from './setting-times.ts';
import { stockWord, stockWords } from './stock-words.ts';
import { suppliesLines } from './supplies-lines.ts';
import { listWords } from './words.ts';

/** Begins the work: what must be there and measured before anything is cut. */
export function gather(bench: Bench, finishing: FinishPlan, breakdown: Breakdown): void {
  const screws = screwsUsed(bench.setOut);
  const cut = partsToCut(bench.setOut);
  const lots = bench.job.shop.rack.lots.filter((lot) => cut.some((p) => p.lot === lot.id));
  const wide = stockWords(lots);
  const measureAt = [
    ...(wide === '' ? [] : [`${wide} at the four corners`]),
    ...(lots.some((lot) => lot.form === 'strip') ? ['strips at both ends'] : []),
  ].join(', ');
  const lengths: Traced[] = [
    ...lots.map((lot) => cut.find((p) => p.lot === lot.id)!).map(stockThickness),
    bench.ledger.row(
      bench.job.shop.units === 'in' ? SETTING_OUT.measureAgainInches : SETTING_OUT.measureAgain,
    ),
  ];
  const counts = new Map(breakdown.lots.map((b) => [b.lot.id, stockCounts(b, lengths)]));
  const supplies = suppliesLines(bench, finishing, lengths);
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
            `${lot.name}: reckoned ${lot.thickness === undefined ? 'at its nominal' : 'as measured, at'} {${i}} thick.${counts.get(lot.id) ?? ''}`,
        ),
        ...cutAlready(bench),
        `Measure all of it again before the first cut, ${measureAt}. Where it differs by {${lots.length}} or more, enter what you find and plan again.`,
        ...[...screws].map(([id, n]) => {
          const screw = bench.job.shop.rack.screws.find((s) => s.id === id)!;
          return `${n} × ${screw.name ?? screw.id} (${onRack(n, screw.have)}).`;
        }),
        ...[...fixingsUsed(bench.setOut)].map(([id, n]) => {
          const fixing = bench.job.shop.rack.fixings?.find((f) => f.id === id);
          return `${n} × ${fixing?.name ?? id} (${onRack(n, fixing?.have)}).`;
        }),
        ...[...hingesUsed(bench.setOut)].map(([id, n]) => {
          const hinge = bench.job.shop.rack.hinges?.find((h) => h.id === id);
          return `${n} × ${hinge?.name ?? id} (${onRack(n, hinge?.have)}). Have them in the hand and measure them before anything is bored.`;
        }),
        ...[...pullsUsed(bench.setOut)].map(([id, n]) => {
          const pull = bench.job.shop.rack.pulls?.find((p) => p.id === id);
          return `${n} × ${pull?.name ?? id} (${onRack(n, pull?.have)}). Measure its holes from middle to middle, and try how deep a screw goes in, before any front is bored.`;
        }),
        ...[...staysUsed(bench.setOut)].map(([id, n]) => {
          const stay = bench.job.shop.rack.stays?.find((s) => s.id === id);
          return `${n} × ${stay?.name ?? id} (${onRack(n, stay?.have)}). See that its maker’s figure is what one holds, not a pair.`;
        }),
        ...[...runnersUsed(bench.setOut)].map(([id, n]) => {
          const runner = bench.job.shop.rack.runners?.find((r) => r.id === id);
          return `${n} × ${runner?.name ?? id}, a pair each (${onRack(n, runner?.have)}). Have them in the hand, measured and taken apart once, before a drawer is cut.`;
        }),
        ...[...pinsUsed(bench.setOut)].map(([id, n]) => {
          const pin = bench.job.shop.rack.pins?.find((p) => p.id === id);
          return `${n} × ${pin?.name ?? id} (${onRack(n, pin?.have)}). Try one in an offcut before any row is bored.`;
        }),
        ...supplies,
      ],
      lengths,
      cautions: [...liftStock(bench, lots), CAUTION.edges],
    },
    [],
  );
}

/** What is taken of a lot: how many of each size, and their names. */
function stockCounts({ lot, sheets }: Breakdown['lots'][number], lengths: Traced[]): string {
  const word = lot.tape === undefined ? stockWord(lot) : 'length';
  const kinds = new Map<string, (typeof sheets)[number][]>();
  for (const sheet of sheets) {
    const { id } = sheet.source.stock;
    kinds.set(id, [...(kinds.get(id) ?? []), sheet]);
  }
  const put = (t: Traced) => `{${lengths.push(t) - 1}}`;
  const told = [...kinds.values()].map((all) => {
    const [{ source }] = all as [(typeof sheets)[number], ...typeof sheets];
    const { length, width, stock } = source;
    const size = lot.form === 'strip' ? `${put(length)} long` : `${put(length)} × ${put(width)}`;
    return `${all.length} ${word}${all.length > 1 ? 's' : ''} ${size}${stock.name === undefined ? '' : `, “${stock.name}”`}: ${markWords(all.map((s) => s.name))} (${onRack(all.length, stock.have)}).`;
  });
  return told.map((t) => ` ${t}`).join('');
}

/** How many of them lie there, and how many must be bought. */
function onRack(needed: number, have = 0): string {
  return `on the rack: ${have}${have < needed ? `, so ${needed - have} to buy` : ''}`;
}

/** What is cut and good from an earlier day. */
function cutAlready({ job, setOut }: Bench): readonly string[] {
  const made = new Set((job.work.made ?? []).map((m) => m.part));
  const joinedBlanks = stillJoined(setOut.joinedBlanks, made);
  const marks = partsAndBoards({ ...setOut, joinedBlanks })
    .filter((p) => made.has(p.id))
    .map((p) => p.mark);
  const strips = new Set(setOut.cleats.flatMap((c) => [c.onCase, c.onWall]));
  const sloped = setOut.parts.filter((p) => made.has(p.id) && strips.has(p.id)).map((p) => p.mark);
  return marks.length === 0
    ? []
    : [
        `Cut already, to be laid out: ${joinMarks(marks)}.`,
        ...(sloped.length > 0
          ? [`${listWords(sloped)} with the slope that the cut through the blank gave it, at 45 degrees.`]
          : []),
      ];
}

/** Sands all parts before they are put together, where every face can still be reached. */
export function sandParts(bench: Bench): void {
  const edging = new Set(bench.setOut.joints.filter((j) => j.duty === 'edging').map((j) => j.part));
  const loose = (p: Part) => !edging.has(p.id);
  const groups = groupParts(bench.setOut).map((g) => ({ ...g, parts: g.parts.filter(loose) }));
  // What is glued up from boards is solid wood, with no veneer to go through.
  const gluedUp = new Set(bench.setOut.gluedPanels.map((g) => g.panel));
  const words = new Map(bench.job.shop.rack.lots.map((lot) => [lot.id, stockWord(lot)] as const));
  const kindOf = (p: Part) => (p.form === 'strip' || gluedUp.has(p.id) ? 'strip' : words.get(p.lot)!);
  for (const form of ['sheet', 'board', 'strip'] as const) {
    const here = groups.filter((g) => g.parts[0] !== undefined && kindOf(g.parts[0]) === form);
    const marks = here.flatMap((g) => g.parts.map((p) => p.mark));
    if (marks.length === 0) continue;
    // Strips are too slender for a machine, and a panel planed flat needs none.
    const machine = form !== 'strip' && bench.tool('sander') !== undefined;
    const lengths: Traced[] = [];
    const veneers = veneerLines(
      bench,
      here.flatMap((g) => g.parts),
      machine,
      lengths,
    );
    bench.do(
      {
        id: `${marks[0]}/sand`,
        kind: 'sand',
        stage: 'sand',
        title: `Sand ${markWords(marks)}`,
        does: { act: 'other', on: marks },
        ...(machine ? { tool: 'sander' as const } : {}),
        times: marks.length * (machine ? 1 : 2),
        lines: [
          form === 'sheet'
            ? `${machine ? '' : 'By hand with a cork block, with the grain, '}${machine ? 'From' : 'from'} 150 or 180 on to 220. The veneer of a panel is thin: pencil a few lines across and stop when they are gone.`
            : machine
              ? 'From 120 on to 220, the last by hand with the grain.'
              : 'By hand with a block, with the grain, from 120 on to 220.',
          ...veneers,
          'Edges by hand, arrises eased a little; no sanding where glue or another part will come.',
          ...gluedLine(
            bench,
            here.flatMap((g) => g.parts),
          ),
          'Write the mark and the triangle again where they were sanded off, on a face that won’t be seen.',
        ],
        lengths,
        cautions: [CAUTION.dust],
      },
      marks,
    );
  }
}

/** Where strips or boards were glued with what brings water into the wood. */
function gluedLine(bench: Bench, parts: readonly Part[]): readonly string[] {
  const { lots } = bench.job.shop.rack;
  const taped = new Set(lots.flatMap((lot) => (lot.tape === undefined ? [] : [lot.id])));
  const lotOf = new Map(bench.setOut.parts.map((p) => [p.id, p.lot]));
  const glued = new Set([
    ...bench.setOut.joints.flatMap((j) =>
      j.duty === 'edging' && !taped.has(lotOf.get(j.part)!) ? [j.mate] : [],
    ),
    ...bench.setOut.gluedPanels.map((g) => g.panel),
  ]);
  const { sanding } = glueOf(bench.job.shop.rack.adhesives).kind;
  return sanding !== undefined && parts.some((p) => glued.has(p.id)) ? [sanding] : [];
}

/** What may be sanded off where it was said how thick the face veneer is. */
function veneerLines(
  bench: Bench,
  parts: readonly Part[],
  machine: boolean,
  lengths: Traced[],
): readonly string[] {
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
      `${lot.name}: its face veneer is {${n}} thick, so all sanding together may take {${n + 1}}${bench.ledger.ticks(veneer) < VENEER.byHand.value ? '. That is too little for a machine: by hand with a block, 180 and 220' : `: a light pass of each grit${machine ? ', the machine always moving' : ''}`}. Nothing coarser near an edge.`,
    ];
  });
}
