import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { openSolids } from '../src/adaptors/solids-manifold.ts';
import { numberedCuts } from '../src/book/index.ts';
import { readJob } from '../src/job/index.ts';
import type { Traced } from '../src/measure/index.ts';
import { type Plan, planJob } from '../src/plan/index.ts';
import { setOut } from '../src/setting-out/index.ts';
import type { Solids } from '../src/solid/index.ts';

let solids: Solids;
beforeAll(async () => {
  solids = await openSolids();
});

function planOf(example: string): Plan {
  const read = readJob(readFileSync(new URL(`../examples/${example}.json`, import.meta.url), 'utf8'));
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  const planning = planJob(read.job, { solids });
  let step = planning.next();
  while (!step.done) step = planning.next();
  return step.value;
}

const told = (plan: Plan, level: string) => plan.snags.filter((s) => s.level === level).map((s) => s.code);

describe('the step stool', () => {
  test('is made of offcuts alone: nothing is bought, every seen screw has its plug, and it dry-fits clean', () => {
    const plan = planOf('step-stool');
    expect(plan.breakdown.purchases).toEqual([]);
    expect(told(plan, 'note').filter((code) => code.endsWith('.to-buy'))).toEqual([]);
    expect(told(plan, 'stop')).toEqual([]);
    const seen = plan.setOut.joints.filter((j) => j.heads?.sight === 'seen');
    expect(seen.length).toBeGreaterThan(0);
    expect(seen.every((j) => j.heads!.finish === 'plugged')).toBe(true);
    expect(plan.dryFit.fits).toBe(true);
  });
});

describe('the spice rack', () => {
  test('comes out of three rough boards round their cracks and knots; nothing is bought, and it dry-fits clean', () => {
    const plan = planOf('spice-rack');
    expect(told(plan, 'stop')).toEqual([]);
    expect(plan.breakdown.purchases).toEqual([]);
    expect(plan.breakdown.lots[0]!.verdict.findings).toEqual([]);
    expect(plan.breakdown.lots[0]!.sheets.map((s) => s.source.flaws.length).sort()).toEqual([1, 2, 2]);
    expect(plan.dryFit.fits).toBe(true);
  });

  test('speaks of boards, and of no veneer in them that could be sanded through', () => {
    const { build } = planOf('spice-rack');
    expect(build.stages.map((s) => s.title)).toContain('Cut the sheets and boards');
    const says = (on: RegExp) =>
      build.operations
        .filter((o) => on.test(o.title))
        .flatMap((o) => [o.title, ...o.lines, ...o.cautions])
        .join('\n');
    expect(says(/ S[123]\b/)).toContain('board S1');
    expect(says(/ S[123]\b/)).not.toMatch(/\bsheets?\b/);
    expect(says(/^Sand A1/)).toContain('from 120 on to 220');
    expect(says(/^Sand A1/)).not.toContain('veneer');
    expect(says(/^Sand F1/)).toContain('veneer');
  });

  test('has its waste before a flaw marked in the list of cuts where the card has it', () => {
    const { build, breakdown, setOut: drawn } = planOf('spice-rack');
    const t = (x: Traced) => drawn.ledger.ticks(x);
    const waste = breakdown.lots[0]!.sheets.flatMap((sheet) =>
      numberedCuts(sheet, build.operations).flatMap(({ number, node, marked }) => {
        const { does } = build.operations[number - 1]!;
        if (does.act !== 'saw' || does.keep === 'before') return [];
        const from = node.across === 'length' ? node.x : node.y;
        return [[t(marked!), t(does.at), t(node.at) - t(from)]];
      }),
    );
    expect(waste.length).toBeGreaterThan(0);
    for (const [listed, card, planned] of waste) {
      expect(listed).toBe(card);
      expect(listed).toBeGreaterThan(planned!);
    }
  });
});

describe('the aquarium stand', () => {
  test('carries 180 kg on its top: no check of strength objects, its usual cautions stand, and it dry-fits clean', () => {
    const plan = planOf('aquarium-stand');
    expect(plan.setOut.surfaces.find((s) => s.record === 'top')!.loadKg).toBe(180);
    expect(told(plan, 'stop')).toEqual([]);
    // Its shelf stands between panels that a saw set to half a millimetre made: cut it last, to what is measured.
    expect(told(plan, 'mind')).toEqual(['fits.tight']);
    expect(told(plan, 'note')).toContain('tipping.anchor');
    expect(plan.dryFit.fits).toBe(true);
  });
});

describe('the toy chest', () => {
  test('holds its lid open, pinches nobody, lets air in, and dry-fits clean', () => {
    const plan = planOf('toy-chest');
    expect(told(plan, 'stop')).toEqual([]);
    expect(plan.snags.filter((s) => s.code.startsWith('lids.'))).toEqual([]);
    const [lid] = plan.setOut.lids;
    expect(lid!.stays).toMatchObject({ count: 2 });
    expect(plan.dryFit.fits).toBe(true);
  });
});

