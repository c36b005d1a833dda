export type Fields = Readonly<Record<string, unknown>>;

/** A piece of several cases, and the row that they stand in. */
export const piece = {
  id: 'row',
  kind: 'piece',
  name: 'A row',
  width: '1500 mm',
  height: '800 mm',
  depth: '400 mm',
};
export const group = { id: 'g', kind: 'group', parent: 'row', lay: 'across' };

/** A case of the row. */
export function box(id: string, more: Fields = {}): Fields {
  return { id, kind: 'case', parent: 'g', board: 'birch18', ...more };
}
