import { scribed, scribedThere } from './scribing.ts';
// Long because each act that a card can hold is a method here, and all of them share the state of the shop.

import type { Act, Operation, PieceDirection, Workpiece } from '../build/index.ts';
import { ticks, toMm } from '../measure/index.ts';
import { closedIn } from './access/closed-in.ts';
import { tiltsIn } from './access/tilt-in.ts';
import { mustComeBefore, noWayIn, noWayToHook, wayInSentence } from './access/way-in.ts';
import { type Assembly, type Member, PIECE, seated, trimmedLevel } from './assembly.ts';
import { buttonsIn } from './buttons.ts';
import { comesAlong } from './comes-along.ts';
import { Condition } from './condition/condition.ts';
import { drawOut } from './draw-out.ts';
import { gluedUp, planed } from './glued-up.ts';
import { hangHinges } from './hinges.ts';
import { inTheWay } from './in-the-way.ts';
import { letInLevellers } from './levellers.ts';
import { liftedIn } from './lift-in.ts';
import { openCorner, pegged } from './pegs.ts';
import { restsOnPins } from './pins.ts';
import { setPlugs } from './plugs.ts';
import { pullCard, screwOnPull } from './pulls.ts';
import type { DryFitFault } from './report.ts';
import { rippedApart } from './ripped-apart.ts';
import { runOnRunners } from './runners.ts';
import { parted, quarterTurned, sawn } from './sawn.ts';
import { type DrivenScrew, driveScrews } from './screws.ts';
import type { ShopAsItIs } from './shop-as-it-is.ts';
import { splineGrooved } from './spline-groove.ts';
import { type Inlay, inSplines, splined } from './splines.ts';
import { tooSmallFor } from './too-small.ts';
import {
  bevelled,
  biscuitSlotted,
  drilled,
  grooved,
  notched,
  pinHoled,
  pocketed,
  type ReadCard,
  rabbeted,
  sloped,
  slotted,
  type Worked,
} from './tool-work.ts';
import { plainPiece, type VirtualPiece, type Way } from './virtual-piece.ts';

/** A screw's size may be printed in the other system, to a thousandth of an inch: these ticks are a tenth of a mm. */
const SAME_SCREW = 320;

/** The virtual shop: loose pieces, assemblies, screws driven, and what has gone wrong. */
export class Workshop {
  readonly loose = new Map<string, VirtualPiece>();
  readonly assemblies = new Map<string, Assembly>();
  readonly screws: DrivenScrew[] = [];
  /** Holes, slots and grooves that dowels, biscuits and splines stand in. */
  readonly filled = new Set<Way>();
  /** Holes whose screws are plugged over. */
  readonly covered = new Set<Way>();
  readonly faults: DryFitFault[] = [];
  /** What can’t be seen in shapes: what has been measured, marked, sanded, glued, finished. */
  readonly condition: Condition;
  /** Splines by the groove of the part that they were put into first. */
  private readonly inlays = new Map<Way, Inlay>();
  private readonly screwedTogether = new Set<string>();
  private boxes = 0;
  /** The card by which each part came where it is. */
  private readonly cameBy = new Map<string, string>();
  /** What comes out together, of each drawer that runs. */
  private readonly drawers: (readonly string[])[] = [];
  /** Doors that have been hung. */
  private readonly swings = new Set<string>();
  /** Strips and the boards that they were glued to. */
  private readonly joinedTo: Pick<DrivenScrew, 'parts'>[] = [];
  /** Shelves that lie on pins: they are taken out for work behind them. */
  private readonly resting = new Set<string>();
  /** Doors that have been lifted into grooves, what is fixed on them, and which grooves these are. */
  private readonly sliding = new Map<string, string>();
  private readonly read: ReadCard;
  private readonly shop: ShopAsItIs;

