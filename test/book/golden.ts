import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { expect } from 'vitest';
import { type Drawing, dimensionClashes, PLEX, toSvg } from '../../src/book/index.ts';

const FOLDER = new URL('../golden/book/', import.meta.url);

/**
 * Compares a drawing with the picture kept under its name in test/golden/book. Where they differ the new one is left
 * beside it as NAME-changed.svg, to be looked at and, if it is right, to take the old one's place.
 */
export function expectGolden(name: string, drawing: Drawing): void {
  expect(dimensionClashes(drawing, PLEX), `${name} reads clearly`).toEqual([]);
  const svg = toSvg(withoutTraces(drawing));
  const kept = new URL(`${name}.svg`, FOLDER);
  const changed = new URL(`${name}-changed.svg`, FOLDER);
  const before = existsSync(kept) ? readFileSync(kept, 'utf8') : undefined;
  if (before === svg) {
    rmSync(changed, { force: true });
    return;
  }
  mkdirSync(FOLDER, { recursive: true });
  writeFileSync(changed, svg);
  expect.fail(
    before === undefined
      ? `there is no golden ${name}.svg yet; look at ${name}-changed.svg and rename it`
      : `${name} differs from its golden; look at ${name}-changed.svg`,
  );
}

/** Ledger indices change with every entry made before them; the pictures don't. */
function withoutTraces(drawing: Drawing): Drawing {
  return {
    ...drawing,
    marks: drawing.marks.map((m) => {
      if (m.kind === 'dimension') return { ...m, trace: 0 as typeof m.trace };
      if (m.kind !== 'text') return m;
      const { trace, ...rest } = m;
      return rest;
    }),
  };
}
