import { SETTING_OUT } from '../materials/index.ts';
import { type Ledger, type Traced, toMm } from '../measure/index.ts';
import type { Edge, Face, Feature, Part, Slot } from '../setting-out/index.ts';
import { textBox } from './dimension-clashes.ts';
import { type Drawing, line, type Mark, moved, type PaperPoint, rectangle } from './drawing.ts';
import type { Lengths } from './lengths.ts';
import { type RunningPlace, runningDimensions } from './running-dimensions.ts';
import type { TextMeasure } from './text-measure.ts';

/** What is worked on one broad face of a part, in the part's own frame. */
export interface FaceWork {
  readonly length: Traced;
  readonly width: Traced;
  /** The face that lies up. Seen from the under face the near edge is at the top. */
  readonly face: Face;
  readonly rabbets: readonly {
    readonly edge: Edge;
    readonly width: Traced;
    /** From the edge to the nearer wall, where it is a groove. */
    readonly inset?: Traced;
    readonly from?: Traced;
    readonly to?: Traced;
  }[];
  /** Places along the edge, counted from its low end or, when `from` says so, from the end or the far edge. */
  readonly pockets: readonly {
    readonly edge: Edge;
    readonly along: readonly Traced[];
    readonly from?: Edge;
  }[];
  /** Along the length (from the start, or the end) and across from the near edge, or the far one. */
  readonly holes: readonly {
    readonly at: readonly [along: Traced | 'middle', across: Traced | 'middle'];
    readonly from?: Edge;
    readonly acrossFrom?: 'far';
    /** Of a hole wide enough to be drawn to size. */
    readonly diameter?: Traced;
    /** Measures that its place is given along from the middle, to both sides: so it stands for two holes, or for one on the middle. */
    readonly middle?: readonly ('length' | 'width')[];
    /** One of a row whose first holes have the figures. */
    readonly follows?: true;
  }[];
  /** Slots between two lines, as their act has them. */
  readonly slots?: readonly FaceSlots[];
  readonly bevels: readonly Edge[];
}

/** Slots right through, all between the same two lines. */
export interface FaceSlots {
  readonly run: 'length' | 'width';
  readonly from?: 'start' | 'end';
  readonly bit: Traced;
  /** Middles of the round ends, and the middle line of each. */
  readonly ends: readonly [Traced, Traced];
  readonly beside: readonly Traced[];
}

/** The room for the part itself, in paper millimetres. */
export interface PartRoom {
  readonly width: number;
  readonly height: number;
}

const LEAST = 9;
const POCKET = { long: 5, wide: 2 };

/**
 * A part from above with what is worked on it, every place measured from the start and from the near edge. A part
 * too narrow to draw in proportion is drawn wider; the figures are what counts.
 */
