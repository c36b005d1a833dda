import type { RecordOf } from '../../job/index.ts';
import { BISCUITS, SETTING_OUT, SPLINES } from '../../materials/index.ts';
import { TICKS_PER_MM, type Traced, toMm } from '../../measure/index.ts';
import type { Cure } from '../../snag/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { SplineGroove } from '../feature.ts';
import { fitsOfSpline } from '../fits/fits-of-splines.ts';
import { splineGrooveSettings, splineTool } from '../fits/spline-groove-settings.ts';
import { axisOf } from '../place.ts';
import type { Bores, Hollow } from './bores.ts';
import { inPart } from './contact.ts';
import { innerArris, innerFace, type MitredCorner } from './mitred-corner.ts';

/** The section of the grooves of a corner: alike in both slopes. */
interface Section {
  /** The lot of the spline, and how thick it is. */
  readonly lot: ReturnType<Draft['lot']>;
  readonly thick: Traced;
  /** Down the slope to the nearer wall, from wall to wall, and square to the slope. */
  readonly inset: Traced;
  readonly width: Traced;
  readonly depth: Traced;
  /** Wood left where the floor comes nearest to the outer face. */
  readonly spare: Traced;
}

/** Where grooves and spline run, along the piece’s depth. */
interface Run {
  readonly from: Traced;
  readonly to: Traced;
  readonly spline: { readonly at: Traced; readonly middle: Traced; readonly length: Traced };
  readonly behind: Traced;
}

/** The cure that always helps. */
function without(box: RecordOf<'case'>): Cure {
  const fields = (['inMitres', 'splineBoard'] as const).filter((field) => box[field] !== undefined);
  return {
    says: 'Leave “inMitres” and “splineBoard” out: glue alone holds mitres that are folded up.',
    edits: fields.map((field) => ({ record: box.id, field })),
  };
}

/**
 * A groove square to each slope of a corner, and the spline that goes into both. It lies near the inside, where a groove can be
 * deepest before it comes through. The ids of what was put in; a stop where there is no room for it.
 */
export function splineInMitre(draft: Draft, bores: Bores, corner: MitredCorner): readonly string[] {
  const section = sectionOf(draft, corner);
  if (!section) return [];
  const run = runOf(draft, bores, corner, section);
  if (!run || isLoose(draft, corner, section)) return [];
  const l = draft.ledger;
  const { side, flat, joint, box } = corner;
  const arris = innerArris(corner);
  const grooves = [
    grooveIn(draft, side, flat, corner.sideEnd, section, run),
    grooveIn(draft, flat, side, corner.flatEnd, section, run),
  ] as const;
  for (const [part, groove] of [[side, grooves[0]] as const, [flat, grooves[1]] as const]) {
    part.features.push(groove);
    bores.hollow(part.id, hollowOf(draft, corner, part, section, [l.ticks(run.from), l.ticks(run.to)]));
  }
  const width = l.round(
    'as fine as the saw is set',
    l.less(
      'a little narrower than both grooves are deep',
      l.times('both grooves', section.depth, 2),
      l.row(SPLINES.short),
    ),
    draft.stepOf('circular-saw'),
    'down',
  );
  const out = l.ratio(
    'middle of the groove, as far square to the face',
    l.sum(
      'down the slope to the middle of the groove',
      section.inset,
      l.ratio('half the groove', section.width, SETTING_OUT.half),
    ),
    BISCUITS.downSlope,
  );
  const on = (k: 0 | 2) =>
    arris.sign[k] > 0
      ? l.sum('middle of the groove, on the slope', arris.at[k], out)
      : l.less('middle of the groove, on the slope', arris.at[k], out);
  const [x, z] = [on(0), on(2)];
  const strip = draft.panel({
    record: box.id,
    role: `spline:${side.role}-${flat.role}`,
    name: nameOf(draft, corner),
    family: 'spline',
    lot: section.lot,
    at: [x, run.spline.at, z],
    size: [width, run.spline.length, section.thick],
    length: '+y',
    width: '-x',
    between: true,
    apart: true,
  });
  draft.splines.push(strip);
  fitsOfSpline(draft, { strip, side, flat, groove: grooves[1] });
  const half = l.ratio('half the spline', width, SETTING_OUT.half);
  draft.pegs.push({
    id: `${joint}:spline`,
    joint,
    kind: 'spline',
    strip: strip.id,
    behind: run.behind,
    parts: [side.id, flat.id],
    at: [x, run.spline.middle, z],
    across: width,
    wide: run.spline.length,
    holds: [half, l.less('the other half', width, half)],
    spare: section.spare,
  });
  return [`${joint}:spline`];
}