  constructor(stock: readonly Workpiece[], read: ReadCard, shop: ShopAsItIs) {
    this.read = read;
    this.shop = shop;
    this.condition = new Condition(shop.care);
    for (const s of stock) {
      const [ends, edges] = [read(s.raw.ends), read(s.raw.edges)];
      const raw = [ends, ends, edges, edges] as const;
      const plain = plainPiece(read(s.length), read(s.width), read(s.thickness), raw);
      const { slope } = s;
      this.loose.set(s.name, slope ? sloped(plain, slope.edge, slope.angle, slope.fullFace) : plain);
    }
  }

  /** Does what a card says. */
  run(operation: Operation): void {
    const { does } = operation;
    if (operation.kind === 'finish') this.closedBefore(operation);
    for (const f of this.condition.meet(operation, (name) => this.marksOf(name)))
      this.fault(operation, f.code, f.on ?? '', f.sentence);
    switch (does.act) {
      case 'saw':
        return this.saw(operation, does);
      case 'saw-alike':
        for (const { workpiece, yields } of does.cuts)
          this.saw(operation, { ...does, act: 'saw', across: 'length', keep: 'before', workpiece, yields });
        return;
      case 'name':
        return this.name(operation, does);
      case 'part':
      case 'rip-apart':
        return this.inTwo(operation, does);
      case 'plane':
        return this.workAll(operation, does.workpieces, (p) => planed(p, does, this.read));
      case 'glue-up':
        return this.glueUp(operation, does);
      case 'bevel':
        return this.workAll(operation, does.workpieces, (p) => bevelled(p, does, this.read));
      case 'rabbet':
        return this.workAll(operation, does.workpieces, (p) => rabbeted(p, does, this.read));
      case 'groove':
        return this.workAll(operation, does.workpieces, (p) => grooved(p, does, this.read));
      case 'notch':
        return this.workAll(operation, does.workpieces, (p) => notched(p, does, this.read));
      case 'scribe':
        return this.scribe(operation, does);
      case 'slot':
        return this.workAll(operation, does.workpieces, (p) => slotted(p, does, this.read));
      case 'pocket':
        return this.workAll(operation, does.workpieces, (p) => pocketed(p, does, this.read));
      case 'drill':
        return this.workAll(operation, does.workpieces, (p) => drilled(p, does, this.read));
      case 'biscuit-slot':
        return this.workAll(operation, does.workpieces, (p) => biscuitSlotted(p, does, this.read));
      case 'spline-groove': {
        const kerf = toMm(ticks(this.shop.kerfOf(operation.tool)));
        return this.workAll(operation, does.workpieces, (p) => splineGrooved(p, does, this.read, kerf));
      }
      case 'pin-holes':
        return this.workAll(operation, does.workpieces, (p) => pinHoled(p, does, this.read));
      case 'set':
        return this.set(operation, does);
      case 'edge':
        return this.edge(operation, does);
      case 'flush':
        return this.flush(operation, does);
      case 'screw':
        return this.screw(operation, does);
      case 'plug':
        return this.plug(operation, does);
      case 'hinge':
        return this.hinge(operation, does);
      case 'pull':
        return this.pull(operation, does);
      case 'buttons':
        return this.buttons(operation, does);
      case 'levellers':
        return this.levellers(operation, does);
      case 'runners':
        return this.runners(operation, does);
      case 'draw-out':
        return this.drawOut(operation, does);
      case 'rest':
        return this.rest(operation, does);
      case 'lift-in':
        return this.liftIn(operation, does);
      case 'other':
        // Flaps, lids and doors on butts swing as well.
        if (operation.kind === 'hang')
          for (const mark of does.on) if (this.cameBy.has(mark)) this.swings.add(mark);
        if (operation.kind === 'cure') this.sets(operation, does.on);
        return;
    }
  }

  /** What no hand reaches once the piece stands must have had its coats before. */
  private closedBefore(operation: Operation): void {
    const standing = this.around(this.assemblies.get(PIECE) ?? { members: [] });
    const bare = new Set(this.condition.bare(standing.map((m) => m.mark)));
    if (bare.size === 0) return;
    for (const mark of closedIn(standing).filter((m) => bare.has(m)))
      this.fault(
        operation,
        'closed-bare',
        mark,
        `${mark} has a face in a space that is closed by now, and no coat was put on it before.`,
      );
  }

