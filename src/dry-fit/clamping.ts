import type { GlueUp, Operation } from '../build/index.ts';
import { clampMeets, meetingOf } from './access/clamp.ts';
import type { Assembly } from './assembly.ts';
import type { DryFitFault } from './report.ts';

/** Two parts that meet in glue, and the card that brought the second. */
interface Glued {
  readonly operation: Operation;
  readonly part: string;
  readonly mate: string;
}

/**
 * Puts clamps on what is glued, one glue-up after the other. What stands in the way of them now may be pressed by way
 * of a part that only comes with the next, or with one after that: where the card says so, all of them stand in dry meanwhile.
 */
export class Clamping {
  private readonly cards: ReadonlyMap<string, Operation>;
  private readonly closes: ReadonlyMap<string | undefined, GlueUp>;
  private readonly waiting = new Map<string, readonly Glued[]>();

  constructor(operations: readonly Operation[], glueUps: readonly GlueUp[]) {
    this.cards = new Map(operations.map((o) => [o.id, o]));
    this.closes = new Map(glueUps.map((g) => [g.operations.at(-1), g]));
  }

  /** The joints that no clamp presses, once an operation has been done; most end no glue-up. */
  after(operation: string, assemblies: ReadonlyMap<string, Assembly>): readonly DryFitFault[] {
    const glueUp = this.closes.get(operation);
    if (!glueUp) return [];
    const { assembly } = glueUp;
    const { members } = assemblies.get(assembly) ?? { members: [] };
    const at = (mark: string) => members.find((m) => m.mark === mark);
    const met = ({ part, mate }: Glued) => {
      const [own, other] = [at(part), at(mate)];
      const meeting = own && other && meetingOf(own, other);
      return meeting && clampMeets(members, meeting);
    };
    const isBlocked = (g: Glued) => met(g) !== undefined;
    const waited = (this.waiting.get(assembly) ?? []).filter(isBlocked);
    const blocked = this.gluedIn(glueUp).filter(isBlocked);
    const last = ![...this.closes.values()].some((g) => g.assembly === assembly && this.isLater(g, glueUp));
    const told = last ? [...waited, ...blocked] : glueUp.laterStandDry ? [] : waited;
    this.waiting.set(
      assembly,
      [...waited, ...blocked].filter((g) => !told.includes(g)),
    );
    return told.flatMap((g) => this.fault(g, met(g)));
  }

  /** Pairs of parts that meet in the glue of one go; screws hold their own, and what comes later without glue isn’t glued. */
  private gluedIn({ operations, parts }: GlueUp): readonly Glued[] {
    const done = operations.flatMap((id) => this.cards.get(id) ?? []);
    const dry = new Map<string, number>();
    for (const [i, { does }] of done.entries())
      if (does.act === 'set' && !does.glue) dry.set(does.workpiece, i);
    const held = new Set(
      done.flatMap(({ does }) => (does.act === 'screw' ? [pairOf(does.workpiece, does.mate)] : [])),
    );
    const glued: Glued[] = [];
    for (const [i, operation] of done.entries()) {
      const { does } = operation;
      if (does.act !== 'set' || !does.glue) continue;
      for (const mate of parts) {
        const pair = pairOf(does.workpiece, mate);
        if (mate === does.workpiece || held.has(pair) || (dry.get(mate) ?? -1) > i) continue;
        held.add(pair);
        glued.push({ operation, part: does.workpiece, mate });
      }
    }
    return glued;
  }

  private isLater(a: GlueUp, b: GlueUp): boolean {
    const all = [...this.closes.values()];
    return all.indexOf(a) > all.indexOf(b);
  }

  private fault({ operation, part, mate }: Glued, met: string | undefined): readonly DryFitFault[] {
    if (met === undefined) return [];
    return [
      {
        code: 'no-clamp',
        operation: operation.id,
        on: part,
        sentence: `${operation.title}: no clamp presses ${part} and ${mate} together: ${met} stands in the way. Glue them before it comes, or screw them.`,
      },
    ];
  }
}

function pairOf(a: string, b: string): string {
  return a < b ? `${a} ${b}` : `${b} ${a}`;
}
