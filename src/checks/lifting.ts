import type { PlannedNode } from '../breakdown/index.ts';
import { type JobDocument, type RecordOf, treeOf } from '../job/index.ts';
import { density } from '../materials/index.ts';
import { toMm } from '../measure/index.ts';
import type { Snag } from '../snag/index.ts';
import type { CheckInput } from './check-input.ts';
import { practice } from './rule.ts';
import { massKg, ShopWords } from './shop-words.ts';

/** Whether the people of the shop can carry the heaviest sheet and the finished piece together. */
export function lifting(input: Pick<CheckInput, 'job' | 'setOut' | 'breakdown' | 'weigh'>): readonly Snag[] {
  const { job } = input;
  const { people } = job.shop;
  if (people.length === 0) return [];
  const words = new ShopWords(job);
  const { can, says: together } = strength(job);
  const snags: Snag[] = [...sheetLifting(input)];
  const heaviest = heaviestToCarry(input);
  if (heaviest.kg > can) {
    const { record, kg: piece } = heaviest;
    snags.push({
      code: 'lifting.piece',
      level: 'mind',
      where: { path: `design/records/${record.id}`, record: record.id },
      sentence: `${record.kind === 'case' ? `The heaviest case, “${record.id}”,` : 'The finished piece'}${heaviest.without ? ' weighs, without all that comes out by hand,' : ' weighs'} about ${words.mass(piece)}; ${together}.`,
      figures: words.massAtMost(piece, can),
      rule: RULE,
      cures: [
        { says: 'Ask more people to help, slide it on a blanket, or put it together where it will stand.' },
      ],
    });
  }
  return snags;
}

const RULE = practice('nobody lifts more than they say they can');

/** Whether the people of the shop can lift the heaviest sheet together. */
export function sheetLifting(input: Pick<CheckInput, 'job' | 'setOut' | 'breakdown'>): readonly Snag[] {
  const { job } = input;
  const sheet = job.shop.people.length === 0 ? undefined : heaviestSheet(input);
  const { can, says: together } = strength(job);
  if (!sheet || sheet.kg <= can) return [];
  const words = new ShopWords(job);
  return [
    {
      code: 'lifting.sheet',
      level: 'mind',
      where: { path: `shop/rack/lots/${sheet.lot}`, lot: sheet.lot },
      sentence: `What is lifted of sheet ${sheet.name} weighs about ${words.mass(sheet.kg)}; ${together}.`,
      figures: words.massAtMost(sheet.kg, can),
      rule: RULE,
      cures: [
        {
          says: 'Have it cut down where it is bought (say so with “yard” among the shop’s ways of cutting), or ask someone to help.',
        },
      ],
    },
  ];
}

/** What all people of the shop lift together. */
function strength(job: JobDocument): { readonly can: number; readonly says: string } {
  const { people } = job.shop;
  const can = people.reduce((sum, p) => sum + massKg(p.lift), 0);
  const who =
    people.length === 1
      ? 'the one person of the shop lifts'
      : `the ${people.length} people of the shop together lift`;
  return { can, says: `${who} ${new ShopWords(job).mass(can)}` };
}

/** What is carried at once: the piece, or the heaviest of several cases, which are put together in their place. */
function heaviestToCarry({ job, setOut, weigh }: Pick<CheckInput, 'job' | 'setOut' | 'weigh'>): {
  readonly record: RecordOf<'piece' | 'case'>;
  readonly kg: number;
  /** Whether something comes out first: drawers, sliding doors, loose shelves. */
  readonly without: boolean;
} {
  const out = new Set([
    ...setOut.drawers.flatMap((d) => Object.values(d.parts)),
    ...setOut.sliding.flatMap((s) => s.leaves.map((leaf) => leaf.part)),
    ...setOut.pinned.map((s) => s.part),
  ]);
  const without = out.size > 0;
  const tree = treeOf(job);
  const piece = tree.piece!;
  const boxes = tree.casesOf(piece.id);
  const carried = carriedWith(setOut);
  const masses = new Map<string, number>();
  let all = 0;
  for (const p of setOut.parts) {
    if (out.has(p.id)) continue;
    const { kg } = weigh(p.id);
    all += kg;
    const of = carried.get(tree.caseOf(p.record)?.id ?? '');
    if (of !== undefined) masses.set(of, (masses.get(of) ?? 0) + kg);
  }
  if (new Set(carried.values()).size < 2) return { record: piece, kg: all, without };
  return boxes
    .map((record) => ({ record, kg: masses.get(record.id) ?? 0, without }))
    .reduce((a, b) => (b.kg > a.kg ? b : a));
}

/** What the yard makes of a sheet. */
function broughtHome(node: PlannedNode): readonly PlannedNode[] {
  return node.kind === 'cut' && node.yard ? node.parts.flatMap(broughtHome) : [node];
}

/** The first of the cases that a case is carried with: those that share a side can’t be parted. */
function carriedWith({ sides }: CheckInput['setOut']): ReadonlyMap<string, string> {
  const first = new Map<string, string>();
  sides.forEach(({ record, left }, i) => {
    const before = sides[i - 1];
    first.set(record, before?.right === left ? first.get(before.record)! : record);
  });
  return first;
}

function heaviestSheet({
  setOut,
  breakdown,
}: Pick<CheckInput, 'setOut' | 'breakdown'>):
  | { readonly name: string; readonly lot: string; readonly kg: number }
  | undefined {
  const l = setOut.ledger;
  let heaviest: { name: string; lot: string; kg: number } | undefined;
  for (const { lot, sheets } of breakdown.lots) {
    const part = setOut.parts.find((p) => p.lot === lot.id);
    const kgM3 = density(lot.material)?.kgM3;
    if (lot.form !== 'sheet' || !part || kgM3 === undefined) continue;
    for (const { name, source, root } of sheets)
      for (const piece of root.kind === 'cut' && root.yard ? broughtHome(root) : [source]) {
        const mm3 = [piece.length, piece.width, part.thickness].reduce((v, t) => v * toMm(l.ticks(t)), 1);
        const kg = (mm3 * kgM3) / 1e9;
        if (!heaviest || kg > heaviest.kg) heaviest = { name, lot: lot.id, kg };
      }
  }
  return heaviest;
}
