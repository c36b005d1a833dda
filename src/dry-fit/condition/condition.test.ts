import { describe, expect, test } from 'vitest';
import type { Act, Operation } from '../../build/index.ts';
import { Condition } from './condition.ts';

/** White glue that sets in half an hour, a varnish that dries in four hours, two coats. */
const care = { glueSets: 30, coatDries: 240, coats: new Map([['case', 2]]) };

function card(
  kind: Operation['kind'],
  does: Act,
  waiting = 0,
  stage: Operation['stage'] = 'assemble',
): Operation {
  return {
    id: kind,
    kind,
    title: `Card of ${kind}`,
    does,
    stage,
    after: [],
    lines: [],
    lengths: [],
    minutes: { active: 1, waiting },
    cautions: [],
  };
}
const other = (kind: Operation['kind'], on: readonly string[], waiting = 0, stage?: Operation['stage']) =>
  card(kind, { act: 'other', on }, waiting, stage);
const set = (workpiece: string, of: string, glue: boolean) =>
  card('assemble', {
    act: 'set',
    workpiece,
    into: 'case',
    turn: { length: '+x', width: '+y' },
    touches: [
      { side: '-x', of, face: '+x' },
      { side: '-y', of, face: '-y' },
      { side: '-z', of, face: '-z' },
    ],
    glue,
  });

/** Runs cards on two parts that hang together, and gives what the last of them lacked. */
function lacking(...cards: readonly Operation[]): readonly string[] {
  const condition = new Condition(care);
  let last: readonly { readonly code: string }[] = [];
  for (const c of cards) last = condition.meet(c, (name) => (name === 'case' ? ['A1', 'B1'] : [name]));
  return last.map((f) => f.code);
}

const sanded = other('sand', ['A1', 'B1']);
const seen = other('inspect', ['case'], 0, 'finish');
const coat = (waiting = 240) => other('finish', ['case'], waiting, 'finish');

describe('wet glue', () => {
  test('sets in a frame of four only when its diagonals have been measured', () => {
    const frame = [
      set('A1', 'bench', true),
      set('B1', 'A1', true),
      set('C1', 'A1', true),
      set('A2', 'B1', true),
    ];
    const cure = other('cure', ['A1', 'A2', 'B1', 'C1'], 30);
    expect(lacking(...frame, cure)).toEqual(['left-out']);
    expect(lacking(...frame, { ...cure, lengths: [3200] as never })).toEqual([]);
    expect(lacking(...frame, other('check-square', ['A1', 'A2']), cure)).toEqual([]);
    expect(lacking(...frame.slice(0, 2), cure)).toEqual([]);
  });

  test('must set before a coat goes on, for as long as its label says', () => {
    const glued = [sanded, seen, set('A1', 'bench', true), set('B1', 'A1', true)];
    expect(lacking(...glued, coat())).toEqual(['still-wet']);
    expect(lacking(...glued, other('cure', ['A1', 'B1'], 10))).toEqual(['still-wet']);
    expect(lacking(...glued, other('cure', ['A1', 'B1'], 30), coat())).toEqual([]);
  });

  test('is held by screws', () => {
    const screw = card('screw', {
      act: 'screw',
      workpiece: 'A1',
      into: 'case',
      mate: 'B1',
      by: 'holes',
      side: 'show',
      screw: 'long',
      length: 1 as never,
      diameter: 1 as never,
      count: 2,
    });
    expect(lacking(sanded, seen, set('A1', 'bench', true), set('B1', 'A1', true), screw, coat())).toEqual([]);
  });

  test('holds on no finish but where it was masked', () => {
    const early = other('prefinish', ['B1'], 240, 'prefinish');
    const there = [sanded, set('A1', 'bench', false)];
    expect(lacking(...there, early, set('B1', 'A1', true))).toEqual(['glue-on-finish']);
    expect(lacking(...there, other('mask', ['B1']), early, set('B1', 'A1', true))).toEqual([]);
  });
});

describe('a coat', () => {
  test('goes on what was sanded and looked over', () => {
    expect(lacking(seen, coat())).toEqual(['left-out']);
    expect(lacking(sanded, coat())).toEqual(['left-out']);
  });

  test('goes on another that was rubbed down, and is left to dry', () => {
    expect(lacking(sanded, seen, coat(), coat())).toEqual(['left-out']);
    expect(lacking(sanded, seen, coat(), other('rub', ['case']), coat())).toEqual([]);
    expect(lacking(sanded, seen, coat(60))).toEqual(['still-wet']);
  });
});

test('a saw waits until the stock is measured, but the yard cuts before', () => {
  const cut = (kind: 'rip' | 'yard-cut') =>
    card(kind, {
      act: 'saw',
      workpiece: 'S1',
      across: 'width',
      at: 1 as never,
      keep: 'before',
      yields: [{ name: 'A', turned: false }, undefined],
    });
  expect(lacking(cut('rip'))).toEqual(['left-out']);
  expect(lacking(other('gather', []), cut('rip'))).toEqual([]);
  expect(lacking(cut('yard-cut'))).toEqual([]);
});

test('at the end everything promised has been done', () => {
  const condition = new Condition(care);
  expect(condition.atEnd().map((f) => f.sentence)).toEqual([
    'case was to get 2 coats of finish, and gets 0.',
    'Nobody set the piece in its place and fixed it.',
  ]);
});
