import { describe, expect, test } from 'vitest';
import type { Operation } from './operation.ts';
import { inOrder } from './order.ts';
import type { StageId } from './stages.ts';

function operation(id: string, stage: StageId, ...after: readonly string[]): Operation {
  return {
    id,
    stage,
    after,
    kind: 'inspect',
    title: id,
    does: { act: 'other', on: [] },
    lines: [],
    lengths: [],
    minutes: { active: 1, waiting: 0 },
    cautions: [],
  };
}

const order = (...of: readonly Operation[]) => inOrder(of).map((o) => o.id);

describe('the order of work', () => {
  test('goes by stage, and within one as it was written down', () => {
    expect(
      order(
        operation('oil', 'finish'),
        operation('b', 'sheets'),
        operation('a', 'sheets'),
        operation('look', 'gather'),
      ),
    ).toEqual(['look', 'b', 'a', 'oil']);
  });

  test('puts what is needed before what needs it, even from a later stage', () => {
    expect(
      order(
        operation('trim', 'machine', 'glue'),
        operation('glue', 'edging', 'rip'),
        operation('rip', 'sheets'),
      ),
    ).toEqual(['rip', 'glue', 'trim']);
  });

  test('throws when operations need one another in a circle, need what nobody does, or share an id', () => {
    const circle = [
      operation('a', 'sheets', 'c'),
      operation('b', 'sheets', 'a'),
      operation('c', 'sheets', 'b'),
    ];
    expect(() => order(...circle)).toThrow(/in a circle/);
    expect(() => order(operation('a', 'sheets', 'a'))).toThrow(/in a circle/);
    expect(() => order(operation('a', 'sheets', 'z'))).toThrow('a needs z, which nobody does');
    expect(() => order(operation('a', 'sheets'), operation('a', 'strips'))).toThrow('one id');
  });
});
