import type { BuildPlan } from '../build/index.ts';
import { toMm } from '../measure/index.ts';
import { type Assembly, PIECE } from './assembly.ts';
import { Clamping } from './clamping.ts';
import { compare, type DrawnPart } from './compare.ts';
import { Hollows } from './hollows.ts';
import type { DryFitFault, DryFitReport } from './report.ts';
import type { ShopAsItIs } from './shop-as-it-is.ts';
import type { ReadCard } from './tool-work.ts';
import { Workshop } from './workshop.ts';

/** What a dry fit is run with. */
export interface DryFitInput extends ShopAsItIs {
  readonly build: Pick<BuildPlan, 'stock' | 'operations' | 'glueUps'>;
  /** Reads a number off a card: the printed one. */
  readonly read: ReadCard;
  /** How finely a sawn size can be set, in ticks: so far it may be off. */
  readonly sawStep: number;
  /** The drawing, to compare with at the end. */
  readonly drawn: readonly DrawnPart[];
  /** The pieces that were promised to be left over, and their length and width in ticks. */
  readonly promised: ReadonlyMap<string, readonly [length: number, width: number]>;
  /** Hollows that were looked into in other runs with these solids. */
  readonly hollows?: Hollows;
}

/**
 * Executes the step cards in their order on virtual stock, then compares what stands there with the drawing. Knows
 * nothing of how the cards came about: what a tool takes away follows from the tool and the numbers on the card.
 * Yields after each operation, with the share done.
 */
export function* dryFit(input: DryFitInput): Generator<number, DryFitReport> {
  const { operations, stock, glueUps } = input.build;
  const shop = new Workshop(stock, input.read, input);
  const clamping = new Clamping(operations, glueUps);
  for (const [i, operation] of operations.entries()) {
    shop.run(operation);
    shop.faults.push(...clamping.after(operation.id, shop.assemblies));
    yield (i + 1) / operations.length;
  }
  return outcomeOf(shop, input);
}

/** What came of it, once all cards have been run. */
export function outcomeOf(shop: Workshop, input: DryFitInput): DryFitReport {
  const { operations } = input.build;
  const built = shop.assemblies.get(PIECE) ?? { members: [] };
  const { parts, faults } = compare(
    input.hollows ?? new Hollows(input.solids),
    built,
    input.drawn,
    toMm(input.sawStep),
  );
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
  const all = [
    ...shop.faults,
    ...faults,
    ...emptyHoles(shop, built),
    ...openHoles(shop, built),
    ...brokenPromises(shop, input),
    ...shop.condition.atEnd(),
    ...leftOver,
  ];
  return {
    fits: all.length === 0,
    ran: operations.length,
    outOf: operations.length,
    faults: all,
    parts,
    unused,
  };
}

/** Holes that were made for a screw and have none at the end. */
function emptyHoles(shop: Workshop, built: Assembly): readonly DryFitFault[] {
  const filled = new Set([...shop.screws.flatMap((s) => s.fills), ...shop.filled]);
  return built.members.flatMap(({ mark, piece }): DryFitFault[] => {
    const open = piece.ways.filter((w) => w.kind !== 'pin' && !filled.has(w));
    const pegs = open.filter((w) => w.kind === 'dowel' || w.kind === 'biscuit' || w.kind === 'spline').length;
    if (pegs > 0)
      return [
        {
          code: 'no-peg',
          on: mark,
          sentence: `${mark} has holes, slots or grooves for ${pegs} dowels, biscuits or splines, and no card puts any in.`,
        },
      ];
    const empty = open.length;
    if (empty === 0) return [];
    const holes = empty === 1 ? 'a hole' : `${empty} holes`;
    return [
      { code: 'no-screw', on: mark, sentence: `${mark} has ${holes} for screws, and no card drives any.` },
    ];
  });
}

/** Holes that were made for a plug and are open at the end. */
function openHoles(shop: Workshop, built: Assembly): readonly DryFitFault[] {
  return built.members.flatMap(({ mark, piece }): DryFitFault[] => {
    const open = piece.ways.filter((w) => w.plugged !== undefined && !shop.covered.has(w)).length;
    return open === 0
      ? []
      : [{ code: 'no-plug', on: mark, sentence: `${mark} has ${open} screw heads that should be plugged.` }];
  });
}

/** Leftovers that are not there, or smaller than was promised by more than a saw can be set. */
function brokenPromises(shop: Workshop, { promised, sawStep }: DryFitInput): readonly DryFitFault[] {
  return [...promised].flatMap(([name, size]): DryFitFault[] => {
    const piece = shop.loose.get(name);
    if (piece && size.every((s, i) => piece.size[i]! >= s - sawStep)) return [];
    const is = piece ? `measures ${toMm(piece.size[0])} × ${toMm(piece.size[1])} mm` : 'is not there';
    return [
      {
        code: 'left-over',
        on: name,
        sentence: `${name} was to be left over, ${toMm(size[0])} × ${toMm(size[1])} mm, and ${is}.`,
      },
    ];
  });
}
