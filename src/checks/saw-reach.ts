import type { ToolOf } from '../job/index.ts';
import { SETTING_OUT } from '../materials/index.ts';
import { toMm } from '../measure/index.ts';
import type { Snag } from '../snag/index.ts';
import type { CheckInput } from './check-input.ts';
import { practice } from './rule.ts';
import { type SawCut, sawCuts } from './saw-cuts.ts';
import { lengthMm, ShopWords } from './shop-words.ts';

type Input = Pick<CheckInput, 'job' | 'setOut' | 'build'>;

/** Stock on the rack that the rail is too short for, where parts came from other stock instead. */
export function beyondTheRail({ job, breakdown }: Pick<CheckInput, 'job' | 'breakdown'>): readonly Snag[] {
  return breakdown.lots.flatMap(({ lot, problem }) =>
    lot.stock
      .filter((s) => (s.have ?? 0) > 0 && problem.beyondRail?.includes(s.id))
      .map((s): Snag => {
        const words = new ShopWords(job);
        const rail = job.shop.tools.find((t): t is ToolOf<'guide-rail'> => t.kind === 'guide-rail')!;
        return {
          code: 'stock.beyond-the-rail',
          level: 'mind',
          where: { path: `shop/rack/lots/${lot.id}/stock/${s.id}`, lot: lot.id },
          sentence: `“${s.name ?? s.id}” of “${lot.name}” stays on the rack: the rail “${rail.name ?? rail.id}”, ${words.length(lengthMm(job, rail.length))} long, can’t true its ${words.length(lengthMm(job, s.length))}, and parts come from other stock.`,
          rule: practice('a guide rail stands out beyond the sheet at both ends'),
          cures: [
            {
              says: 'Join on another length of rail; or cut it roughly in two first, and list the halves as they are then.',
            },
          ],
        };
      }),
  );
}

/** A rail stands out beyond the sheet by this much in all, so that the saw is guided before and after. */
const RAIL_BEYOND = toMm(SETTING_OUT.railBeyond.value);

/** Whether the guide rail is long enough, and the saw deep enough, for every cut. The hardest cut of each is told. */
export function sawReach(input: Input): readonly Snag[] {
  const cuts = sawCuts(input);
  return [...railSnags(input, cuts), ...depthSnags(input, cuts)];
}

function railSnags({ job }: Input, cuts: readonly SawCut[]): readonly Snag[] {
  const longest = hardest(
    cuts.filter((c) => c.onSheet),
    (c) => c.run,
  );
  if (!longest) return [];
  const words = new ShopWords(job);
  const rail = job.shop.tools.find((t): t is ToolOf<'guide-rail'> => t.kind === 'guide-rail');
  if (!rail)
    return [
      {
        code: 'tools.no-rail',
        level: 'mind',
        where: { path: 'shop/tools', operation: longest.operation.id },
        sentence: `The sheets are sawn along a guide rail, up to ${words.length(longest.run)} long, and the shop has none.`,
        rule: practice('a portable saw cuts straight only along a guide'),
        cures: [
          {
            says: 'Clamp on a straight board as a guide, as far from the mark as the saw’s base stands out from its blade.',
          },
        ],
      },
    ];
  const length = lengthMm(job, rail.length);
  const needed = longest.run + RAIL_BEYOND;
  if (length >= needed) return [];
  const name = rail.name ?? rail.id;
  return [
    {
      code: 'tools.rail-short',
      level: length >= longest.run ? 'mind' : 'stop',
      where: { path: `shop/tools/${rail.id}/length`, operation: longest.operation.id },
      sentence: `“${longest.operation.title}” is a cut of ${words.length(longest.run)}; the rail “${name}” is ${words.length(length)}, and should stand out ${words.length(RAIL_BEYOND)} in all.`,
      figures: words.atLeast(length, needed),
      rule: practice('a guide rail stands out beyond the sheet at both ends'),
      cures: [
        {
          says: 'Join on another length of rail, or have sheets cut down where they are bought: say so with “yard” among the shop’s ways of cutting.',
        },
      ],
    },
  ];
}

