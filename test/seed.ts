import fc from 'fast-check';

// The gate draws the same cases on every machine. To look further, set SEED (and RUNS, where a test reads it).
fc.configureGlobal({ seed: Number(process.env.SEED ?? 1) });
