import { expect, test } from 'vitest';
import { enoughMaterial } from '../src/checks/enough-material.ts';
import { checkJob } from '../src/job/index.ts';
import { built, type demoDocument, pieceOf } from './build/built.ts';
import { listed } from './build/listed.ts';
import { lotOf, smallJob } from './generate/small-job.ts';

interface Stock {
  readonly id: string;
  readonly [field: string]: unknown;
}

/** A plain box of which the shop has sheets of birch, some of them good on one face or none. */
function box(...stock: readonly Stock[]): unknown {
  const piece = pieceOf(
    { id: 'piece', kind: 'piece', name: 'Box', width: '700 mm', height: '600 mm', depth: '320 mm' },
    { id: 'case', kind: 'case', parent: 'piece', board: 'birch18', joints: 'pocket-screws' },
    { id: 'inside', kind: 'opening', parent: 'case' },
    { id: 'rows', kind: 'shelf', parent: 'inside', count: 1 },
    { id: 'back', kind: 'back', parent: 'case', board: 'birch6', fitting: 'applied' },
  ) as ReturnType<typeof demoDocument>;
  const rack = piece.shop.rack as { lots: Record<string, unknown>[] };
  const lots = rack.lots.map((lot) => (lot.id === 'birch18' ? { ...lot, stock } : lot));
  return { ...piece, shop: { ...piece.shop, rack: { ...rack, lots } } };
}

/** A sheet that gives one part and no more. */
const small = (id: string, have: number, goodFaces?: 'one' | 'none') => ({
  id,
  length: '700 mm',
  width: '400 mm',
  have,
  ...(goodFaces ? { goodFaces } : {}),
});

/** Names of the parts that come from a stock. */
function from(stock: string, of: ReturnType<typeof built>): readonly string[] {
  const names: string[] = [];
  for (const lot of of.breakdown.lots)
    for (const s of lot.sheets) {
      if (s.source.stock.id !== stock) continue;
      const walk = (node: typeof s.root): void => {
        if (node.kind === 'cut') for (const part of node.parts) walk(part);
        else if (node.kind === 'piece') names.push(node.part.name);
      };
      walk(s.root);
    }
  return names.sort();
}

function sentences({ job, drawn: setOut, breakdown }: ReturnType<typeof built>): readonly string[] {
  return enoughMaterial({ job, setOut, breakdown }).flatMap((s) => (s.level === 'stop' ? [s.sentence] : []));
}

test('a sheet that is good on one face gives what shows one; what shows both comes from the others', () => {
  const made = built(box(small('good', 4), small('plain', 1, 'one')));
  expect(made.breakdown.missing).toEqual([]);
  expect(from('plain', made)).toEqual(['bottom']);
  expect(from('good', made)).toEqual(['left side', 'right side', 'shelf', 'top panel']);
  expect(made.breakdown.lots.every((l) => l.verdict.holds)).toBe(true);
  const said = made.build.operations.filter((o) => o.lines.some((l) => l.includes('is good: lay it down')));
  expect(said.map((o) => o.faceUp)).toEqual(['better face down']);
});

test('what shows a face finds no place on sheets that are not good on as many, and the stop says so', () => {
  const made = built(box(small('good', 2), small('plain', 2, 'one'), small('poor', 9, 'none')));
  expect(from('plain', made)).toEqual(['bottom']);
  expect(from('poor', made)).toEqual([]);
  const { missing } = made.breakdown;
  expect(missing).toHaveLength(2);
  expect(missing.map((m) => m.part.name)).not.toContain('bottom');
  expect(sentences(made)[0]).toContain('that is good on both faces is used up');
  const poor = built(box(small('poor', 9, 'none')));
  expect(sentences(poor)).toHaveLength(5);
  expect(
    sentences(poor).filter((x) =>
      /, the bottom, is seen from one side, and no sheet of .* is good on any face\.$/.test(x),
    ),
  ).toHaveLength(1);
});

test('a spoiled part is cut again only from what has faces as good', () => {
  const made = built(box(small('good', 4), small('plain', 2, 'one')));
  const again = (name: string) => made.breakdown.spares.find((s) => s.part.name === name);
  expect(again('bottom')).toMatchObject({ from: 'rack', name: 'plain' });
  expect(again('left side')).toMatchObject({ from: 'nothing' });
});

test('strips have no better face to tell of: refused where it is said', () => {
  const job = smallJob();
  Object.assign(lotOf(job, 'ash6').stock[0]!, { goodFaces: 'one' });
  const read = checkJob(job);
  expect(read.ok ? [] : read.snags.map((s) => `${s.code} ${s.where.path}`)).toEqual([
    'stock.faces-of-strips shop/rack/lots/ash6/stock/ash6-length/goodFaces',
  ]);
});

test('a list doesn’t say what is seen, so that its pieces come from any sheet', () => {
  const read = checkJob(box(small('poor', 1, 'none')));
  if (!read.ok) throw new Error(read.snags.map((x) => x.sentence).join());
  const list = listed('name,length,width,stock\nshelf,600 mm,300 mm,birch18', read.job.shop);
  expect(list.breakdown.missing).toEqual([]);
  expect(list.breakdown.lots.map((l) => l.lot.id)).toEqual(['birch18']);
  expect(list.build.operations.some((o) => o.lines.some((l) => l.includes('of this sheet is good')))).toBe(
    false,
  );
});
