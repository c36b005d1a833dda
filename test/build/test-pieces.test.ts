import { expect, test } from 'vitest';
import { cutsOfAct } from '../../src/build/index.ts';
import { builtExample } from './built.ts';

test('a test piece of every lot is laid by when its last piece is sawn', () => {
  const { breakdown, build } = builtExample('glaze-cabinet');
  const left = new Map(breakdown.leftovers.map((l) => [l.name, l]));
  const at = (id: string) => build.operations.findIndex((o) => o.id === id);
  const lots = breakdown.lots.filter(({ lot }) => lot.tape === undefined).map(({ lot }) => lot.id);
  expect(breakdown.testPieces.map((t) => t.lot)).toEqual(lots);
  for (const { lot, from, name } of breakdown.testPieces) {
    if (from !== 'leftover') continue;
    expect(left.get(name!)?.lot).toBe(lot);
    const card = build.operations.find((o) => o.does.act === 'other' && o.does.on.includes(name!))!;
    const cut = build.operations.find((o) =>
      cutsOfAct(o.does).some(({ yields }) => yields.some((y) => y?.name === name)),
    )!;
    expect(at(card.id)).toBeGreaterThan(at(cut.id));
    expect(card.lines.join()).toContain(`write TEST on ${name}.`);
  }
});

test('no part is said to come again from a test piece while something else would give it', () => {
  const { breakdown, drawn } = builtExample('glaze-cabinet');
  const kept = new Set(breakdown.testPieces.flatMap((t) => t.name ?? []));
  const t = drawn.ledger;
  for (const { part, from, name } of breakdown.spares) {
    if (from !== 'leftover' || !kept.has(name!)) continue;
    const others = breakdown.leftovers.filter(
      (l) =>
        l.lot === part.lot &&
        !kept.has(l.name) &&
        t.ticks(l.length) >= t.ticks(part.cut.length) &&
        t.ticks(l.width) >= t.ticks(part.cut.width),
    );
    expect(others, part.name).toEqual([]);
  }
  expect(kept.size).toBeGreaterThan(3);
});

test('what nothing would give again is named, and sawn before all else of its kind', () => {
  const { breakdown, build } = builtExample('glaze-cabinet');
  const last = new Set(breakdown.spares.filter((s) => s.from === 'nothing').map((s) => s.part.mark));
  expect(last.size).toBeGreaterThan(0);
  const sawn = build.operations.flatMap((o) =>
    o.stage === 'sheets' && o.does.act === 'saw' && o.kind !== 'true-edge' ? [o.does.workpiece] : [],
  );
  const sheetOf = (mark: string) =>
    breakdown.lots
      .filter((l) => l.lot.form === 'sheet')
      .flatMap((l) => l.sheets)
      .find((s) => JSON.stringify(s.root, (k, v) => (k === 'part' ? v.mark : v)).includes(`"${mark}"`));
  const risky = new Set([...last].flatMap((m) => sheetOf(m)?.name ?? []));
  expect(risky.size).toBeGreaterThan(0);
  const sheets = [...new Set(sawn.map((name) => name.split(/[.-]/)[0]!).filter((n) => n.startsWith('S')))];
  const firstSafe = sheets.findIndex((s) => !risky.has(s));
  expect(sheets.slice(0, firstSafe).sort()).toEqual([...risky].sort());
  for (const name of risky)
    expect(build.operations.find((o) => o.id === `${name}/only-once`)?.title).toMatch(/no second/);
});
