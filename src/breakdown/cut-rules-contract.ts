import { TICKS_PER_MM, ticks } from '../measure/index.ts';
import {
  type CutGroup,
  type CutPiece,
  type CutProblem,
  type CutRules,
  type CutStock,
  type Flaw,
  OBJECTIVES,
  type Objective,
} from './cut-problem.ts';
import type { Faults, Fields } from './faults.ts';

/** Reads a length in mm: object, path, key, most, least, whether it rounds up. */
type ReadLength = (
  o: Fields,
  path: string,
  key: string,
  most: number,
  least: number,
  up: boolean,
) => CutStock['length'];

const LONGEST_MM = 500_000;
const MOST_FLAWS = 1000;
const MOST_GROUPS = 2000;
const MOST_IN_GROUP = 200;

export const RULE_FIELDS = [
  'stages',
  'first',
  'longest_cut_mm',
  'hold_mm',
  'carry',
  'yard',
  'groups',
  'objectives',
  'wanted',
];
export const STOCK_FIELDS = ['grain', 'faces', 'flaws', 'yard'];
export const PIECE_FIELDS = ['grain', 'faces', 'allowance_length_mm', 'allowance_width_mm'];

/** What a stock says beyond its sizes. */
export function readStockRules(faults: Faults, o: Fields, path: string, flat: boolean): Partial<CutStock> {
  const flaws = 'flaws' in o ? readFlaws(faults, o, path, flat) : undefined;
  return {
    ...('grain' in o ? { grain: faults.choice(o, path, 'grain', ['along', 'across', 'free']) } : {}),
    ...('faces' in o ? { faces: faults.whole(o, path, 'faces', 0, 2) } : {}),
    ...(flaws && flaws.length > 0 ? { flaws } : {}),
    ...('yard' in o ? { yard: faults.flag(o, path, 'yard', false) } : {}),
  };
}

function readFlaws(faults: Faults, o: Fields, path: string, flat: boolean): readonly Flaw[] {
  return (faults.list(o, path, 'flaws', MOST_FLAWS) ?? []).flatMap((one, i) => {
    const at = `${path}flaws[${i}]`;
    const names = flat ? ['x_mm', 'length_mm'] : ['x_mm', 'y_mm', 'length_mm', 'width_mm'];
    const f = faults.object(one, at, names);
    if (!f) return [];
    // Outward, so that no piece touches what is bad.
    const span = (from: string, size: string) => {
      const mm = faults.number(f, `${at}.`, from, 0, LONGEST_MM);
      const start = Math.floor(mm * TICKS_PER_MM + 1e-6);
      const long = faults.number(f, `${at}.`, size, 0, LONGEST_MM);
      return [ticks(start), ticks(Math.ceil((mm + long) * TICKS_PER_MM - 1e-6) - start)] as const;
    };
    const [x, l] = span('x_mm', 'length_mm');
    const [y, w] = flat ? [ticks(0), ticks(0)] : span('y_mm', 'width_mm');
    return [{ x, y, length: l, width: w }];
  });
}

/** What a piece says beyond its sizes. `grain` may stand in place of `turn`. */
export function readPieceRules(
  faults: Faults,
  length: ReadLength,
  o: Fields,
  path: string,
  flat: boolean,
): Partial<CutPiece> {
  const grain = 'grain' in o ? faults.choice(o, path, 'grain', ['along', 'across', 'free']) : undefined;
  const extra = (key: string) => (key in o ? length(o, path, key, LONGEST_MM, 0, true) : ticks(0));
  const allowance = {
    length: extra('allowance_length_mm'),
    width: flat ? ticks(0) : extra('allowance_width_mm'),
  };
  return {
    ...(grain === undefined || flat ? {} : { turn: grain === 'free' }),
    ...(grain === 'across' && !flat ? { across: true } : {}),
    ...('faces' in o ? { faces: faults.whole(o, path, 'faces', 0, 2) } : {}),
    ...(allowance.length > 0 || allowance.width > 0 ? { allowance } : {}),
  };
}

/** Rules, groups, objectives and what the rack wants. */
export function readProblemRules(
  faults: Faults,
  length: ReadLength,
  top: Fields,
  pieces: readonly CutPiece[],
): Partial<CutProblem> {
  const rules = readRules(faults, length, top);
  const groups = 'groups' in top ? readGroups(faults, top, pieces) : [];
  const objectives = 'objectives' in top ? readObjectives(faults, top) : undefined;
  const wanted = 'wanted' in top ? readWanted(faults, length, top) : undefined;
  return {
    ...(Object.keys(rules).length > 0 ? { rules } : {}),
    ...(groups.length > 0 ? { groups } : {}),
    ...(objectives ? { objectives } : {}),
    ...(wanted ? { wanted } : {}),
  };
}

