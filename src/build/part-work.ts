import { SETTING_OUT } from '../materials/index.ts';
import type { Traced } from '../measure/index.ts';
import type { Bevel, Hole, Notch, Part, Pocket } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { biscuitSlots } from './biscuit-work.ts';
import { CAUTION } from './cautions.ts';
import { dowelHoles } from './dowel-work.ts';
import { fingerHoles } from './finger-holes.ts';
import { grooves } from './groove-work.ts';
import { fromEdge, markLine, placeholders } from './hole-places.ts';
import { mitreSawFor } from './mitre-saw.ts';
import { mitredLength } from './mitred-length.ts';
import { writeSettings } from './one-setting.ts';
import { openHoles } from './open-holes.ts';
import type { WorkEdge } from './operation.ts';
import { pinHoles } from './pin-work.ts';
import { placesOnFace } from './places-on-face.ts';
import { rabbets } from './rabbet-work.ts';
import { rowHoles } from './row-holes.ts';
import { sideOfHoles } from './side-of-holes.ts';
import { slots } from './slot-work.ts';
import { splineGrooves } from './spline-work.ts';
import { measuredFrom, referenceFor, sideWords } from './words.ts';

/** Parts that are worked alike: same sizes, same features, same way round in the piece. */
type Batch = readonly [Part, ...Part[]];

const SLENDER_MITRE =
  'So slender a strip is better cut in a mitre box with a fine handsaw, to the same marks; with the circular saw, only clamped between two boards of its own thickness.';

/** Everything that is cut or bored into blanks before they are put together. */
export function machineParts(bench: Bench, parts: readonly Part[], stage: 'machine' | 'hang'): void {
  // One setting after the other, not one part after the other; mitres first, for places are measured from their tips.
  for (const work of [
    bevels,
    rabbets,
    grooves,
    notches,
    pockets,
    holes,
    biscuitSlots,
    splineGrooves,
    slots,
  ]) {
    for (const batch of batches(bench, parts)) work(bench, batch);
    writeSettings(bench, stage);
  }
}

/** Parts worked at one setting. */
function batches(bench: Bench, parts: readonly Part[]): readonly Batch[] {
  const found = new Map<string, [Part, ...Part[]]>();
  for (const part of parts) {
    if (part.features.length === 0) continue;
    const key = workKey(bench, part);
    const batch = found.get(key);
    if (batch) batch.push(part);
    else found.set(key, [part]);
  }
  return [...found.values()];
}

function workKey(bench: Bench, part: Part): string {
  const plain = JSON.stringify(part.features, (key, value) =>
    key === 'id' || key === 'purpose'
      ? undefined
      : typeof value === 'number' && key !== 'angle'
        ? bench.ledger.ticks(value as Traced)
        : value,
  );
  const t = (x: Traced) => bench.ledger.ticks(x);
  // An inner face is so called where a part is a side; a divider just like it has a left and a right one.
  const { lot, length, width, place, hand } = part;
  return [lot, t(length), t(width), place.length, place.width, hand === 'none', plain].join(' ');
}

function marksOf(batch: Batch): string[] {
  return batch.map((p) => p.mark);
}