  private fault(operation: Operation, code: DryFitFault['code'], on: string, sentence: string): void {
    this.faults.push({ code, operation: operation.id, on, sentence: `${operation.title}: ${sentence}` });
  }

  /** The marks of all that hangs together with a name, whether it is an assembly’s or a part’s. */
  private marksOf(name: string): readonly string[] {
    const of =
      this.assemblies.get(name) ??
      [...this.assemblies.values()].find((a) => a.members.some((m) => m.mark === name));
    return of ? of.members.map((m) => m.mark) : [name];
  }

  private take(operation: Operation, name: string): VirtualPiece | undefined {
    const piece = this.loose.get(name);
    if (!piece) this.fault(operation, 'workpiece-missing', name, `${name} is not there.`);
    return piece;
  }

  private saw(operation: Operation, act: Extract<Act, { act: 'saw' }>): void {
    const piece = this.take(operation, act.workpiece);
    if (!piece) return;
    const halves = sawn(piece, act, this.read, act.knife ? 0 : this.shop.kerfOf(operation.tool));
    if ('code' in halves) return this.fault(operation, halves.code, act.workpiece, halves.sentence);
    const saw = act.knife ? undefined : this.shop.sawOf(operation.tool);
    const small = saw && tooSmallFor(saw, piece, act, halves);
    if (small) this.fault(operation, 'too-small', act.workpiece, small);
    this.loose.delete(act.workpiece);
    act.yields.forEach((y, i) => {
      const half = halves[i];
      if (!y) return;
      if (!half) return this.fault(operation, 'cut-outside', y.name, `nothing is left for ${y.name}.`);
      this.putDown(operation, y.name, y.turned ? quarterTurned(half) : half);
    });
  }

  /** Wood that is not as it was sawn any more, ripped in two. */
  private inTwo(operation: Operation, act: Extract<Act, { act: 'part' | 'rip-apart' }>): void {
    const piece = this.take(operation, act.workpiece);
    if (!piece) return;
    const kerf = this.shop.kerfOf(operation.tool);
    const halves =
      act.act === 'part' ? parted(piece, act, this.read, kerf) : rippedApart(piece, act, this.read, kerf);
    if ('code' in halves) return this.fault(operation, halves.code, act.workpiece, halves.sentence);
    const saw = this.shop.sawOf(operation.tool);
    const small = saw && tooSmallFor(saw, piece, { workpiece: act.workpiece, across: 'width' }, halves);
    if (small) this.fault(operation, 'too-small', act.workpiece, small);
    this.loose.delete(act.workpiece);
    act.yields.forEach((name, i) => {
      if (name !== undefined) this.putDown(operation, name, halves[i]!);
    });
  }

  private name(operation: Operation, act: Extract<Act, { act: 'name' }>): void {
    const piece = this.take(operation, act.workpiece);
    if (!piece) return;
    this.loose.delete(act.workpiece);
    this.putDown(operation, act.as.name, act.as.turned ? quarterTurned(piece) : piece);
  }

  /** Boards become one piece; the clamps hold nothing that isn’t there. */
  private glueUp(operation: Operation, act: Extract<Act, { act: 'glue-up' }>): void {
    const boards = act.boards.flatMap((name) => this.take(operation, name) ?? []);
    if (boards.length < act.boards.length) return;
    const made = gluedUp(boards);
    if ('fault' in made) return this.fault(operation, 'off-the-wood', act.as, `${act.as}: ${made.fault}.`);
    for (const name of act.boards) this.loose.delete(name);
    this.putDown(operation, act.as, made.piece);
  }

  private putDown(operation: Operation, name: string, piece: VirtualPiece): void {
    if (this.loose.has(name)) this.fault(operation, 'not-alone', name, `there is a ${name} already.`);
    this.loose.set(name, piece);
  }

