import { SETTING_OUT } from '../../materials/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Bores } from '../joints/bores.ts';
import type { Direction } from '../place.ts';
import type { MadeCase } from './case-in-full.ts';
import { connectingScrews } from './connecting-screws.ts';
import type { TopOverCases } from './tops-over-cases.ts';
import { edgingInside, fixedInside, overlaps, shareSide } from './where-cases-meet.ts';

/** A face of a case that another may lie on, and what meets it from inside. */
interface Outside {
  readonly made: MadeCase;
  readonly panel: DraftPart;
  /** True where no screw can be driven from its own side. */
  readonly oneWay?: boolean;
}

/**
 * Screws neighbours together: side to side through both sides, and one on the other through the bottom of the upper
 * and what closes the lower.
 */
export function connectCases(
  draft: Draft,
  bores: Bores,
  all: readonly MadeCase[],
  tops: readonly TopOverCases[],
): void {
  const together = new Together(all);
  for (const { carriers } of tops) for (const { made } of carriers) together.join(made, carriers[0]!.made);
  for (const [i, made] of all.entries())
    if (all[i + 1] && shareSide(made, all[i + 1]!)) together.join(made, all[i + 1]!);
  meet(
    draft,
    bores,
    together,
    0,
    all.map((made) => ({ made, panel: made.panels.right })),
    all.map((made) => ({ made, panel: made.panels.left })),
    '+x',
  );
  meet(
    draft,
    bores,
    together,
    2,
    all.map((made) => ({ made, panel: made.panels.bottom })),
    all.flatMap((made) => {
      const lid = made.top?.board ?? made.panels.lid;
      return lid ? [{ made, panel: lid }] : [];
    }),
    '-z',
  );
  // What closes the lower one from above can be screwed from above only: its lids are against its underside.
  meet(
    draft,
    bores,
    together,
    2,
    all.map((made) => ({ made, panel: made.panels.bottom })),
    tops.flatMap(({ top, carriers }) =>
      carriers.slice(0, 1).map(({ made }) => ({ made, panel: top.board, oneWay: true })),
    ),
    '-z',
  );
  for (const made of together.apart(all))
    draft.stop(
      'cases.apart',
      made.frame.box,
      'size',
      `“${made.frame.box.id}” touches none of its neighbours, so nothing holds it to them.`,
      { says: 'Let no top stand over the side of a case that has a neighbour there.' },
    );
}

/** Which cases hang together. */
class Together {
  private readonly of = new Map<MadeCase, MadeCase>();

  constructor(all: readonly MadeCase[]) {
    for (const made of all) this.of.set(made, made);
  }

  join(a: MadeCase, b: MadeCase): void {
    this.of.set(this.first(a), this.first(b));
  }

  /** Those that don't hang together with the first. */
  apart(all: readonly MadeCase[]): readonly MadeCase[] {
    return all.filter((made) => this.first(made) !== this.first(all[0]!));
  }

  private first(made: MadeCase): MadeCase {
    let at = made;
    while (this.of.get(at) !== at) at = this.of.get(at)!;
    return at;
  }
}

/** Connects every panel with those that lie on it, found by the planes of their outer faces. */
function meet(
  draft: Draft,
  bores: Bores,
  together: Together,
  axis: 0 | 2,
  heads: readonly Outside[],
  mates: readonly Outside[],
  towards: Direction,
): void {
  const l = draft.ledger;
  const [from, to] = towards.startsWith('+') ? (['max', 'min'] as const) : (['min', 'max'] as const);
  const least = l.ticks(l.row(SETTING_OUT.connectLeast));
  const at = new Map<number, Outside[]>();
  for (const mate of mates) {
    const plane = l.ticks(mate.panel.box[to][axis]);
    at.set(plane, [...(at.get(plane) ?? []), mate]);
  }
  for (const head of heads)
    for (const mate of at.get(l.ticks(head.panel.box[from][axis])) ?? [])
      if (mate.made !== head.made && overlaps(draft, head.panel, mate.panel, axis, least)) {
        together.join(head.made, mate.made);
        connectingScrews(draft, bores, {
          part: head.panel,
          mate: mate.panel,
          towards,
          // What lies under a top over several cases is no concern of a screw that ends in it.
          avoid: [...fixedInside(head.made), ...(mate.oneWay ? [] : fixedInside(mate.made))].filter(
            (p) => p !== head.panel && p !== mate.panel,
          ),
          edging: [...edgingInside(head.made), ...(mate.oneWay ? [] : edgingInside(mate.made))],
          ...(mate.oneWay ? { oneWay: true } : {}),
        });
      }
}
