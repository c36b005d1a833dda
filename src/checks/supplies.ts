import { ADHESIVES, adhesive, FINISHES, finish } from '../materials/index.ts';
import { nearestNames, type Snag } from '../snag/index.ts';
import type { CheckInput } from './check-input.ts';
import { practice } from './rule.ts';

/** Tells of the glue and the finish in use when the tables don't know their kind, and what they are reckoned as. */
export function supplies({ job }: Pick<CheckInput, 'job'>): readonly Snag[] {
  const { adhesives, finishes } = job.shop.rack;
  return [
    ...unknown('adhesives', 'glue', adhesives[0], ADHESIVES, adhesive),
    ...unknown('finishes', 'finish', finishes[0], FINISHES, finish),
  ];
}

interface Row {
  readonly id: string;
  readonly name: string;
}

function unknown(
  shelf: string,
  word: string,
  lot: { readonly id: string; readonly material: string } | undefined,
  rows: readonly Row[],
  find: (id: string) => Row | undefined,
): readonly Snag[] {
  if (!lot || find(lot.material)) return [];
  const near = nearestNames(
    lot.material,
    rows.map((r) => r.id),
  );
  return [
    {
      code: 'supplies.unknown',
      level: 'mind',
      where: { path: `shop/rack/${shelf}/${lot.id}/material` },
      sentence: `“${lot.material}” is no ${word} that is known here: its times and amounts are reckoned as those of ${rows[0]!.name}.`,
      rule: practice(`times and amounts follow from the kind of ${word}, unless its label says otherwise`),
      cures: [
        {
          says: `Nearest: ${near.map((n) => `“${n}”`).join(', ')}; known are ${rows.map((r) => r.id).join(', ')}.`,
        },
        { says: 'Or take the one most like it, and enter what its label says.' },
      ],
    },
  ];
}
