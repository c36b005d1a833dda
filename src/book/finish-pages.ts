import {
  areaWords,
  CAUTION,
  coverageWords,
  type FinishPlan,
  readyWords,
  timeWords,
  usedWords,
  volumeWords,
} from '../build/index.ts';
import type { JobDocument } from '../job/index.ts';
import { SANDING_GRITS } from '../materials/index.ts';
import type { SurfaceClass } from '../setting-out/index.ts';
import type { Block } from './flow.ts';
import { type Cell, table } from './table.ts';
import type { TextMeasure } from './text-measure.ts';
import { cautionBox, heading, note, prose } from './words.ts';

/** What each class of surfaces is, and how it is prepared. */
const CLASSES: Readonly<Record<SurfaceClass, readonly [what: string, prepared: string]>> = {
  top: ['Top', 'last grit once more just before the finish; one coat more, for it wears'],
  show: ['Outside, seen', 'by lamp; last grit by hand with the grain'],
  edges: ['Edges, seen', 'by hand, arrises eased; they drink, so go over them twice'],
  inside: ['Inside', 'before it is put together where no hand reaches later'],
  hidden: ['Not seen', 'one grit less does; as many coats as the other face of its panel'],
};

/** The finish: surfaces by class with coats and quantities, how they are prepared, times, cautions. */
export function finishBlocks(
  plan: FinishPlan,
  units: JobDocument['shop']['units'],
  width: number,
  type: TextMeasure,
): Block[] {
  const name = plan.lot?.name ?? plan.kind.name;
  const bold = (words: string): Cell => [{ text: words, face: 'semibold', whole: true }];
  const [quick, slow] = plan.kind.recoatHours;
  const told = plan.lot?.label?.recoatHours;
  const { grits } = SANDING_GRITS.hardwood;
  return [
    prose(
      `${name.charAt(0).toUpperCase()}${name.slice(1)}: ${plan.coats} ${plan.coats === 1 ? 'coat' : 'coats'} on every face, seen or not, so that panels stay flat. ${volumeWords(units, plan.litres)}, what stays in brush, cloth and tin reckoned in; ${coverageWords(units, plan.coverageM2PerL)} once, ${plan.coverageFrom === 'label' ? 'as its label says' : 'as is usual for its kind'}.`,
      width,
      type,
    ),
    ...table(
      [
        { title: 'Surfaces', width: 30, face: 'semibold' },
        { title: 'Area', width: 20, align: 'end' },
        { title: 'Coats', width: 14, align: 'end', face: 'semibold' },
        { title: 'Finish', width: 16, align: 'end' },
        { title: 'How', tone: 'quiet' },
      ],
      [
        ...plan.classes.map((c): Cell[] => [
          CLASSES[c.surface][0],
          areaWords(units, c.areaM2),
          `${c.coats}`,
          usedWords(units, c.litres),
          CLASSES[c.surface][1],
        ]),
        [bold('Together'), bold(areaWords(units, plan.areaM2)), '', bold(usedWords(units, plan.litres)), ''],
      ],
      width,
      type,
    ),
    heading('In order', width, type),
    ...[
      `Sand panels from 150 or 180 on to 220, solid wood from ${grits[0]} on to ${grits.at(-1)}; no power sanding along veneered edges, pencil lines to see when to stop.`,
      'Try all coats on the test piece of each lot first (its largest waste where there is none), sanded the same way, and look at it where the piece will stand.',
      ...(plan.before.length > 0
        ? [`Before they are put together: ${plan.before.join(', ')}. Glue faces are masked.`]
        : []),
      `Insides before outsides, the top last. Between coats ${told === undefined ? `${timeWords(quick * 60)} to ${timeWords(slow * 60)}, whatever the label says coming first` : `${timeWords(told * 60)}, as the label says`}; rub down by hand with 320.`,
      `${plan.kind.note} Ready for careful use after ${readyWords(plan)}, hard after ${plan.kind.fullCureDays[0]} to ${plan.kind.fullCureDays[1]} days. What slides is waxed last, on top of the finish and never under it.`,
    ].map((words, i) => prose(`${i + 1}. ${words}`, width, type)),
    {
      ...cautionBox(
        [...plan.kind.cautions, CAUTION.dust, ...(plan.kind.burns ? [CAUTION.vapour] : [])],
        width,
        type,
      ),
      before: 6,
    },
    note(
      'Areas are those of the parts as they stand, less what others lie on; what is seen is reckoned from where each face looks. Coats and coverage come from the label where it was entered.',
      width,
      type,
    ),
  ];
}