  private workAll(
    operation: Operation,
    names: readonly string[],
    work: (piece: VirtualPiece) => Worked,
  ): void {
    for (const name of names) {
      const piece = this.take(operation, name);
      if (!piece) continue;
      const worked = work(piece);
      if ('fault' in worked) this.fault(operation, 'off-the-wood', name, `${name}: ${worked.fault}.`);
      else this.loose.set(name, worked.piece);
    }
  }

  /** A part sawn to a wall's line, loose or where it lies among others. */
  private scribe(operation: Operation, act: Extract<Act, { act: 'scribe' }>): void {
    const found = [...this.assemblies].find(([, a]) => a.members.some((m) => m.mark === act.workpiece));
    if (!found) return this.workAll(operation, [act.workpiece], (p) => scribed(p, act, this.read));
    const [name, there] = found;
    const sawn = scribedThere(there, act, this.read);
    if ('fault' in sawn)
      return this.fault(operation, 'off-the-wood', act.workpiece, `${act.workpiece}: ${sawn.fault}.`);
    this.assemblies.set(name, { ...there, members: sawn.members });
    // The screws stay in their ways, which are now counted from elsewhere.
    this.screws.forEach((s, i) => {
      this.screws[i] = { ...s, fills: s.fills.map((way) => sawn.ways.get(way) ?? way) };
    });
  }

  /** What goes by a name: an assembly, or a loose piece turned as the card says. */
  private pickUp(name: string, turn: Member['turn']): Assembly | undefined {
    const assembly = this.assemblies.get(name);
    if (assembly) return assembly;
    const piece = this.loose.get(name);
    return piece && { members: [{ mark: name, piece, turn, origin: [0, 0, 0] }] };
  }

  private set(operation: Operation, act: Extract<Act, { act: 'set' }>): void {
    const before = this.faults.length;
    const there = this.assemblies.get(act.into) ?? { members: [] };
    const newcomers = this.asBox(act, this.pickUp(act.workpiece, act.turn), there);
    if (!newcomers)
      return this.fault(operation, 'workpiece-missing', act.workpiece, `${act.workpiece} is not there.`);
    const joined = this.bring(operation, newcomers, act.workpiece, there, act.touches);
    if (!joined) return;
    this.loose.delete(act.workpiece);
    this.assemblies.delete(act.workpiece);
    this.assemblies.set(act.into, joined);
    const pegs = this.peg(operation, act, joined);
    this.putSplines(operation, act, joined);
    if (this.faults.length === before) this.waysIn(operation, act, newcomers, joined, pegs);
  }

  /** What was set must have come there in a straight line, and the way its dowels or biscuits point. */
  private waysIn(
    operation: Operation,
    act: Extract<Act, { act: 'set' }>,
    newcomers: Assembly,
    joined: Assembly,
    pegs: readonly PieceDirection[],
  ): void {
    const marks = new Set(newcomers.members.map((m) => m.mark));
    const came = joined.members.filter((m) => marks.has(m.mark));
    const there = this.around(joined, ...act.touches.flatMap((t) => [t.of, ...(t.or ?? [])])).filter(
      (m) => !marks.has(m.mark),
    );
    const wayPast = (past: readonly Member[]) =>
      act.hooks === undefined
        ? noWayIn(this.shop.solids, past, came, ...(pegs.length > 0 ? [pegs] : []))
        : noWayToHook(this.shop.solids, past, came, this.read(act.hooks));
    const none = wayPast(there);
    // A shelf that rests on pins may be tilted in.
    const tilts = operation.kind === 'rest' && tiltsIn(there, came);
    if (!none || tilts) return;
    const before = mustComeBefore(there, (past) => wayPast(past) !== undefined);
    const card = before === undefined ? undefined : this.cameBy.get(before);
    this.fault(operation, 'in-the-way', act.workpiece, wayInSentence(act.workpiece, none, card));
  }

