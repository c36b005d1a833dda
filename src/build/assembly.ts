import type { Traced } from '../measure/index.ts';
import {
  axisOf,
  closingOrder,
  type Direction,
  isPegged,
  type Joint,
  type Part,
} from '../setting-out/index.ts';
import { afterLid, isTray, traysUnder } from './after-lid.ts';
import type { Bench } from './bench.ts';
import { planesOf } from './boxes.ts';
import { type CaseBox, type CaseUnit, isGlued, marked, unitsOf } from './case-units.ts';
import { glueCautions } from './cautions.ts';
import { clampSpan } from './clamp-span.ts';
import { beforeBack, closesShelves, isBefore, mustBeIn, screwedFromBehind } from './closed-behind.ts';
import { driveScrews } from './drive-screws.ts';
import { earlyFeet } from './feet-on-bottom.ts';
import { foldedParts, foldLines } from './fold-work.ts';
import { fromTheLeft } from './from-the-left.ts';
import { checkSquare } from './glue/check-square.ts';
import { glueFrame } from './glue-frame.ts';
import { endGlueLines, gluedTo, glueLines } from './glue-lines.ts';
import { legFrame, squareLegs, UPSIDE_DOWN } from './leg-frame.ts';
import { baseWords, mountBase } from './mount-base.ts';
import type { Touch } from './operation.ts';
import { packingsUnder } from './packings-under.ts';
import { pegsIn } from './pegs-in.ts';
import { isLetIn, isScrewedThrough, Standing, seat } from './seating.ts';
import { setGroup } from './set-group.ts';
import { goesIntoSide, isTongued, takesTongue } from './tongued-lid.ts';
import { topTouches } from './top-touches.ts';
import { touchesTold } from './touch-words.ts';
import { layOnFace, stand } from './turning.ts';
import { capital, listWords, looks, sideWords } from './words.ts';

/** Puts the piece together: the base, the box, the top, the shelves, the back. */
export function assemble(bench: Bench): void {
  for (const unit of unitsOf(bench)) assembleUnit(bench, unit);
}

/** Cases that share sides are built one on to the other, and go on together. */
function assembleUnit(bench: Bench, unit: CaseUnit): void {
  const early = new Set(earlyFeet(bench).map((j) => j.mate));
  const onFeet = new Set(bench.setOut.joints.filter((j) => j.duty === 'foot').map((j) => j.mate));
  const bases = unit.boxes.map((box) => ({
    box,
    name: box.name === 'case' ? 'base' : `base:${box.name}`,
    strips: marked(box, 'G').filter((p) => p.features.some((f) => f.kind === 'bevel')),
    feet: marked(box, 'G').filter((p) => onFeet.has(p.id)),
    legs: legFrame(bench, marked(box, 'G')),
  }));
  for (const { box, name, strips } of bases)
    if (strips.length > 0) glueFrame(bench, name, baseWords(box), strips);
  for (const { name, legs } of bases) {
    const onLegs = new Standing(bench, name);
    for (const part of legs) setPart(bench, onLegs, part, { first: UPSIDE_DOWN });
    if (legs.length > 0) squareLegs(bench, name, legs);
  }
  const pockets = unit.parts.some((p) => p.features.some((f) => f.kind === 'pocket'));
  const standing = new Standing(bench, unit.name, pockets);
  // Clamps that press the next case on to a shared side reach in past its rear edge: a back that is in its grooves bars the way.
  const slideLater: (() => void)[] = [];
  const shelves = bases.flatMap(({ box, strips, feet, legs }, i) =>
    boxTogether(
      bench,
      standing,
      i + 1,
      box,
      marked(box, 'G').filter((p) => !strips.includes(p) && !feet.includes(p) && !legs.includes(p)),
      unit.boxes.slice(i + 1).some((next) => isGlued(bench, next)) ? slideLater : undefined,
    ),
  );
  for (const slideIn of slideLater) slideIn();
  for (const { box, name, strips, feet, legs } of bases) {
    if (strips.length > 0) mountBase(bench, standing, box, name, strips);
    if (legs.length > 0) mountBase(bench, standing, box, name, legs);
    for (const foot of feet)
      if (early.has(foot.id)) standing.add(foot);
      else setPart(bench, standing, foot);
  }
  for (const box of unit.boxes)
    for (const top of topsOf(bench, box)) if (!closes(top)) mountTop(bench, unit, standing, box, top);
  // Rails would stand in a driver's way, under the top and before one another; they go in last, from behind.
  const inBases = new Set(bases.flatMap(({ strips, feet, legs }) => [...strips, ...feet, ...legs]));
  for (const box of unit.boxes)
    for (const rail of [...marked(box, 'T')].reverse())
      if (!inBases.has(rail) && !standing.has(rail.id) && !liesOnBack(bench, rail))
        setPart(bench, standing, rail);
  for (const shelf of shelves) setPart(bench, standing, shelf);
  const slidesIn = slidingBacks(bench);
  const onto = unit.boxes.flatMap((box) => marked(box, 'F').filter((p) => !slidesIn.has(p.id)));
  if (onto.length > 0) layOnFace(bench, unit.name, unit.words, overhang(bench, standing));
  for (const back of onto) setPart(bench, standing, back);
  for (const box of unit.boxes)
    for (const strip of marked(box, 'T')) if (liesOnBack(bench, strip)) setPart(bench, standing, strip);
}

