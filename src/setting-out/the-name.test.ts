import { expect, test } from 'vitest';
import { theName } from './the-name.ts';

test('what bears a number has no article: for shelf 2, for the first divider, for the edging for shelf 2', () => {
  const said = (name: string) => theName({ name });
  expect(said('shelf 2')).toBe('shelf 2');
  expect(said('loose shelf 1 in jars')).toBe('loose shelf 1 in jars');
  expect(said('drawer 1 of tools')).toBe('drawer 1 of tools');
  expect(said('first divider')).toBe('the first divider');
  expect(said('edging for shelf 2')).toBe('the edging for shelf 2');
  expect(said('first fixed shelf of bay4')).toBe('the first fixed shelf of bay4');
});
