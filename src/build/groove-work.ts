import { SETTING_OUT } from '../materials/index.ts';
import type { Traced } from '../measure/index.ts';
import {
  type ChannelRow,
  channelRows,
  channelSettings,
  type Groove,
  type Part,
  type Rabbet,
} from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { CAUTION } from './cautions.ts';
import { capital, sideWords } from './words.ts';

/** Routs the grooves and dados of parts that are worked alike. */
export function grooves(bench: Bench, batch: readonly [Part, ...Part[]]): void {
  const [part] = batch;
  channelRows(bench.ledger, part).forEach((row, i) => {
    rout(bench, batch, row, i + 1);
  });
}

function rout(bench: Bench, batch: readonly [Part, ...Part[]], row: ChannelRow, n: number): void {
  const [part] = batch;
  const [first] = row;
  const { bit, depth, guided, fences: channels } = channelSettings(bench.ledger, bench.job.shop, row);
  const [stop, otherStop] = stopsOf(bench, part, first);
  const across = first.edge === 'start' || first.edge === 'end';
  // On a blank of two parts it stops behind the front of either.
  const mortises = otherStop !== undefined && across && !part.joins;
  const edge = sideWords(part, first.edge);
  const lengths: Traced[] = [bit, depth];
  const put = (x: Traced) => `{${lengths.push(x) - 1}}`;
  const { beside, line } = guided ? {} : straightedge(bench, bit, put);
  const places = channels.map((fences, i) => {
    const what = batch.length === 1 && row.length > 1 ? `${capital(row[i]!.purpose)}: ` : '';
    const begins = fences.map(put).join(', then ');
    return `${what}${begins}${beside === undefined ? '' : straightedgeAt(bench, { fences, bit, beside }, put)}.`;
  });
  const fence = guided
    ? `Edge guide on the ${edge}, so that from it to the nearer side of the bit it is`
    : `Straightedge clamped ${across ? 'square across' : 'along'}, so that from the ${edge} to the nearer side of the bit it is`;
  const lines = [
    'Straight bit of {0}, set {1} deep; take it in two or three passes.',
    ...(places.length === 1 ? [`${fence} ${places[0]}`] : [`${fence}:`, ...places]),
    ...(line === undefined ? [] : [line]),
    ...(stop
      ? [
          `${otherStop && across ? 'Plunge in between, as the channel is closed at both ends. ' : ''}Stop ${put(stop.at)} from the ${sideWords(part, stop.from)}${otherStop ? ` and ${put(otherStop.at)} from the ${sideWords(part, otherStop.from)}` : ''}, and square the end${otherStop ? 's' : ''} with a chisel.`,
        ]
      : [
          `Right through from ${across ? 'edge to edge' : 'end to end'}, with a waste block where the bit comes out.`,
        ]),
    'Prove the settings on an offcut with a piece of what goes in: it slides in by hand and doesn’t rattle.',
  ];
  const name = mortises
    ? row.length === 1
      ? 'a mortise'
      : `${row.length} mortises`
    : across
      ? row.length === 1
        ? 'a dado'
        : `${row.length} dados`
      : row.length === 1
        ? 'a groove'
        : `${row.length} grooves`;
  bench.settings.push({
    id: `${part.mark}/groove-${first.face}-${first.edge}-${n}`,
    kind: 'groove',
    what: `Rout ${name} in`,
    parts: batch,
    ...(row.length === 1 ? { purpose: first.purpose } : {}),
    does: {
      act: 'groove',
      workpieces: batch.map((p) => p.mark),
      edge: first.edge,
      face: first.face,
      bit,
      depth,
      channels,
      ...(stop ? { stop } : {}),
      ...(otherStop ? { otherStop } : {}),
    },
    tool: 'router',
    times: row.length,
    faceUp: `${sideWords(part, first.face)} up`,
    reference: `the ${edge}`,
    lines,
    lengths,
    cautions: [CAUTION.router, CAUTION.dust],
  });
}

/** A place where a channel stops, so far from an edge. */
export interface ChannelStop {
  readonly from: 'start' | 'end' | 'near' | 'far';
  readonly at: Traced;
}

/** Where a channel stops, as it is measured on the bench: from each edge that it doesn't reach. */
export function stopsOf(
  bench: Bench,
  part: Part,
  g: Pick<Groove | Rabbet, 'edge' | 'from' | 'to'>,
): readonly ChannelStop[] {
  const l = bench.ledger;
  const across = g.edge === 'start' || g.edge === 'end';
  const whole = across ? part.width : part.length;
  const [low, high] = across ? (['near', 'far'] as const) : (['start', 'end'] as const);
  const rest = l.less('from the other edge to where the channel stops', whole, g.to);
  const [begins, ends] = [l.ticks(g.from) > 0, l.ticks(rest) > 0];
  const first = bench.set('marking', g.from);
  // Closed at both ends it is as long as it was drawn, on the part as it is sawn: both stops rounded one way would add up.
  const other =
    begins && ends && !part.rough
      ? l.less(
          'from the other edge of the part, as it is sawn, to where the channel stops',
          (part.fitted ?? part.cut)[across ? 'width' : 'length'],
          first,
          l.less('length of the channel', g.to, g.from),
        )
      : rest;
  return [
    ...(begins ? [{ from: low, at: first }] : []),
    ...(ends ? [{ from: high, at: bench.set('marking', l.ticks(other) > 0 ? other : rest) }] : []),
  ];
}

/** How a straightedge is set beside the bit: by half the base plate less half the bit, or by a spacer where that isn't known. */
function straightedge(
  bench: Bench,
  bit: Traced,
  put: (t: Traced) => string,
): { readonly beside?: Traced; readonly line: string } {
  const l = bench.ledger;
  const router = bench.tool('router');
  if (router?.base === undefined)
    return {
      line: 'A spacer sets it: rout along the straightedge on scrap, and cut a strip as wide as the wood left between the two.',
    };
  const base = bench.ofTool(router, 'base');
  const half = l.ratio('half of it', l.less('base plate beyond the bit', base, bit), SETTING_OUT.half);
  const beside = bench.set('marking', half);
  return {
    beside,
    line: `From the straightedge to the bit’s side it is ${put(beside)}: the rest of the base plate.`,
  };
}

/** Where the straightedge itself lies, pass by pass: nearer the edge than the bit, or beyond it where there is no room for that. */
function straightedgeAt(
  { ledger: l }: Bench,
  {
    fences,
    bit,
    beside,
  }: { readonly fences: readonly Traced[]; readonly bit: Traced; readonly beside: Traced },
  put: (t: Traced) => string,
): string {
  const nearer = fences.every((f) => l.ticks(f) > l.ticks(beside));
  const at = fences.map((f) =>
    nearer
      ? l.less('where the straightedge lies', f, beside)
      : l.sum('where the straightedge lies, beyond the bit', f, bit, beside),
  );
  return `; the straightedge at ${at.map(put).join(', then ')}${nearer ? '' : ', beyond the bit'}`;
}
