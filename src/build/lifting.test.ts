import { expect, test } from 'vitest';
import { builtExample } from '../../test/build/built.ts';

const said = (name: string) =>
  builtExample(name).build.operations.map((o) => [...o.lines, ...o.cautions].join(' '));

test('one person makes, turns and carries a step stool alone', () => {
  for (const words of said('step-stool')) expect(words).not.toMatch(/two people/i);
});

test('a stand of two hundred litres takes two, but not its shelf', () => {
  const { operations } = builtExample('aquarium-stand').build;
  const cautions = (id: string) => operations.find((o) => o.id === id)!.cautions.join(' ');
  expect(cautions('home/carry')).toMatch(/two people/);
  expect(cautions('E1/set')).not.toMatch(/two people/);
});
