import {
  formulaNames,
  type JobDocument,
  type Lot,
  type NamedSize,
  type RecordOf,
  type RecordTree,
  type ToolKind,
  treeOf,
} from '../job/index.ts';
import { SETTING_OUT } from '../materials/index.ts';
import { Ledger, parseLength, parseMass, type Rounding, type Traced } from '../measure/index.ts';
import type { Cure, Snag } from '../snag/index.ts';
import type { JoinedBlank } from './blanks/joined-blank.ts';
import type { Cleat } from './case/cleat.ts';
import type { Levellers } from './case/leveller.ts';
import type { ScribedTop } from './case/scribed-top.ts';
import { Dimensions } from './dimensions.ts';
import type { DoorLeaf } from './doors/door-leaf.ts';
import type { Drawer } from './drawers/drawer.ts';
import type { EdgeSide } from './edging/edged-front.ts';
import type { Feature } from './feature.ts';
import type { FinishedFace, Fit } from './fits/fit.ts';
import type { GluedPanel } from './glued/glued-panel.ts';
import { finishedThickness } from './glued/panel-of-boards.ts';
import type { OnPanel, Taken } from './holes/panel-holes.ts';
import type { Fastener, Joint } from './joints/joint.ts';
import type { Peg } from './joints/peg.ts';
import type { Lid } from './lids/lid.ts';
import { type Family, type Letter, letterOf, markFor } from './mark.ts';
import type { StockForm, UncutPart } from './part.ts';
import type { PinnedShelf } from './pins/pinned-shelf.ts';
import { type Axis, axisOf, type Direction, type TracedBox, thirdDirection } from './place.ts';
import type { BoughtPull } from './pulls/bought-pull.ts';
import type { Opening, Surface } from './set-out.ts';
import type { SlidingSet } from './sliding/sliding-set.ts';
import { doorwaySize } from './spaces/doorways.ts';
import { reckon } from './spaces/formulas.ts';
import { roomSize } from './spaces/room.ts';

/** Three traced lengths along x, y and z. */
export type Triple = readonly [Traced, Traced, Traced];

/** How far a panel goes into its neighbours at its two ends; absent where it only meets them. */
export interface Tongues {
  readonly start?: Traced | undefined;
  readonly end?: Traced | undefined;
}

/** A part as a room of the case describes it: a box in the piece and the way it lies in it. */
export interface PanelSpec {
  readonly record: string;
  readonly role: string;
  readonly name: string;
  readonly family: Family;
  readonly lot: Lot;
  /** Least corner in the piece, and size along x, y and z. */
  readonly at: Triple;
  readonly size: Triple;
  readonly length: Direction;
  readonly width: Direction;
  readonly hand?: 'left' | 'right';
  readonly between?: boolean;
  readonly rough?: NonNullable<UncutPart['rough']>;
  readonly cutLater?: true;
  readonly tongues?: Tongues;
  readonly joins?: NonNullable<UncutPart['joins']>;
  /** Its own, where that is not its lot's: a panel glued up from strips is cut like a sheet. */
  readonly form?: StockForm;
  /** Set for a board that is glued up to a panel, which is a part in its place; and for what stands at a slant, in a mitre. */
  readonly apart?: true;
}

/** A part under way: features are still added to it. */
export interface DraftPart extends Omit<UncutPart, 'features' | 'strip'> {
  readonly features: Feature[];
  strip: UncutPart['strip'];
  /** The number in its mark. */
  readonly nth: number;
  readonly box: TracedBox;
  readonly tongues: Tongues;
}

/**
 * A piece while it is being set out: what has been worked out so far, and the few ways to add to it. One draft
 * serves one call of `setOut` and is never seen outside the room.
 */
