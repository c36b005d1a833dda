import { describe, expect, test } from 'vitest';
import type { Member } from '../assembly.ts';
import { board } from '../member.test-aid.ts';
import { clampMeets, meetingOf } from './clamp.ts';

const left = board('A1', [0, 0, 0], [18, 300, 600]);
const right = board('A2', [418, 0, 0], [18, 300, 600]);
/** A shelf let 6 mm into both sides, as deep as they are. */
const shelf = board('E1', [12, 0, 300], [412, 300, 18]);
const meets = (a: Member, b: Member, ...there: Member[]) => clampMeets([a, b, ...there], meetingOf(a, b)!);

describe('where two parts meet', () => {
  test('a shelf meets a side along the way it is let in', () => {
    expect(meetingOf(shelf, left)).toEqual({ axis: 0, area: { min: [12, 0, 300], max: [18, 300, 318] } });
    expect(meetingOf(shelf, board('F1', [0, 301, 0], [436, 6, 600]))).toBeUndefined();
  });

  test('a divider thinner than its dado is deep meets what it stands in along the way down', () => {
    const thin = board('D1', [200, 0, 310], [6, 300, 200]);
    expect(meetingOf(thin, shelf)).toEqual({ axis: 2, area: { min: [200, 0, 310], max: [206, 300, 318] } });
  });

  test('panels at a mitre, of which neither goes on beyond the other, meet across the thinner', () => {
    const bottom = board('B1', [0, 0, 0], [436, 300, 16]);
    expect(meetingOf(bottom, left)?.axis).toBe(2);
  });
});

describe('a clamp across a case', () => {
  test('goes on before its front and behind its back', () => {
    expect(meets(shelf, left, right)).toBeUndefined();
  });

  test('draws on to a shelf what stands a little apart from its other end', () => {
    const butted = board('E1', [18, 0, 300], [400, 300, 18]);
    const apart = (mm: number) => board('A2', [418 + mm, 0, 0], [18, 300, 600]);
    // A panel may be cut 1 mm too short (common practice); beyond that a jaw would have to go in between.
    expect(meets(left, butted, apart(0.9))).toBeUndefined();
    expect(meets(left, butted, apart(1.5))).toBe('A2');
  });

  test('goes round a thin back, which its throat spans', () => {
    expect(meets(shelf, left, right, board('F1', [0, 300, 0], [436, 6, 600]))).toBeUndefined();
  });

  test('finds no room where something thicker than its throat stands before the front', () => {
    const drawer = board('P1', [-50, -150, 200], [600, 148, 250]);
    expect(meets(shelf, left, right, drawer)).toBe('P1');
  });

  test('presses a shelf that stands far behind the front by a batten over the sides', () => {
    const short = board('E2', [12, 120, 300], [412, 60, 18]);
    expect(meets(short, left, right)).toBeUndefined();
    // Without the other side there is nothing for a batten to lie on in front of it.
    expect(meets(short, left)).toBe('A1');
  });

  test('needs a hand’s room behind one of its jaws at least', () => {
    const beside = (mark: string, x: number) => board(mark, [x, -100, -100], [18, 500, 800]);
    expect(meets(shelf, left, right, beside('B1', -120))).toBeUndefined();
    expect(meets(shelf, left, right, beside('B1', -120), beside('B2', 538))).toMatch(/^B/);
  });
});
