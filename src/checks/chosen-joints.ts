import { JOINED_BY } from '../setting-out/index.ts';
import type { Snag } from '../snag/index.ts';
import type { CheckInput } from './check-input.ts';
import { practice } from './rule.ts';

/** Tells how the panels are joined where that was left open, and why so. */
export function chosenJoints({ setOut }: Pick<CheckInput, 'setOut'>): readonly Snag[] {
  return setOut.joinery.flatMap(({ record, joints, because }): readonly Snag[] => {
    if (because === undefined) return [];
    return [
      {
        code: 'joints.chosen',
        level: 'note',
        where: { record, path: `design/records/${record}` },
        sentence: `The panels are joined by ${JOINED_BY[joints]}, because ${because}.`,
        rule: practice('joints follow from the tools at hand'),
        cures: [
          { says: 'Say otherwise with “joints”.', edits: [{ record, field: 'joints', value: joints }] },
        ],
      },
    ];
  });
}