function depthSnags({ job }: Input, cuts: readonly SawCut[]): readonly Snag[] {
  const words = new ShopWords(job);
  const snags: Snag[] = [];
  const toolOf = (c: SawCut) => job.shop.tools.find((t) => t.id === c.operation.tool);
  for (const [code, tilted] of [
    ['tools.saw-shallow', false],
    ['tools.saw-shallow-tilted', true],
  ] as const) {
    const thickest = hardest(
      cuts.filter((c) => toolOf(c)?.kind === 'circular-saw' && c.angle > 0 === tilted),
      (c) => c.thickness,
    );
    if (!thickest) continue;
    const saw = toolOf(thickest) as ToolOf<'circular-saw'>;
    const reach = tilted ? saw.reach45 : saw.reach;
    const where = {
      path: `shop/tools/${saw.id}/${tilted ? 'reach45' : 'reach'}`,
      operation: thickest.operation.id,
    };
    const at = tilted ? `at ${thickest.angle} degrees` : 'square through';
    if (reach === undefined)
      snags.push({
        code: 'tools.saw-reach-unknown',
        level: 'mind',
        where,
        sentence: `“${thickest.operation.title}” cuts ${words.length(thickest.thickness)} with a tilted blade; how deep the saw goes then is not stated.`,
        rule: practice('a saw is deep enough for what it cuts'),
        cures: [{ says: 'Measure how deep it cuts at 45 degrees, and enter it.' }],
      });
    else if (lengthMm(job, reach) < thickest.thickness)
      snags.push({
        code,
        level: 'stop',
        where,
        sentence: `“${thickest.operation.title}” goes ${at} ${words.length(thickest.thickness)}; the saw “${saw.name ?? saw.id}” reaches ${words.length(lengthMm(job, reach))}.`,
        figures: words.atLeast(lengthMm(job, reach), thickest.thickness),
        rule: practice('a saw is deep enough for what it cuts'),
        cures: [{ says: 'Use a saw with a larger blade, or cut from both faces and plane the edge.' }],
      });
  }
  return [...snags, ...mitreSawSnags(job, cuts, words)];
}

function mitreSawSnags(job: Input['job'], cuts: readonly SawCut[], words: ShopWords): readonly Snag[] {
  const saw = job.shop.tools.find((t): t is ToolOf<'mitre-saw'> => t.kind === 'mitre-saw');
  if (!saw) return [];
  const own = cuts.filter((c) => c.operation.tool === saw.id);
  const widest = hardest(own, (c) => c.width);
  const thickest = hardest(own, (c) => c.thickness);
  const limits = [
    ['width', widest, widest?.width ?? 0, 'wide'],
    ['height', thickest, thickest?.thickness ?? 0, 'thick'],
  ] as const;
  return limits.flatMap(([field, cut, size, word]): Snag[] => {
    const most = lengthMm(job, saw[field]);
    if (!cut || size <= most) return [];
    return [
      {
        code: 'tools.mitre-saw-small',
        level: 'stop',
        where: { path: `shop/tools/${saw.id}/${field}`, operation: cut.operation.id },
        sentence: `“${cut.operation.title}” cuts what is ${words.length(size)} ${word}; the mitre saw takes ${words.length(most)}.`,
        figures: words.atMost(size, most),
        rule: practice('a saw is large enough for what it cuts'),
        cures: [{ says: 'Use a circular saw along a guide for this cut, and add it to the list of tools.' }],
      },
    ];
  });
}

/** The cut with the most of something; of equals the first. */
function hardest(cuts: readonly SawCut[], of: (c: SawCut) => number): SawCut | undefined {
  return cuts.reduce<SawCut | undefined>((best, c) => (!best || of(c) > of(best) ? c : best), undefined);
}