  /** Dowels and biscuits close with the part that is set: all of them along one way, or it doesn't go on. */
  private peg(
    operation: Operation,
    act: Extract<Act, { act: 'set' }>,
    joined: Assembly,
  ): readonly PieceDirection[] {
    const ways = new Set<PieceDirection>();
    for (const card of act.pegs ?? []) {
      const fixing = this.shop.fixings.get(card.fixing);
      const same = (printed: number, real: number) => Math.abs(printed - real) <= SAME_SCREW;
      if (
        !fixing ||
        !same(this.read(card.across), fixing.across) ||
        !same(this.read(card.wide), fixing.wide)
      ) {
        this.fault(
          operation,
          'no-peg',
          act.workpiece,
          fixing ? `${card.fixing} is of another size.` : `there is no ${card.fixing}.`,
        );
        continue;
      }
      const { kind, across, thick } = fixing;
      const size = { kind, acrossMm: toMm(across), thickMm: toMm(thick) };
      const { fills, way, faults } = pegged(
        joined,
        { part: act.workpiece, mate: card.with, ...size, count: card.count },
        this.filled,
      );
      for (const hole of fills) this.filled.add(hole);
      if (way) ways.add(way);
      for (const f of faults) this.fault(operation, f.code, act.workpiece, f.sentence);
    }
    if (ways.size > 1)
      this.fault(
        operation,
        'peg-binds',
        act.workpiece,
        `${act.workpiece} can’t be pushed on: its dowels or biscuits point more ways than one.`,
      );
    return [...ways];
  }

  /** Splines stand in the grooves of the part that is set and of those there. */
  private putSplines(operation: Operation, act: Extract<Act, { act: 'set' }>, joined: Assembly): void {
    for (const { with: mate, strip: mark, behind, ...size } of act.splines ?? []) {
      const strip = this.take(operation, mark);
      if (!strip) continue;
      const card = {
        part: act.workpiece,
        ...{ mate, mark, strip },
        longMm: toMm(this.read(size.length)),
        wideMm: toMm(this.read(size.width)),
        behindMm: toMm(this.read(behind)),
      };
      const { fills, inlay, faults } = splined(joined, card, this.filled);
      for (const f of faults) this.fault(operation, f.code, act.workpiece, f.sentence);
      for (const groove of fills) this.filled.add(groove);
      if (!inlay) continue;
      this.inlays.set(...inlay);
      this.loose.delete(mark);
    }
  }

  /** Corners on biscuits or splines are drawn together: none may be open when glue sets. */
  private sets(operation: Operation, on: readonly string[]): void {
    for (const assembly of this.assemblies.values()) {
      if (!assembly.members.some((m) => on.includes(m.mark))) continue;
      const open = openCorner(assembly, this.filled);
      if (open !== undefined)
        this.fault(
          operation,
          'peg-binds',
          open,
          `a mitred corner of ${open} is still open when its glue sets.`,
        );
    }
  }

  /** What has been screwed together by itself comes as a box, and its parts are known by it; so is what is set on it later. */
  private asBox(
    { workpiece, touches }: Extract<Act, { act: 'set' }>,
    newcomers: Assembly | undefined,
    there: Assembly,
  ): Assembly | undefined {
    const beside = touches.map((t) => there.members.find((m) => m.mark === t.of)?.box);
    // A door with its handle is a door, no box.
    const alone = newcomers?.members.some((m) => m.mark === workpiece);
    const box =
      this.screwedTogether.has(workpiece) && !alone
        ? { nth: ++this.boxes, beside: [...new Set(beside.map((b) => b?.nth ?? 0))] }
        : beside[0];
    if (!newcomers || box === undefined) return newcomers;
    return { members: newcomers.members.map((m) => ({ ...m, box })) };
  }