export function faceDrawing(
  work: FaceWork,
  ledger: Ledger,
  lengths: Lengths,
  room: PartRoom,
  type: TextMeasure,
): Drawing {
  const mm = (t: Traced) => toMm(ledger.ticks(t));
  const [long, wide] = [mm(work.length), mm(work.width)];
  const scale = Math.min(room.width / long, room.height / wide, 0.5);
  const width = Math.max(long * scale, LEAST * 2);
  const height = Math.max(wide * scale, LEAST);
  const x = (m: number) => (m / long) * width;
  const y = (m: number) => (work.face === 'show' ? height - (m / wide) * height : (m / wide) * height);

  const marks: Mark[] = [rectangle(0, 0, width, height, { fill: 'wood-top', pen: 'edge' })];
  const below: RunningPlace[] = [];
  const left: RunningPlace[] = [];
  const right: RunningPlace[] = [];
  const place = (at: number, trace: Traced): RunningPlace => ({ at, words: lengths.bare(trace), trace });

  for (const r of work.rabbets) {
    const band = bandOf(r.edge, mm(r.width), {
      long,
      wide,
      from: r.from && mm(r.from),
      to: r.to && mm(r.to),
      inset: r.inset && mm(r.inset),
    });
    if (r.inset !== undefined) {
      const [list, at] = alongLength(r.edge)
        ? [left, y(r.edge === 'near' ? mm(r.inset) : wide - mm(r.inset))]
        : [below, x(r.edge === 'start' ? mm(r.inset) : long - mm(r.inset))];
      list.push(place(at, r.inset));
    }
    const [x0, x1] = [x(band.x0), x(band.x1)];
    const [y0, y1] = [y(band.y0), y(band.y1)].sort((a, b) => a - b) as [number, number];
    marks.push(rectangle(x0, y0, x1 - x0, Math.max(y1 - y0, 1.2), { fill: 'wood-side', pen: 'thin' }));
    if (r.from !== undefined && r.to !== undefined)
      for (const t of [r.from, r.to])
        if (mm(t) > 0 && mm(t) < (alongLength(r.edge) ? long : wide))
          (alongLength(r.edge) ? below : left).push(place(alongLength(r.edge) ? x(mm(t)) : y(mm(t)), t));
  }
  for (const edge of work.bevels) marks.push(...bevelMark(edge, width, height, work.face));
  for (const p of work.pockets)
    for (const t of p.along) {
      const low = alongLength(p.edge) ? long : wide;
      const m = p.from === 'end' || p.from === 'far' ? low - mm(t) : mm(t);
      const at = alongLength(p.edge) ? x(m) : y(m);
      marks.push(...pocketMark(p.edge, at, width, height, work.face));
      const list = alongLength(p.edge) ? below : p.edge === 'end' ? right : left;
      list.push(place(at, t));
    }
  const placesOf = (t: Traced | 'middle', whole: number, halved: boolean, fromFar: boolean) => {
    if (t === 'middle') return [whole / 2];
    const off = mm(t);
    return halved ? [whole / 2 - off, whole / 2 + off] : [fromFar ? whole - off : off];
  };
  for (const { at, from, acrossFrom, diameter, follows, middle } of work.holes) {
    const [a, b] = at;
    const [lengthHalved, widthHalved] = [middle?.includes('length'), middle?.includes('width')];
    const along = placesOf(a, long, lengthHalved === true, from === 'end' || from === 'far');
    const across = placesOf(b, wide, widthHalved === true, acrossFrom === 'far');
    const drawn = diameter === undefined ? 0 : (mm(diameter) * width) / long / 2;
    for (const m of along) for (const n of across) marks.push(...holeMark([x(m), y(n)], Math.max(drawn, 1)));
    if (lengthHalved) marks.push(line([x(long / 2), 0], [x(long / 2), height], 'hidden', 'quiet'));
    if (widthHalved) marks.push(line([0, y(wide / 2)], [width, y(wide / 2)], 'hidden', 'quiet'));
    if (follows) continue;
    // A hole on the middle line needs no figure.
    if (a !== 'middle') below.push(...along.map((m) => place(x(m), a)));
    if (b !== 'middle') left.push(...across.map((n) => place(y(n), b)));
  }
  for (const s of work.slots ?? []) {
    const along = (a: Traced) => (s.from === 'end' ? long - mm(a) : mm(a));
    const [lines, crossing] = s.run === 'length' ? [left, below] : [below, left];
    const onLength = (a: Traced) => x(along(a));
    const onWidth = (a: Traced) => y(mm(a));
    const [ofLine, ofEnd] = s.run === 'length' ? [onWidth, onLength] : [onLength, onWidth];
    const r = (mm(s.bit) * width) / long / 2;
    for (const b of s.beside) {
      lines.push(place(ofLine(b), b));
      const [p, q] = s.ends.map(ofEnd).sort((a, c) => a - c) as [number, number];
      const across = ofLine(b) - r;
      marks.push(
        s.run === 'length'
          ? rectangle(p - r, across, q - p + 2 * r, 2 * r, { fill: 'paper', pen: 'thin' })
          : rectangle(across, p - r, 2 * r, q - p + 2 * r, { fill: 'paper', pen: 'thin' }),
      );
    }
    for (const e of s.ends) crossing.push(place(ofEnd(e), e));
  }
  marks.push(
    ...runningDimensions(distinct(below), 'x', height, 1),
    ...runningDimensions(distinct(left), 'y', 0, -1),
    ...runningDimensions(distinct(right), 'y', width, 1),
    ...referenceEdges(work, width, height),
  );
  return trimmed(marks, width, height, type);
}

