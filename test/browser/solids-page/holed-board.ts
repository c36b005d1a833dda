import type { Shape } from '../../../src/solid/index.ts';

/** A board with a hole, made in Node and in the browser. */
export const HOLED_BOARD: Shape = {
  kind: 'without',
  body: { kind: 'box', min: [0, 0, 0], max: [600, 400, 17.6] },
  cuts: [{ kind: 'cylinder', from: [37, 9, -1], to: [37, 59, 30], radius: 4.75 }],
};