function bevels(bench: Bench, batch: Batch): void {
  const [part] = batch;
  const l = bench.ledger;
  const cuts = part.features.filter((f): f is Bevel => f.kind === 'bevel');
  // The start is cut first, and the end measured from its tip.
  const inOrder = [...cuts.filter((c) => c.edge === 'start'), ...cuts.filter((c) => c.edge === 'end')];
  const allowance = l.row(SETTING_OUT.mitreAllowance);
  const saw = mitreSawFor(bench, part) ? 'mitre-saw' : 'circular-saw';
  const long = mitredLength(bench, part);
  for (const c of inOrder) {
    const startDone = cuts.some((o) => o.edge === 'start');
    const at =
      c.edge === 'start'
        ? bench.set('circular-saw', allowance)
        : startDone
          ? bench.set('circular-saw', long)
          : bench.set('circular-saw', l.sum('square end to the tip of the mitre', long, allowance));
    const far = c.edge === 'end';
    bench.settings.push({
      id: `${part.mark}/bevel-${c.edge}`,
      kind: 'bevel',
      what: `Mitre the ${sideWords(part, c.edge)} of`,
      parts: batch,
      does: {
        act: 'bevel',
        workpieces: marksOf(batch),
        edge: c.edge,
        at,
        angle: c.angle,
        fullFace: c.fullFace,
      },
      tool: saw,
      faceUp: `${sideWords(part, c.fullFace)} ${saw === 'mitre-saw' ? 'towards you, on edge' : 'up'}; it keeps the full length`,
      reference: far ? (startDone ? 'the tip of the first mitre' : 'the square end') : 'the sawn end',
      lines: [
        ...(part.form === 'strip' && saw !== 'mitre-saw' ? [SLENDER_MITRE] : []),
        `${saw === 'mitre-saw' ? 'On edge against the fence, the saw turned' : 'Blade tilted'} to ${c.angle} degrees; prove it on an offcut: two cuts together must make a right angle.`,
        far
          ? `Mark {0} from ${startDone ? 'the tip of the first mitre' : `the ${sideWords(part, 'start')}`} on that face: this is the long point.`
          : `Mark {0} from the sawn end on that face, only to clean it up: this is the long point.`,
        saw === 'mitre-saw'
          ? 'Cut so that the slope runs back from the mark; hold it with a clamp, never with fingers near the blade.'
          : bench.tool('guide-rail')
            ? 'The rail lies on the part, square across, its edge to the mark, and runs on over a strip of the same thickness laid beside it; the blade leans in under the rail, so that the slope runs in under the part.'
            : 'Lay a strip of the same thickness beside it to carry the saw, and cut so that the slope runs in under the part.',
      ],
      lengths: [at],
      cautions: saw === 'mitre-saw' ? [CAUTION.mitreSaw] : [CAUTION.saw, CAUTION.bevel],
    });
  }
}

function notches(bench: Bench, batch: Batch): void {
  const [part] = batch;
  for (const c of part.features.filter((f): f is Notch => f.kind === 'notch')) {
    const length = bench.set('marking', c.length, 'up');
    const width = bench.set('marking', c.width, 'up');
    bench.settings.push({
      id: `${part.mark}/notch-${c.end}-${c.edge}`,
      kind: 'notch',
      what: `Notch, at the ${sideWords(part, c.edge)}, the ${sideWords(part, c.end)} of`,
      parts: batch,
      does: { act: 'notch', workpieces: marksOf(batch), end: c.end, edge: c.edge, length, width },
      reference: `the ${sideWords(part, c.end)} and the ${sideWords(part, c.edge)}`,
      lines: [
        `Mark {0} in from the ${sideWords(part, c.end)} and {1} from the ${sideWords(part, c.edge)}, ${c.purpose}.`,
        'Saw inside the lines with a fine hand saw, and pare to them with a chisel.',
      ],
      lengths: [length, width],
    });
  }
}

function pockets(bench: Bench, batch: Batch): void {
  const [part] = batch;
  const all = part.features.filter((f): f is Pocket => f.kind === 'pocket');
  for (const edge of ['start', 'end', 'near', 'far'] as const)
    for (const face of ['under', 'show'] as const) {
      const here = all.filter((p) => p.edge === edge && p.face === face);
      if (here.length === 0) continue;
      const { from, turned } = referenceFor(part, edge);
      const along = inOrder(
        bench,
        here.map((p) => fromEdge(bench, part, edge, p.along, turned)),
        'pocket-jig',
      );
      const collar = part.thickness;
      bench.settings.push({
        id: `${part.mark}/pocket-${face}-${edge}`,
        kind: 'pocket',
        what: `${along.length > 1 ? 'Pocket holes' : 'Pocket hole'} at the ${sideWords(part, edge)} of`,
        parts: batch,
        does: { act: 'pocket', workpieces: marksOf(batch), face, edge, from, along, collar },
        tool: 'pocket-jig',
        times: along.length,
        faceUp: `${sideWords(part, face)} up`,
        reference: measuredFrom(part, from, face),
        lines: [
          `Set jig and bit collar for a board {${along.length}} thick.`,
          `Bore at ${placeholders(along.length)} from ${measuredFrom(part, from, face)}, ${along.length > 1 ? 'each middle on its' : 'its middle on the'} mark, into the ${sideWords(part, face)} towards the ${sideWords(part, edge)}.`,
        ],
        lengths: [...along, collar],
        cautions: [CAUTION.drill],
      });
    }
}

