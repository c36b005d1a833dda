import { SETTING_OUT } from '../materials/index.ts';
import type { Traced } from '../measure/index.ts';
import type { Hole, Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { fromEdge, linesOfHoles } from './hole-places.ts';
import { capital, listWords, measuredFrom, referenceFor, sideWords } from './words.ts';

/** Holes of one face as their card places them, each from an edge and an end, or from the middle of the part to both sides. */
export interface PlacesOnFace {
  /** As the act of drilling has them. */
  readonly at: readonly (readonly [along: Traced | 'middle', across: Traced | 'middle'])[];
  /** The measures that are marked from their middle. */
  readonly middle: readonly ('length' | 'width')[];
  /** How a middle is found, for each of these. */
  readonly found: readonly string[];
  /** A line for each line of holes; prints its lengths at the end of those given. */
  readonly lines: (lengths: Traced[]) => readonly string[];
}

/** Places of holes of one width and use, set as finely as their tool is, and measured across from the side given. */
export function placesOnFace(
  bench: Bench,
  part: Part,
  row: readonly Hole[],
  tool: 'marking' | 'drill',
  side: ReturnType<typeof referenceFor>,
): PlacesOnFace {
  const l = bench.ledger;
  const first = row[0]!;
  const ref = referenceFor(part, 'near');
  const middle = runsHalved(part, first);
  const placed = row.map((h) => {
    const along = middle.includes('length')
      ? offMiddle(bench, part.length, h.at[0])
      : fromEdge(bench, part, 'near', h.at[0], ref.turned);
    const across = middle.includes('width')
      ? offMiddle(bench, part.width, h.at[1])
      : fromEdge(bench, part, 'start', h.at[1], side.turned);
    return { along: bench.set(tool, along), across: bench.set(tool, across) };
  });
  const all = middle.length > 0 ? distinct(bench, placed) : placed;
  const onMiddle = (run: 'length' | 'width', t: Traced) =>
    middle.includes(run) && l.ticks(t) === 0 ? 'middle' : t;
  const end = measuredFrom(part, ref.from, first.side as 'show' | 'under');
  // Of two middles each is told by what it lies between.
  const nameOf = (run: 'length' | 'width') =>
    middle.length > 1 ? `the middle ${between(part, run)}` : 'the middle';
  return {
    at: all.map((p) => [onMiddle('length', p.along), onMiddle('width', p.across)] as const),
    middle,
    found: middle.map((run) => findMiddle(part, run)),
    lines: (lengths) =>
      linesOfHoles(bench, all).map(({ across, along }) => {
        const print = (some: readonly Traced[]) => listWords(some.map((t) => `{${lengths.push(t) - 1}}`));
        const line = middle.includes('width')
          ? capital(aboutMiddle(bench, across, print, nameOf('width')))
          : `${print(across)} from the ${sideWords(part, side.from)}`;
        const places = middle.includes('length')
          ? aboutMiddle(bench, along, print, nameOf('length'))
          : `at ${print(along)} from ${end}`;
        const several = across.length > 1 || (middle.includes('width') && l.ticks(across[0]!) > 0);
        return `${line}: ${several ? 'on each line ' : ''}${places}.`;
      }),
  };
}

/**
 * The measures that a row is marked half way along. An end whose mitre falls away from the face that is marked is no
 * place to measure from, so there it is measured from the other one.
 */
function runsHalved(part: Part, hole: Hole): readonly ('length' | 'width')[] {
  const mitred = part.features.some((f) => f.kind === 'bevel');
  return (hole.middle ?? []).filter((run) => run === 'width' || !mitred);
}

function offMiddle(bench: Bench, whole: Traced, at: Traced): Traced {
  const l = bench.ledger;
  const half = l.ratio('half way', whole, SETTING_OUT.half);
  return l.ticks(at) < l.ticks(half)
    ? l.less('from the middle', half, at)
    : l.less('from the middle', at, half);
}

/** Each place once: two holes of a row are as far from its middle. */
function distinct<P extends { readonly along: Traced; readonly across: Traced }>(
  bench: Bench,
  all: readonly P[],
): readonly P[] {
  const t = (x: Traced) => bench.ledger.ticks(x);
  return [...new Map(all.map((p) => [`${t(p.along)} ${t(p.across)}`, p])).values()];
}

/** How a middle is found without a sum: what is marked from both sides is as far off it, whatever the true size came to. */
function findMiddle(part: Part, run: 'length' | 'width'): string {
  return `Find the middle ${between(part, run)}: mark the same distance from both, a little less than half, and halve what lies between the two marks.`;
}

function between(part: Part, run: 'length' | 'width'): string {
  const { from } = referenceFor(part, run === 'length' ? 'near' : 'start');
  return `between the ${sideWords(part, from)} and the ${sideWords(part, OTHER[from])}`;
}

const OTHER = { start: 'end', end: 'start', near: 'far', far: 'near' } as const;

/** Where holes are from a middle of that name: on it, and so far to each side. */
function aboutMiddle(
  bench: Bench,
  off: readonly Traced[],
  print: (all: readonly Traced[]) => string,
  name: string,
): string {
  const beside = off.filter((t) => bench.ledger.ticks(t) > 0);
  const on = beside.length < off.length ? [`on ${name}`] : [];
  return [
    ...on,
    ...(beside.length > 0 ? [`${print(beside)} to each side of ${on.length > 0 ? 'it' : name}`] : []),
  ].join(' and ');
}