function readRules(faults: Faults, length: ReadLength, top: Fields): CutRules {
  const carry = 'carry' in top ? faults.object(top.carry, 'carry', ['area_m2', 'cuts']) : undefined;
  const yard =
    'yard' in top ? faults.object(top.yard, 'yard', ['cuts', 'over_mm', 'length_mm', 'width_mm']) : undefined;
  return {
    ...('stages' in top ? { stages: faults.whole(top, '', 'stages', 1, 100) } : {}),
    ...('first' in top ? { first: faults.choice(top, '', 'first', ['length', 'width']) } : {}),
    ...('longest_cut_mm' in top ? { longest: length(top, '', 'longest_cut_mm', LONGEST_MM, 0, false) } : {}),
    ...('hold_mm' in top ? { hold: length(top, '', 'hold_mm', LONGEST_MM, 0, true) } : {}),
    ...(carry
      ? {
          carry: {
            area: faults.number(carry, 'carry.', 'area_m2', 0, 1e6) * 1e6,
            cuts: faults.whole(carry, 'carry.', 'cuts', 1, 1000),
          },
        }
      : {}),
    ...(yard
      ? {
          yard: {
            cuts: faults.whole(yard, 'yard.', 'cuts', 0, 1000),
            over: length(yard, 'yard.', 'over_mm', 1000, 0, true),
            length: length(yard, 'yard.', 'length_mm', LONGEST_MM, 0, false),
            width: length(yard, 'yard.', 'width_mm', LONGEST_MM, 0, false),
          },
        }
      : {}),
  };
}

function readGroups(faults: Faults, top: Fields, pieces: readonly CutPiece[]): readonly CutGroup[] {
  const taken = new Set<string>();
  const left = new Map(pieces.map((p) => [p.id, p.count]));
  return (faults.list(top, '', 'groups', MOST_GROUPS) ?? []).flatMap((one, i) => {
    const at = `groups[${i}]`;
    const o = faults.object(one, at, ['id', 'pieces', 'follow', 'joined']);
    if (!o) return [];
    const ids = faults.list(o, `${at}.`, 'pieces', MOST_IN_GROUP) ?? [];
    if (ids.length < 2 && !faults.at(`${at}.pieces`))
      faults.add(
        'cut.group-of-one',
        `${at}.pieces`,
        'names fewer than two pieces',
        'Name the pieces that are cut from one strip.',
      );
    ids.forEach((id, n) => {
      const have = typeof id === 'string' ? left.get(id) : undefined;
      if (have === undefined)
        faults.add(
          'cut.no-such-piece',
          `${at}.pieces[${n}]`,
          'is not a piece of the problem',
          'Name a piece by its id.',
        );
      else if (have === 0)
        faults.add(
          'cut.group-too-many',
          `${at}.pieces[${n}]`,
          'takes more of a piece than there are',
          'Raise its count, or name it less often.',
        );
      else left.set(id as string, have - 1);
    });
    return [
      {
        id: faults.id(o, `${at}.`, taken),
        pieces: ids.map(String),
        follow: faults.choice(o, `${at}.`, 'follow', ['length', 'width']),
        joined: faults.flag(o, `${at}.`, 'joined', false),
      },
    ];
  });
}

function readObjectives(faults: Faults, top: Fields): readonly Objective[] {
  const list = faults.list(top, '', 'objectives', OBJECTIVES.length) ?? [];
  const known = list.filter((o): o is Objective => (OBJECTIVES as readonly unknown[]).includes(o));
  if (known.length < list.length || new Set(known).size < known.length)
    faults.add(
      'cut.unknown-objective',
      'objectives',
      'names something else, or one thing twice',
      `Name some of ${OBJECTIVES.join(', ')} in your order.`,
    );
  return known;
}

function readWanted(faults: Faults, length: ReadLength, top: Fields) {
  return (faults.list(top, '', 'wanted', 100) ?? []).flatMap((one, i) => {
    const o = faults.object(one, `wanted[${i}]`, ['length_mm', 'width_mm']);
    if (!o) return [];
    return [
      {
        length: length(o, `wanted[${i}].`, 'length_mm', LONGEST_MM, 0, true),
        width: 'width_mm' in o ? length(o, `wanted[${i}].`, 'width_mm', LONGEST_MM, 0, true) : ticks(0),
      },
    ];
  });
}