/** The strips of a cleat that are screwed on through the back come when that is on. */
function liesOnBack({ setOut }: Bench, { id }: Part): boolean {
  return setOut.cleats.some((c) => c.onBack !== undefined && (c.onCase === id || c.spacer === id));
}

/** Marks of uprights whose upper ends nothing holds yet. */
function freeUprights(bench: Bench, standing: Standing, uprights: readonly Part[]): readonly string[] {
  return uprights
    .filter((d) =>
      bench.setOut.joints.some((j) => {
        const other = j.part === d.id ? j.mate : j.mate === d.id ? j.part : undefined;
        return other !== undefined && partById(bench, other).mark.startsWith('C') && !standing.has(other);
      }),
    )
    .map((d) => d.mark);
}

/** How far the foremost of the parts that stand is before the sides; undefined when they come level. */
function overhang(bench: Bench, standing: Standing): Traced | undefined {
  const l = bench.ledger;
  const side = standing.placed.find((p) => p.part.hand !== 'none')!;
  const edged = bench.setOut.joints.find((j) => j.duty === 'edging' && j.mate === side.part.id);
  const front = edged ? planesOf(l, partById(bench, edged.part)).planes['-y'] : side.planes['-y'];
  const ids = new Set(standing.placed.map((p) => p.part.id));
  const strips = bench.setOut.joints.flatMap((j) =>
    j.duty === 'edging' && ids.has(j.mate) ? [planesOf(l, partById(bench, j.part))] : [],
  );
  const foremost = l.least(
    'the foremost part',
    front,
    ...[...standing.placed, ...strips].map((p) => p.planes['-y']),
  );
  return l.ticks(foremost) < l.ticks(front)
    ? l.less('how far it stands before the sides', front, foremost)
    : undefined;
}

function topsOf(bench: Bench, box: CaseBox): readonly Part[] {
  const { joints, lids } = bench.setOut;
  const later = new Set([...joints.filter((j) => j.duty === 'edging'), ...lids].map((x) => x.part));
  return marked(box, 'C').filter((p) => !later.has(p.id));
}

/** A lid is one of the box's panels; an applied top comes on the finished box. */
function closes(top: Part): boolean {
  return top.role === 'lid';
}

function slidingBacks(bench: Bench): ReadonlySet<string> {
  return new Set(bench.setOut.joints.filter((j) => j.kind === 'groove').map((j) => j.part));
}

/**
 * Puts the panels of a case together, on to what stands already; the shelves that wait for its top are handed back.
 * @param slideLater takes what slides in a back behind the panels, where that is to wait for the next case
 */
