import { expect, test } from 'vitest';
import { built } from '../../test/build/built.ts';
import { glazeCabinet } from '../../test/checks/checked-job.ts';
import { fromOperation, stepsReport } from './index.ts';

test('the rest of a build begins at the named card, and loses none behind it', () => {
  const build = built(glazeCabinet()).build;
  const { id } = build.operations[20]!;
  const rest = fromOperation(build, id)!;
  expect(rest.operations.map((o) => o.id)).toEqual(build.operations.slice(20).map((o) => o.id));
  expect(rest.stages.flatMap((s) => s.operations)).toHaveLength(rest.operations.length);
  const whole = stepsReport(build).operations as readonly { id: string; starts: unknown }[];
  const left = stepsReport(rest).operations as readonly { id: string; starts: unknown }[];
  expect(left).toEqual(whole.slice(20));
  expect(fromOperation(build, 'no such card')).toBeUndefined();
});
