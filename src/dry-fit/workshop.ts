import type { Act, Operation, Workpiece } from '../build/index.ts';
import { ticks, toMm } from '../measure/index.ts';
import type { Solids } from '../solid/index.ts';
import { type Assembly, type Member, seated, trimmedLevel } from './assembly.ts';
import { inTheWay } from './in-the-way.ts';
import type { DryFitFault } from './report.ts';
import { type DrivenScrew, driveScrews } from './screws.ts';
import { bevelled, drilled, pocketed, type ReadCard, rabbeted, type Worked } from './tool-work.ts';
import { clipped, plainPiece, type VirtualPiece } from './virtual-piece.ts';

/** What a shop's saws take away, in ticks, by tool id. */
export type KerfOf = (tool: string | undefined) => number;

/** The virtual shop: loose pieces, assemblies, screws driven, and what has gone wrong. */
export class Workshop {
  readonly loose = new Map<string, VirtualPiece>();
  readonly assemblies = new Map<string, Assembly>();
  readonly screws: DrivenScrew[] = [];
  readonly faults: DryFitFault[] = [];
  private readonly read: ReadCard;
  private readonly kerfOf: KerfOf;
  private readonly solids: Solids;

  constructor(stock: readonly Workpiece[], read: ReadCard, kerfOf: KerfOf, solids: Solids) {
    this.read = read;
    this.kerfOf = kerfOf;
    this.solids = solids;
    for (const s of stock)
      this.loose.set(s.name, plainPiece(read(s.length), read(s.width), read(s.thickness)));
  }

  /** Does what a card says. */
  run(operation: Operation): void {
    const { does } = operation;
    switch (does.act) {
      case 'saw':
        return this.saw(operation, does);
      case 'name':
        return this.name(operation, does);
      case 'bevel':
        return this.workAll(operation, does.workpieces, (p) => bevelled(p, does, this.read));
      case 'rabbet':
        return this.workAll(operation, does.workpieces, (p) => rabbeted(p, does, this.read));
      case 'pocket':
        return this.workAll(operation, does.workpieces, (p) => pocketed(p, does, this.read));
      case 'drill':
        return this.workAll(operation, does.workpieces, (p) => drilled(p, does, this.read));
      case 'set':
        return this.set(operation, does);
      case 'flush':
        return this.flush(operation, does);
      case 'screw':
        return this.screw(operation, does);
      case 'other':
        return;
    }
  }

  private fault(operation: Operation, code: DryFitFault['code'], on: string, sentence: string): void {
    this.faults.push({ code, operation: operation.id, on, sentence: `${operation.title}: ${sentence}` });
  }

  private take(operation: Operation, name: string): VirtualPiece | undefined {
    const piece = this.loose.get(name);
    if (!piece) this.fault(operation, 'workpiece-missing', name, `${name} is not there.`);
    return piece;
  }

  private saw(operation: Operation, act: Extract<Act, { act: 'saw' }>): void {
    const piece = this.take(operation, act.workpiece);
    if (!piece) return;
    if (piece.cuts.length > 0)
      return this.fault(
        operation,
        'off-the-wood',
        act.workpiece,
        'it has already been worked and is no plain board.',
      );
    const axis = act.across === 'length' ? 0 : 1;
    const at = this.read(act.at);
    const kerf = this.kerfOf(operation.tool);
    const size = piece.size[axis];
    const [before, behind] = act.keep === 'before' ? [at, at + kerf] : [at - kerf, at];
    if (before < 0 || at > size)
      return this.fault(
        operation,
        'cut-outside',
        act.workpiece,
        `the line lies off the wood: ${act.workpiece} measures ${toMm(size)} mm that way.`,
      );
    this.loose.delete(act.workpiece);
    const halves = [
      before > 0 ? clipped(piece, axis, 0, before) : undefined,
      behind < size ? clipped(piece, axis, behind, size) : undefined,
    ];
    act.yields.forEach((y, i) => {
      const half = halves[i];
      if (!y) return;
      if (!half) return this.fault(operation, 'cut-outside', y.name, `nothing is left for ${y.name}.`);
      this.putDown(operation, y.name, y.turned ? quarterTurned(half) : half);
    });
  }

  private name(operation: Operation, act: Extract<Act, { act: 'name' }>): void {
    const piece = this.take(operation, act.workpiece);
    if (!piece) return;
    this.loose.delete(act.workpiece);
    this.putDown(operation, act.as.name, act.as.turned ? quarterTurned(piece) : piece);
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

  /** What goes by a name: an assembly, or a loose piece turned as the card says. */
  private pickUp(
    name: string,
    turn: { readonly length: Member['turn']['length']; readonly width: Member['turn']['width'] },
  ): Assembly | undefined {
    const assembly = this.assemblies.get(name);
    if (assembly) return assembly;
    const piece = this.loose.get(name);
    return piece && { members: [{ mark: name, piece, turn, origin: [0, 0, 0] }] };
  }

  private set(operation: Operation, act: Extract<Act, { act: 'set' }>): void {
    const newcomers = this.pickUp(act.workpiece, act.turn);
    if (!newcomers)
      return this.fault(operation, 'workpiece-missing', act.workpiece, `${act.workpiece} is not there.`);
    const there = this.assemblies.get(act.into) ??
      (act.hostTurn && this.pickUp(act.into, act.hostTurn)) ?? { members: [] };
    if (act.hostTurn && there.members.length === 0)
      return this.fault(operation, 'workpiece-missing', act.into, `${act.into} is not there.`);
    const came = seated(newcomers, act.workpiece, there, act.touches, this.read);
    if (typeof came === 'string')
      return this.fault(operation, 'workpiece-missing', act.workpiece, `${came}.`);
    for (const clash of inTheWay(this.solids, there, came))
      this.fault(
        operation,
        'in-the-way',
        clash.newcomer,
        `${clash.newcomer} runs into ${clash.there} by about ${clash.depthMm} mm.`,
      );
    this.loose.delete(act.workpiece);
    this.loose.delete(act.into);
    this.assemblies.delete(act.workpiece);
    this.assemblies.set(act.into, { members: [...there.members, ...came.members] });
  }

  private flush(operation: Operation, act: Extract<Act, { act: 'flush' }>): void {
    const assembly = this.assemblies.get(act.into);
    const level = assembly ? trimmedLevel(assembly, act.to, act.sides) : `${act.into} is not there`;
    if (typeof level === 'string') return this.fault(operation, 'workpiece-missing', act.into, `${level}.`);
    this.assemblies.set(act.into, level);
  }

  private screw(operation: Operation, act: Extract<Act, { act: 'screw' }>): void {
    const assembly = this.assemblies.get(act.into);
    if (!assembly) return this.fault(operation, 'workpiece-missing', act.into, `${act.into} is not there.`);
    const { screws, faults } = driveScrews(
      assembly,
      {
        part: act.workpiece,
        mate: act.mate,
        by: act.by,
        side: act.side,
        lengthMm: toMm(this.read(act.length)),
        diameterMm: toMm(this.read(act.diameter)),
        count: act.count,
      },
      this.screws,
    );
    this.screws.push(...screws);
    for (const f of faults)
      this.faults.push({ ...f, operation: operation.id, sentence: `${operation.title}: ${f.sentence}` });
  }
}

/** A plain board whose length is taken to run the other way. */
function quarterTurned(piece: VirtualPiece): VirtualPiece {
  const [length, width, thickness] = piece.size;
  return { ...piece, size: [ticks(width), ticks(length), thickness] };
}
