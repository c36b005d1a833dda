import { MACHINE_RULES, SETTING_OUT } from '../materials/index.ts';
import type { Traced } from '../measure/index.ts';
import type { Part, Slot } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { CAUTION } from './cautions.ts';
import { listWords, referenceFor, sideWords } from './words.ts';

/** Routs the slots of parts that are worked alike: those between the same two lines on one card. */
export function slots(bench: Bench, batch: readonly [Part, ...Part[]]): void {
  const [part] = batch;
  const l = bench.ledger;
  const t = (x: Traced) => l.ticks(x);
  const rows = new Map<string, [Slot, ...Slot[]]>();
  for (const s of part.features.filter((f): f is Slot => f.kind === 'slot')) {
    const key = [s.use, s.face, s.run, t(s.length), t(s.width), t(s.at[s.run === 'length' ? 0 : 1])].join(
      ' ',
    );
    const row = rows.get(key);
    if (row) row.push(s);
    else rows.set(key, [s]);
  }
  [...rows.values()].forEach((row, i) => {
    rout(bench, batch, row, i + 1);
  });
}

function rout(
  bench: Bench,
  batch: readonly [Part, ...Part[]],
  row: readonly [Slot, ...Slot[]],
  n: number,
): void {
  const [part] = batch;
  const [first] = row;
  const l = bench.ledger;
  const marks = batch.map((p) => p.mark);
  const ref = referenceFor(part, 'near');
  const from = ref.from as 'start' | 'end';
  const along = (x: Traced) =>
    ref.turned ? l.less('the same, measured from the other side', part.length, x) : x;
  const lengthwise = first.run === 'length';
  const half = l.ratio(
    'from the middle of the slot to that of its end',
    l.less('length of the slot less its round ends', first.length, first.width),
    SETTING_OUT.half,
  );
  const middle = lengthwise ? along(first.at[0]) : first.at[1];
  const set = (x: Traced) => bench.set('marking', x);
  const ends = [set(l.less('one end', middle, half)), set(l.sum('the other end', middle, half))] as const;
  const beside = row
    .map((s) => set(lengthwise ? s.at[1] : along(s.at[0])))
    .sort((a, b) => l.ticks(a) - l.ticks(b));
  const [lineSide, endSide] = lengthwise ? (['near', from] as const) : ([from, 'near'] as const);
  const sawn = !bench.tool('router') && bench.tool('drill') !== undefined;
  const lengths: Traced[] = [first.width, ...ends, ...beside];
  const print = (x: Traced) => `{${lengths.push(x) - 1}}`;
  const deeper = bench.rule(MACHINE_RULES.plungeStep);
  const cut = sawn ? WITHOUT_ROUTER : [plunged(print(deeper)), fence(bench, print)];
  bench.settings.push({
    id: `${part.mark}/slot-${first.face}-${n}`,
    kind: 'slot',
    what: `${sawn ? 'Cut' : 'Rout'} ${row.length === 1 ? 'a slot' : `${row.length} slots`} through`,
    parts: batch,
    purpose: first.purpose,
    does: {
      act: 'slot',
      workpieces: marks,
      face: first.face,
      run: first.run,
      from,
      ...(first.use === 'screw' ? { screws: true as const } : {}),
      bit: first.width,
      ends,
      beside,
    },
    tool: sawn ? 'drill' : 'router',
    times: row.length * (sawn ? 3 : 1),
    faceUp: `${sideWords(part, first.face)} up, a waste board clamped tight under it`,
    reference: `the ${sideWords(part, lineSide)} and the ${sideWords(part, endSide)}`,
    lines: [
      `Middle lines at ${listWords(beside.map((_, i) => `{${i + 3}}`))} from the ${sideWords(part, lineSide)}.`,
      `On each the middle of the bit goes from {1} to {2} from the ${sideWords(part, endSide)}${sawn ? '' : ': stop blocks clamped there'}.`,
      ...cut,
      'Ease the rims with sandpaper round a strip of wood.',
    ],
    lengths,
    cautions: sawn ? [CAUTION.drill, CAUTION.chisel] : [CAUTION.router, CAUTION.dust],
  });
}

const plunged = (deeper: string) =>
  `Straight bit of {0}, plunged ${deeper} deeper with every pass, until it is through into the waste board. Where the router doesn’t plunge, bore a hole at one end first.`;

const WITHOUT_ROUTER = [
  'Bore a hole of {0} at both ends, into the waste board. Saw from one to the other along both sides with a keyhole saw, a little inside the lines, and pare to them from both faces.',
];

/** What guides the router along a slot. */
function fence(bench: Bench, print: (x: Traced) => string): string {
  const router = bench.tool('router');
  if (router?.base === undefined)
    return 'A straightedge clamped along the line, half the router’s base plate from it, guides the cut.';
  const half = bench.ledger.ratio('half the base plate', bench.ofTool(router, 'base'), SETTING_OUT.half);
  return `Clamp a straightedge ${print(bench.set('marking', half))} beside each line: half the base plate.`;
}
