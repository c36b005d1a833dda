import { existsSync, readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { cruise, type ICruiseResult } from 'dependency-cruiser';
import { beforeAll, describe, expect, test } from 'vitest';
import { type Arrow, FACES, findCycle, GROUND_FLOOR, objection, roomOf, WAY } from './arrows.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

let arrows: readonly Arrow[] = [];
let modules: readonly string[] = [];
let unresolved: readonly string[] = [];

beforeAll(async () => {
  const { output } = await cruise(
    ['src'],
    { baseDir: ROOT, tsPreCompilationDeps: true, doNotFollow: { path: 'node_modules' } },
    {
      extensions: ['.ts', '.tsx', '.mjs', '.js', '.json'],
      exportsFields: ['exports'],
      conditionNames: ['import', 'types', 'node', 'browser', 'default'],
    } as object,
  );
  const seen = (output as ICruiseResult).modules.filter(({ source }) => source.startsWith('src/'));
  modules = seen.map(({ source }) => source);
  const all = seen.flatMap(({ source, dependencies }) => dependencies.map((found) => ({ source, found })));
  const isThere = ({ found }: (typeof all)[number]) => !found.couldNotResolve;
  arrows = all.filter(isThere).map(({ source, found }) => ({
    from: source,
    to: found.coreModule ? `node:${found.module.replace(/^node:/, '')}` : found.resolved.replace(/\?.*$/, ''),
    typeOnly: found.dependencyTypes.includes('type-only'),
  }));
  unresolved = all
    // A face may import what only its bundler knows (`?url`, `?worker`, `virtual:`).
    .filter(
      ({ source, found }) =>
        found.couldNotResolve && !(roomOf(source) === 'app' && /[?:]/.test(found.module)),
    )
    .map(({ source, found }) => `${source} -> ${found.module}`);
});

describe('the way through the house', () => {
  test('all of it was looked at', () => {
    expect(modules.length).toBeGreaterThan(20);
    expect(arrows.length).toBeGreaterThan(modules.length);
    const rooms = [...WAY, ...GROUND_FLOOR, ...FACES].filter((room) => hasSources(`${ROOT}src/${room}`));
    expect([...new Set(modules.map(roomOf))].sort()).toEqual(rooms.sort());
    expect(unresolved).toEqual([]);
  });

  test('every folder of src is a room of the house', () => {
    const folders = readdirSync(`${ROOT}src`);
    expect(folders.filter((name) => ![...WAY, ...GROUND_FLOOR, ...FACES].includes(name as never))).toEqual(
      [],
    );
  });

  test('a room imports only rooms drawn above it and the ground floor, through their index', () => {
    const objections = arrows.flatMap((arrow) => {
      const why = objection(arrow);
      return why === undefined ? [] : [`${arrow.from} -> ${arrow.to}: ${why}`];
    });
    expect(objections).toEqual([]);
  });

  test('no file imports itself by way of others (types that speak of one another may)', () => {
    const running = arrows.filter(({ typeOnly }) => !typeOnly);
    expect(running.length).toBeGreaterThan(modules.length / 2);
    expect(findCycle(running)).toBeUndefined();
  });
});

describe('the check itself', () => {
  const arrow = (from: string, to: string, typeOnly = false): Arrow => ({ from, to, typeOnly });

  test.each([
    ['src/setting-out/set-out.ts', 'src/build/index.ts', 'setting-out may not import build'],
    ['src/build/order.ts', 'src/plan/index.ts', 'build may not import plan'],
    ['src/plan/plan.ts', 'src/book/index.ts', 'plan may not import book'],
    ['src/build/order.ts', 'src/job/shop/shop.ts', 'job is entered through its index.ts'],
    ['src/measure/ticks.ts', 'src/snag/index.ts', 'measure may not import snag'],
    ['src/snag/snag.ts', 'src/solid/index.ts', 'snag may not import solid'],
    ['src/materials/species.ts', 'src/job/index.ts', 'materials may not import job'],
    ['src/dry-fit/run.ts', 'src/setting-out/index.ts', 'dry-fit may not import setting-out'],
    ['src/dry-fit/run.ts', 'src/job/index.ts', 'dry-fit may not import job'],
    ['src/checks/sag.ts', 'src/adaptors/solids-manifold.ts', 'checks may not import adaptors'],
    ['src/plan/plan.ts', 'src/cli/main.ts', 'plan may not import cli'],
    ['src/adaptors/pdf.ts', 'src/cli/main.ts', 'adaptors may not import cli'],
    ['src/cli/main.ts', 'src/app/main.tsx', 'cli may not import app'],
    ['src/app/main.tsx', 'src/job/shop/shop.ts', 'job is entered through its index.ts'],
    ['src/app/main.tsx', 'node:fs', 'the app runs in a browser, without Node'],
    ['src/job/document.ts', 'node:fs', 'the core knows nothing of Node'],
    ['src/job/document.ts', 'node_modules/react/index.js', 'the core may not use the package react'],
    [
      'src/job/document.ts',
      'node_modules/@types/three/index.d.ts',
      'the core may not use the package @types/three',
    ],
    ['src/job/document.ts', 'test/house/arrows.ts', 'the product does not import its tests'],
    [
      'src/breakdown/judge/area.ts',
      'src/breakdown/pack.ts',
      'the judge shares no code with the planner it judges',
    ],
    [
      'src/breakdown/judge/area.ts',
      'src/breakdown/index.ts',
      'the judge shares no code with the planner it judges',
    ],
  ])('%s may not import %s', (from, to, why) => {
    expect(objection(arrow(from, to))).toBe(why);
  });

  test.each([
    ['src/build/order.ts', 'src/breakdown/index.ts'],
    ['src/build/order.ts', 'src/build/operation.ts'],
    ['src/book/cover.ts', 'src/plan/index.ts'],
    ['src/dry-fit/run.ts', 'src/build/index.ts'],
    ['src/dry-fit/run.ts', 'src/solid/index.ts'],
    ['src/cli/main.ts', 'src/adaptors/solids-manifold.ts'],
    ['src/cli/main.ts', 'node:fs'],
    ['src/job/document.ts', 'node_modules/valibot/dist/index.d.mts'],
    ['src/job/document.ts', 'node_modules/@valibot/to-json-schema/dist/index.d.mts'],
    ['src/job/edit.test.ts', 'src/plan/plan.ts'],
  ])('%s may import %s', (from, to) => {
    expect(objection(arrow(from, to))).toBeUndefined();
  });

  test('the judge may take types from the planner', () => {
    expect(
      objection(arrow('src/breakdown/judge/area.ts', 'src/breakdown/cut-plan.ts', true)),
    ).toBeUndefined();
  });

  test('a round of imports is found, and a diamond is none', () => {
    const ring = [arrow('a', 'b'), arrow('b', 'c'), arrow('c', 'b')];
    expect(findCycle(ring)).toEqual(['b', 'c', 'b']);
    expect(findCycle([arrow('a', 'b'), arrow('a', 'c'), arrow('b', 'd'), arrow('c', 'd')])).toBeUndefined();
  });
});

function hasSources(folder: string): boolean {
  return (
    existsSync(folder) &&
    readdirSync(folder, { recursive: true }).some((name) => /\.tsx?$/.test(String(name)))
  );
}
