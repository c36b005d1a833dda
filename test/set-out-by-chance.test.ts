import { expect, test } from 'vitest';
import { setOut } from '../src/setting-out/index.ts';
import { checked } from './generate/checked.ts';
import { document, piece } from './generate/document.ts';
import { holeFaults } from './generate/judge-holes.ts';
import { pegFaults } from './generate/judge-pegs.ts';
import { faultsOf } from './generate/judge-set-out.ts';

// Faults of the setting-out that many generated designs once showed, each as small as it could be made.

/** The codes of what stops a design, or else all that is wrong with it. */
function wrong(of: ReturnType<typeof document>): readonly string[] {
  const drawn = setOut(checked(of));
  const stops = drawn.snags.filter((s) => s.level === 'stop').map((s) => s.code);
  if (stops.length > 0) return stops;
  const { width, height, depth } = drawn.overall;
  const [w, h, d] = [width, height, depth].map((t) => drawn.ledger.ticks(t));
  return [
    ...faultsOf(drawn, { width: w!, height: h!, depth: d! }),
    ...pegFaults(drawn),
    ...holeFaults(drawn),
  ];
}

test.each([
  ['dowels', '102 mm', 'shelves.no-depth'],
  ['biscuits', '54 mm', 'pegs.none-suits'],
])('a shelf before a hidden space that is too shallow for %s is told', (joints, hidden, code) => {
  const shelved = (size: string) =>
    wrong(
      document('mm', '18 mm', [
        piece('600 mm', '500 mm', '130 mm'),
        { id: 'case', kind: 'case', parent: 'piece', board: 'board', joints },
        { id: 'inside', kind: 'opening', parent: 'case', split: 'back' },
        { id: 'front', kind: 'opening', parent: 'inside' },
        { id: 'hidden', kind: 'opening', parent: 'inside', size },
        { id: 'shelf', kind: 'shelf', parent: 'front', board: 'board' },
      ]),
    );
  expect(shelved(hidden)).toEqual([code]);
  expect(shelved('20 mm')).toEqual([]);
});

test.each(['dowels', 'face-screws', 'pocket-screws'])(
  'a shelf less deep than its board is thick is told, joined by %s',
  (joints) => {
    const shelved = (setback: string) =>
      wrong(
        document('mm', '18 mm', [
          piece('600 mm', '500 mm', '130 mm'),
          { id: 'case', kind: 'case', parent: 'piece', board: 'board', joints },
          { id: 'inside', kind: 'opening', parent: 'case' },
          { id: 'shelf', kind: 'shelf', parent: 'inside', board: 'board', setback },
        ]),
      );
    expect(shelved('113 mm')).toEqual(['shelves.no-depth']);
    expect(shelved('20 mm')).toEqual([]);
  },
);

test('a centre runner that would lie over a hole for a cable is told; beside it all is well', () => {
  const drawer = (fromLeft: string) =>
    wrong(
      document('mm', '18 mm', [
        piece('400 mm', '300 mm', '450 mm'),
        { id: 'case', kind: 'case', parent: 'piece', board: 'board', joints: 'pocket-screws' },
        { id: 'inside', kind: 'opening', parent: 'case' },
        {
          ...{ id: 'drawers', kind: 'drawers', parent: 'inside', board: 'board', bottomBoard: 'thin' },
          ...{ frontBoard: 'board', hang: 'overlay', count: 1, carriedBy: 'centre-runner' },
          ...{ load: '5 kg', runnerStrip: 'runner-strip' },
        },
        { id: 'cable', kind: 'cable', parent: 'case', panel: 'bottom', plug: 'usb-a', fromLeft },
      ]),
    );
  expect(drawer('182 mm')).toEqual(['drawers.no-place']);
  expect(drawer('100 mm')).toEqual([]);
});