  /** Strips glued to loose boards; each board becomes an assembly under its own mark. */
  private edge(operation: Operation, act: Extract<Act, { act: 'edge' }>): void {
    for (const { strip, board } of act.pairs) {
      const host = this.pickUp(board, act.boardTurn);
      const newcomer = this.pickUp(strip, act.turn);
      if (!host || !newcomer) {
        const name = host ? strip : board;
        this.fault(operation, 'workpiece-missing', name, `${name} is not there.`);
        continue;
      }
      const [first, second, third] = act.touches.map((t) => (t.of === 'board' ? { ...t, of: board } : t));
      const joined = this.bring(operation, newcomer, strip, host, [first!, second!, third!]);
      if (!joined) continue;
      this.joinedTo.push({ parts: [board, strip] });
      this.loose.delete(strip);
      this.loose.delete(board);
      this.assemblies.set(board, joined);
    }
  }

  /** Newcomers brought to their place beside what is there; undefined when the touches don't lead anywhere. */
  private bring(
    operation: Operation,
    newcomers: Assembly,
    name: string,
    there: Assembly,
    touches: Extract<Act, { act: 'set' }>['touches'],
  ): Assembly | undefined {
    const came = seated(newcomers, name, there, touches, this.read);
    if (typeof came === 'string') {
      this.fault(operation, 'workpiece-missing', name, `${came}.`);
      return undefined;
    }
    for (const clash of inTheWay(this.shop.solids, there, came))
      this.fault(
        operation,
        'in-the-way',
        clash.newcomer,
        `${clash.newcomer} runs into ${clash.there} by about ${clash.depthMm} mm.`,
      );
    for (const { newcomer, spline } of inSplines(this.shop.solids, there, came, this.inlays))
      this.fault(operation, 'in-the-way', newcomer, `${newcomer} runs into spline ${spline}.`);
    for (const m of came.members) this.cameBy.set(m.mark, operation.title);
    return { members: [...there.members, ...came.members] };
  }

  private flush(operation: Operation, act: Extract<Act, { act: 'flush' }>): void {
    for (const [i, name] of act.workpieces.entries()) {
      const assembly = this.assemblies.get(name);
      const level = assembly
        ? trimmedLevel(assembly, name, act.sides, act.strips?.[i])
        : `${name} is not there`;
      if (typeof level === 'string') this.fault(operation, 'workpiece-missing', name, `${level}.`);
      else this.assemblies.set(name, level);
    }
  }

  private screw(operation: Operation, act: Extract<Act, { act: 'screw' }>): void {
    this.tell(operation, act.into, (assembly) => {
      this.takeScrew(operation, act);
      this.screwedTogether.add(act.into);
      const { screws, faults } = driveScrews(
        assembly,
        {
          part: act.workpiece,
          mate: act.mate,
          by: act.by,
          ...(act.only ? { only: act.only } : {}),
          ...(act.over ? { over: act.over } : {}),
          side: act.side,
          lengthMm: toMm(this.read(act.length)),
          diameterMm: toMm(this.read(act.diameter)),
          count: act.count,
        },
        this.screws,
        { members: this.around(assembly, act.workpiece, act.mate), cameBy: (mark) => this.cameBy.get(mark) },
      );
      this.screws.push(...screws);
      return faults;
    });
  }

  /** What holds parts to one another wherever they go: screws, and the glue of what was glued on to boards that lay loose. */
  private bonds(): readonly Pick<DrivenScrew, 'parts'>[] {
    return [...this.screws, ...this.joinedTo];
  }

  /** What stands round a part: a drawer is drawn out for what is done to it; doors, drawers and loose shelves are out of the way of all else. */
  private around(assembly: Assembly, ...marks: readonly string[]): readonly Member[] {
    const drawers = this.drawers.map((moves) => comesAlong(moves, this.bonds()));
    const drawer = drawers.find((moves) => marks.some((mark) => moves.has(mark)));
    if (drawer) return assembly.members.filter((m) => drawer.has(m.mark) || marks.includes(m.mark));
    const open = comesAlong([...this.swings, ...this.sliding.keys(), ...this.resting], this.bonds());
    return assembly.members.filter(
      (m) => marks.includes(m.mark) || !(open.has(m.mark) || drawers.some((d) => d.has(m.mark))),
    );
  }

