import type { Level } from './snag.ts';

/** The room that raises a snag. */
export type SnagRoom = 'job' | 'setting-out' | 'breakdown' | 'build' | 'dry-fit' | 'checks' | 'app';

/** One kind of snag: its code, who raises it, how bad it can be, and what it means. */
export interface SnagKind {
  readonly code: string;
  readonly room: SnagRoom;
  /** More than one where it depends on how far off something is. */
  readonly levels: readonly Level[];
  readonly means: string;
}

type Row = readonly [code: string, means: string, levels?: readonly Level[]];

function raisedBy(room: SnagRoom, rows: readonly Row[]): readonly SnagKind[] {
  return rows.map(([code, means, levels = ['stop']]) => ({ code, room, levels, means }));
}

const MIND: readonly Level[] = ['mind'];
const NOTE: readonly Level[] = ['note'];
const STOP_OR_MIND: readonly Level[] = ['stop', 'mind'];

/** Every snag there is. A code is never given another meaning; programs and tests go by it. */
export const SNAG_KINDS: readonly SnagKind[] = [
  ...raisedBy('job', [
    ['document.not-json', 'The file is not JSON.'],
    ['document.newer-version', 'The file was written by a newer program.'],
    ['document.unknown-field', 'A field that is known nowhere there.'],
    ['document.missing-field', 'A field that must be there is not.'],
    ['document.wrong-value', 'A value of the wrong kind, or none of those that are known.'],
    ['document.unreadable-value', 'A length, mass or id that cannot be read.'],
    ['document.too-long', 'A length beyond what can be reckoned with.'],
    ['document.repeated-id', 'One id for two things.'],
    ['document.no-such-record', 'A record belongs to one that is not there.'],
    ['document.circular', 'A record belongs, by way of others, to itself.'],
    ['document.no-such-lot', 'A part is to be made of a lot that the rack does not have.'],
    ['document.no-such-hinge', 'A door is to hang on a hinge that the rack does not have.'],
    ['document.no-such-screw', 'A hinge is fixed with a screw that the rack does not have.'],
    ['document.wrong-form', 'A sheet where strips are needed, or the other way round.'],
    ['design.one-piece', 'A design has one piece; this has none or several.'],
    ['design.no-case', 'The piece has no case.'],
    ['design.wrong-parent', 'A record belongs to one that cannot have it.'],
    ['design.too-many', 'More of a kind than there can be.'],
    ['design.too-many-openings', 'More openings than a split may have.'],
    ['design.not-split', 'An opening holds openings but is not split.'],
    ['design.split-of-one', 'An opening is split into fewer than two.'],
    ['design.shelf-in-split', 'A shelf belongs to an opening that is split.'],
    ['design.divider-count', 'Dividers and openings do not go together.'],
    ['design.shelf-at-and-count', 'Several shelves at one height.'],
    ['formula.no-such-name', 'A formula uses a name that nothing has.'],
    ['formula.name-taken', 'A named size is called by a word that formulas already know.'],
    ['formula.circular', 'Formulas rest on one another in a circle.'],
    ['doors.openings-apart', 'A door closes openings that are not neighbours.'],
    ['doors.over-one-opening', 'Two doors close one opening.'],
    ['edit.no-such-place', 'An edit of something that is not in the document.'],
  ]),
  ...raisedBy('setting-out', [
    ['formula.no-size', 'A formula comes to nothing, to less, or to more than is built.'],
    ['measured.no-such-dimension', 'A measured value of a dimension that is not there.'],
    ['measured.not-used', 'A measured value of a dimension that rests on another one to be measured.'],
    ['case.no-inside', 'Panels, overhang, base or top leave nothing inside the case.'],
    ['piece.too-large-for-its-place', 'The piece is larger than the place it is meant for.'],
    ['parts.same-space', 'Two parts would stand in the same place.'],
    ['openings.no-room', 'Dividers and fixed openings leave no room for the others.'],
    ['openings.do-not-add-up', 'Openings of fixed sizes leave or lack some of the width or height.'],
    ['shelves.no-room', 'Shelves do not fit in their opening.'],
    ['shelves.no-depth', 'A shelf is set back by more than its depth.'],
    ['back.no-lip', 'A groove for the back stands so near the back edge that no wood is left behind it.'],
    ['top.no-room', 'The edging of a top leaves no board between.'],
    ['top.edging-over-side', 'A side stands under the edging of the top, where screws find no board.'],
    ['base.no-room', 'A base is set back so far that its strips meet.'],
    ['base.under-side', 'A base stands under the sides, where it cannot be screwed.'],
    ['edging.too-narrow', 'Edging strips are narrower than their board is thick.'],
    ['pockets.no-room', 'Pocket holes would run right across a part.'],
    ['screws.none-fits', 'No pocket screw of the shop’s list fits a joint.'],
    ['screws.none-for-edge', 'No screw of the shop’s list fits a panel’s edge.'],
    ['screws.meet', 'Screws of two joints would meet.'],
    ['doors.no-room', 'Gaps leave nothing of a door, or a door fills the depth.'],
    ['hinges.none-suits', 'No hinge of the rack suits a door.'],
    ['hinges.wrong-kind', 'A door is to hang on a hinge that is made for another kind of door.'],
    ['hinges.cup-too-deep', 'The hole for a cup would come out of the door’s front.'],
    ['hinges.no-place', 'A hinge finds no place clear of shelves and screws.'],
    ['hinges.screw-too-long', 'The screw of a hinge would come out of the far side.'],
  ]),
  ...raisedBy('breakdown', [
    ['cut.not-an-object', 'Something else stands where an object should.'],
    ['cut.not-a-list', 'Something else stands where a list should.'],
    ['cut.not-a-number', 'Something else stands where a number should.'],
    ['cut.not-whole', 'A count that is not a whole number.'],
    ['cut.not-a-flag', 'Something else stands where true or false should.'],
    ['cut.not-a-name', 'An id that is not a text, or empty.'],
    ['cut.same-id', 'One id for two things.'],
    ['cut.missing-field', 'A field that must be there is not.'],
    ['cut.unknown-field', 'A field that is known nowhere there.'],
    ['cut.too-small', 'A number below the least.'],
    ['cut.too-large', 'A number above the most.'],
    ['cut.too-many', 'More entries than can be planned.'],
    ['cut.size-zero', 'A size that comes to nothing.'],
    ['cut.no-stock', 'A cut problem without stock.'],
    ['cut.mixed-dimensions', 'Some entries have a width and some have none.'],
    ['cut.all-trim', 'Trim takes away all of a stock.'],
    ['cut.cost-decimals', 'Costs with more decimals than can be added exactly.'],
    ['cut.rounded', 'A length was not a whole tick and was rounded.', NOTE],
  ]),
  ...raisedBy('build', [['tools.missing', 'An operation needs a tool that the shop does not have.']]),
  ...raisedBy('dry-fit', [
    ['dry-fit.workpiece-missing', 'A card speaks of a workpiece that is not there.'],
    ['dry-fit.cut-outside', 'A cut does not go through the workpiece.'],
    ['dry-fit.off-the-wood', 'A hole, pocket or rabbet is not on the wood.'],
    ['dry-fit.not-alone', 'A cut does not leave the pieces that its card names.'],
    ['dry-fit.in-the-way', 'Something stands where a part, a driver or a hand must go.'],
    ['dry-fit.no-hole', 'A screw has no hole to go through.'],
    ['dry-fit.no-screw', 'A hole was made for a screw, and no card drives one there.'],
    ['dry-fit.screw-misses', 'A screw misses the part it should hold.'],
    ['dry-fit.screw-comes-through', 'A screw comes out on the far side.'],
    ['dry-fit.screws-meet', 'Two screws meet.'],
    ['dry-fit.part-missing', 'A part of the drawing was never made.'],
    ['dry-fit.part-differs', 'A part comes out unlike the drawing.'],
    ['dry-fit.part-misplaced', 'A part does not stand where it was drawn.'],
    ['dry-fit.left-over', 'Something is left that is neither part nor promised.'],
  ]),
  ...raisedBy('checks', [
    ['joints.chosen', 'How the panels are joined was not asked for, and follows from the tools.', NOTE],
    ['stock.none-for-part', 'There is no stock, or not enough, for a part.'],
    ['breakdown.not-verified', 'A cut plan that the judge rejects; a fault of the program.'],
    ['stock.not-measured', 'A lot is reckoned at its nominal thickness.', NOTE],
    ['stock.to-buy', 'Sheets or strips to buy.', NOTE],
    ['screws.to-buy', 'Screws to buy.', NOTE],
    ['hinges.to-buy', 'Hinges to buy.', NOTE],
    ['hinges.too-few', 'A door has fewer hinges than its height and mass ask for.', MIND],
    ['hinges.door-too-heavy', 'A door is higher or heavier than hinges are usually given.', MIND],
    ['hinges.door-wide', 'A door is wider than it is high.', MIND],
    ['sag.beyond-limit', 'A shelf, bottom or top sags more than the standard for shelves lets it.'],
    ['sag.seen', 'A shelf, bottom or top will sag so far that the eye notices.', MIND],
    ['sag.stiffness-unknown', 'Sag was not reckoned, because no stiffness is known.', NOTE],
    ['screws.break-through', 'A screw comes out of the far face.'],
    ['screws.near-far-face', 'A screw ends too close to the far face.', MIND],
    ['screws.out-of-side', 'A screw comes out of a side of a part.'],
    ['screws.miss-part', 'A screw does not reach a part that it should join.'],
    ['screws.in-another-part', 'A screw runs into a part that it should not.'],
    ['screws.off-centre', 'A screw stands off the middle of a panel’s edge.', MIND],
    ['screws.too-thick-for-edge', 'A screw is thick enough to split a panel’s edge.', MIND],
    ['screws.near-end-of-edge', 'A screw stands close to the end of a panel’s edge.', MIND],
    ['screws.hold-too-little', 'The screws of a shelf hold less than it carries.', MIND],
    ['tipping.pull', 'The piece tips when someone pulls at its front.', STOP_OR_MIND],
    ['tipping.weight-in-front', 'The piece tips when someone leans on its front edge.', STOP_OR_MIND],
    ['tipping.tilt', 'The piece tips by itself on a slope.', STOP_OR_MIND],
    ['tipping.anchor', 'A reminder to fix the piece to the wall.', NOTE],
    ['tools.no-bit', 'A bit is lacking.'],
    ['tools.no-rail', 'Sheets are to be sawn, and there is no guide rail.', MIND],
    ['tools.rail-short', 'The guide rail is short for a cut.', STOP_OR_MIND],
    ['tools.saw-shallow', 'The saw does not reach through a board.'],
    ['tools.saw-shallow-tilted', 'The saw does not reach through a board with its blade tilted.'],
    ['tools.saw-reach-unknown', 'How deep the saw cuts with its blade tilted is not stated.', MIND],
    ['tools.mitre-saw-small', 'A piece is too large for the mitre saw.'],
    ['tools.clamps-short', 'The clamps are short for what is glued.', MIND],
    ['lifting.sheet', 'A sheet is heavier than the people of the shop can lift.', MIND],
    ['lifting.piece', 'The finished piece is heavier than the people of the shop can lift.', MIND],
  ]),
  ...raisedBy('app', [
    ['app.our-mistake', 'The program failed while it was setting out; nothing was changed.'],
  ]),
];
