import { expect, test } from 'vitest';
import { builtExample } from '../../test/build/built.ts';

const order = (name: string) => builtExample(name).build.operations.map((o) => o.id);

test('plugs come when the case stands: inside it, nothing is reached once the back lies over it', () => {
  const ids = order('aquarium-stand');
  const plugs = ids.filter((id) => id.includes('/plug-'));
  expect(plugs.length).toBe(2);
  const upright = ids.findLastIndex((id) => id.startsWith('case/turn-'));
  for (const id of plugs) expect(ids.indexOf(id)).toBeGreaterThan(upright);
});

test('a panel that closes a compartment from behind comes after the shelf before it', () => {
  const ids = order('radio-station');
  expect(ids.indexOf('D3/set')).toBeGreaterThan(ids.indexOf('E1/set'));
  expect(ids.indexOf('D3/set')).toBeLessThan(ids.indexOf('F1/set'));
});
