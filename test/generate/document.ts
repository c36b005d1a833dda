import { shop } from './shop.ts';

/** A job of a few records in the shop that generated designs are made in; `boards` changes what its rack holds. */
export const document = (
  units: 'mm' | 'in',
  thick: string,
  records: readonly object[],
  boards: object = {},
  router?: string,
) => ({
  version: 1,
  design: { records },
  shop: shop(
    units,
    {
      board: thick,
      other: thick,
      thin: '3 mm',
      strip: '5 mm',
      lip: '8 mm',
      taped: false,
      wood: 'birch-plywood',
      ...boards,
    },
    router,
  ),
  work: {},
});

/** The record of a piece of these sizes. */
export const piece = (width: string, height: string, depth: string) => ({
  id: 'piece',
  kind: 'piece',
  name: 'A piece',
  width,
  height,
  depth,
});