function boxTogether(
  bench: Bench,
  standing: Standing,
  nth: number,
  box: CaseBox,
  between: readonly Part[],
  slideLater?: (() => void)[],
): readonly Part[] {
  const own = new Set(box.parts.map((p) => p.id));
  const { left, right } = box;
  const uprights = marked(box, 'D');
  const slidesIn = slidingBacks(bench);
  const backs = marked(box, 'F').filter((p) => slidesIn.has(p.id));
  const lids = topsOf(bench, box).filter(closes);
  const over = lids.some((t) => !t.between);
  const letIn = bench.setOut.joints.some((j) => own.has(j.part) && isLetIn(j));
  const folded = foldedParts(bench, [...marked(box, 'B'), left, right, ...lids]);
  const pegged = peggedParts(bench, [
    ...marked(box, 'B'),
    left,
    ...uprights,
    ...marked(box, 'E'),
    ...lids,
    right,
  ]);
  const first = [...folded, ...pegged];
  const slideIn = () => {
    // Rails before it are screwed from behind; where all is glued at once they go in later, from the front.
    const before = backs.length > 0 && first.length === 0 ? [...beforeBack(bench, box)].reverse() : [];
    for (const part of [...before, ...backs]) if (!standing.has(part.id)) setPart(bench, standing, part);
  };
  for (const part of first.filter((p) => !standing.has(p.id))) {
    if (over && closes(part)) {
      for (const tray of traysUnder(bench, standing, uprights, part)) setPart(bench, standing, tray);
      if (backs.length > 0)
        for (const panel of screwedFromBehind(bench, standing, uprights)) setPart(bench, standing, panel);
      slideIn();
    }
    setPart(bench, standing, part, { folded });
  }
  if (folded.length > 0)
    checkSquare(bench, standing.into, nth, box, {
      glued: true,
      free: freeUprights(bench, standing, uprights),
    });
  // Sides that stand in the bottom can't be pushed on to a lid: it slides in between them from behind.
  const tongued = letIn ? lids.filter((lid) => isTongued(bench, lid)) : [];
  // A lid comes down on a side that it runs over, and takes the other one from beside it.
  const onLid = [left, right].filter((side) =>
    tongued.some((lid) => takesTongue(bench, lid).includes(side.id)),
  );
  const underLids = (side: Part) => (onLid.includes(side) ? [] : [side]);
  const intoSide = tongued.filter((lid) => goesIntoSide(bench, standing, lid));
  // Past a back that is in its grooves nothing slides in from behind: shelves go into the right side before the left one comes.
  const fromRight = over && backs.length > 0 && onLid.includes(left);
  // What is only screwed in comes when the case is closed: before that it would stand in the way of screws.
  const comesLast = (p: Part) =>
    p.mark.startsWith('E') && !bench.setOut.joints.some((j) => j.part === p.id && isLetIn(j));
  const waiting = (
    letIn
      ? [
          ...marked(box, 'B'),
          ...underLids(left),
          ...intoSide,
          ...(fromRight ? underLids(right) : []),
          ...fromTheLeft(bench, [...uprights, ...marked(box, 'E').filter((p) => !comesLast(p))]),
          ...(fromRight ? [] : underLids(right)),
          ...tongued.filter((lid) => !intoSide.includes(lid)),
          ...onLid,
          ...between,
          ...marked(box, 'E').filter(comesLast),
        ]
      : [...marked(box, 'B'), left, ...uprights, right, ...between, ...marked(box, 'E')]
  ).filter((p) => !standing.has(p.id) && !first.includes(p));
  // What closes a compartment from behind would shut out the shelves before it: these go in first, from there. Not where
  // the back is in by then.
  const closing =
    letIn || backs.length > 0 ? [] : uprights.filter((d) => closesShelves(bench, d, marked(box, 'E')));
  // A fixed front is only screwed on: where shelves are glued in behind it, clamps want its place until they have set.
  const front = letIn ? waiting.filter((p) => p.role === 'front') : [];
  const open = waiting.filter((p) => !closing.includes(p));
  const later =
    first.length > 0
      ? []
      : afterLid(bench, {
          lids,
          uprights,
          sides: [left, right],
          open,
          shelves: open.filter(comesLast),
          shut: over ? backs : [],
          letIn,
          over,
        });
  for (const panel of [...closing, ...front, ...later]) waiting.splice(waiting.indexOf(panel), 1);
  // The first that has everything it is screwed to: uprights before shelves, so that a driver reaches every pocket.
  while (waiting.length > 0) {
    const there = (id: string) => standing.has(id) || (fromRight && id === left.id);
    const shutsOut = (p: Part) =>
      axisOf(p.place.thickness).axis === 1 &&
      waiting.some((tray) => isTray(tray) && isBefore(bench, tray, p));
    const isReady = (p: Part) => supports(bench, p).every(there);
    // Dividers for trays slide in between their shelves from behind, before a panel closes the space there.
    const ready = waiting.find((p) => isReady(p) && !shutsOut(p)) ?? waiting.find(isReady) ?? waiting[0]!;
    if (comesLast(ready) && waiting.every(comesLast)) break;
    waiting.splice(waiting.indexOf(ready), 1);
    if (over && closes(ready)) slideIn();
    setPart(bench, standing, ready);
  }
  if (first.length === 0) {
    // A back in grooves slides in from the upper end, so it comes before whatever is laid on the case there.
    if (over) slideIn();
    for (const panel of [...lids, ...later]) if (!standing.has(panel.id)) setPart(bench, standing, panel);
  }
  if (folded.length === 0)
    checkSquare(bench, standing.into, nth, box, {
      glued: letIn || pegged.length > 0,
      free: freeUprights(bench, standing, uprights),
    });
  if (!over && slideLater) slideLater.push(slideIn);
  else if (!over) slideIn();
  const before = waiting.filter((shelf) => closing.some((panel) => mustBeIn(bench, shelf, panel)));
  return [...before, ...closing, ...waiting.filter((p) => !before.includes(p)), ...front];
}