function holes(bench: Bench, batch: Batch): void {
  const [part] = batch;
  const all = part.features.filter((f): f is Hole => f.kind === 'hole');
  const rows = new Map<string, Hole[]>();
  for (const h of all) {
    const key = [
      h.side,
      h.use,
      bench.ledger.ticks(h.diameter),
      h.depth === undefined ? '' : bench.ledger.ticks(h.depth),
      h.counterbore === undefined ? '' : bench.ledger.ticks(h.counterbore.depth),
      h.middle ?? '',
    ].join(' ');
    const row = rows.get(key);
    if (row) row.push(h);
    else rows.set(key, [h]);
  }
  const seen = new Map<string, number>();
  // Rows of another width or depth on the same side are cards of their own.
  const nth = (side: string, use: string) => {
    const n = (seen.get(`${side} ${use}`) ?? 0) + 1;
    seen.set(`${side} ${use}`, n);
    return n === 1 ? '' : `-${n}`;
  };
  for (const row of rows.values()) {
    const { side, use } = row[0]!;
    if (use === 'cup') cupHoles(bench, batch, row);
    else if (use === 'cable' || use === 'vent') openHoles(bench, batch, row);
    else if (use === 'row' || use === 'leveller') rowHoles(bench, batch, row);
    else if (use === 'finger') fingerHoles(bench, batch, row);
    else if (use === 'pin') pinHoles(bench, batch, row);
    else if (use === 'dowel') dowelHoles(bench, batch, row, nth(side, use));
    else if (side !== 'show' && side !== 'under') edgeHoles(bench, batch, row, nth(side, use));
    else {
      faceHoles(bench, batch, row, nth(side, use));
    }
  }
}

function edgeHoles(bench: Bench, batch: Batch, row: readonly Hole[], suffix: string): void {
  const [part] = batch;
  const first = row[0]!;
  const edge = first.side as WorkEdge;
  const { from, turned } = referenceFor(part, edge);
  const sorted = [...row].sort((a, b) => bench.ledger.ticks(a.at[0]) - bench.ledger.ticks(b.at[0]));
  if (turned) sorted.reverse();
  const along = sorted.map((h) => bench.set('drill', fromEdge(bench, part, edge, h.at[0], turned)));
  const up = sorted.map((h) => bench.set('drill', h.at[1]));
  const diameter = first.diameter;
  const depth = first.depth === undefined ? undefined : bench.set('drill', first.depth, 'up');
  const lengths = [...along, up[0]!, diameter, ...(depth === undefined ? [] : [depth])];
  const n = along.length;
  bench.settings.push({
    id: `${part.mark}/drill-${edge}${suffix}`,
    kind: 'drill',
    what: `Pilot hole${n > 1 ? 's' : ''} in the ${sideWords(part, edge)} of`,
    parts: batch,
    does: {
      act: 'drill',
      workpieces: marksOf(batch),
      side: edge,
      from,
      at: along.map((a, i) => [a, up[i]!] as const),
      diameter,
      ...(depth === undefined ? {} : { depth }),
    },
    tool: 'drill',
    times: n * 0.5,
    faceUp: `${sideWords(part, edge)} up, the part clamped on edge`,
    reference: `the ${sideWords(part, from)}`,
    lines: [
      `Line along the ${inTheMiddle(bench, part, up[0]!) ? `middle of the edge, {${n}} from either face: run the gauge from both, the middle lies between its lines` : `edge {${n}} from the ${sideWords(part, 'under')}`}; on it mark ${placeholders(n)} from the ${sideWords(part, from)}.`,
      `Drill {${n + 1}}${depth === undefined ? '' : `, {${n + 2}} deep`}, square to the edge: a flag of tape on the bit shows the depth.`,
    ],
    lengths,
    cautions: [CAUTION.drill],
  });
}

