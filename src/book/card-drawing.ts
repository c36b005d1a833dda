import { type Act, cutsOfAct, type Operation } from '../build/index.ts';
import type { Ticks, Traced } from '../measure/index.ts';
import { partsAndBoards } from '../setting-out/index.ts';
import type { BookInput } from './book-input.ts';
import { cutDrawing } from './cut-drawing.ts';
import type { Drawing } from './drawing.ts';
import { isometric } from './isometric.ts';
import type { Lengths } from './lengths.ts';
import { type FaceWork, faceDrawing } from './part-drawing.ts';
import { bevelSection, rabbetSection, splineSection } from './section-drawing.ts';
import type { TextMeasure } from './text-measure.ts';

/** The room for a card's drawing. */
const ROOM = { width: 58, height: 40 };
const ASSEMBLY = { width: 50, height: 28 };

/**
 * What the cards have done so far, followed from card to card: how large each workpiece is by now, and which parts
 * stand in each assembly.
 */
export class Progress {
  private readonly size = new Map<string, { readonly length: Ticks; readonly width: Ticks }>();
  private readonly standing = new Map<string, string[]>();
  private readonly input: BookInput;
  /** The last assembly drawn: setting a part and screwing it show the same. */
  private drawn: { readonly key: string; readonly drawing: Drawing } | undefined;

  constructor(input: BookInput) {
    this.input = input;
    const at = (t: Traced) => input.setOut.ledger.ticks(t);
    for (const w of input.build.stock) this.size.set(w.name, { length: at(w.length), width: at(w.width) });
  }

  /** The drawing for an operation, if one helps; takes note of what the operation does. */
  next(operation: Operation, lengths: Lengths, type: TextMeasure): Drawing | undefined {
    const act = operation.does;
    if (act.act === 'glue-up') this.glueUp(act.as);
    if (act.act === 'saw' || act.act === 'saw-alike') {
      // Of what is cut at one setting the first is drawn.
      const [first] = cutsOfAct(act).map((cut) => this.saw(cut, operation, lengths, type));
      return first;
    }
    if (act.act === 'rip-apart') return this.ripApart(act, lengths, type);
    if (act.act === 'set' || act.act === 'screw') return this.assemble(act);
    if (act.act === 'rabbet') return rabbetSection(act.width, act.depth, lengths);
    if (act.act === 'bevel') return bevelSection(act.angle);
    if (act.act === 'spline-groove') return splineSection();
    const work = this.faceWork(act);
    if (!work) return undefined;
    const room = { width: ROOM.width - 16, height: ROOM.height - 16 };
    return faceDrawing(work, this.input.setOut.ledger, lengths, room, type);
  }

  /** A panel is as large as its boards until it is cut. */
  private glueUp(mark: string): void {
    const { ledger, parts, gluedPanels } = this.input.setOut;
    const glued = gluedPanels.find((g) => parts.some((p) => p.id === g.panel && p.mark === mark));
    if (!glued) return;
    const { length, width } = glued.raw;
    this.size.set(mark, { length: ledger.ticks(length), width: ledger.ticks(width) });
  }

  private saw(
    act: Act & { act: 'saw' },
    operation: Operation,
    lengths: Lengths,
    type: TextMeasure,
  ): Drawing | undefined {
    const size = this.size.get(act.workpiece) ?? this.partSize(act.workpiece);
    if (!size) return undefined;
    const { ledger } = this.input.setOut;
    const at = ledger.ticks(act.at);
    const along = act.across;
    const kerf = this.kerf(act.workpiece);
    const first = act.keep === 'before' ? at : at - kerf;
    const second = size[along] - at - (act.keep === 'before' ? kerf : 0);
    [first, second].forEach((s, i) => {
      const y = act.yields[i as 0 | 1];
      const half = { ...size, [along]: Math.max(0, s) as Ticks };
      if (y) this.size.set(y.name, y.turned ? { length: half.width, width: half.length } : half);
    });
    if (operation.kind === 'true-edge' || at <= 0 || at >= size[along]) return undefined;
    const [before, behind] = act.yields;
    const { railWidth } = this.input;
    const rail =
      railWidth === undefined || (operation.stage !== 'sheets' && operation.stage !== 'panels')
        ? {}
        : { rail: { on: act.keep, width: railWidth } };
    const cut = {
      ...size,
      across: along,
      at: act.at,
      yields: [before?.name, behind?.name] as const,
      ...rail,
    };
    return cutDrawing(cut, ledger, lengths, { width: ROOM.width - 16, height: 20 }, type);
  }

  /** Both cuts, each from its own edge. */
  private ripApart(
    act: Act & { act: 'rip-apart' },
    lengths: Lengths,
    type: TextMeasure,
  ): Drawing | undefined {
    const size = this.size.get(act.workpiece) ?? this.partSize(act.workpiece);
    if (!size) return undefined;
    const { railWidth } = this.input;
    const cut = {
      ...size,
      across: 'width' as const,
      at: act.widths[0],
      fromFar: act.widths[1],
      yields: act.yields,
      ...(railWidth === undefined ? {} : { rail: { on: 'before' as const, width: railWidth } }),
    };
    return cutDrawing(cut, this.input.setOut.ledger, lengths, { width: ROOM.width - 22, height: 20 }, type);
  }