test('pocket screws that just leave 3 mm before the far face leave no less by a finer cosine', () => {
  expect(
    wrong(
      document(
        'mm',
        '20 mm',
        [
          piece('700 mm', '600 mm', '300 mm'),
          { id: 'case', kind: 'case', parent: 'piece', board: 'board', joints: 'face-screws' },
          { id: 'inside', kind: 'opening', parent: 'case' },
          { id: 'base', kind: 'base', parent: 'case', board: 'other', height: '119 mm' },
        ],
        { other: '20.4 mm' },
      ),
    ),
  ).toEqual([]);
});

test('a spline beside channels for sliding doors that stop before its corner is as long as one without', () => {
  const lengths = (over: string) => {
    const drawn = setOut(
      checked(
        document('mm', '18 mm', [
          piece('1500 mm', '500 mm', '350 mm'),
          {
            ...{ id: 'case', kind: 'case', parent: 'piece', board: 'board', joints: 'mitre' },
            ...{ inMitres: 'spline', splineBoard: 'spline' },
          },
          { id: 'inside', kind: 'opening', parent: 'case', split: 'across' },
          { id: 'left', kind: 'opening', parent: 'inside', split: 'across' },
          { id: 'one', kind: 'opening', parent: 'left' },
          { id: 'two', kind: 'opening', parent: 'left' },
          { id: 'right', kind: 'opening', parent: 'inside' },
          { id: 'slides', kind: 'sliding-doors', parent: 'case', over: [over], board: 'board', count: 2 },
        ]),
      ),
    );
    expect(drawn.snags.filter((s) => s.level === 'stop')).toEqual([]);
    expect(pegFaults(drawn)).toEqual([]);
    return Object.fromEntries(drawn.splines.map((s) => [s.name, drawn.ledger.ticks(s.length)]));
  };
  const part = lengths('left');
  const whole = lengths('inside');
  expect(part['lower right spline']).toBeGreaterThan(part['lower left spline']!);
  expect(whole['lower right spline']).toBe(whole['lower left spline']);
});

test('the one row of screws in a low drawer’s front keeps away from its edges, whatever its height', () => {
  const low = (height: number) =>
    wrong(
      document(
        'mm',
        '19 mm',
        [
          piece('600 mm', '400 mm', '400 mm'),
          { id: 'case', kind: 'case', parent: 'piece', board: 'board', joints: 'face-screws' },
          { id: 'inside', kind: 'opening', parent: 'case', split: 'down' },
          { id: 'low', kind: 'opening', parent: 'inside', size: `${height} mm` },
          {
            ...{ id: 'drawers', kind: 'drawers', parent: 'low', board: 'board', bottomBoard: 'thin' },
            ...{ frontBoard: 'board', hang: 'inset', count: 1, joint: 'screws', gap: '1.6 mm' },
            ...{ carriedBy: 'centre-runner', load: '5 kg', runnerStrip: 'runner-strip' },
          },
          { id: 'high', kind: 'opening', parent: 'inside' },
          { id: 'divider', kind: 'divider', parent: 'inside', board: 'board' },
        ],
        { thin: '6 mm' },
      ),
    );
  for (let height = 74; height < 84; height++) expect(low(height), `${height} mm`).toEqual([]);
});

test.each(['left-side', 'right-side'])(
  'a cable hole in the %s where a sliding door comes against it is told; one behind the tracks is not',
  (panel) => {
    const holed = (place: object) =>
      wrong(
        document('mm', '22 mm', [
          piece('800 mm', '450 mm', '186 mm'),
          { id: 'case', kind: 'case', parent: 'piece', board: 'board' },
          { id: 'inside', kind: 'opening', parent: 'case' },
          { id: 'top', kind: 'top', parent: 'case', board: 'board' },
          {
            id: 'slides',
            kind: 'sliding-doors',
            parent: 'case',
            over: ['inside'],
            board: 'board',
            tongue: '8 mm',
          },
          { id: 'through', parent: 'case', kind: 'cable', plug: '33 mm', panel, ...place },
        ]),
      );
    expect(holed({ fromFront: '40 mm' })).toEqual(['holes.meets-part']);
    expect(holed({ fromBack: '50 mm' })).toEqual([]);
  },
);