function faceHoles(bench: Bench, batch: Batch, row: readonly Hole[], suffix: string): void {
  const [part] = batch;
  const first = row[0]!;
  const face = first.side as 'show' | 'under';
  const ref = referenceFor(part, 'near');
  // Both from the sides that a part is set by: what was rounded off its size then lies beyond the holes.
  const side = sideOfHoles(bench, part, row);
  const places = placesOnFace(bench, part, row, 'drill', side);
  const depth = first.depth === undefined ? undefined : bench.set('drill', first.depth, 'up');
  const wide = first.counterbore && {
    diameter: first.counterbore.diameter,
    depth: bench.set('drill', first.counterbore.depth, 'down'),
  };
  const lengths: Traced[] = [
    first.diameter,
    ...(wide ? [wide.diameter, wide.depth] : []),
    ...(first.countersink === undefined ? [] : [first.countersink]),
    ...(depth === undefined ? [] : [depth]),
  ];
  const drill =
    depth === undefined
      ? wide
        ? 'Forstner bit of {1} first, {2} deep for a plug; then drill {0} through the middle of each, right into the waste board.'
        : `Drill {0} right through into the waste board${first.countersink === undefined ? '' : '; countersink to {1} wide, so that heads lie just level'}.`
      : `Drill {0}, {${lengths.length - 1}} deep and no deeper: a flag of tape on the bit shows it.`;
  const end = measuredFrom(part, ref.from, face);
  const lines = places.lines(lengths);
  bench.settings.push({
    id: `${part.mark}/drill-${face}-${first.use}${suffix}`,
    kind: 'drill',
    what: `${depth === undefined ? 'Screw' : 'Pilot'} hole${row.length > 1 ? 's' : ''} ${depth === undefined ? 'through' : `in the ${sideWords(part, face)} of`}`,
    parts: batch,
    does: {
      act: 'drill',
      workpieces: marksOf(batch),
      side: face,
      from: ref.from,
      ...(side.turned ? { acrossFrom: 'far' as const } : {}),
      at: places.at,
      ...(places.middle.length > 0 ? { middle: places.middle } : {}),
      diameter: first.diameter,
      ...(depth === undefined ? {} : { depth }),
      ...(first.countersink === undefined ? {} : { countersink: first.countersink }),
      ...(wide ? { counterbore: wide } : {}),
    },
    tool: 'drill',
    times: row.length * 0.5,
    faceUp: `${sideWords(part, face)} up${depth === undefined ? ', a waste board under it' : ''}`,
    reference: `${end} and the ${sideWords(part, side.from)}`,
    lines: [...places.found, markLine(row.length), ...lines, drill],
    lengths,
    cautions: [CAUTION.drill],
  });
}

/** Flat-bottomed holes for hinge cups, measured from the edge that the hinges are on. */
function cupHoles(bench: Bench, batch: Batch, row: readonly Hole[]): void {
  const [part] = batch;
  const first = row[0]!;
  const l = bench.ledger;
  const face = first.side as 'show' | 'under';
  const ref = referenceFor(part, 'near');
  const low = 2 * l.ticks(first.at[1]) < l.ticks(part.width);
  const edge = low ? 'near' : 'far';
  const across = bench.set('drill', fromEdge(bench, part, 'start', first.at[1], !low));
  const along = [...row]
    .sort((a, b) => l.ticks(a.at[0]) - l.ticks(b.at[0]))
    .map((h) => bench.set('drill', fromEdge(bench, part, 'near', h.at[0], ref.turned)));
  const depth = bench.set('drill', first.depth!, 'up');
  const n = along.length;
  bench.settings.push({
    id: `${part.mark}/drill-${face}-cup`,
    kind: 'drill',
    what: 'Holes for the hinge cups in',
    parts: batch,
    does: {
      act: 'drill',
      workpieces: marksOf(batch),
      side: face,
      from: ref.from,
      ...(low ? {} : { acrossFrom: 'far' as const }),
      at: along.map((a) => [a, across] as const),
      diameter: first.diameter,
      depth,
      bit: 'forstner',
    },
    tool: 'drill',
    times: n * 2,
    faceUp: `${sideWords(part, face)} up`,
    reference: `the ${sideWords(part, ref.from)} and the ${sideWords(part, edge)}`,
    lines: [
      `Line {${n}} from the ${sideWords(part, edge)}; on it mark ${placeholders(n)} from the ${sideWords(part, ref.from)}.`,
      `Forstner bit {${n + 1}} wide, {${n + 2}} deep and no deeper: try it on an offcut of the same board, and set the stop by that.`,
      'A drill press or a drill guide keeps the hole square; the cup must lie flat.',
    ],
    lengths: [...along, across, first.diameter, depth],
    cautions: [CAUTION.drill],
  });
}

function inOrder(bench: Bench, places: readonly Traced[], tool: 'pocket-jig'): readonly Traced[] {
  return places.map((p) => bench.set(tool, p)).sort((a, b) => bench.ledger.ticks(a) - bench.ledger.ticks(b));
}

/** Is a line along an edge half way through the board, as far as it can be set? */
function inTheMiddle(bench: Bench, part: Part, up: Traced): boolean {
  const t = (x: Traced) => bench.ledger.ticks(x);
  return Math.abs(2 * t(up) - t(part.thickness)) <= t(bench.finest('drill'));
}
