import { describe, expect, test } from 'vitest';
import { built, builtExample, demoDocument } from '../../test/build/built.ts';
import { cutsOfAct } from './cuts-of-act.ts';
import type { Operation } from './operation.ts';

const { build, drawn } = built(demoDocument());

/** Cuts that divide a workpiece, not those that only true or trim it. */
const cuts = build.operations.filter(
  (o) =>
    o.does.act === 'saw' && !o.does.yields.some((y) => o.does.act === 'saw' && y?.name === o.does.workpiece),
);

function setting({ does }: Operation): string {
  return does.act === 'saw' ? `${does.across} ${drawn.ledger.ticks(does.at)}` : '';
}

test('a cut with the setting of the one before is made next, if its workpiece is there', () => {
  const sheet = (o: Operation) => (o.does.act === 'saw' ? o.does.workpiece.split('.')[0] : undefined);
  const there = new Set(build.stock.map((s) => s.name));
  cuts.forEach((cut, i) => {
    const before = cuts[i - 1];
    if (before && sheet(before) === sheet(cut) && setting(before) !== setting(cut)) {
      const passedOver = cuts
        .slice(i + 1)
        .filter(
          (c) =>
            sheet(c) === sheet(cut) &&
            setting(c) === setting(before) &&
            c.does.act === 'saw' &&
            there.has(c.does.workpiece),
        );
      expect(
        passedOver.map((c) => c.title),
        `before “${cut.title}”`,
      ).toEqual([]);
    }
    if (cut.does.act === 'saw') for (const y of cut.does.yields) if (y) there.add(y.name);
  });
  expect(cuts.length).toBeGreaterThan(20);
});

test('every cut says where its halves go: laid by, cut on, back to the rack, or waste', () => {
  for (const { title, lines } of cuts)
    expect(lines.join(' '), title).toMatch(/Then (lay|trim|keep) |goes back on the rack|the rest is waste/);
});

test('what is still to be trimmed is laid by when it is', () => {
  const trims = build.operations.filter((o) => /^[A-Z]\d+\/trim-/.test(o.id));
  expect(trims.length).toBeGreaterThan(2);
  for (const { id, lines } of trims) {
    const mark = id.split('/')[0]!;
    const cut = cuts.find((o) => o.does.act === 'saw' && o.does.yields.some((y) => y?.name === mark))!;
    expect(cut.lines.at(-1)).toContain(`trim ${mark}`);
    expect(lines.at(-1)).toBe(`Then lay ${mark} by.`);
  }
});

test('waste before a flaw is cut off with the rail on what stays, which has a name', () => {
  const stool = builtExample('step-stool');
  for (const o of stool.build.operations)
    expect(`${o.title} ${o.lines.join(' ')}`).not.toContain('undefined');
  const waste = stool.build.operations.filter((o) => o.id.includes('/waste-off-'));
  expect(
    waste.map((o) => o.does.act === 'saw' && [o.does.keep, stool.drawn.ledger.ticks(o.does.at) / 3200]),
  ).toEqual([['behind', 20]]);
});

test('the slot to be measured is the blade’s, not what a cut takes in the plan', () => {
  const trial = build.operations.find((o) => o.kind === 'test-cut')!;
  expect(drawn.ledger.ticks(trial.lengths[0]!) / 3200).toBe(2.2);
});

test('what is cut up the same way next isn’t trimmed before: its last part is, when it is alone', () => {
  const trims = build.operations.filter((o) => o.id.includes('/trim-'));
  expect(trims.length).toBeGreaterThan(2);
  for (const trim of trims) {
    if (trim.does.act !== 'saw') throw new Error(trim.title);
    const { workpiece, across } = trim.does;
    const next = cuts.find((c) => c.does.act === 'saw' && c.does.workpiece === workpiece);
    if (next?.does.act === 'saw') expect(next.does.across, trim.title).not.toBe(across);
  }
});

test('of a piece that is wider than it is long the card says which side is meant', () => {
  const kitchen = builtExample('hall-kitchen').build.operations.filter((o) => o.stage === 'sheets');
  const short = kitchen.filter((o) => o.reference === 'the trued edge, here a short side');
  expect(short.length).toBeGreaterThan(20);
  for (const o of short)
    expect(o.lines.join(' ')).toContain('from the trued edge, here a short side, near both of its ends');
});

describe('strips of a kitchen', () => {
  const kitchen = builtExample('hall-kitchen');
  const rows = kitchen.build.operations.filter((o) => o.stage === 'strips' && o.kind === 'crosscut');
  const at = (o: Operation) => cutsOfAct(o.does).map((c) => kitchen.drawn.ledger.ticks(c.at));

  test('all of one length are cut at one stop, on one card', () => {
    expect(rows.flatMap(at).length).toBe(92);
    const lengths = rows.map((o) => at(o)[0]);
    expect(new Set(lengths).size).toBe(lengths.length);
  });

  test('what stays of a strip keeps its name, and the card says from which strip each comes', () => {
    const row = rows.find((o) => at(o).length === 14)!;
    expect(row.title).toContain('J16, J17');
    expect(row.lines.join(' ')).toContain('From L5 come J16, J17 and J25; from L6 J26');
    expect(row.lines).toContain('Keep L18 for its next cuts.');
    for (const { workpiece, yields } of cutsOfAct(row.does))
      expect([undefined, workpiece]).toContain(yields[1]?.name);
  });
});

test('boards whose edging reads alike are edged together, whatever their sizes before rounding', () => {
  const { operations } = builtExample('hall-kitchen').build;
  const trims = operations.filter((o) => o.kind === 'flush').map((o) => o.title);
  expect(trims).toContain('Trim the edging of E1–E47 level');
  expect(trims.length).toBeLessThan(10);
});

test('doors that are adjusted alike stand on one card', () => {
  const { operations } = builtExample('hall-kitchen').build;
  expect(operations.filter((o) => o.kind === 'adjust' && o.stage === 'hang').map((o) => o.title)).toEqual([
    'Adjust K1–K18',
  ]);
});
