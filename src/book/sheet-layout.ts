import type { PlannedArea, PlannedNode, PlannedSheet } from '../breakdown/index.ts';
import { type Ledger, type Traced, toMm } from '../measure/index.ts';
import { leavesUnder, type NumberedCut, type PlannedPiece } from './cut-order.ts';
import { textBox } from './dimension-clashes.ts';
import {
  type Drawing,
  line,
  type Mark,
  moved,
  type PaperPoint,
  rectangle,
  type Text,
  text,
} from './drawing.ts';
import type { Lengths } from './lengths.ts';
import type { TextMeasure } from './text-measure.ts';

/** A sheet or strip to be drawn as it lies, start to the left and near edge at the bottom. */
export interface SheetToDraw {
  readonly sheet: PlannedSheet;
  readonly form: 'sheet' | 'strip';
  readonly kerf: Traced;
  /** What a rough cut at the yard takes, where there are any. */
  readonly roughKerf?: Traced;
  readonly cuts: readonly NumberedCut[];
  readonly ledger: Ledger;
  readonly lengths: Lengths;
}

const BADGE = 2.4;
const BAR = 9;
/** Room round a sheet for the numbers of cuts that run right through. */
const RIM = 6.5;

/** How large a sheet can be drawn in a given room, as paper over sheet. */
export function sheetScale(
  length: number,
  width: number | undefined,
  room: { readonly width: number; readonly height: number },
): number {
  const along = (room.width - RIM * 2) / length;
  return width === undefined ? along : Math.min(along, (room.height - RIM * 2) / width);
}

/** A cut tree as the sheet lies: pieces with mark, name and size, kerfs with their numbers, and what is left. */
export function sheetLayout(drawn: SheetToDraw, scale: number, type: TextMeasure): Drawing {
  const { source, root } = drawn.sheet;
  const strip = drawn.form === 'strip';
  const mm = (t: Traced) => toMm(drawn.ledger.ticks(t)) * scale;
  const long = mm(source.length);
  const wide = strip ? BAR : mm(source.width);
  const box = (a: PlannedArea): Box => {
    if (strip) return { x: mm(a.x), y: 0, w: mm(a.length), h: BAR };
    const h = mm(a.width);
    return { x: mm(a.x), y: wide - mm(a.y) - h, w: mm(a.length), h };
  };
  const marks: Mark[] = [rectangle(0, 0, long, wide, { fill: 'shade' })];
  const labels: Text[] = [];
  for (const leaf of leavesUnder(root)) {
    const b = box(leaf);
    if (b.w < 0.05 || b.h < 0.05) continue;
    if (leaf.kind === 'left') {
      marks.push(rectangle(b.x, b.y, b.w, b.h, { fill: 'paper' }), ...hatching(b));
      // The size of waste is of no use where a flaw lies in it, and would stand across that.
      const flawed = source.flaws.some((f) => meet(box(f), b));
      if (leaf.name !== undefined || !flawed) labels.push(...leftLabel(leaf, leaf.name, b, drawn, type));
    } else {
      marks.push(rectangle(b.x, b.y, b.w, b.h, { fill: 'wood-top', pen: 'fine' }));
      labels.push(...pieceLabel(leaf, b, drawn, type));
    }
  }
  if (!strip) marks.push(...battenStubs(root, mm(source.length), wide, scale));
  for (const f of source.flaws) marks.push(...flawMark(box(f)));
  const taken: Taken[] = labels.map((l) => textBox(l, type));
  const rings: { readonly number: number; readonly from: PaperPoint; readonly to: PaperPoint }[] = [];
  for (const { node, number } of drawn.cuts) {
    const area = box(node);
    const at = mm(node.at) + mm((node.yard ? drawn.roughKerf : undefined) ?? drawn.kerf) / 2;
    const [from, to]: [PaperPoint, PaperPoint] =
      node.across === 'length'
        ? [
            [at, area.y + area.h],
            [at, area.y],
          ]
        : [
            [area.x, wide - at],
            [area.x + area.w, wide - at],
          ];
    if (!strip && !node.yard) marks.push(railLine(node, from, to));
    marks.push(line(from, to, node.yard ? 'hidden' : 'thin', 'ink'));
    rings.push({ number, from, to });
  }
  // A short cut has few places for its number, so it chooses first.
  const size = ({ from, to }: (typeof rings)[number]) => Math.hypot(to[0] - from[0], to[1] - from[1]);
  const badges = [...rings]
    .sort((a, b) => size(a) - size(b) || a.number - b.number)
    .flatMap((ring) => {
      const place = badgePlace(ring, taken, { long, wide });
      const [x, y] = place;
      taken.push({ left: x - BADGE, right: x + BADGE, top: y - BADGE, bottom: y + BADGE, ring: true });
      return badge(ring.number, place);
    });
  marks.push(rectangle(0, 0, long, wide, { pen: 'edge' }));
  return {
    width: long + RIM * 2,
    height: wide + RIM * 2,
    marks: moved([...marks, ...labels, ...badges], RIM, RIM),
  };
}

