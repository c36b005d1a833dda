import type { Snag } from '../snag/index.ts';
import type { CheckInput } from './check-input.ts';
import { practice } from './rule.ts';

const WORDS = {
  'pocket-screws': 'pocket screws',
  'face-screws': 'screws through their faces',
  rabbet: 'rabbets at the corners, and pocket screws',
  dado: 'dados and glue',
  'stopped-dado': 'stopped dados and glue',
  tongue: 'tongues in dados, and glue',
  dowels: 'dowels and glue',
  biscuits: 'biscuits and glue',
  mitre: 'mitres at the corners',
} as const;

/** Tells how the panels are joined where that was left open, and why so. */
export function chosenJoints({ setOut }: Pick<CheckInput, 'setOut'>): readonly Snag[] {
  return setOut.joinery.flatMap(({ record, joints, because }): readonly Snag[] => {
    if (because === undefined) return [];
    return [
      {
        code: 'joints.chosen',
        level: 'note',
        where: { record, path: `design/records/${record}` },
        sentence: `The panels are joined by ${WORDS[joints]}, because ${because}.`,
        rule: practice('joints follow from the tools at hand'),
        cures: [
          { says: 'Say otherwise with “joints”.', edits: [{ record, field: 'joints', value: joints }] },
        ],
      },
    ];
  });
}
