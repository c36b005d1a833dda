import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readJob } from '../../src/job/index.ts';
import { parseLength } from '../../src/measure/index.ts';
import { setOut } from '../../src/setting-out/index.ts';
import { checked } from './checked.ts';
import { generatedJobs } from './design.ts';
import { doorFaults } from './judge-doors.ts';
import { drawerFaults } from './judge-drawers.ts';
import { fitFaults } from './judge-fits.ts';
import { holeFaults } from './judge-holes.ts';
import { pegFaults } from './judge-pegs.ts';
import { pinFaults } from './judge-pins.ts';
import { faultsOf } from './judge-set-out.ts';
import { slidingFaults } from './judge-sliding.ts';
import { everyLength, traceFaults } from './judge-traces.ts';

const SEED = process.env.SEED === undefined ? 20 : Number(process.env.SEED);

describe('a generated design', () => {
  test('follows what was measured in one of its openings, and is as sound as before', {
    timeout: 600_000,
  }, () => {
    let followed = 0;
    const pick = fc.record({ which: fc.nat(), off: fc.constantFrom(-3200, -960, 320, 960, 2240) });
    fc.assert(
      fc.property(generatedJobs, pick, ({ document }, { which, off }) => {
        const job = checked(document);
        const before = setOut(job);
        const sized = job.design.records.flatMap((r) => {
          if (r.kind !== 'opening') return [];
          const parent = job.design.records.find((p) => p.id === r.parent);
          if (parent?.kind !== 'opening') return [`${r.id}.width`, `${r.id}.height`];
          // Depths are measured before doors are hung, which these designs have already.
          if (parent.split === 'back') return [];
          const free = job.design.records.some(
            (o) =>
              o.kind === 'opening' &&
              o.parent === parent.id &&
              o.id !== r.id &&
              !/[0-9]["m ]|gap/.test(o.size ?? ''),
          );
          return free ? [`${r.id}.${parent.split === 'across' ? 'width' : 'height'}`] : [];
        });
        // That two parts are cut one by one changes nothing in the piece.
        const snags = before.snags.filter((s) => s.code !== 'blanks.cut-apart');
        if (sized.length === 0 || snags.length > 0) return;
        const name = sized[which % sized.length]!;
        const value = before.ledger.ticks(before.dimensions.get(name)!) + off;
        const measured = { ...document, work: { measured: { [name]: `${value / 3200} mm` } } };
        const found = checked(measured);
        const after = setOut(found);
        expect(after.snags.filter((s) => s.code.startsWith('measured.'))).toEqual([]);
        if (after.snags.some((s) => s.level === 'stop')) return;
        followed++;
        expect(after.ledger.ticks(after.dimensions.get(name)!)).toBe(value);
        const [width, height, depth] = (['width', 'height', 'depth'] as const).map((k) =>
          after.ledger.ticks(after.overall[k]),
        );
        expect(faultsOf(after, { width: width!, height: height!, depth: depth! })).toEqual([]);
        expect(fitFaults(after)).toEqual([]);
        expect(traceFaults(found, after)).toEqual([]);
      }),
      { numRuns: 100, seed: SEED },
    );
    expect(followed).toBeGreaterThan(50);
  });

  test('sets out the same twice', () => {
    fc.assert(
      fc.property(generatedJobs, ({ document }) => {
        const once = setOut(checked(document));
        const again = setOut(checked(structuredClone(document)));
        expect(JSON.stringify([again.parts, again.joints, again.fasteners])).toBe(
          JSON.stringify([once.parts, once.joints, once.fasteners]),
        );
        expect(again.ledger.data()).toEqual(once.ledger.data());
      }),
      { numRuns: 20, seed: SEED },
    );
  });
});

const EXAMPLES = new URL('../../examples/', import.meta.url);

describe.each(readdirSync(EXAMPLES).filter((name) => name.endsWith('.json')))('the example %s', (name) => {
  const read = readJob(readFileSync(new URL(name, EXAMPLES), 'utf8'));
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  const { job } = read;
  const piece = setOut(job);

  test('passes the judge', () => {
    const { width, height, depth } = piece.overall;
    const [w, h, d] = [width, height, depth].map((t) => piece.ledger.ticks(t));
    expect(faultsOf(piece, { width: w!, height: h!, depth: d! })).toEqual([]);
    expect(doorFaults(piece)).toEqual([]);
    expect(fitFaults(piece)).toEqual([]);
    expect(holeFaults(piece)).toEqual([]);
    expect(pegFaults(piece)).toEqual([]);
    expect(pinFaults(piece)).toEqual([]);
    expect(slidingFaults(piece)).toEqual([]);
    expect(drawerFaults(piece)).toEqual([]);
    const asked = job.design.records.find((r) => r.kind === 'piece')!;
    const typed = [asked.width, asked.height, asked.depth].map((text) => parseLength(text, job.shop.units));
    // What a formula comes to is no length that was typed; the case for formulas holds that.
    typed.forEach((t, i) => {
      if (t.ok) expect(t.value).toBe([w, h, d][i]);
    });
    expect(typed.some((t) => t.ok)).toBe(true);
  });

  test('every number rests on the document, a measured value or a table, and comes out again from those', () => {
    expect(everyLength(piece).length).toBeGreaterThan(500);
    expect(traceFaults(job, piece)).toEqual([]);
  });
});
