import { expect, test } from 'vitest';
import type { Traced } from '../measure/index.ts';
import { Dimensions } from './dimensions.ts';

const t = (n: number) => n as Traced;

function example(): Dimensions {
  const made = new Dimensions();
  made.add('overall.width', t(1));
  made.call('case/left', ['left side', 'A1', 'case/left']);
  made.addOf('case/left', 'length', t(2));
  made.call('case/shelf', ['shelf', 'B1']);
  made.addOf('case/shelf', 'length', t(3));
  made.addOf('case/shelf', 'width gap', t(4));
  made.add('case/shelf/width gap', t(5));
  return made;
}

test('a part’s sizes go by all of its names', () => {
  const made = example();
  expect(['left side.length', 'A1.length', 'case/left.length'].map((n) => made.get(n))).toEqual([2, 2, 2]);
  expect([made.get('B1.width gap'), made.get('case/shelf/width gap')]).toEqual([4, 5]);
  expect(made.get('B2.length')).toBeUndefined();
  expect(made.get('overall')).toBeUndefined();
});

test('the first of two with one name keeps it', () => {
  const made = example();
  made.call('other/shelf', ['shelf', 'B2']);
  made.addOf('other/shelf', 'length', t(9));
  made.add('overall.width', t(9));
  made.add('A1.length', t(9));
  expect(['shelf.length', 'B2.length', 'overall.width', 'A1.length'].map((n) => made.get(n))).toEqual([
    3, 9, 1, 2,
  ]);
});

test('lists every name once, with what it stands for, also after it went to another thread', () => {
  for (const made of [example(), Dimensions.from(structuredClone(example().data()))]) {
    expect([...made].map(([name]) => name)).toEqual([...made.keys()]);
    expect(new Set(made.keys()).size).toBe([...made.values()].length);
    for (const [name, of] of made) expect(made.get(name)).toBe(of);
    expect([...made.keys()]).toContain('A1.length');
  }
});

test('a size of a part that has no names is a mistake of the program', () => {
  expect(() => example().addOf('nobody', 'length', t(1))).toThrow();
});