  private runners(operation: Operation, act: Extract<Act, { act: 'runners' }>): void {
    this.tell(operation, act.into, (assembly) => {
      this.takeScrew(operation, act);
      const { screws, faults } = runOnRunners(
        this.shop.solids,
        assembly,
        {
          sides: act.sides,
          posts: act.posts,
          thicknessMm: toMm(this.read(act.thickness)),
          lengthMm: toMm(this.read(act.length)),
          diameterMm: toMm(this.read(act.diameter)),
          count: act.count,
          travelTicks: this.read(act.travel),
          moves: act.moves,
        },
        this.screws,
      );
      this.drawers.push(act.moves);
      this.screws.push(...screws);
      return faults;
    });
  }

  private drawOut(operation: Operation, act: Extract<Act, { act: 'draw-out' }>): void {
    const card = { ...act, travelTicks: this.read(act.travel) };
    this.drawers.push(act.moves);
    this.tell(operation, act.into, (assembly) => drawOut(this.shop.solids, assembly, card));
  }

  private rest(operation: Operation, act: Extract<Act, { act: 'rest' }>): void {
    const card = {
      shelf: act.workpiece,
      posts: act.posts,
      over: act.over,
      holeMm: toMm(this.read(act.hole)),
      aboveMm: toMm(this.read(act.above)),
      level: act.level,
    };
    this.resting.add(act.workpiece);
    this.tell(operation, act.into, (assembly) => restsOnPins(assembly, card));
  }

  /** Tells what a card's work on an assembly finds wrong; the assembly must be there. */
  private tell(
    operation: Operation,
    into: string,
    faultsOf: (assembly: Assembly) => readonly Omit<DryFitFault, 'operation'>[],
  ): void {
    const assembly = this.assemblies.get(into);
    if (!assembly) return this.fault(operation, 'workpiece-missing', into, `${into} is not there.`);
    for (const f of faultsOf(assembly))
      this.faults.push({ ...f, operation: operation.id, sentence: `${operation.title}: ${f.sentence}` });
  }

  /** The screw that a card names must be there, as long and as thick as it says. */
  private takeScrew(
    operation: Operation,
    act: Extract<Act, { act: 'screw' | 'hinge' | 'runners' | 'pull' | 'buttons' }>,
  ): void {
    const box = this.shop.screws.get(act.screw);
    const same = (printed: number, real: number) => Math.abs(printed - real) <= SAME_SCREW;
    if (!box || !same(this.read(act.length), box.length) || !same(this.read(act.diameter), box.diameter))
      this.fault(
        operation,
        'workpiece-missing',
        act.screw,
        box ? `${act.screw} is of another size.` : `there is no screw ${act.screw}.`,
      );
  }

  private plug(operation: Operation, act: Extract<Act, { act: 'plug' }>): void {
    this.tell(operation, act.into, (assembly) => {
      const plug = this.shop.fixings.get(act.plug);
      const diameter = this.read(act.diameter);
      if (plug?.kind !== 'plug' || Math.abs(plug.wide - diameter) > SAME_SCREW)
        this.fault(operation, 'workpiece-missing', act.plug, `there is no plug ${act.plug} of that size.`);
      const card = { part: act.workpiece, side: act.side, diameterMm: toMm(diameter), count: act.count };
      const { covers, faults } = setPlugs(assembly, card, this.screws, this.covered);
      for (const way of covers) this.covered.add(way);
      return faults;
    });
  }

  private pull(operation: Operation, act: Extract<Act, { act: 'pull' }>): void {
    this.tell(operation, act.into, (assembly) => {
      this.takeScrew(operation, act);
      const { screws, faults } = screwOnPull(assembly, pullCard(act, this.read), this.screws);
      this.screws.push(...screws);
      return faults;
    });
  }