export class Draft {
  readonly ledger = new Ledger();
  readonly tree: RecordTree;
  readonly parts: DraftPart[] = [];
  readonly joints: Joint[] = [];
  readonly fasteners: Fastener[] = [];
  readonly pegs: Peg[] = [];
  /** The strips on the edges of doors and drawers' fronts, and on the ends of a case's panels, by board. */
  readonly edged = new Map<string, ReadonlyMap<EdgeSide, DraftPart>>();
  /** Strips that end beside the neighbours of their panel, which goes into these by so much: they are no longer than it was cut. */
  readonly besideNeighbours = new Map<
    DraftPart,
    { readonly panel: DraftPart; readonly goesIn: readonly Traced[] }
  >();
  /** Bottoms and lids of cases in a row that something is bored for: cut to the nearest step, so that the row comes out as it was drawn. */
  readonly spacers = new Set<DraftPart>();
  /** Holes and slots through panels, for what comes to stand beside these later. */
  readonly takenOut: { readonly record: OnPanel; readonly part: DraftPart; readonly taken: Taken }[] = [];
  readonly openings: Opening[] = [];
  readonly surfaces: Surface[] = [];
  readonly doors: DoorLeaf[] = [];
  readonly fits: Fit[] = [];
  /** Parts that must be of one length. */
  alike: readonly (readonly DraftPart[])[] = [];
  /** The finished faces in the gaps of fits, by their places in the list. */
  readonly faced = new Map<number, readonly FinishedFace[]>();
  readonly pinned: PinnedShelf[] = [];
  readonly sliding: SlidingSet[] = [];
  readonly drawers: Drawer[] = [];
  readonly lids: Lid[] = [];
  readonly scribedTops: ScribedTop[] = [];
  readonly pulls: BoughtPull[] = [];
  readonly levellers: Levellers[] = [];
  readonly gluedPanels: GluedPanel<DraftPart>[] = [];
  readonly cleats: Cleat<DraftPart>[] = [];
  readonly joinedBlanks: JoinedBlank<DraftPart>[] = [];
  readonly splines: DraftPart[] = [];
  readonly snags: Snag[] = [];
  readonly dimensions = new Dimensions();
  /** Measured dimensions that something was set out by. */
  readonly measuredUsed = new Set<string>();
  /** Names of parts without their place, where no other part is called so, by the parts' ids: `left door`. */
  readonly shortNames = new Map<string, string>();
  readonly job: JobDocument;
  /** Clear sizes of openings, for formulas; set as soon as the case's planes can be worked out. */
  clearSize: (opening: string, size: 'width' | 'height' | 'depth') => Traced = () => this.nothing;
  private readonly marks = new Map<Letter, number>();
  private readonly byId = new Map<string, DraftPart>();
  private readonly byPart = new Map<string, Joint[]>();
  /** How many joints are in that list: it is brought up to date when it is asked for. */
  private jointsKnown = 0;
  private readonly readAlready = new Map<string, Traced>();
  private readonly lengthsRead = new Map<string, ReturnType<typeof parseLength>>();
  // The same by record, lot and kind of tool: they are asked for thousands of times, and a path is dear to write.
  private readonly fieldsRead = new Map<object, Map<string, Traced>>();
  private readonly thicknesses = new Map<Lot, Traced>();
  private readonly steps = new Map<ToolKind, Traced>();
  private formulaNames: ReadonlyMap<string, NamedSize> | undefined;
  /** Sizes of the moment of the cards that are ticked, by dimension; the latest counts. */
  private readonly done: ReadonlyMap<string, () => Traced>;

  constructor(job: JobDocument) {
    this.job = job;
    this.tree = treeOf(job);
    this.done = new Map(
      (job.work.done ?? []).flatMap(({ sizes = {} }, i) =>
        Object.entries(sizes).map(([name, text]) => [
          name,
          () => this.typed(`work/done/${i}/sizes/${name}`, text),
        ]),
      ),
    );
  }

  private get isMeasured(): boolean {
    return this.done.size > 0 || this.job.work.measured !== undefined;
  }

  get piece(): RecordOf<'piece'> {
    const { piece } = this.tree;
    if (!piece) throw new Error('unchecked design: no piece');
    return piece;
  }

  /** Nothing, as a traced length. */
  get nothing(): Traced {
    return this.ledger.row(SETTING_OUT.nothing);
  }

  /** A length typed in a field of a record; nothing when the field is absent. */
  field<R extends { readonly id: string }>(record: R, field: keyof R & string): Traced {
    const typed = record[field];
    if (typeof typed !== 'string') return this.nothing;
    const read = this.fieldsRead.get(record) ?? new Map<string, Traced>();
    this.fieldsRead.set(record, read);
    const known = read.get(field);
    if (known !== undefined) return known;
    const traced = this.typed(`design/records/${record.id}/${field}`, typed);
    read.set(field, traced);
    return traced;
  }

