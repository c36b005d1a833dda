import type { Ledger, Report, Traced } from '../measure/index.ts';
import type { Feature } from './feature.ts';
import type { Part } from './part.ts';
import { blankOf, partsAndBoards } from './parts-to-cut.ts';
import type { SetOut } from './set-out.ts';

/** Parts that are alike to the tick, features included, under one row. */
export interface PartGroup {
  readonly parts: readonly Part[];
  /** `D1-D3`, or `E1, E3`. */
  readonly marks: string;
}

/** Groups equal parts: same material, sizes, features and hand. In the order of marks. */
export function groupParts(setOut: SetOut): readonly PartGroup[] {
  const groups = new Map<string, Part[]>();
  for (const part of setOut.parts) {
    const key = likeness(setOut.ledger, part);
    const group = groups.get(key);
    if (group) group.push(part);
    else groups.set(key, [part]);
  }
  return [...groups.values()].map((parts) => ({ parts, marks: joinMarks(parts.map((p) => p.mark)) }));
}

/** The parts list as a report, documented as `parts --json`. */
export function partsReport(setOut: SetOut): Report {
  return {
    overall_mm: setOut.overall,
    parts: groupParts({ ...setOut, parts: partsAndBoards(setOut) }).map(({ parts, marks }) => {
      const first = parts[0]!;
      return {
        ids: parts.map((p) => p.id),
        mark: marks,
        name: parts.length === 1 ? first.name : commonName(parts),
        material: first.lot,
        length_mm: first.length,
        width_mm: first.width,
        thickness_mm: first.thickness,
        cut: { length_mm: first.cut.length, width_mm: first.cut.width },
        fitted: first.fitted && { length_mm: first.fitted.length, width_mm: first.fitted.width },
        count: parts.length,
        grain: first.grain,
        hand: first.hand,
        rough: first.rough && {
          length_mm: first.rough.length,
          width_mm: first.rough.width,
          thickness_mm: first.rough.thickness,
        },
        glued_up_from: boardsOf(setOut, parts),
        parted_from: blanksOf(setOut, parts),
        edging: edgingOf(setOut, first),
        features: first.features.map(featureReport),
      };
    }),
  };
}

/** The marks of the boards that panels alike are glued up from, panel by panel, from the near edge; absent where each is one piece. */
function boardsOf({ gluedPanels }: SetOut, parts: readonly Part[]): readonly string[] | undefined {
  const marks = parts.flatMap(
    ({ id }) => gluedPanels.find((g) => g.panel === id)?.boards.map((b) => b.mark) ?? [],
  );
  return marks.length > 0 ? marks : undefined;
}

/** The marks of the blanks that parts alike are parted from, strip by strip; absent where none is. */
function blanksOf(setOut: SetOut, parts: readonly Part[]): string | undefined {
  const marks = parts.flatMap(({ id }) => blankOf(setOut, id)?.mark ?? []);
  return marks.length > 0 ? joinMarks([...new Set(marks)]) : undefined;
}

/** What is glued to the edges of a part, by side; absent where none is. */
function edgingOf({ joints, parts }: SetOut, { id }: Part): readonly Report[] | undefined {
  const edged = joints.filter((j) => j.duty === 'edging' && j.mate === id);
  if (edged.length === 0) return undefined;
  return edged.map((j) => {
    const strip = parts.find((p) => p.id === j.part)!;
    return { edge: j.mateSide, mark: strip.mark, material: strip.lot, thickness_mm: strip.thickness };
  });
}

