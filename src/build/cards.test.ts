import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Built, built, demoDocument } from '../../test/build/built.ts';
import { hallCupboard } from '../../test/doors/door-job.ts';
import { generatedJobs } from '../../test/generate/design.ts';
import { equipped } from '../../test/generate/equipped.ts';
import { smallJob } from '../../test/generate/small-job.ts';
import { parseLength, type Report, type Traced, tracesOf } from '../measure/index.ts';
import { cutsOfAct } from './cuts-of-act.ts';
import type { Operation } from './operation.ts';
import { stepsReport } from './steps-report.ts';

/** Every card of a build that is not as it must be, told in a line. */
function faultsOf({ job, drawn, build }: Built): string[] {
  const t = (x: Traced) => drawn.ledger.ticks(x);
  const acts = (stepsReport(build).operations as readonly { does: Report }[]).map((o) => o.does);
  const step = (id: string | undefined): number | undefined => {
    const tool = job.shop.tools.find((x) => x.id === id);
    const read = tool && 'step' in tool ? parseLength(tool.step, job.shop.units) : undefined;
    return read?.ok ? read.value : undefined;
  };
  const done = new Set<string>();
  const there = new Set([...build.stock.map((s) => s.name), 'bench']);
  return build.operations.flatMap((o, i) => {
    const faults: string[] = [];
    const say = (what: string) => faults.push(`${o.id}: ${what}`);
    for (const id of o.after) if (!done.has(id)) say(`comes before ${id}, which it needs`);
    done.add(o.id);
    // Placeholders and lengths go together, and what is executed is what is printed.
    const named = new Set([...o.lines.join(' ').matchAll(/\{(\d+)\}/g)].map((m) => Number(m[1])));
    o.lengths.forEach((_, n) => named.has(n) || say(`length ${n} is nowhere on the card`));
    for (const n of named) if (n >= o.lengths.length) say(`{${n}} has no length`);
    const printed = new Set(o.lengths.map((x) => Math.abs(t(x))));
    for (const { path, traced } of tracesOf(acts[i]!))
      if (!printed.has(Math.abs(t(traced)))) say(`${path} is done but not printed`);
    // Saws are set on their own grid.
    const grid = step(o.tool);
    for (const { at } of cutsOfAct(o.does))
      if (grid !== undefined && t(at) % grid !== 0) say('its cut is off the grid');
    for (const name of uses(o)) if (!there.has(name)) say(`speaks of ${name}, which isn’t there`);
    for (const name of gives(o)) there.add(name);
    for (const text of [o.title, ...o.lines, ...o.cautions, o.faceUp ?? 'up', o.reference ?? 'none'])
      if (/undefined|NaN|null|\[object/.test(text) || text.trim() === '') say(`prints “${text}”`);
    return faults;
  });
}

function uses({ does }: Operation): readonly string[] {
  switch (does.act) {
    case 'saw-alike':
      return does.cuts.map((c) => c.workpiece);
    case 'saw':
    case 'part':
    case 'rip-apart':
    case 'name':
      return [does.workpiece];
    case 'scribe':
      return [does.workpiece, ...(does.with ?? [])];
    case 'plane':
    case 'bevel':
    case 'rabbet':
    case 'groove':
    case 'notch':
    case 'slot':
    case 'biscuit-slot':
    case 'spline-groove':
    case 'pocket':
    case 'drill':
    case 'pin-holes':
    case 'flush':
      return does.workpieces;
    case 'glue-up':
      return does.boards;
    case 'edge':
      return does.pairs.flatMap((p) => [p.strip, p.board]);
    case 'set':
      return [
        does.workpiece,
        ...does.touches.flatMap((x) => [x.of, x.part ?? x.of]),
        ...(does.pegs ?? []).map((p) => p.with),
        ...(does.splines ?? []).flatMap((s) => [s.with, s.strip]),
      ];
    case 'screw':
      return [does.workpiece, does.mate, does.into];
    case 'hinge':
      return [does.workpiece, does.post, does.into];
    case 'runners':
      return [...does.sides, ...does.posts, ...does.moves, does.into];
    case 'draw-out':
      return [...does.sides, ...does.runners, ...does.moves, does.into];
    case 'rest':
      return [does.workpiece, does.over, does.into, ...does.posts];
    case 'lift-in':
      return [does.workpiece, does.into, does.below, does.above, ...does.between];
    case 'pull':
      return [does.workpiece, does.behind ?? does.workpiece, does.into];
    case 'buttons':
      return [...does.workpieces, does.into, does.post, does.top];
    case 'levellers':
    case 'plug':
      return [does.workpiece, does.into];
    case 'other':
      return does.on;
  }
}

function gives({ does }: Operation): readonly string[] {
  if (does.act === 'saw' || does.act === 'saw-alike')
    return cutsOfAct(does).flatMap(({ yields }) => yields.flatMap((y) => (y ? [y.name] : [])));
  if (does.act === 'name') return [does.as.name];
  if (does.act === 'glue-up') return [does.as];
  if (does.act === 'rip-apart') return does.yields;
  if (does.act === 'part') return does.yields.flatMap((y) => y ?? []);
  return does.act === 'set' ? [does.into] : [];
}

describe('the cards', () => {
  test.each([
    ['the glaze cabinet', demoDocument()],
    ['a small cupboard', equipped(smallJob())],
    ['a cupboard with doors', hallCupboard()],
  ])(
    'of %s: needs come first, numbers are printed, saws on their grid, nothing is spoken of before it is there',
    (_, document) => {
      const of = built(document);
      expect(of.build.operations.length).toBeGreaterThan(50);
      expect(faultsOf(of)).toEqual([]);
      expect(of.build.stages.flatMap((s) => s.operations)).toEqual([...of.build.operations].map((o) => o.id));
    },
  );

  test('of generated designs as well', () => {
    fc.assert(
      fc.property(generatedJobs, ({ document }) => {
        const of = built(equipped(document));
        if (of.drawn.snags.some((s) => s.level === 'stop') || of.breakdown.missing.length > 0) return;
        expect(faultsOf(of)).toEqual([]);
      }),
      { numRuns: 25 },
    );
  });
});