/** Panels with dowels or biscuits, in an order in which each can be pushed on; none in a case without. */
function peggedParts(bench: Bench, parts: readonly Part[]): readonly Part[] {
  const joints = bench.setOut.joints.filter(isPegged);
  const held = parts.filter((p) => joints.some((j) => j.part === p.id || j.mate === p.id));
  const order = closingOrder(joints, held) ?? held.map((p) => p.id);
  return order.map((id) => held.find((p) => p.id === id)!);
}

/** What a part can't be set before: the parts that its own ends are fixed to, but for what closes the case from above. */
function supports(bench: Bench, part: Part): readonly string[] {
  const upright = axisOf(part.place.length).axis === 2;
  // Dividers for trays slide in between two panels: the shelf over them would not come down on them.
  const tray = isTray(part);
  return bench.setOut.joints
    .flatMap((j) => {
      const letIn = isLetIn(j) && (j.side === 'start' || tray || standsInDado(bench, j.mate));
      if (j.part === part.id && (j.hold === 'pocket-screws' || letIn)) return [{ end: j.side, on: j.mate }];
      return j.mate === part.id && j.duty === 'carries' && isScrewedThrough(j)
        ? [{ end: j.mateSide, on: j.part }]
        : [];
    })
    .filter(({ end }) => !upright || end === 'start' || tray)
    .map(({ on }) => on)
    .filter((id) => id !== part.id && !isSide(bench, id, part) && !partById(bench, id).mark.startsWith('C'));
}

/**
 * An upright let in below can't be moved on to the ends of shelves: these slide in when it stands. A side in a rabbet is
 * pushed on to them last.
 */
function standsInDado(bench: Bench, id: string): boolean {
  const isSide = bench.setOut.sides.some((s) => s.left === id || s.right === id);
  return (
    axisOf(partById(bench, id).place.length).axis === 2 &&
    bench.setOut.joints.some(
      (j) => j.part === id && isLetIn(j) && j.side === 'start' && !(isSide && j.kind === 'rabbet'),
    )
  );
}

