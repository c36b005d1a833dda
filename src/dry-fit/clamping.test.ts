import { expect, test } from 'vitest';
import type { GlueUp, Operation } from '../build/index.ts';
import type { Assembly, Member } from './assembly.ts';
import { Clamping } from './clamping.ts';
import { board } from './member.test-aid.ts';

const left = board('A1', [0, 0, 0], [18, 300, 600]);
const right = board('A2', [418, 0, 0], [18, 300, 600]);
/** So far behind the front and before the back that only battens over both sides press it. */
const shelf = board('E1', [12, 120, 300], [412, 60, 18]);

const set = (workpiece: string): Operation =>
  ({
    id: `${workpiece}/set`,
    title: `Set ${workpiece}`,
    does: { act: 'set', workpiece, into: 'case', glue: true },
  }) as unknown as Operation;
const screw = (workpiece: string, mate: string): Operation =>
  ({ id: `${workpiece}/screw`, title: '', does: { act: 'screw', workpiece, mate } }) as unknown as Operation;
const glueUp = (n: number, operations: readonly Operation[], parts: readonly string[]): GlueUp =>
  ({
    id: `case/glue-${n}`,
    assembly: 'case',
    operations: operations.map((o) => o.id),
    parts,
  }) as unknown as GlueUp;
const standing = (...members: Member[]) => new Map<string, Assembly>([['case', { members }]]);

const [setA1, setE1, setA2] = [set('A1'), set('E1'), set('A2')];

test('a joint that no clamp presses is told at the card that closes it', () => {
  const clamping = new Clamping([setA1, setE1], [glueUp(1, [setA1, setE1], ['A1', 'E1'])]);
  expect(clamping.after('A1/set', standing(left))).toEqual([]);
  const [fault, ...more] = clamping.after('E1/set', standing(left, shelf));
  expect(more).toEqual([]);
  expect(fault).toMatchObject({ code: 'no-clamp', operation: 'A1/set', on: 'A1' });
  expect(fault!.sentence).toMatch(/no clamp presses A1 and E1 together/);
});

test('what comes with the next glue-up stands there dry and may carry battens', () => {
  const glueUps = [glueUp(1, [setA1, setE1], ['A1', 'E1']), glueUp(2, [setA2], ['A2', 'E1'])];
  const clamping = new Clamping([setA1, setE1, setA2], glueUps);
  expect(clamping.after('E1/set', standing(left, shelf))).toEqual([]);
  expect(clamping.after('A2/set', standing(left, shelf, right))).toEqual([]);
});

test('what comes two glue-ups later stands there dry where the cards say so', () => {
  const setB1 = set('B1');
  const bottom = board('B1', [18, 0, 0], [400, 300, 18]);
  const told = (laterStandDry: boolean) => {
    const glueUps = [
      { ...glueUp(1, [setA1, setE1], ['A1', 'E1']), laterStandDry },
      { ...glueUp(2, [setB1], ['A1', 'B1']), laterStandDry },
      glueUp(3, [setA2], ['A2', 'E1', 'B1']),
    ];
    const clamping = new Clamping([setA1, setE1, setB1, setA2], glueUps);
    return [
      ...clamping.after('E1/set', standing(left, shelf)),
      ...clamping.after('B1/set', standing(left, shelf, bottom)),
      ...clamping.after('A2/set', standing(left, shelf, bottom, right)),
    ].map((f) => f.on);
  };
  expect(told(true)).toEqual([]);
  expect(told(false)).toContain('A1');
});

test('screws hold their own joint', () => {
  const held = screw('E1', 'A1');
  const clamping = new Clamping([setA1, setE1, held], [glueUp(1, [setA1, setE1, held], ['A1', 'E1'])]);
  expect(clamping.after('E1/screw', standing(left, shelf))).toEqual([]);
});

test('what is set after it without glue is not glued to it', () => {
  const dry = { ...setA1, does: { ...setA1.does, glue: false } } as Operation;
  const clamping = new Clamping([setE1, dry], [glueUp(1, [setE1, dry], ['A1', 'E1'])]);
  expect(clamping.after('A1/set', standing(shelf, left))).toEqual([]);
});
