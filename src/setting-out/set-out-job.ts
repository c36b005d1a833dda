import type { JobDocument } from '../job/index.ts';
import type { Cure } from '../snag/index.ts';
import { joinBlanks } from './blanks/join-blanks.ts';
import type { JoinedBlank } from './blanks/joined-blank.ts';
import { basesUnderCases } from './case/base-under-cases.ts';
import { fitsItsFrame, joinParts, type MadeCase, partsOfCase } from './case/case-in-full.ts';
import { Cases } from './case/cases.ts';
import type { Cleat } from './case/cleat.ts';
import { connectCases } from './case/connect-cases.ts';
import { fillers, fillersReachWalls, joinFiller } from './case/fillers.ts';
import { roundStrip } from './case/round-strip.ts';
import { SidesOfCases } from './case/sides-of-cases.ts';
import { slotsInstead } from './case/slots-instead.ts';
import { joinTopOverCases, topsOverCases } from './case/tops-over-cases.ts';
import { behindSharedSides } from './case/where-cases-meet.ts';
import { nameDimensions, namePrinted } from './dimension-names.ts';
import { Draft, type DraftPart } from './draft.ts';
import { frontStrips } from './drawers/front-strips.ts';
import { fitsOfAlike } from './fits/cut-alike.ts';
import { twoKerfs } from './fits/cut-size.ts';
import { filmInFits } from './fits/film-in-fits.ts';
import { PrintedSizes } from './fits/printed-sizes.ts';
import { cableHoles } from './holes/cable-holes.ts';
import { cutVents } from './holes/vents.ts';
import { Bores } from './joints/bores.ts';
import { madeInVain } from './made-in-vain.ts';
import { measuredInVain } from './measured-in-vain.ts';
import type { Part } from './part.ts';
import { partsAndBoards } from './parts-to-cut.ts';
import { pairKey, partsInTheSameSpace } from './same-space.ts';
import type { SetOut } from './set-out.ts';
import { inShopUnits } from './shop-units.ts';
import { formulasHold } from './spaces/formulas.ts';
import { fitsRoom } from './spaces/room.ts';
import { standRows } from './spaces/rows.ts';
import { standThings } from './spaces/things.ts';

/**
 * Sets out a job: every part, joint and screw, each number traced to what was typed, measured or taken from a
 * table. What can't be made is told as snags, with the record to change; the parts are then incomplete.
 */
export function setOut(job: JobDocument): SetOut {
  const draft = new Draft(job);
  const cases = new Cases(draft);
  draft.clearSize = (opening, size) => cases.clearSize(opening, size);
  const made: MadeCase[] = [];
  const formulas = formulasHold(draft);
  if (formulas) {
    const bores = new Bores();
    const standing = cases.fit() ? cases.all.filter(({ frame }) => fitsItsFrame(draft, frame)) : [];
    const sides = new SidesOfCases(
      draft,
      standing.map(({ frame }) => frame),
    );
    made.push(
      ...standing.flatMap(({ frame, clear }) => {
        const own = sides.of(frame);
        return own ? (partsOfCase(draft, frame, clear, own) ?? []) : [];
      }),
    );
    const tops = made.length === cases.all.length ? topsOverCases(draft, cases, made) : [];
    const strips = made.length === cases.all.length ? fillers(draft, cases, made) : [];
    cableHoles(draft, bores);
    cutVents(draft, bores);
    for (const one of made) joinParts(draft, bores, one, behindSharedSides(made, one));
    connectCases(draft, bores, made, tops);
    for (const top of tops) joinTopOverCases(draft, bores, top);
    if (made.length === cases.all.length) basesUnderCases(draft, bores, cases, made);
    for (const filler of strips) joinFiller(draft, bores, filler);
    fillersReachWalls(draft, strips);
    for (const one of made) {
      standRows(draft, one);
      standThings(draft, one);
    }
    frontStrips(draft);
    for (const one of made) roundStrip(draft, one);
    sameSpace(draft);
    for (const one of made) joinBlanks(draft, one);
  }
  const overall = cases.overall();
  checkSpace(draft);
  if (formulas) fitsRoom(draft);
  nameDimensions(draft, overall);
  filmInFits(draft);
  fitsOfAlike(draft);
  const printed = new PrintedSizes(draft);
  const parts = inOrderOfMarks(draft.parts, printed);
  const gluedPanels = draft.gluedPanels.map((g) => ({ ...g, boards: inOrderOfMarks(g.boards, printed) }));
  const cleats = draft.cleats.map((c): Cleat => {
    const [blank] = inOrderOfMarks([c.blank], printed);
    // It is as long as the strip that goes between the sides.
    const { length } = parts.find((p) => p.id === c.onCase)!.cut;
    return { ...c, blank: { ...blank!, cut: { ...blank!.cut, length } } };
  });
  const joinedBlanks = draft.joinedBlanks.map((b) => cutBlank(draft, b, parts, printed));
  const splines = inOrderOfMarks(draft.splines, printed);
  const fits = printed.fits();
  namePrinted(draft, partsAndBoards({ parts, gluedPanels, cleats, joinedBlanks, splines }), fits);
  measuredInVain(draft);
  madeInVain(draft);
  return {
    ledger: draft.ledger,
    parts,
    gluedPanels,
    cleats,
    joinedBlanks,
    splines,
    joints: draft.joints,
    fasteners: draft.fasteners,
    pegs: draft.pegs,
    openings: draft.openings,
    surfaces: draft.surfaces,
    drawers: draft.drawers,
    lids: draft.lids,
    scribedTops: draft.scribedTops,
    pulls: draft.pulls,
    levellers: draft.levellers,
    doors: draft.doors,
    pinned: draft.pinned,
    sliding: draft.sliding,
    fits,
    overall,
    sides: made.map(({ frame, panels: { left, right } }) => ({
      record: frame.box.id,
      left: left.id,
      right: right.id,
    })),
    joinery: cases.all.map((c) => c.frame.joinery),
    dimensions: draft.dimensions,
    snags: draft.snags.map((snag) => inShopUnits(snag, job.shop)),
  };
}

