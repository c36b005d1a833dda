import type { BuildPlan } from '../build/index.ts';
import type { Solids } from '../solid/index.ts';
import { compare, type DrawnPart } from './compare.ts';
import type { DryFitFault, DryFitReport } from './report.ts';
import type { ReadCard } from './tool-work.ts';
import { type KerfOf, Workshop } from './workshop.ts';

/** What a dry fit is run with. */
export interface DryFitInput {
  readonly build: Pick<BuildPlan, 'stock' | 'operations'>;
  /** Reads a number off a card: the printed one. */
  readonly read: ReadCard;
  readonly kerfOf: KerfOf;
  readonly solids: Solids;
  /** The drawing, to compare with at the end. */
  readonly drawn: readonly DrawnPart[];
  /** Names of the pieces that were promised to be left over. */
  readonly promised: ReadonlySet<string>;
}

/** The name of the assembly that is the finished piece. */
const PIECE = 'case';

/**
 * Executes the step cards in their order on virtual stock, then compares what stands there with the drawing. Knows
 * nothing of how the cards came about: what a tool takes away follows from the tool and the numbers on the card.
 * Yields after each operation, with the share done.
 */
export function* dryFit(input: DryFitInput): Generator<number, DryFitReport> {
  const { operations, stock } = input.build;
  const shop = new Workshop(stock, input.read, input.kerfOf, input.solids);
  for (const [i, operation] of operations.entries()) {
    shop.run(operation);
    yield (i + 1) / operations.length;
  }
  const built = shop.assemblies.get(PIECE) ?? { members: [] };
  const { parts, faults } = compare(input.solids, built, input.drawn);
  const unused = [...shop.loose.keys(), ...[...shop.assemblies.keys()].filter((a) => a !== PIECE)].filter(
    (name) => !input.promised.has(name),
  );
  const leftOver = unused.map(
    (name): DryFitFault => ({
      code: 'left-over',
      on: name,
      sentence: `${name} lies in the shop at the end, and no card says what for.`,
    }),
  );
  const all = [...shop.faults, ...faults, ...leftOver];
  return {
    fits: all.length === 0,
    ran: operations.length,
    outOf: operations.length,
    faults: all,
    parts,
    unused,
  };
}