/** Where it is, as one stands before the case: `lower left spline`. */
function nameOf(draft: Draft, { box, sideEnd, flatEnd }: MitredCorner): string {
  const alone = draft.tree.casesOf(draft.piece.id).length === 1;
  const where = `${sideEnd === 'start' ? 'lower' : 'upper'} ${flatEnd === 'start' ? 'left' : 'right'}`;
  return `${where} spline${alone ? '' : ` of ${box.id}`}`;
}

/** How deep the grooves can be, and where down the slope; undefined where the spline is too thick for its boards. */
function sectionOf(draft: Draft, { side, flat, box }: MitredCorner): Section | undefined {
  const l = draft.ledger;
  const t = (x: Traced) => l.ticks(x);
  const lot = draft.lot(box.splineBoard!);
  const thick = draft.thickness(lot);
  const board = l.least('the thinner board', side.thickness, flat.thickness);
  const step = draft.stepOf(splineTool(draft.job.shop));
  const width = l.sum('spline, and room for glue', thick, l.row(SETTING_OUT.dadoClear));
  const inset = l.round('as fine as it is set', l.row(SPLINES.inside), step, 'up');
  // Square to the slope the outer face is as far away as the slope is long from there to the tip.
  const wood = l.less(
    'wood square to the slope, from the groove’s outer wall to the outer face',
    l.ratio('slope of the mitre', board, BISCUITS.overSlope),
    inset,
    width,
  );
  const deepest = l.less(
    'as deep as the wood lets it',
    wood,
    l.ratio('what must be left behind, square to the slope', l.row(SPLINES.skin), BISCUITS.overSlope),
  );
  const depth = l.round(
    'as fine as it is set',
    l.least(
      'half the board, or as deep as the wood lets it',
      l.ratio('half the board', board, SPLINES.depth),
      deepest,
    ),
    step,
    'down',
  );
  const [over, under] = SPLINES.thickest.of;
  if (under * t(thick) > over * t(board) || t(depth) < t(thick)) {
    // As much as a spline is thinner, its groove may be deeper; rounding takes a step of that at most.
    const most = Math.min((over * t(board)) / under, (t(deepest) + t(thick) - t(step)) / 2);
    const tenths = Math.floor(toMm(most) * 10) / 10;
    if (!draft.snags.some((s) => s.code === 'mitres.spline-thick' && s.where.record === box.id))
      draft.stop(
        'mitres.spline-thick',
        box,
        'splineBoard',
        `“${lot.name}”, ${toMm(t(thick))} mm thick, makes splines too thick for mitres in boards of ${toMm(t(board))} mm: they may be a third as thick as these, and as deep in either slope as they are thick.`,
        ...(tenths > 0 ? [{ says: `Name a lot of plywood of at most ${tenths} mm.` }] : []),
        without(box),
      );
    return undefined;
  }
  const spare = l.ratio(
    'from the floor of the groove to the outer face',
    l.less('square to the slope', wood, depth),
    BISCUITS.downSlope,
  );
  return { lot, thick, inset, width, depth, spare };
}