/**
 * The rail lies on the part that keeps its size, which is the one before the cut, unless that is waste: a line close by on
 * its side.
 */
function railLine({ across, parts: [first] }: CutOfSheet, from: PaperPoint, to: PaperPoint): Mark {
  const side = first.kind === 'left' && first.name === undefined ? -1 : 1;
  const [dx, dy] = across === 'length' ? [-side * BESIDE_CUT, 0] : [0, side * BESIDE_CUT];
  return line([from[0] + dx, from[1] + dy], [to[0] + dx, to[1] + dy], 'edge', 'measure');
}

const BESIDE_CUT = 0.75;
/** Battens under a sheet are no further apart, and so far in from its ends, mm (common practice). */
const BATTENS = { apart: 600, in: 100 };
const STUB = 2.4;

/** Where the battens under a sheet come out: across the first cuts at home, so that both halves lie on all of them. */
function battenStubs(root: PlannedNode, long: number, wide: number, scale: number): Mark[] {
  const first = atHome(root);
  if (!first) return [];
  const upright = first.across === 'width';
  const size = upright ? long : wide;
  const inside = size - 2 * BATTENS.in * scale;
  const spans = Math.max(1, Math.ceil(inside / (BATTENS.apart * scale) - 1e-9));
  return Array.from({ length: spans + 1 }, (_, i) => BATTENS.in * scale + (inside * i) / spans).flatMap(
    (at) => {
      const stub = (out: number, side: number): Mark =>
        upright
          ? line([at, out], [at, out + side * STUB], 'outline', 'faint')
          : line([out, at], [out + side * STUB, at], 'outline', 'faint');
      return [stub(0, -1), stub(upright ? wide : long, 1)];
    },
  );
}

type CutOfSheet = PlannedNode & { readonly kind: 'cut' };

/** The first cut that is not made at the yard. */
function atHome(node: PlannedNode): CutOfSheet | undefined {
  if (node.kind !== 'cut') return undefined;
  return node.yard ? (atHome(node.parts[0]) ?? atHome(node.parts[1])) : node;
}

/** A place that no part may touch, crossed out. */
function flawMark({ x, y, w, h }: Box): Mark[] {
  return [
    rectangle(x, y, w, h, { fill: 'warn-paper', pen: 'fine', tone: 'warn' }),
    line([x, y], [x + w, y + h], 'fine', 'warn'),
    line([x, y + h], [x + w, y], 'fine', 'warn'),
  ];
}