  /** A length typed at a path of the document, or what the formula there comes to. */
  typed(path: string, text: string): Traced {
    const known = this.readAlready.get(path);
    if (known !== undefined) return known;
    const read = this.lengthOf(text);
    const traced = read.ok
      ? this.ledger.document(path, read.value, text)
      : reckon(this, path, text, this.names, (name) => this.named(name));
    this.readAlready.set(path, traced);
    return traced;
  }

  /** What a text says as a length: a document says the same few over and over. */
  private lengthOf(text: string): ReturnType<typeof parseLength> {
    const known = this.lengthsRead.get(text);
    if (known) return known;
    const read = parseLength(text, this.job.shop.units);
    this.lengthsRead.set(text, read);
    return read;
  }

  /** The joints so far that are made by a part: it is their `part`. */
  jointsOf(part: string): readonly Joint[] {
    for (; this.jointsKnown < this.joints.length; this.jointsKnown++) {
      const joint = this.joints[this.jointsKnown]!;
      const list = this.byPart.get(joint.part);
      if (list) list.push(joint);
      else this.byPart.set(joint.part, [joint]);
    }
    return this.byPart.get(part) ?? [];
  }

  /** What was found on the bench for a dimension; undefined when it wasn't measured. */
  measured(dimension: string): Traced | undefined {
    const typed = this.job.work.measured?.[dimension];
    if (typed === undefined) return undefined;
    const read = parseLength(typed, this.job.shop.units);
    if (!read.ok) throw new Error(`unchecked length of ${dimension}: ${read.problem}`);
    this.measuredUsed.add(dimension);
    return this.ledger.measured(dimension, read.value);
  }

  /** The size that a part was made to, as measured on the bench or as it was when its card was ticked. */
  made(part: UncutPart, size: 'length' | 'width'): Traced | undefined {
    if (this.isMeasured)
      for (const name of [part.name, part.mark, part.id, this.shortNames.get(part.id)]) {
        if (name === undefined) continue;
        const found = this.measured(`${name}.${size}`) ?? this.done.get(`${name}.${size}`)?.();
        if (found !== undefined) return found;
      }
    // What is cut to its opening is too long when it comes off the sheet.
    return part.cutLater ? undefined : this.sawn(part, size);
  }

  /** The size that a part has off its sheet, where that is cut. */
  sawn(part: UncutPart, size: 'length' | 'width'): Traced | undefined {
    const at = (this.job.work.made ?? []).findIndex((m) => m.part === part.id);
    const text = at < 0 ? undefined : this.job.work.made![at]![size];
    return text === undefined ? undefined : this.typed(`work/made/${at}/${size}`, text);
  }

  /** What formulas may name; put together for the first of them. */
  private get names(): ReadonlyMap<string, NamedSize> {
    this.formulaNames ??= formulaNames(this.job);
    return this.formulaNames;
  }

  private named(name: NamedSize): Traced {
    switch (name.is) {
      case 'field':
        return this.field(this.tree.get(name.record)!, name.field as never);
      case 'clear':
        return this.clearSize(name.opening, name.size);
      case 'thickness':
        return name.of === 'top'
          ? finishedThickness(this, this.lot(name.lot))
          : this.thickness(this.lot(name.lot));
      case 'room':
        return roomSize(this, this.tree.get(name.record) as RecordOf<'room'>, name.size)!;
      case 'doorway':
        return doorwaySize(this, name.doors, name.size);
    }
  }

  /** What a lot really measures: its measured thickness, or the nominal one until it has been measured. */
  thickness(lot: Lot): Traced {
    const known = this.thicknesses.get(lot);
    if (known !== undefined) return known;
    const found = this.readThickness(lot);
    this.thicknesses.set(lot, found);
    return found;
  }

  private readThickness(lot: Lot): Traced {
    const path = `shop/rack/lots/${lot.id}`;
    const measured = this.measured(`${lot.id}.thickness`);
    if (measured !== undefined) return measured;
    return lot.thickness === undefined
      ? this.typed(`${path}/nominal`, lot.nominal)
      : this.typed(`${path}/thickness`, lot.thickness);
  }

  /** A size as fine as the shop's saw is set; as it is where the shop has none. */
  asSawn(size: Traced, how: Rounding): Traced {
    const saws = this.job.shop.tools.filter((t) => t.kind === 'circular-saw' || t.kind === 'mitre-saw');
    if (saws.length === 0) return size;
    const kind = saws.some((t) => t.kind === 'circular-saw') ? 'circular-saw' : 'mitre-saw';
    return this.ledger.round('as fine as the saw is set', size, this.stepOf(kind), how);
  }