/** The work on the face of a part that has most of it (the show face when they are even). */
export function partDrawing(
  part: Part,
  ledger: Ledger,
  lengths: Lengths,
  room: PartRoom,
  type: TextMeasure,
): Drawing {
  const on = (face: Face) =>
    part.features.filter((f) =>
      f.kind === 'hole' || f.kind === 'biscuit-slot' ? f.side === face : 'face' in f && f.face === face,
    );
  const face: Face = on('under').length > on('show').length ? 'under' : 'show';
  const here = on(face);
  return faceDrawing(
    {
      length: part.length,
      width: part.width,
      face,
      rabbets: [
        ...here.filter((f) => f.kind === 'rabbet' || f.kind === 'groove'),
        ...notchBands(part, ledger),
      ],
      pockets: here.flatMap((f) => (f.kind === 'pocket' ? [{ edge: f.edge, along: [f.along] }] : [])),
      holes: here.flatMap((f) =>
        f.kind === 'hole' || f.kind === 'biscuit-slot'
          ? [
              {
                at: f.at,
                ...(f.kind === 'hole' &&
                (f.use === 'cable' || f.use === 'vent' || f.use === 'row' || f.use === 'leveller')
                  ? { diameter: f.diameter }
                  : {}),
                ...followsIn(here, f),
              },
            ]
          : [],
      ),
      slots: here.flatMap((f) => (f.kind === 'slot' ? [slotLines(f, ledger)] : [])),
      bevels: part.features.flatMap((f) => (f.kind === 'bevel' ? [f.edge] : [])),
    },
    ledger,
    lengths,
    room,
    type,
  );
}

/** Of a row of holes for pins only the first two have figures. */
function followsIn(features: readonly Feature[], hole: Feature): { readonly follows?: true } {
  if (hole.kind !== 'hole' || hole.use !== 'pin') return {};
  const row = features.filter((f) => f.kind === 'hole' && f.use === 'pin' && f.purpose === hole.purpose);
  // The two rows of an opening are written down level by level.
  return row.indexOf(hole) > 3 ? { follows: true } : {};
}

/** One slot by the lines it runs between. */
function slotLines(f: Slot, ledger: Ledger): FaceSlots {
  const middle = f.at[f.run === 'length' ? 0 : 1];
  const half = ledger.ratio(
    'from the middle of the slot to that of its end',
    ledger.less('length of the slot less its round ends', f.length, f.width),
    SETTING_OUT.half,
  );
  return {
    run: f.run,
    bit: f.width,
    ends: [ledger.less('one end', middle, half), ledger.sum('the other end', middle, half)],
    beside: [f.at[f.run === 'length' ? 1 : 0]],
  };
}

/** Notches as they are seen from above. */
function notchBands(part: Part, ledger: Ledger): FaceWork['rabbets'] {
  return part.features.flatMap((f) => {
    if (f.kind !== 'notch') return [];
    if (f.end === 'start')
      return [
        {
          edge: f.edge,
          width: f.width,
          from: ledger.less('the end itself', f.length, f.length),
          to: f.length,
        },
      ];
    const from = ledger.less('where the notch begins', part.length, f.length);
    return [{ edge: f.edge, width: f.width, from, to: part.length }];
  });
}

function alongLength(edge: Edge): boolean {
  return edge === 'near' || edge === 'far';
}

function bandOf(
  edge: Edge,
  size: number,
  part: {
    long: number;
    wide: number;
    from: number | undefined;
    to: number | undefined;
    inset: number | undefined;
  },
) {
  const from = part.from ?? 0;
  const inset = part.inset ?? 0;
  if (edge === 'near' || edge === 'far') {
    const to = part.to ?? part.long;
    const y0 = edge === 'near' ? inset : part.wide - inset - size;
    return { x0: from, x1: to, y0, y1: y0 + size };
  }
  const to = part.to ?? part.wide;
  const x0 = edge === 'start' ? inset : part.long - inset - size;
  return { x0, x1: x0 + size, y0: from, y1: to };
}

