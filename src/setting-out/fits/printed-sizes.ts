import { FIT_LIMITS } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Part } from '../part.ts';
import { type CutSize, sawnSize, sawStep } from './cut-size.ts';
import type { Fit, FitMember, PrintedFit } from './fit.ts';

type Size = 'length' | 'width';

/** A fit and those of its members that are cut to it: the part it may be cut by, and its twins of the same record. */
interface Cutting {
  readonly fit: Fit;
  readonly closers: readonly FitMember[];
}

/**
 * Sizes as cards print them: each on the grid of what its tool can set, and so that no gap is printed narrower than
 * it was drawn. A part that is cut to fit is worked out from the printed sizes of what it must fit.
 */
export class PrintedSizes {
  private readonly draft: Draft;
  private readonly step: Traced;
  private readonly cuttings = {
    length: new Map<DraftPart, Cutting[]>(),
    width: new Map<DraftPart, Cutting[]>(),
  };
  private readonly bySaw = new Map<DraftPart, CutSize>();
  private readonly known = { length: new Map<DraftPart, Traced>(), width: new Map<DraftPart, Traced>() };
  private readonly alike: ReadonlyMap<DraftPart, readonly DraftPart[]>;

  constructor(draft: Draft) {
    this.draft = draft;
    this.step = sawStep(draft.ledger, draft.job.shop);
    this.alike = new Map(draft.alike.flatMap((group) => group.map((p) => [p, group] as const)));
    for (const fit of draft.fits) {
      if (fit.toFit === undefined) continue;
      const { record } = draft.part(fit.toFit);
      const closers = fit.loop.filter((m) => m.sign < 0 && this.isToCut(m, record));
      for (const m of closers) {
        const of = this.cuttings[this.sizeOf(m)!];
        const part = draft.part(m.part!);
        of.set(part, [...(of.get(part) ?? []), { fit, closers }]);
      }
    }
  }

  /** A size still to be cut, of a part of the record. */
  private isToCut(m: FitMember, record: string): boolean {
    const size = this.sizeOf(m);
    if (m.part === undefined || size === undefined) return false;
    const part = this.draft.part(m.part);
    return part.record === record && this.draft.made(part, size) === undefined;
  }

  /** The sizes that a part is cut to, and those it is brought to at its opening. */
  of(part: DraftPart): Pick<Part, 'cut' | 'fitted'> {
    const fitted = { length: this.cut(part, 'length'), width: this.cut(part, 'width') };
    if (!part.cutLater) return { cut: fitted };
    const sawn = sawnSize(this.draft.ledger, this.step, part);
    const cut = {
      length: this.draft.sawn(part, 'length') ?? sawn.length,
      width: this.draft.sawn(part, 'width') ?? sawn.width,
    };
    return { cut, fitted };
  }

  /** Every fit with the printed size of each of its members, and the gap that these leave. */
  fits(): readonly PrintedFit[] {
    const l = this.draft.ledger;
    return this.draft.fits.map((fit) => {
      const loop = fit.loop.map((m) => ({ printed: this.printed(m), ...this.asMade(m) }));
      const all = (sign: 1 | -1) => loop.filter((m) => m.sign === sign).map((m) => this.timesOver(m));
      const opens = l.sum('what opens the gap, as printed', ...all(1));
      const later = loop.some((m) => this.isCutLater(m));
      return {
        printed: l.less('gap of the printed sizes', opens, ...all(-1)),
        ...fit,
        loop,
        ...(later ? { cutLater: true } : {}),
      };
    });
  }

  private cut(part: DraftPart, size: Size): Traced {
    const sizes = this.known[size];
    const known = sizes.get(part);
    if (known !== undefined) return known;
    // What is made stays as it is.
    const made = this.draft.made(part, size);
    if (made !== undefined) {
      sizes.set(part, made);
      return made;
    }
    const twin = size === 'length' ? this.likeTwin(part) : undefined;
    if (twin !== undefined) {
      sizes.set(part, twin);
      return twin;
    }
    const bare = this.bare(part)[size];
    // What rests on this one meanwhile takes it as the saw alone has it.
    sizes.set(part, bare);
    const beside = size === 'length' ? this.besideNeighbours(part, bare) : undefined;
    if (beside !== undefined) {
      sizes.set(part, beside);
      return beside;
    }
    const strip = part.form === 'strip' && size === 'width';
    // What is trimmed later is cut long enough; a strip that ends beside its neighbours has its length from the saw.
    const trimmed = part.rough && !part.cutLater && !(part.form === 'strip' && part.between);
    const fitted =
      trimmed || strip
        ? bare
        : (this.cuttings[size].get(part) ?? []).reduce((so, c) => this.cutTo(c, part, size, so), bare);
    sizes.set(part, fitted);
    return fitted;
  }

  /** The length of a strip that ends where its panel goes into the neighbours: these come no further apart than that was cut. */
  private besideNeighbours(strip: DraftPart, bare: Traced): Traced | undefined {
    const on = this.draft.besideNeighbours.get(strip);
    if (!on) return undefined;
    const l = this.draft.ledger;
    const clear = l.less(
      'between the neighbours, as the panel is cut',
      this.cut(on.panel, 'length'),
      ...on.goesIn,
    );
    if (l.ticks(clear) >= l.ticks(bare)) return bare;
    return l.round('as fine as the saw is set, and no more than there is room', clear, this.step, 'down');
  }

