import type { Shop } from '../../job/index.ts';
import { SETTING_OUT } from '../../materials/index.ts';
import { type Ledger, parseLength, type Rounding, type Traced } from '../../measure/index.ts';
import type { Groove } from '../feature.ts';
import type { Part } from '../part.ts';

/** Grooves of one part that are cut at one depth with one bit, from one edge, and stop alike. */
export type ChannelRow = readonly [Groove, ...Groove[]];

/** How a row of channels is routed, as its card prints it. */
export interface ChannelSettings {
  readonly bit: Traced;
  readonly depth: Traced;
  /** Run along an edge guide, or along a straightedge that is clamped to marks. */
  readonly guided: boolean;
  /** For each channel where the nearer side of the bit runs, pass by pass. */
  readonly fences: readonly (readonly Traced[])[];
  /** How wide the channels come out. */
  readonly width: Traced;
}

/** The channels of a part in rows, each from its edge inward. */
export function channelRows(ledger: Ledger, part: Pick<Part, 'features'>): readonly ChannelRow[] {
  const t = (x: Traced) => ledger.ticks(x);
  const rows = new Map<string, [Groove, ...Groove[]]>();
  for (const g of part.features) {
    if (g.kind !== 'groove') continue;
    const key = [g.face, g.edge, t(g.width), t(g.depth), t(g.from), t(g.to)].join(' ');
    const row = rows.get(key);
    if (row) row.push(g);
    else rows.set(key, [g]);
  }
  for (const row of rows.values()) row.sort((a, b) => t(a.inset) - t(b.inset));
  return [...rows.values()];
}

/** Passes overlap by a tenth of the bit at least, so that no ridge is left between them. */
export const OVERLAP = 0.1;

/**
 * Bit, depth and fences for a row: the widest straight bit that goes in, one fence where it is as wide as the channel,
 * several where it is narrower. Places are set to the nearest step, widths to the next wider one.
 */
export function channelSettings(ledger: Ledger, shop: Shop, row: ChannelRow): ChannelSettings {
  const l = ledger;
  const t = (x: Traced) => l.ticks(x);
  const set = (kind: 'router' | 'marking', length: Traced, how: Rounding = 'nearest') =>
    l.round(
      `as fine as ${kind === 'router' ? 'the router' : 'a mark'} is set`,
      length,
      toolStep(l, shop, kind),
      how,
    );
  const [first] = row;
  const bit = bitFor(l, shop, first.width);
  const router = shop.tools.find((x) => x.kind === 'router');
  const guided =
    router?.edgeGuide === true && row.every((g) => t(g.inset) <= t(l.row(SETTING_OUT.guideReach)));
  const wider = set('router', l.less('how much wider the channel is than the bit', first.width, bit), 'up');
  const shifts = Math.ceil(t(wider) / (t(bit) * (1 - OVERLAP)));
  const fences = row.map((g): readonly Traced[] => {
    const begin = set(guided ? 'router' : 'marking', g.inset);
    if (shifts < 1) return [begin];
    const even = Array.from({ length: shifts }, () => 1);
    const shift = set('router', l.share('an even share for each pass', wider, even, 0));
    const between = Array.from({ length: shifts - 1 }, (_, i) =>
      l.sum('fence for a pass between', begin, l.times('shares up to here', shift, i + 1)),
    );
    return [begin, ...between, l.sum('fence for the last pass', begin, wider)];
  });
  const width =
    shifts < 1 ? bit : l.sum('width of the channel: the bit, and how far it is moved', bit, wider);
  return { bit, depth: set('router', first.depth), guided, fences, width };
}

/** The finest step that a tool is set to; the usual where the shop has none. */
export function toolStep(ledger: Ledger, shop: Shop, kind: 'router' | 'marking'): Traced {
  const tool = shop.tools.find((x) => x.kind === kind);
  return tool && 'step' in tool
    ? typed(ledger, shop, `shop/tools/${tool.id}/step`, tool.step)
    : ledger.row(SETTING_OUT.setStep);
}

/** How one channel of a part is routed: where its nearer wall comes, set by what, and how wide it is. */
export interface RoutedChannel {
  readonly place: Traced;
  readonly placedBy: 'router' | 'marking';
  readonly width: Traced;
}

/** Every channel of a part by its feature's id, as it is routed. */
export function routedChannels(
  ledger: Ledger,
  shop: Shop,
  part: Pick<Part, 'features'>,
): ReadonlyMap<string, RoutedChannel> {
  return new Map(
    channelRows(ledger, part).flatMap((row) => {
      const { guided, fences, width } = channelSettings(ledger, shop, row);
      return row.map((g, i): [string, RoutedChannel] => [
        g.id,
        { place: fences[i]![0]!, placedBy: guided ? 'router' : 'marking', width },
      ]);
    }),
  );
}

/** The widest straight bit of the rack that is no wider than the channel; where there is none, one to be bought. */
function bitFor(l: Ledger, shop: Shop, width: Traced): Traced {
  const fitting = shop.rack.bits
    .filter((b) => b.kind === 'straight')
    .map((bit) => ({ bit, size: typed(l, shop, `shop/rack/bits/${bit.id}/diameter`, bit.diameter) }))
    .filter(({ size }) => l.ticks(size) <= l.ticks(width))
    .sort((a, b) => l.ticks(b.size) - l.ticks(a.size) || (a.bit.id < b.bit.id ? -1 : 1));
  return fitting[0]?.size ?? l.least('no wider than the channel', l.row(SETTING_OUT.grooveBit), width);
}

function typed(l: Ledger, shop: Shop, path: string, text: string): Traced {
  const read = parseLength(text, shop.units);
  if (!read.ok) throw new Error(`unchecked length at ${path}: ${read.problem}`);
  return l.document(path, read.value, text);
}
