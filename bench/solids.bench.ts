import { openSolids } from '../src/adaptors/solids-manifold.ts';
import type { Point, Shape } from '../src/solid/index.ts';

/** A side with a rabbet and twelve screw holes. */
const board: Shape = {
  kind: 'without',
  body: { kind: 'box', min: [0, 0, 0], max: [800, 400, 17.6] },
  cuts: [
    { kind: 'box', min: [-1, 391, 8.6], max: [801, 401, 18.6] },
    ...[...Array(12).keys()].map((i): Shape => {
      const from: Point = [30 + 60 * i, 20, -1];
      return { kind: 'cylinder', from, to: [from[0], from[1], 19], radius: 2 };
    }),
  ],
};

export default [
  {
    name: 'solids: open the modeller',
    prepare: () => () => openSolids(),
  },
  {
    name: 'solids: one board with a rabbet and 12 holes',
    prepare: async () => {
      const solids = await openSolids();
      return () => solids.within(() => solids.make(board).volume());
    },
  },
  {
    name: 'solids: what 60 boards have in common with their neighbours',
    prepare: async () => {
      const solids = await openSolids();
      const boards = [...Array(60).keys()].map((i) =>
        solids.make({
          kind: 'moved',
          body: board,
          frame: { origin: [0, 0, 17.6 * i], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] },
        }),
      );
      return () => solids.within(() => boards.slice(1).map((b, i) => b.common(boards[i]!).volume()));
    },
  },
];
