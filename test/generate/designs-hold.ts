import fc from 'fast-check';
import { expect } from 'vitest';
import { openSolids } from '../../src/adaptors/solids-manifold.ts';
import { readPlace } from '../../src/job/index.ts';
import { inMm } from '../../src/measure/index.ts';
import { partsReport, setOut } from '../../src/setting-out/index.ts';
import { checked } from './checked.ts';
import { generatedJobs } from './design.ts';
import { FeatureTable } from './feature-table.ts';
import { cornerFaults } from './judge-corners.ts';
import { doorFaults } from './judge-doors.ts';
import { drawerFaults } from './judge-drawers.ts';
import { edgingFaults } from './judge-edging.ts';
import { fitFaults } from './judge-fits.ts';
import { gluedPanelFaults } from './judge-glued-panels.ts';
import { handleFaults } from './judge-handles.ts';
import { rowFaults } from './judge-hole-rows.ts';
import { holeFaults } from './judge-holes.ts';
import { jointFaults } from './judge-joints.ts';
import { lidFaults } from './judge-lids.ts';
import { pegFaults } from './judge-pegs.ts';
import { pinFaults } from './judge-pins.ts';
import { scribedTopFaults } from './judge-scribed-tops.ts';
import { faultsOf } from './judge-set-out.ts';
import { slidingFaults } from './judge-sliding.ts';
import { sharedWood } from './judge-solids.ts';
import { traceFaults } from './judge-traces.ts';
import { thingFaults } from './things-held.ts';

/** Test files that share the designs among them, so that every core has its part. */
const SHARDS = 2;

/** `RUNS=5000 npx vitest run test/generate` looks further; `npm run soak` looks at 50,000. */
const RUNS = Number(process.env.RUNS ?? 2000);
const SEED = Number(process.env.SEED ?? 20);

/**
 * Draws this shard's designs, judges each in whole ticks and every tenth on solids, and prints how often each feature of
 * the language occurs. A design that can't be made must say what stops it, and where.
 */
export async function designsHold(shard: number): Promise<void> {
  const solids = await openSolids();
  const table = new FeatureTable();
  let seen = 0;
  fc.assert(
    fc.property(generatedJobs, ({ document, overall, asked }) => {
      const job = checked(document);
      const piece = setOut(job);
      seen++;
      const stopping = piece.snags.filter((s) => s.level === 'stop');
      if (stopping.length > 0) {
        for (const s of stopping) {
          expect(s.where.path, s.code).toBeDefined();
          expect(s.cures.length).toBeGreaterThan(0);
          const record = s.where.path!.split('/').slice(0, 3).join('/');
          expect(readPlace(job, record), s.where.path).toBeDefined();
        }
        table.addStopped(new Set(stopping.map((s) => s.code)));
        return;
      }
      table.addFine(job, piece);
      expect(faultsOf(piece, overall)).toEqual([]);
      for (const [name, ticks] of Object.entries(asked))
        expect(piece.ledger.ticks(piece.dimensions.get(name)!), name).toBe(ticks);
      expect(jointFaults(piece)).toEqual([]);
      expect(cornerFaults(job, piece)).toEqual([]);
      expect(doorFaults(piece)).toEqual([]);
      expect(edgingFaults(job, piece)).toEqual([]);
      expect(fitFaults(piece)).toEqual([]);
      expect(holeFaults(piece)).toEqual([]);
      expect(pegFaults(piece)).toEqual([]);
      expect(rowFaults(job, piece)).toEqual([]);
      expect(handleFaults(job, piece)).toEqual([]);
      expect(lidFaults(piece)).toEqual([]);
      expect(scribedTopFaults(job, piece)).toEqual([]);
      expect(gluedPanelFaults(piece)).toEqual([]);
      expect(pinFaults(piece)).toEqual([]);
      expect(slidingFaults(piece)).toEqual([]);
      expect(drawerFaults(piece)).toEqual([]);
      expect(thingFaults(job, piece)).toEqual([]);
      expect(traceFaults(job, piece)).toEqual([]);
      expect(JSON.stringify(inMm(piece.ledger, partsReport(piece)))).not.toMatch(/null|NaN/);
      if (seen % 10 === 0) expect(sharedWood(solids, piece)).toEqual([]);
    }),
    { numRuns: Math.ceil(RUNS / SHARDS), seed: SEED + shard },
  );
  console.log(String(table));
  // Of a few designs, shares say nothing.
  if (RUNS < 2000) return;
  expect(table.share).toBeGreaterThanOrEqual(0.8);
  expect(table.rarerThan(3)).toEqual([]);
}