/** Whether the tools of the shop leave grooves so wide that the spline would be loose; a stop says so, once a case. */
function isLoose(draft: Draft, { box, flat, flatEnd }: MitredCorner, section: Section): boolean {
  const l = draft.ledger;
  const settings = splineGrooveSettings(l, draft.job.shop, {
    ...{ kind: 'spline-groove', id: '', purpose: '', edge: flatEnd, slopeFrom: innerFace(flat, flatEnd) },
    ...section,
    from: draft.nothing,
    to: flat.width,
  });
  const over = l.ticks(settings.width) - l.ticks(section.thick);
  if (over <= l.ticks(l.row(SPLINES.loose))) return false;
  if (!draft.snags.some((s) => s.code === 'mitres.spline-loose' && s.where.record === box.id))
    draft.stop(
      'mitres.spline-loose',
      box,
      'splineBoard',
      `The ${settings.by === 'router' ? 'router' : 'saw, moved as finely as lines are marked,'} leaves grooves ${(Math.round((over / TICKS_PER_MM) * 10) / 10).toFixed(1)} mm wider than “${section.lot.name}” is thick: splines of it would be loose.`,
      { says: 'Name plywood that is as thick as the blade cuts wide, or add a router with a narrow bit.' },
      without(box),
    );
  return true;
}

/** The longest way along the corner that is clear of all else that is cut there. */
function runOf(draft: Draft, bores: Bores, corner: MitredCorner, section: Section): Run | undefined {
  const l = draft.ledger;
  const t = (x: Traced) => l.ticks(x);
  const { side, flat, box } = corner;
  const low = l.greatest('where the corner begins', side.box.min[1], flat.box.min[1]);
  const high = l.least('where the corner ends', side.box.max[1], flat.box.max[1]);
  const sawn = splineTool(draft.job.shop) === 'circular-saw';
  const begins = sawn ? low : l.sum('behind the front edges', low, l.row(SETTING_OUT.dadoStop));
  const step = draft.stepOf('marking');
  // How far back from the inner arris the floors of the grooves come.
  const back = Math.max(0, (t(section.depth) - t(section.inset)) * Math.SQRT1_2);
  const ends = [
    { part: side, mate: flat, end: corner.sideEnd },
    { part: flat, mate: side, end: corner.flatEnd },
  ] as const;
  const taken = ends
    .flatMap(({ part, mate, end }) => [
      ...bores.taken(part.id, hollowOf(draft, corner, part, section, [t(low), t(high)]), 1),
      ...cutAlong(draft, part, end, t(mate.thickness) + back),
    ])
    .map(([a, b]): [number, number] => [Math.max(a, t(begins)), Math.min(b, t(high))])
    .sort((a, b) => a[0] - b[0]);
  let best: readonly [number, number] = [t(begins), t(begins)];
  let at: number = t(begins);
  for (const [a, b] of [...taken, [t(high), t(high)] as const]) {
    if (a - at > best[1] - best[0]) best = [at, a];
    at = Math.max(at, b);
  }
  const steps = (ticks: number) => l.times('clear of what is cut there', step, Math.ceil(ticks / t(step)));
  const free = {
    from: best[0] === t(begins) ? begins : l.sum('where it can begin', begins, steps(best[0] - t(begins))),
    to: best[1] === t(high) ? high : l.less('where it must end', high, steps(t(high) - best[1])),
  };
  // Where a bit stops, the end of its groove stays round.
  const round = sawn ? draft.nothing : section.width;
  const stopsBehind = [side, flat].some((p) => t(free.to) < t(p.box.max[1]));
  const first = t(free.from) > t(low) ? l.sum('clear of the round end', free.from, round) : free.from;
  const length = l.round(
    'as fine as the saw is set',
    l.less('length of the spline', free.to, first, ...(stopsBehind ? [round] : [])),
    draft.stepOf('circular-saw'),
    'down',
  );
  const [over, under] = SPLINES.least.of;
  if (under * t(length) < over * (t(high) - t(low))) {
    draft.stop(
      'pegs.meet',
      box,
      'inMitres',
      `The spline between the ${side.name} and the ${flat.name} finds no room clear of what is cut and bored there.`,
      without(box),
    );
    return undefined;
  }
  const run = sawn
    ? { from: low, to: l.greatest('the further back edge', side.box.max[1], flat.box.max[1]) }
    : free;
  return {
    ...run,
    spline: {
      at: first,
      middle: l.sum('middle of the spline', first, l.ratio('half its length', length, SETTING_OUT.half)),
      length,
    },
    behind: l.less('from the front edges to the spline', first, low),
  };
}