/** The bottom comes first, although it is screwed into the sides; so does a lid whose tongues go into them. */
function isSide(bench: Bench, id: string, part: Part): boolean {
  const before = part.mark.startsWith('B') || (part.mark.startsWith('C') && isTongued(bench, part));
  return before && bench.setOut.sides.some((s) => s.left === id || s.right === id);
}

function onItsFace({ pockets }: Standing): readonly string[] {
  return [
    `The case is put together lying on its face, front edges down on pads on a flat floor or bench, so that the fronts come level${pockets ? ' and a driver reaches every pocket' : ''}. Cards and drawings speak of it as it will stand, seen from the front.`,
  ];
}

/** How a part is set that isn't just the next of a case. */
interface Setting {
  /** The panels that are folded up together. */
  readonly folded?: readonly Part[];
  /** What the first card says of how all of it lies, where it isn't a case on its face. */
  readonly first?: readonly string[];
}

function setPart(bench: Bench, standing: Standing, part: Part, how: Setting = {}): void {
  const first = standing.placed.length === 0;
  const touches = seat(bench, standing, part);
  const lengths: Traced[] = [];
  const told = first ? [] : touchesTold(bench, touches, lengths, part);
  const near = bench.setOut.joints.filter((j) => isLetIn(j));
  const goesIn = near.some((j) => j.part === part.id && standing.has(j.mate));
  const letIn = goesIn || near.some((j) => j.mate === part.id && standing.has(j.part));
  const meets = gluedTo(bench, standing, part);
  const fold = foldLines(bench, standing, part, how.folded ?? [], lengths);
  const folds = !first && fold.lines.length > 0;
  const { pegs, splines, lines: peggedIn } = pegsIn(bench, standing, part, lengths);
  const spans = clampSpan(bench, standing, part);
  // What goes into a dado is set by it; a stick is for clear distances.
  const gap = goesIn ? undefined : touches.find((t) => isClear(bench, t))?.gap;
  const stick = gap === undefined ? [] : gaugeLine(bench, part, gap, lengths);
  bench.do(
    {
      id: `${part.mark}/set`,
      kind: 'assemble',
      stage: 'assemble',
      title: first
        ? how.first
          ? `Begin with ${part.mark} (${part.name})`
          : `Stand ${part.mark} (${part.name}) on its front edge`
        : `Set ${part.mark} (${part.name})`,
      does: {
        act: 'set',
        workpiece: part.mark,
        into: standing.into,
        turn: { length: part.place.length, width: part.place.width },
        touches,
        glue: letIn || meets.length > 0 || folds,
        ...(folds ? { folds: true as const } : {}),
        ...(pegs.length > 0 ? { pegs } : {}),
        ...(splines.length > 0 ? { splines } : {}),
      },
      ...(first
        ? { after: caseBefore(bench, standing) }
        : { tool: 'clamp' as const, ...(spans === undefined ? {} : { spans }) }),
      lines: [
        ...(first
          ? [...(how.first ?? onItsFace(standing)), `${capital(wayRound(part))}.`, ...fold.lines]
          : [
              ...glueLines(bench, standing, part),
              ...endGlueLines(part, meets),
              ...fold.before,
              ...peggedIn,
              ...fold.lines,
              `${capital(listWords(told))}; ${wayRound(part)}.`,
              ...(letIn ? [] : packingsUnder(bench, standing, part, touches, lengths)),
            ]),
        ...stick,
        ...(!first && pocketed(bench, standing, part)
          ? ['Clamp the joint before driving any screw: a pocket screw pulls the part sideways.']
          : []),
      ],
      lengths,
      ...(letIn || meets.length > 0 || fold.lines.length > 0 ? { cautions: glueCautions(bench) } : {}),
    },
    first ? [part.mark] : [part.mark, ...splines.map((s) => s.strip), standing.into],
  );
  if (first) {
    bench.comesFrom(standing.into, `${part.mark}/set`);
    if (!how.first) bench.lies.set(standing.into, 'on its face');
  }
  standing.add(part);
  for (const j of bench.setOut.joints) {
    const other = j.part === part.id ? j.mate : j.mate === part.id ? j.part : undefined;
    if (other !== undefined && standing.has(other)) driveScrews(bench, standing.into, j);
  }
}