  /**
   * The finest step a kind of tool is set to; whole millimetres when the shop has none. Holes are
   * marked out, so a missing drill is set as the rule is read.
   */
  stepOf(kind: ToolKind): Traced {
    const known = this.steps.get(kind);
    if (known !== undefined) return known;
    const find = (of: ToolKind) => this.job.shop.tools.find((t) => t.kind === of && 'step' in t);
    const tool = find(kind) ?? (kind === 'drill' ? find('marking') : undefined);
    const step =
      tool && 'step' in tool
        ? this.typed(`shop/tools/${tool.id}/step`, tool.step)
        : this.ledger.row(SETTING_OUT.setStep);
    this.steps.set(kind, step);
    return step;
  }

  lot(id: string): Lot {
    const lot = this.job.shop.rack.lots.find((l) => l.id === id);
    if (!lot) throw new Error(`unchecked lot: ${id}`);
    return lot;
  }

  mass(text: string | undefined): number | undefined {
    if (text === undefined) return undefined;
    const read = parseMass(text);
    if (!read.ok) throw new Error(`unchecked mass: ${text}`);
    return read.value;
  }

  /** Adds a part and gives it its mark. */
  panel(spec: PanelSpec): DraftPart {
    const { at, size, length, width } = spec;
    const thickness = thirdDirection(length, width);
    const max = this.farCorner(at, size);
    const origin: [Traced, Traced, Traced] = [at[0], at[1], at[2]];
    for (const d of [length, width, thickness]) {
      const { axis, sign } = axisOf(d);
      if (sign < 0) origin[axis] = max[axis];
    }
    const letter = letterOf(spec.family);
    const number = (this.marks.get(letter) ?? 0) + 1;
    this.marks.set(letter, number);
    // Every part has all the fields, undefined or not: parts of one shape are read a good deal faster.
    const part: DraftPart = {
      id: `${spec.record}/${spec.role}`,
      record: spec.record,
      role: spec.role,
      name: spec.name,
      mark: markFor(letter, number),
      lot: spec.lot.id,
      form: spec.form ?? spec.lot.form,
      length: size[axisOf(length).axis],
      width: size[axisOf(width).axis],
      thickness: size[axisOf(thickness).axis],
      rough: spec.rough,
      cutLater: spec.cutLater,
      grain: spec.lot.grain === 'free' ? 'free' : 'length',
      place: { origin, length, width, thickness },
      features: [],
      hand: spec.hand ?? 'none',
      between: spec.between ?? false,
      joins: spec.joins,
      strip: undefined,
      nth: number,
      box: { min: at, max },
      tongues: spec.tongues ?? NO_TONGUES,
    };
    if (this.byId.has(part.id)) throw new Error(`two parts with one id: ${part.id}`);
    this.byId.set(part.id, part);
    if (!spec.apart) this.parts.push(part);
    return part;
  }

  private farCorner(at: Triple, size: Triple): Triple {
    const far = (axis: Axis) => this.ledger.sum(FAR_SIDE[axis], at[axis], size[axis]);
    return [far(0), far(1), far(2)];
  }

  part(id: string): DraftPart {
    const part = this.byId.get(id);
    if (!part) throw new Error(`no such part: ${id}`);
    return part;
  }

  opening(id: string, at: Triple, size: Triple): Opening {
    const max = this.farCorner(at, size);
    const opening: Opening = { id, box: { min: at, max }, width: size[0], depth: size[1], height: size[2] };
    this.openings.push(opening);
    return opening;
  }

  stop(
    code: string,
    record: { readonly id: string },
    field: string,
    sentence: string,
    ...cures: Cure[]
  ): void {
    this.snags.push({
      code,
      level: 'stop',
      where: { record: record.id, path: `design/records/${record.id}/${field}` },
      sentence,
      cures,
    });
  }

  /** True when a length is above nothing. */
  isSome(t: Traced): boolean {
    return this.ledger.ticks(t) > 0;
  }
}

const NO_TONGUES: Tongues = { start: undefined, end: undefined };

const FAR_SIDE = [
  'where its right side comes',
  'where its back comes',
  'where its upper side comes',
] as const;