/** A number in a ring. */
function badge(number: number, at: PaperPoint): Mark[] {
  const size = number > 99 ? 2.2 : number > 9 ? 2.7 : 3;
  return [
    { kind: 'circle', centre: at, radius: BADGE, fill: 'paper', pen: 'fine', tone: 'measure' },
    text([at[0], at[1] + size * 0.35], `${number}`, size, {
      face: 'semibold',
      anchor: 'middle',
      tone: 'measure',
    }),
  ];
}

interface Box {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

interface Taken {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** Another number: covering it is worse than a word. */
  readonly ring?: true;
}

/** How much worse it is to cover a number than a word. */
const WORSE = 4;

/** Outside the sheet where the cut reaches its border, else the first place along the cut that is free. */
function badgePlace(
  l: { readonly from: PaperPoint; readonly to: PaperPoint },
  taken: readonly Taken[],
  sheet: { readonly long: number; readonly wide: number },
): PaperPoint {
  const size = Math.hypot(l.to[0] - l.from[0], l.to[1] - l.from[1]) || 1;
  const way = [(l.to[0] - l.from[0]) / size, (l.to[1] - l.from[1]) / size] as const;
  const at = (t: number): PaperPoint => [l.from[0] + way[0] * t, l.from[1] + way[1] * t];
  const out = BADGE + 1.2;
  const slack = 2.5;
  const places: PaperPoint[] = [];
  const upright = way[1] !== 0;
  if (upright ? l.from[1] > sheet.wide - slack : l.from[0] < slack)
    places.push(upright ? [l.from[0], sheet.wide + out] : [-out, l.from[1]]);
  if (upright ? l.to[1] < slack : l.to[0] > sheet.long - slack)
    places.push(upright ? [l.to[0], -out] : [sheet.long + out, l.to[1]]);
  for (const part of [
    0.12, 0.2, 0.3, 0.42, 0.58, 0.7, 0.8, 0.9, 0.5, 0.06, 0.25, 0.36, 0.64, 0.75, 0.85, 0.95,
  ])
    places.push(at(size * part));
  const reach = BADGE + 0.3;
  /** How much of what is there already it would cover. */
  const clashes = ([x, y]: PaperPoint) =>
    taken.reduce((sum, b) => {
      const wide = Math.min(b.right, x + reach) - Math.max(b.left, x - reach);
      const high = Math.min(b.bottom, y + reach) - Math.max(b.top, y - reach);
      return wide > 0 && high > 0 ? sum + wide * high * (b.ring ? WORSE : 1) : sum;
    }, 0);
  return places.reduce((best, p) => (clashes(p) < clashes(best) ? p : best));
}

/** Mark, name and size, as much as fits, level or upright. */
function pieceLabel(leaf: PlannedPiece, b: Box, drawn: SheetToDraw, type: TextMeasure): Text[] {
  const { part, size: cut } = leaf;
  const size = sizeRuns(drawn, cut.length, cut.width);
  const mark = { runs: [{ words: part.mark }], size: 5, face: 'semibold' as const };
  const small = { ...mark, size: 3.4 };
  const [half, times, rest] = size;
  const large: readonly (readonly LabelLine[])[] = [
    [mark, { runs: [{ words: part.name }], size: 3 }, { runs: size, size: 3.1 }],
    [mark, { runs: size, size: 3.1 }],
    ...(times && rest ? [[mark, { runs: [half!, times], size: 3.1 }, { runs: [rest], size: 3.1 }]] : []),
    [{ ...small, beside: size }],
  ];
  const bare = [[small], [{ ...small, size: 2.4 }]];
  const lying = b.h > b.w * 1.3;
  const tries = [
    ...large.map((set) => [set, lying] as const),
    ...large.map((set) => [set, !lying] as const),
    ...bare.map((set) => [set, lying] as const),
  ];
  for (const [set, upright] of tries) {
    const placed = stacked(set, b, upright, type);
    if (placed) return placed;
  }
  return [];
}

/** Words of a label; a figure keeps its way back to its reasons. */
interface Run {
  readonly words: string;
  readonly trace?: Traced;
}

/** `812.5 × 370` with each figure traced; of a strip its length alone. */
function sizeRuns(drawn: SheetToDraw, length: Traced, width: Traced): readonly Run[] {
  const { bare } = drawn.lengths;
  const long = { words: bare(length), trace: length };
  return drawn.form === 'strip' ? [long] : [long, { words: ' × ' }, { words: bare(width), trace: width }];
}

interface LabelLine {
  readonly runs: readonly Run[];
  readonly size: number;
  readonly face?: 'semibold';
  /** Set after the runs on the same line, smaller and in the regular cut. */
  readonly beside?: readonly Run[];
}

const BESIDE = 3;
const GAP = 2;

function stacked(
  lines: readonly LabelLine[],
  b: Box,
  upright: boolean,
  type: TextMeasure,
): Text[] | undefined {
  const [along, across] = upright ? [b.h, b.w] : [b.w, b.h];
  const wide = (runs: readonly Run[], size: number, face: 'semibold' | 'regular') =>
    runs.reduce((sum, r) => sum + type.width(r.words, size, face), 0);
  const widths = lines.map((l) => {
    const own = wide(l.runs, l.size, l.face ?? 'regular');
    return l.beside === undefined ? own : own + GAP + wide(l.beside, BESIDE, 'regular');
  });
  const step = (l: LabelLine) => l.size * 1.28;
  const high = lines.reduce((sum, l) => sum + step(l), 0);
  if (Math.max(...widths) > along - 2 || high > across - 0.6) return undefined;
  const out: Text[] = [];
  let down = (across - high) / 2;
  const put = (s: number, base: number): PaperPoint =>
    upright ? [b.x + base, b.y + b.h - s] : [b.x + s, b.y + base];
  lines.forEach((l, i) => {
    const base = down + step(l) * 0.5 + l.size * 0.35;
    let s = (along - widths[i]!) / 2;
    const set = (runs: readonly Run[], size: number, face: 'semibold' | 'regular') => {
      for (const r of runs) {
        const look = { upright, face, tone: face === 'semibold' ? 'ink' : 'quiet' } as const;
        // Spaces at the ends move the words, and are not set: not every reader of a drawing keeps them.
        const shown = r.words.trim();
        const lead = type.width(r.words.slice(0, r.words.indexOf(shown)), size, face);
        out.push(
          text(put(s + lead, base), shown, size, r.trace === undefined ? look : { ...look, trace: r.trace }),
        );
        s += type.width(r.words, size, face);
      }
    };
    set(l.runs, l.size, l.face ?? 'regular');
    s += GAP;
    set(l.beside ?? [], BESIDE, 'regular');
    down += step(l);
  });
  return out;
}

function leftLabel(
  area: PlannedArea,
  name: string | undefined,
  b: Box,
  drawn: SheetToDraw,
  type: TextMeasure,
): Text[] {
  const size = sizeRuns(drawn, area.length, area.width);
  for (const runs of [...(name === undefined ? [] : [[{ words: `${name}: ` }, ...size]]), size])
    for (const upright of [false, true]) {
      const placed = stacked([{ runs, size: 2.7 }], b, upright, type);
      if (placed && Math.min(b.w, b.h) > 6.5) return placed;
    }
  return [];
}

function meet(a: Box, b: Box): boolean {
  return a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h;
}

/** Slanting lines over a rectangle, 3.2 mm apart. */
function hatching(b: Box): Mark[] {
  const out: Mark[] = [];
  const step = 3.2;
  for (let d = step; d < b.w + b.h; d += step) {
    const from: PaperPoint = d <= b.h ? [b.x, b.y + d] : [b.x + d - b.h, b.y + b.h];
    const to: PaperPoint = d <= b.w ? [b.x + d, b.y] : [b.x + b.w, b.y + d - b.w];
    out.push(line(from, to, 'fine', 'faint'));
  }
  return out;
}
