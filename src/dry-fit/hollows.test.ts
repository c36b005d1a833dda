import { beforeAll, expect, test } from 'vitest';
import { openSolids } from '../adaptors/solids-manifold.ts';
import type { Point, Shape, Solids } from '../solid/index.ts';
import { Hollows } from './hollows.ts';

let solids: Solids;
beforeAll(async () => {
  solids = await openSolids();
});

const GROOVE: readonly Shape[] = [{ kind: 'box', min: [-5, 20, 12], max: [405, 26, 23] }];
const grooved = (long: number, cuts = GROOVE): Shape => ({
  kind: 'without',
  body: { kind: 'box', min: [0, 0, 0], max: [long, 100, 18] },
  cuts,
});
const moved = (body: Shape, origin: Point): Shape => ({
  kind: 'moved',
  body,
  frame: { origin, x: [0, 1, 0], y: [-1, 0, 0], z: [0, 0, 1] },
});

test('a board that was sawn shorter keeps its list of cuts, and its groove is shorter', () => {
  const hollows = new Hollows(solids);
  expect(hollows.of(grooved(400)).hollows[0]!.volume).toBeCloseTo(400 * 6 * 6, 3);
  expect(hollows.of(grooved(250)).hollows[0]!.volume).toBeCloseTo(250 * 6 * 6, 3);
});

test('what was found in a board lies where the board stands', () => {
  const hollows = new Hollows(solids);
  const lying = hollows.of(grooved(400)).hollows[0]!;
  const standing = hollows.of(moved(grooved(400), [1000, 0, 50])).hollows[0]!;
  expect(lying.middle).toEqual([200, 23, 15]);
  expect(standing.middle).toEqual([1000 - 23, 200, 65]);
  expect(standing.sides).toEqual([6, 400, 6]);
});