/** A pocket as it is seen: a slot with a round end, running from the wood out toward its edge. */
function pocketMark(edge: Edge, at: number, width: number, height: number, face: Face): Mark[] {
  const inset = 1.6;
  const { long, wide } = POCKET;
  const nearAtBottom = face === 'show';
  const slot = (x: number, y: number, w: number, h: number) =>
    rectangle(x, y, w, h, { fill: 'paper', pen: 'thin' });
  if (edge === 'start') return [slot(inset, at - wide / 2, long, wide)];
  if (edge === 'end') return [slot(width - inset - long, at - wide / 2, long, wide)];
  const bottom = (edge === 'near') === nearAtBottom;
  return [slot(at - wide / 2, bottom ? height - inset - long : inset, wide, long)];
}

function holeMark(at: PaperPoint, r: number): Mark[] {
  return [
    { kind: 'circle', centre: at, radius: r, fill: 'paper', pen: 'thin' },
    line([at[0] - r - 0.7, at[1]], [at[0] + r + 0.7, at[1]], 'fine'),
    line([at[0], at[1] - r - 0.7], [at[0], at[1] + r + 0.7], 'fine'),
  ];
}

function bevelMark(edge: Edge, width: number, height: number, face: Face): Mark[] {
  const d = 2.4;
  if (edge === 'start') return [line([d, 0], [d, height], 'hidden', 'quiet')];
  if (edge === 'end') return [line([width - d, 0], [width - d, height], 'hidden', 'quiet')];
  const y = (edge === 'near') === (face === 'show') ? height - d : d;
  return [line([0, y], [width, y], 'hidden', 'quiet')];
}

/** The edges that places are measured from, drawn heavily. */
function referenceEdges(work: FaceWork, width: number, height: number): Mark[] {
  const edges = new Set<Edge>();
  for (const p of work.pockets) edges.add(p.from ?? (alongLength(p.edge) ? 'start' : 'near'));
  for (const s of work.slots ?? []) {
    edges.add(s.from ?? 'start');
    edges.add('near');
  }
  for (const h of work.holes) {
    for (const edge of h.middle?.includes('length')
      ? (['start', 'end'] as const)
      : [h.from ?? ('start' as const)])
      edges.add(edge);
    for (const edge of h.middle?.includes('width')
      ? (['near', 'far'] as const)
      : [h.acrossFrom ?? ('near' as const)])
      edges.add(edge);
  }
  const nearY = work.face === 'show' ? height : 0;
  const ends: Record<Edge, readonly [PaperPoint, PaperPoint]> = {
    start: [
      [0, 0],
      [0, height],
    ],
    end: [
      [width, 0],
      [width, height],
    ],
    near: [
      [0, nearY],
      [width, nearY],
    ],
    far: [
      [0, height - nearY],
      [width, height - nearY],
    ],
  };
  return [...edges].map((e) => line(ends[e][0], ends[e][1], 'cut', 'measure'));
}

function distinct(places: readonly RunningPlace[]): RunningPlace[] {
  return [...new Map(places.map((p) => [`${Math.round(p.at * 100)} ${p.words}`, p])).values()];
}

/** Puts the marks on a paper just large enough. */
function trimmed(marks: readonly Mark[], width: number, height: number, type: TextMeasure): Drawing {
  let [left, top, right, bottom] = [0, 0, width, height];
  for (const m of marks) {
    const label = m.kind === 'text' ? m : m.kind === 'dimension' ? m.label : undefined;
    if (!label) continue;
    const box = textBox(label, type);
    left = Math.min(left, box.left);
    top = Math.min(top, box.top);
    right = Math.max(right, box.right);
    bottom = Math.max(bottom, box.bottom);
  }
  const edge = 0.5;
  return {
    width: right - left + edge * 2,
    height: bottom - top + edge * 2,
    marks: moved(marks, edge - left, edge - top),
  };
}