function featureReport(f: Feature): Report {
  switch (f.kind) {
    case 'rabbet':
      return {
        kind: f.kind,
        purpose: f.purpose,
        edge: f.edge,
        face: f.face,
        width_mm: f.width,
        depth_mm: f.depth,
        from_mm: f.from,
        to_mm: f.to,
      };
    case 'groove':
      return {
        kind: f.kind,
        purpose: f.purpose,
        edge: f.edge,
        face: f.face,
        inset_mm: f.inset,
        width_mm: f.width,
        depth_mm: f.depth,
        from_mm: f.from,
        to_mm: f.to,
      };
    case 'notch':
      return {
        kind: f.kind,
        purpose: f.purpose,
        end: f.end,
        edge: f.edge,
        length_mm: f.length,
        width_mm: f.width,
      };
    case 'bevel':
      return {
        kind: f.kind,
        purpose: f.purpose,
        edge: f.edge,
        angle_degrees: f.angle,
        full_face: f.fullFace,
      };
    case 'hole':
      return {
        kind: f.kind,
        purpose: f.purpose,
        use: f.use,
        side: f.side,
        at_mm: f.at,
        diameter_mm: f.diameter,
        depth_mm: f.depth,
        countersink_mm: f.countersink,
        counterbore: f.counterbore && {
          diameter_mm: f.counterbore.diameter,
          depth_mm: f.counterbore.depth,
        },
      };
    case 'slot':
      return {
        kind: f.kind,
        purpose: f.purpose,
        use: f.use,
        face: f.face,
        run: f.run,
        at_mm: f.at,
        length_mm: f.length,
        width_mm: f.width,
      };
    case 'pocket':
      return { kind: f.kind, purpose: f.purpose, face: f.face, edge: f.edge, along_mm: f.along };
    case 'biscuit-slot':
      return {
        kind: f.kind,
        purpose: f.purpose,
        side: f.side,
        at_mm: f.at,
        run: f.run,
        ...(f.slopeFrom ? { slope_from: f.slopeFrom } : {}),
        depth_mm: f.depth,
        kerf_mm: f.kerf,
        cutter_mm: f.cutter,
      };
    case 'spline-groove':
      return {
        kind: f.kind,
        purpose: f.purpose,
        edge: f.edge,
        slope_from: f.slopeFrom,
        inset_mm: f.inset,
        width_mm: f.width,
        depth_mm: f.depth,
        from_mm: f.from,
        to_mm: f.to,
      };
  }
}

/** A name for several parts: the one they share, without the number or place that tells them apart. */
export function commonName(parts: readonly Part[]): string {
  const plain = (name: string): string =>
    name.startsWith(EDGING) ? EDGING + plain(name.slice(EDGING.length)) : bare(name);
  const bare = (name: string) =>
    name
      .replace(/^(first|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth|\d+th) /, '')
      .replace(/^(left|right|front|back) (?=strip)/, '')
      .replace(/^(lower|upper) (left|right) (?=spline)/, '')
      .replace(/^((?:loose )?shelf) \d+/, '$1')
      .replace(/^board \d+ (?=of )/, 'board ')
      .replace(/ of drawer( \d+)? of [^ ]+$/, ' of a drawer')
      .replace(/ (in|of) [^ ]+$/, '');
  const names = new Set(parts.map((p) => plain(p.name)));
  if (names.size === 1) return [...names][0]!;
  return parts.every((p) => p.name.startsWith(EDGING)) ? 'edging' : [...names].join(', ');
}

const EDGING = 'edging for ';

function likeness(ledger: Ledger, part: Part): string {
  const t = (x: Traced | undefined) => (x === undefined ? '' : ledger.ticks(x));
  const feature = (f: Feature): readonly (string | number)[] => {
    switch (f.kind) {
      case 'rabbet':
        return ['r', f.edge, f.face, t(f.width), t(f.depth), t(f.from), t(f.to)];
      case 'groove':
        return ['g', f.edge, f.face, t(f.inset), t(f.width), t(f.depth), t(f.from), t(f.to)];
      case 'notch':
        return ['n', f.end, f.edge, t(f.length), t(f.width)];
      case 'bevel':
        return ['b', f.edge, f.angle, f.fullFace];
      case 'hole':
        return [
          'h',
          f.side,
          t(f.at[0]),
          t(f.at[1]),
          t(f.diameter),
          t(f.depth),
          t(f.countersink),
          t(f.counterbore?.diameter),
          t(f.counterbore?.depth),
        ];
      case 'slot':
        return ['s', f.use, f.face, f.run, t(f.at[0]), t(f.at[1]), t(f.length), t(f.width)];
      case 'pocket':
        return ['p', f.edge, f.face, t(f.along)];
      case 'biscuit-slot':
        return ['bs', f.side, f.run, f.slopeFrom ?? '', t(f.at[0]), t(f.at[1]), t(f.depth), t(f.kerf)];
      case 'spline-groove':
        return ['sg', f.edge, f.slopeFrom, t(f.inset), t(f.width), t(f.depth), t(f.from), t(f.to)];
    }
  };
  return JSON.stringify([
    part.lot,
    t(part.length),
    t(part.width),
    t(part.thickness),
    t(part.cut.length),
    t(part.cut.width),
    t(part.fitted?.length),
    t(part.fitted?.width),
    part.hand,
    part.features.map(feature),
  ]);
}

/** `A1, A2`, and `D1-D3` where three or more follow one another. */
export function joinMarks(marks: readonly string[]): string {
  const runs: string[][] = [];
  for (const mark of marks) {
    const run = runs.at(-1);
    const last = run?.at(-1);
    if (last && last[0] === mark[0] && Number(mark.slice(1)) === Number(last.slice(1)) + 1) run!.push(mark);
    else runs.push([mark]);
  }
  return runs.map((r) => (r.length > 2 ? `${r[0]}–${r.at(-1)}` : r.join(', '))).join(', ');
}