  /** Buttons go into their mortises, and a screw up through each. */
  private buttons(operation: Operation, act: Extract<Act, { act: 'buttons' }>): void {
    const there = this.assemblies.get(act.into);
    if (!there) return this.fault(operation, 'workpiece-missing', act.into, `${act.into} is not there.`);
    const loose = act.workpieces.flatMap((name) => {
      const piece = this.take(operation, name);
      return piece ? [{ mark: name, piece, turn: act.turn, origin: [0, 0, 0] as const }] : [];
    });
    const { members, faults } = buttonsIn(this.shop.solids, there, loose, {
      post: act.post,
      face: act.face as '+x' | '-x',
      top: act.top,
      tongueMm: toMm(this.read(act.tongue)),
      besideMm: act.beside.map((b) => toMm(this.read(b))),
      movesMm: act.moves.map((m) => toMm(this.read(m))),
    });
    for (const f of faults) this.fault(operation, f.code, act.post, f.sentence);
    if (members.length === 0) return;
    for (const { mark } of members) {
      this.loose.delete(mark);
      this.cameBy.set(mark, operation.title);
    }
    this.assemblies.set(act.into, { members: [...there.members, ...members] });
    const { screw, length, diameter } = act;
    for (const { mark } of members)
      this.screw(operation, {
        act: 'screw',
        workpiece: mark,
        into: act.into,
        mate: act.top,
        by: 'holes',
        side: 'under',
        screw,
        length,
        diameter,
        count: 1,
      });
  }

  private levellers(operation: Operation, act: Extract<Act, { act: 'levellers' }>): void {
    this.tell(operation, act.into, (assembly) => {
      const card = {
        part: act.workpiece,
        count: act.count,
        diameterMm: toMm(this.read(act.diameter)),
        deepMm: toMm(this.read(act.deep)),
      };
      const { fills, faults } = letInLevellers(assembly, card, this.filled);
      for (const way of fills) this.filled.add(way);
      return faults;
    });
  }

  private hinge(operation: Operation, act: Extract<Act, { act: 'hinge' }>): void {
    this.tell(operation, act.into, (assembly) => {
      this.takeScrew(operation, act);
      this.swings.add(act.workpiece);
      const { screws, faults } = hangHinges(
        assembly,
        {
          door: act.workpiece,
          post: act.post,
          count: act.count,
          cupMm: toMm(this.read(act.cup)),
          plateScrewsMm: toMm(this.read(act.plateScrews)),
          lengthMm: toMm(this.read(act.length)),
          diameterMm: toMm(this.read(act.diameter)),
        },
        this.screws,
      );
      this.screws.push(...screws);
      return faults;
    });
  }

  /** A sliding door goes into its grooves, and is tried over its whole way. */
  private liftIn(operation: Operation, act: Extract<Act, { act: 'lift-in' }>): void {
    const whole = this.pickUp(act.workpiece, act.turn);
    const door = whole?.members.find((m) => m.mark === act.workpiece);
    const there = this.assemblies.get(act.into);
    if (!door || !whole)
      return this.fault(operation, 'workpiece-missing', act.workpiece, `${act.workpiece} is not there.`);
    if (!there) return this.fault(operation, 'workpiece-missing', act.into, `${act.into} is not there.`);
    const { members, faults } = liftedIn(
      this.shop.solids,
      there,
      { door, fixedOn: whole.members.filter((m) => m !== door) },
      this.sliding,
      {
        below: act.below,
        above: act.above,
        groove: act.groove,
        between: act.between,
        besideMm: act.against ? 'against-right' : act.beside === undefined ? 0 : toMm(this.read(act.beside)),
        liftMm: toMm(this.read(act.lift)),
      },
    );
    for (const f of faults) this.fault(operation, f.code, act.workpiece, f.sentence);
    if (members.length === 0) return;
    for (const { mark } of members) {
      this.sliding.set(mark, `${act.below} ${act.groove}`);
      this.cameBy.set(mark, operation.title);
    }
    this.loose.delete(act.workpiece);
    this.assemblies.delete(act.workpiece);
    this.assemblies.set(act.into, { members: [...there.members, ...members] });
  }
}