/** One case is together before the next is begun: its last part is in. */
function caseBefore(bench: Bench, { into }: Standing): readonly string[] {
  const before = bench.operations.findLast(
    ({ does }) => does.act === 'set' && /^case/.test(does.into) && does.into !== into,
  );
  return before ? [before.id] : [];
}

/** The gauge sticks a part is set by: cut for the first that needs them, and used again. */
function gaugeLine(bench: Bench, part: Part, gap: Traced, lengths: Traced[]): readonly string[] {
  const stick = bench.gauges.use(gap, `${part.mark}/set`, part.mark);
  const [first] = stick.uses;
  const n = lengths.push(stick.length) - 1;
  return [
    stick.uses.length === 1
      ? `Cut ${stick.name} twice, {${n}} long, and put one at each end: a stick can’t be misread.`
      : `${capital(stick.name)}, {${n}} long, at each end: the two that were cut for ${first!.mark}.`,
  ];
}

/** A distance between two faces that look at each other. */
function isClear(bench: Bench, touch: Touch): boolean {
  return touch.gap !== undefined && touch.side !== touch.face && bench.ledger.ticks(touch.gap) > 0;
}

/** How a part is turned, by what can be seen on it: its marked front edge and its pockets. */
function wayRound(part: Part): string {
  const pocket = part.features.find((f) => f.kind === 'pocket');
  const seen = sideWords(part, pocket ? pocket.face : 'show');
  const looksTo = looks(part, pocket ? pocket.face : 'show');
  return pocket ? `its pockets ${TOWARDS[looksTo]}` : `the ${seen} ${TOWARDS[looksTo]}, as marked`;
}

const TOWARDS: Record<Direction, string> = {
  '+x': 'to the right',
  '-x': 'to the left',
  '+y': 'to the back',
  '-y': 'to the front',
  '+z': 'above',
  '-z': 'below',
};

/** Is a part that goes in held by pocket screws? */
function pocketed(bench: Bench, standing: Standing, part: Part): boolean {
  return bench.setOut.joints.some((j) => {
    const other = j.part === part.id ? j.mate : j.mate === part.id ? j.part : undefined;
    return other !== undefined && j.hold === 'pocket-screws' && standing.has(other);
  });
}

function mountTop(bench: Bench, unit: CaseUnit, standing: Standing, box: CaseBox, top: Part): void {
  stand(bench, 'assemble', unit.name, unit.words, [
    'Clamp a batten across the back edges near the top, so that nothing racks.',
  ]);
  const side = planesOf(bench.ledger, box.left);
  const isHeld = (j: Joint) =>
    (j.mate === top.id && (j.hold === 'pocket-screws' || partById(bench, j.part).role === 'lid')) ||
    (j.part === top.id && isScrewedThrough(j));
  const joint = bench.setOut.joints.find(isHeld);
  if (!joint) {
    setPart(bench, standing, top);
    return;
  }
  const under = partById(bench, joint.part === top.id ? joint.mate : joint.part);
  const free = freeUprights(bench, standing, marked(box, 'D'));
  setGroup(
    bench,
    standing.into,
    top.mark,
    `Lay ${top.mark} (${top.name}) on the case`,
    topTouches(bench, top, side, under),
    [
      `Check the overhang on all sides${free.length > 0 ? `, and ${listWords(free)} by the long story stick` : ''}, before the first screw.`,
    ],
    { length: top.place.length, width: top.place.width },
  );
  standing.add(top);
  // A rail brings its own screws when it goes in.
  for (const j of bench.setOut.joints.filter(isHeld))
    if ([j.part, j.mate].every((id) => id === top.id || standing.has(id)))
      driveScrews(bench, standing.into, j);
}

function partById(bench: Bench, id: string): Part {
  return bench.setOut.parts.find((p) => p.id === id)!;
}