  private assemble(act: Act & { act: 'set' | 'screw' }): Drawing | undefined {
    const there = this.standing.get(act.into) ?? [];
    const moving = this.partsOf(act.workpiece);
    if (act.act === 'set')
      this.standing.set(act.into, [...there, ...moving.filter((p) => !there.includes(p))]);
    const parts = [...new Set([...there, ...moving])];
    if (parts.length < 2 || moving.length === 0) return undefined;
    const key = `${parts.join(' ')}|${moving.join(' ')}`;
    const drawing =
      this.drawn?.key === key
        ? this.drawn.drawing
        : isometric(this.input.setOut, { parts, marked: moving, room: ASSEMBLY });
    this.drawn = { key, drawing };
    return drawing;
  }

  private partsOf(name: string): string[] {
    const part = this.input.setOut.parts.find((p) => p.mark === name);
    return part ? [part.id] : (this.standing.get(name) ?? []);
  }

  private partSize(mark: string): { length: Ticks; width: Ticks } | undefined {
    const part = partsAndBoards(this.input.setOut).find((p) => p.mark === mark);
    const { ledger } = this.input.setOut;
    return part && { length: ledger.ticks(part.length), width: ledger.ticks(part.width) };
  }

  /** The kerf of the lot that a workpiece was sawn from; workpieces are named after their sheet. */
  private kerf(workpiece: string): Ticks {
    const { breakdown, setOut } = this.input;
    const lot = breakdown.lots.find((l) => l.sheets.some((s) => workpiece.startsWith(s.name)));
    const kerf = (lot ?? breakdown.lots[0])?.problem.kerf;
    return kerf === undefined ? (0 as Ticks) : setOut.ledger.ticks(kerf);
  }

  /** A channel as the passes of the bit make it. */
  private band(act: Act & { act: 'groove' }, fences: readonly Traced[]): FaceWork['rabbets'][number] {
    const l = this.input.setOut.ledger;
    const [first, last] = [fences[0]!, fences.at(-1)!];
    const width = l.sum('width that the bit leaves', act.bit, l.less('between the passes', last, first));
    return { edge: act.edge, inset: first, width };
  }

  /** Every hole of the rows; the first and the second have figures, and the rest follows from them. */
  private pinRows(act: Act & { act: 'pin-holes' }): FaceWork['holes'] {
    const l = this.input.setOut.ledger;
    return act.rows.flatMap((row) =>
      Array.from({ length: row.count }, (_, i) => i)
        .filter((i) => !row.leftOut.includes(i + 1))
        .flatMap((i) => {
          const along =
            i === 0 || row.pitch === undefined
              ? row.first
              : l.sum('place of the hole', row.first, l.times('pitches up to here', row.pitch, i));
          return row.lines.map((line) => ({
            at: [along, line] as const,
            from: act.from,
            ...((row.acrossFrom ?? act.acrossFrom) === 'far' ? { acrossFrom: 'far' as const } : {}),
            ...(i > 1 ? { follows: true as const } : {}),
          }));
        }),
    );
  }

  private faceWork(act: Act): FaceWork | undefined {
    if (
      act.act !== 'pocket' &&
      act.act !== 'drill' &&
      act.act !== 'groove' &&
      act.act !== 'slot' &&
      act.act !== 'biscuit-slot' &&
      act.act !== 'pin-holes'
    )
      return undefined;
    const part = partsAndBoards(this.input.setOut).find((p) => p.mark === act.workpieces[0]);
    if (!part) return undefined;
    const none = { length: part.length, width: part.width, rabbets: [], pockets: [], holes: [], bevels: [] };
    if (act.act === 'groove')
      return { ...none, face: act.face, rabbets: act.channels.map((c) => this.band(act, c)) };
    if (act.act === 'pin-holes') return { ...none, face: act.side, holes: this.pinRows(act) };
    if (act.act === 'slot') return { ...none, face: act.face, slots: [act] };
    const { from } = act;
    if (act.act === 'pocket')
      return { ...none, face: act.face, pockets: [{ edge: act.edge, along: act.along, from }] };
    const holes = act.at.map((at) => ({
      at,
      from,
      ...(act.act === 'drill' && act.open ? { diameter: act.diameter } : {}),
      ...(act.acrossFrom === undefined ? {} : { acrossFrom: act.acrossFrom }),
      ...(act.act === 'drill' && act.middle ? { middle: act.middle } : {}),
    }));
    if (act.side === 'show' || act.side === 'under') return { ...none, face: act.side, holes };
    const along = act.side === 'near' || act.side === 'far' ? part.length : part.width;
    return { ...none, length: along, width: part.thickness, face: 'show', holes };
  }
}
