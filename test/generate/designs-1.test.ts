import { test } from 'vitest';
import { designsHold } from './designs-hold.ts';

test(
  'generated designs, first half: set out exactly, every screw in the wood; or it is said what stops them, and where',
  {
    timeout: 3_600_000,
  },
  () => designsHold(0),
);