function grooveIn(
  draft: Draft,
  part: DraftPart,
  mate: DraftPart,
  edge: 'start' | 'end',
  { inset, width, depth }: Section,
  run: Run,
): SplineGroove {
  const l = draft.ledger;
  const sawn = splineTool(draft.job.shop) === 'circular-saw';
  const ends = [run.from, run.to].map((y) =>
    inPart(draft, part, 1, y, `place along the mitre of the ${part.name}`),
  );
  const [a, b] = sawn ? [draft.nothing, part.width] : (ends as [Traced, Traced]);
  const turned = l.ticks(a) > l.ticks(b);
  return {
    kind: 'spline-groove',
    id: `${part.id}#${mate.id}:spline`,
    purpose: `for the spline into the ${mate.name}`,
    edge,
    slopeFrom: innerFace(part, edge),
    inset,
    width,
    depth,
    from: turned ? b : a,
    to: turned ? a : b,
  };
}

/** Where channels and notches come within `reach` of the tip of a mitred end, along the piece’s depth, in ticks. */
function cutAlong(
  draft: Draft,
  part: DraftPart,
  end: 'start' | 'end',
  reach: number,
): readonly (readonly [number, number])[] {
  const t = (x: Traced) => draft.ledger.ticks(x);
  const y = (fromNear: number) => t(part.place.origin[1]) + axisOf(part.place.width).sign * fromNear;
  return part.features.flatMap((f) => {
    const runs = (f.kind === 'rabbet' || f.kind === 'groove') && (f.edge === 'near' || f.edge === 'far');
    // A channel that stops before the spline’s groove is not in the way there.
    if (runs && (end === 'start' ? t(f.from) > reach : t(f.to) < t(part.length) - reach)) return [];
    const across =
      (f.kind === 'rabbet' || f.kind === 'groove') && (f.edge === 'near' || f.edge === 'far')
        ? ([f.kind === 'groove' ? t(f.inset) : 0, t(f.width)] as const)
        : f.kind === 'notch' && f.end === end
          ? ([0, t(f.width)] as const)
          : undefined;
    if (!across || !('edge' in f)) return [];
    const [inset, wide] = across;
    const ends =
      f.edge === 'near' ? [inset, inset + wide] : [t(part.width) - inset - wide, t(part.width) - inset];
    const at = ends.map(y);
    return [[Math.min(...at), Math.max(...at)] as const];
  });
}

/** What a groove takes up in its panel, as a box round it, in ticks. */
function hollowOf(
  draft: Draft,
  corner: MitredCorner,
  part: DraftPart,
  { inset, width, depth }: Section,
  [from, to]: readonly [number, number],
): Hollow {
  const l = draft.ledger;
  const { at, sign } = innerArris(corner);
  const near = l.ticks(inset);
  const far = near + l.ticks(width);
  const deep = l.ticks(depth);
  // Along the panel the groove runs back from the slope, and through its thickness on towards the outer face.
  const along = [(near - deep) * Math.SQRT1_2, far * Math.SQRT1_2];
  const through = [near * Math.SQRT1_2, (far + deep) * Math.SQRT1_2];
  const [x, z] = part === corner.flat ? [along, through] : [through, along];
  const across = (k: 0 | 2, [a, b]: readonly number[]) => {
    const ends = [a!, b!].map((d) => l.ticks(at[k]) + sign[k] * d);
    return [Math.floor(Math.min(...ends)), Math.ceil(Math.max(...ends))] as const;
  };
  const [[x0, x1], [z0, z1]] = [across(0, x), across(2, z)];
  return { min: [x0, from, z0], max: [x1, to, z1] };
}