describe('the writing cabinet', () => {
  test('lets its flap down on two stays, stands on levellers, carries what it is said to, and dry-fits clean', () => {
    const plan = planOf('writing-cabinet');
    expect(told(plan, 'stop')).toEqual([]);
    // Panels in dados, made with a saw set to half a millimetre: cut last, to what is measured.
    expect(told(plan, 'mind')).toEqual(['fits.tight']);
    const [flap] = plan.setOut.doors;
    expect(flap).toMatchObject({ hung: 'below', held: { stays: { id: 'arm', count: 2, holdNm: 12 } } });
    // 860 by 376 mm of 17.8 mm birch plywood: 3.9 kg, 7.2 N m at half its height. Statics.
    expect(flap!.held!.momentNm).toBeCloseTo(3.92 * 9.81 * 0.188, 1);
    expect(plan.setOut.levellers[0]!.at).toHaveLength(6);
    expect(plan.setOut.parts.filter((p) => p.record === 'trays')).toHaveLength(3);
    expect(plan.dryFit.fits).toBe(true);
  });
});

describe('the linen cupboard', () => {
  test('fills its alcove with two cases that share a side, on one base, under a flush top edged in front; it dry-fits clean', () => {
    const plan = planOf('linen-cupboard');
    const { ledger, overall, parts, joints, dimensions } = plan.setOut;
    expect(told(plan, 'stop')).toEqual([]);
    expect(ledger.ticks(overall.width)).toBe(ledger.ticks(dimensions.get('alcove.width')!));
    expect(parts.filter((p) => p.role.endsWith('-side'))).toHaveLength(3);
    expect(parts.filter((p) => p.role.startsWith('base-'))).toHaveLength(4);
    expect(parts.filter((p) => p.record === 'wall')).toHaveLength(1);
    const edged = (record: string) =>
      joints.filter((j) => j.duty === 'edging' && parts.find((p) => p.id === j.mate)!.record === record);
    expect(edged('top').map((j) => j.mateSide)).toEqual(['near']);
    expect(edged('linen.door')).toHaveLength(8);
    expect(plan.dryFit.fits).toBe(true);
  });
});

test('two backs in grooves of a side that cases share leave a third of it between them', () => {
  const job = JSON.parse(readFileSync(new URL('../examples/linen-cupboard.json', import.meta.url), 'utf8'));
  for (const r of job.design.records) if (r.kind === 'back') r.fitting = 'groove';
  const read = readJob(JSON.stringify(job));
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  const { parts, ledger } = setOut(read.job);
  const depths = (id: string) =>
    parts
      .find((p) => p.id === id)!
      .features.flatMap((f) => (f.kind === 'groove' && f.purpose === 'for the back' ? [f.depth] : []))
      .map((t) => ledger.ticks(t) / 3200);
  // Plywood of 17.8 mm: a third from either face, two fifths where one back stands alone.
  expect(depths('linen/right-side')).toEqual([5.9, 5.9]);
  expect(depths('linen/left-side')).toEqual([7.1]);
});

describe('the hall console', () => {
  test('has a top glued up from boards that can move, hangs by a bevelled cleat, and dry-fits clean', () => {
    const plan = planOf('hall-console');
    expect(told(plan, 'stop')).toEqual([]);
    expect(told(plan, 'mind')).toEqual([]);
    expect(plan.setOut.gluedPanels.map((g) => g.boards.map((b) => b.mark))).toEqual([['V1', 'V2', 'V3']]);
    expect(plan.setOut.cleats).toHaveLength(1);
    // White oak, 0.00365 a point, flat-sawn (Wood Handbook, ch. 13), about six points between air of 30 and 65 %: 3.3 mm over the
    // 150 mm behind its front screws, so that those of 4 mm behind stand in holes of 8 mm.
    const wide = plan.setOut.parts.flatMap((p) =>
      p.features.flatMap((f) =>
        f.kind === 'hole' && f.use === 'clearance' && f.countersink === undefined
          ? [plan.setOut.ledger.ticks(f.diameter) / 3200]
          : [],
      ),
    );
    expect(wide).toEqual([8, 8, 8]);
    expect(plan.dryFit.fits).toBe(true);
  });
});

describe('the lamp table', () => {
  test('has splines in its mitres and a solid top on wooden buttons; it dry-fits clean', () => {
    const plan = planOf('lamp-table');
    expect(told(plan, 'stop')).toEqual([]);
    expect(plan.setOut.splines.map((s) => s.mark)).toEqual(['Z1', 'Z2']);
    const buttons = plan.setOut.joints.filter((j) => j.duty === 'button');
    expect(buttons).toHaveLength(2);
    expect(plan.dryFit.fits).toBe(true);
    // What goes in with the glue lies ready before it is spread.
    const rehearsal = plan.build.operations.find((o) => o.title === 'Rehearse the gluing of B1, A1 and A2')!;
    expect(rehearsal.lines.join(' ')).toContain('the splines Z1 and Z2');
  });
});

describe('the sewing stand', () => {
  test('has tape on the ends of its bottom and slots under its solid top; it dry-fits clean', () => {
    const plan = planOf('sewing-stand');
    expect(told(plan, 'stop')).toEqual([]);
    const taped = plan.setOut.joints.filter((j) => j.duty === 'edging' && j.mate === 'case/bottom');
    expect(taped).toHaveLength(3);
    const slots = plan.setOut.parts.flatMap((p) =>
      p.features.filter((f) => f.kind === 'slot' && f.use === 'screw'),
    );
    expect(slots.length).toBeGreaterThanOrEqual(2);
    expect(plan.dryFit.fits).toBe(true);
  });
});