/** A blank with the sizes it is cut to: as long as its parts, and as wide as both with two kerfs between; what is made stays as it is. */
function cutBlank(
  draft: Draft,
  joined: JoinedBlank<DraftPart>,
  parts: readonly Part[],
  printed: PrintedSizes,
): JoinedBlank {
  const l = draft.ledger;
  const [blank] = inOrderOfMarks([joined.blank], printed);
  const [near, far] = joined.parts.map((id) => parts.find((p) => p.id === id)!.cut);
  const length =
    draft.made(joined.blank, 'length') ?? l.greatest('as long as either part', near!.length, far!.length);
  const width =
    draft.made(joined.blank, 'width') ??
    l.sum('both parts, and what parting them takes', near!.width, twoKerfs(l, draft.job.shop), far!.width);
  return { ...joined, blank: { ...blank!, cut: { length, width } } };
}

function inOrderOfMarks(parts: readonly DraftPart[], printed: PrintedSizes): readonly Part[] {
  return parts
    .map((part) => ({ part, made: finished(part, printed.of(part)) }))
    .sort((a, b) => a.part.mark.charCodeAt(0) - b.part.mark.charCodeAt(0) || a.part.nth - b.part.nth)
    .map(({ made }) => made);
}

/** A part as it leaves the room: with its printed sizes, and without what only serves the draft. */
function finished(part: DraftPart, { cut, fitted }: Pick<Part, 'cut' | 'fitted'>): Part {
  // Each field by name: to copy all but a few took longer than all sorting. The type asks for every one of them.
  const made: { readonly [K in keyof Required<Part>]: Part[K] } = {
    cut,
    fitted,
    id: part.id,
    record: part.record,
    role: part.role,
    name: part.name,
    mark: part.mark,
    lot: part.lot,
    form: part.form,
    length: part.length,
    width: part.width,
    thickness: part.thickness,
    rough: part.rough,
    cutLater: part.cutLater,
    grain: part.grain,
    place: part.place,
    features: part.features,
    hand: part.hand,
    between: part.between,
    joins: part.joins,
    strip: part.strip,
  };
  return made;
}

/** Says which parts would stand in the same place. */
function sameSpace(draft: Draft): void {
  // The slopes of a cleat lie on one another.
  const mitred = new Set([
    ...draft.joints.filter((j) => j.kind === 'mitre').map((j) => pairKey(j.part, j.mate)),
    ...draft.cleats.map((c) => pairKey(c.onCase, c.onWall)),
  ]);
  for (const [a, b] of partsInTheSameSpace(draft.ledger, draft.parts, mitred))
    draft.snags.push({
      code: 'parts.same-space',
      level: 'stop',
      where: { path: `design/records/${b.record}`, part: b.id, record: b.record },
      sentence: `The ${a.name} and the ${b.name} would stand in the same place.`,
      cures: [{ says: `Move one of them: see “${b.record}”.` }, ...roomForButton(a, b)],
    });
}

/** What stands close under a top leaves no room for its buttons, and need not move. */
function roomForButton(...pair: readonly Pick<DraftPart, 'role' | 'record'>[]): readonly Cure[] {
  const button = pair.find((p) => p.role.startsWith('button:'));
  return button ? [slotsInstead(button.record)] : [];
}

/** A piece larger than the place it is meant for. */
function checkSpace(draft: Draft): void {
  const { piece } = draft;
  const wanted = [
    ['width', 'spaceWidth', 'wide'],
    ['height', 'spaceHeight', 'high'],
    ['depth', 'spaceDepth', 'deep'],
  ] as const;
  for (const [size, space, word] of wanted) {
    const typed = piece[space];
    if (typed === undefined) continue;
    const free = draft.ledger.ticks(draft.field(piece, space));
    const asked = draft.ledger.ticks(draft.field(piece, size));
    if (asked <= free) continue;
    draft.stop(
      'piece.too-large-for-its-place',
      piece,
      size,
      `The piece is ${piece[size]} ${word}, but its place only ${typed}.`,
      {
        says: `Make it at most ${typed} ${word}.`,
        edits: [{ record: piece.id, field: size, value: typed }],
      },
    );
  }
}