  /** The length that a part has from one that it must be like: from one that is made, or from the first of them. */
  private likeTwin(part: DraftPart): Traced | undefined {
    const group = this.alike.get(part);
    if (!group) return undefined;
    for (const other of group) {
      const made = this.draft.made(other, 'length');
      if (made !== undefined)
        return this.draft.ledger.round(
          `as long as the ${other.name}, as fine as the saw is set`,
          made,
          this.step,
          'nearest',
        );
    }
    return group[0] === part ? undefined : this.cut(group[0]!, 'length');
  }

  /** A part's sizes by the saw alone; of what is cut to its opening later, those that it has then. */
  private bare(part: DraftPart): CutSize {
    const known = this.bySaw.get(part);
    if (known) return known;
    const { form, length, width, between } = part;
    const cut = sawnSize(
      this.draft.ledger,
      this.step,
      part.cutLater ? { form, length, width, between } : part,
      this.draft.spacers.has(part),
    );
    this.bySaw.set(part, cut);
    return cut;
  }

  /** Is the member a size that is cut once the rest of the loop can be measured? */
  private isCutLater(m: FitMember): boolean {
    return this.sizeOf(m) !== undefined && this.draft.part(m.part!).cutLater === true;
  }

  /** The size for one fit: as it is where the printed gap is neither narrower nor wider than rounding may leave it. */
  private cutTo({ fit, closers }: Cutting, part: DraftPart, size: Size, so: Traced): Traced {
    const l = this.draft.ledger;
    const t = (x: Traced) => l.ticks(x);
    const others = fit.loop.filter((m) => !closers.includes(m));
    const own = closers.reduce((sum, m) => {
      const other = this.draft.part(m.part!);
      const which = this.sizeOf(m)!;
      const bare = other === part ? so : this.bare(other)[which];
      return sum + t(bare) * (m.times ?? 1);
    }, 0);
    const over = (sign: 1 | -1) =>
      others.filter((m) => m.sign === sign).map((m) => this.timesOver({ printed: this.printed(m), ...m }));
    const keeps = this.narrowest(fit);
    const room = l.less(
      'what the printed sizes of the others leave, less the gap',
      l.sum('what opens the gap, as printed', ...over(1)),
      ...over(-1),
      keeps,
    );
    const spare = t(room) - own;
    const most = fit.most === undefined ? undefined : t(fit.most) - t(keeps);
    if (spare >= 0 && (most === undefined || spare <= most)) return so;
    const weights = closers.map((m) => m.times ?? 1);
    const mine = closers.findIndex((m) => m.part === part.id && this.sizeOf(m) === size);
    const share = closers.length === 1 ? room : l.share('an equal share for each', room, weights, mine);
    if (t(share) <= t(this.step)) return so;
    const fitted = l.round(
      'as fine as the saw is set, and no more than there is room',
      share,
      this.step,
      'down',
    );
    // Another fit may ask for less.
    return spare < 0 && t(fitted) > t(so) ? so : fitted;
  }

  /** Rounding may take a quarter of what a gap can lose, and never turns room into none. */
  private narrowest({ gap, least, keepsLeast }: Fit): Traced {
    const l = this.draft.ledger;
    if (keepsLeast && l.ticks(gap) < l.ticks(least)) return least;
    if (l.ticks(gap) <= 0 || l.ticks(least) >= l.ticks(gap)) return gap;
    const spent = l.ratio(
      'what rounding may take of it',
      l.less('what the gap can lose', gap, least),
      FIT_LIMITS.rounding,
    );
    return l.greatest('the narrowest gap to print', l.less('gap less that', gap, spent), this.draft.nothing);
  }

  /** A member as its card prints it. */
  private printed(m: FitMember): Traced {
    if (m.printed !== undefined) return m.printed;
    const l = this.draft.ledger;
    if (m.made.by !== 'tool') return m.length;
    const part = m.part === undefined ? undefined : this.draft.part(m.part);
    const size = this.sizeOf(m);
    if (!part || !size)
      return l.round('as fine as it is set', m.length, this.draft.stepOf(m.made.kind), 'nearest');
    // What is trimmed later is brought to its finished size then.
    if (part.rough && !part.cutLater && l.ticks(part.rough[size]) !== l.ticks(part[size]))
      return l.round('finished size, as fine as the saw is set', part[size], this.step, 'nearest');
    return this.cut(part, size);
  }

  /** A size that was found on the bench is off as far as it was read, no more. */
  private asMade(m: FitMember): FitMember {
    const size = this.sizeOf(m);
    const made = size && this.draft.made(this.draft.part(m.part!), size);
    return made === undefined ? m : { ...m, made: { by: 'measured' } };
  }

  /** Which size of its part a sawn member is. */
  private sizeOf(m: FitMember): Size | undefined {
    if (m.part === undefined || m.made.by !== 'tool' || !SAWS.has(m.made.kind)) return undefined;
    const part = this.draft.part(m.part);
    return m.length === part.length ? 'length' : m.length === part.width ? 'width' : undefined;
  }

  private timesOver(m: FitMember & { readonly printed: Traced }): Traced {
    return (m.times ?? 1) === 1
      ? m.printed
      : this.draft.ledger.times('as often as it stands there', m.printed, m.times!);
  }
}

const SAWS: ReadonlySet<string> = new Set(['circular-saw', 'mitre-saw']);
