import { SETTING_OUT } from '../../materials/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { Draft, DraftPart, Triple } from '../draft.ts';
import { mitredTip } from '../edging/mitred-tip.ts';
import { cornersLetIn } from '../joints/let-in.ts';
import { axisOf, type Direction } from '../place.ts';
import { isMitred, runsThrough } from './corners.ts';
import type { CaseFrame } from './frame-of-case.ts';

/** Where the ends of a case’s panels show: of a bottom or a lid that runs through, or above, of sides beside a lid. */
export type EndSide = 'left' | 'right' | 'upper';

/** How a strip lies on an end: its show face looks outward; going round the front, one ends where the next begins. */
const LIES: Readonly<
  Record<EndSide, { readonly length: Direction; readonly width: Direction; readonly front: 'start' | 'end' }>
> = {
  left: { length: '-y', width: '+z', front: 'end' },
  right: { length: '+y', width: '+z', front: 'start' },
  upper: { length: '+y', width: '-x', front: 'start' },
};

/** True where a case’s edging covers the front edges of its panels. */
export function edgesFront({ edging }: Pick<CaseFrame, 'edging'>): boolean {
  return edging !== undefined && (edging.sides?.includes('front') ?? true);
}

/** The sides on which ends are edged, of those that were asked for; on any other no end shows, or none can be edged. */
export function edgedEnds(draft: Draft, frame: CaseFrame): ReadonlySet<EndSide> {
  const asked = askedOf(frame);
  if (asked.length === 0 || isMitred(frame) || cornersLetIn(frame)) return new Set();
  return new Set(asked.filter((side) => endShows(draft, frame, side)));
}

/** What is taken off a panel’s end for its strip; nothing where that isn’t edged. */
export function edgedBy(draft: Draft, frame: CaseFrame, side: EndSide): Traced {
  return edgedEnds(draft, frame).has(side) ? draft.thickness(draft.lot(frame.edging!.strip)) : draft.nothing;
}

function askedOf({ edging }: CaseFrame): readonly EndSide[] {
  return (edging?.sides ?? []).filter((s): s is EndSide => s === 'left' || s === 'right' || s === 'upper');
}

function endShows(draft: Draft, frame: CaseFrame, side: EndSide): boolean {
  const through = runsThrough(frame);
  if (side !== 'upper')
    return (
      (through.bottom[side] || through.lid[side]) && draft.tree.neighbourOf(frame.box, side) === undefined
    );
  const group = draft.tree.get(frame.box.parent);
  const covered = group?.kind === 'group' && (group.lay !== 'across' || draft.tree.childOf(group.id, 'top'));
  const shared = frame.sides.left.shared || frame.sides.right.shared;
  // A back let in comes from above, or stands in the rabbets of the sides there.
  const letIn = frame.back !== undefined && frame.back.fitting !== 'applied';
  return (
    frame.lidded && !frame.top && !(through.lid.left && through.lid.right) && !covered && !shared && !letIn
  );
}

/** Says why ends that were asked for aren’t edged, or by what strips they can’t be. */
export function tellEnds(draft: Draft, frame: CaseFrame): void {
  const asked = askedOf(frame);
  const record = frame.edging;
  if (!record || asked.length === 0) return;
  const l = draft.ledger;
  const thick = draft.thickness(draft.lot(record.strip));
  const say = (code: string, sentence: string, says: string) =>
    draft.stop(code, record, 'sides', sentence, { says });
  if (cornersLetIn(frame))
    say(
      'edging.ends-let-in',
      `“${record.id}” is to cover ends of panels, but these are let into one another at the corners of “${frame.box.id}”.`,
      'Let “joints” be screws, dowels or biscuits, or edge the front alone.',
    );
  else
    for (const side of asked)
      if (isMitred(frame) || !endShows(draft, frame, side))
        say(
          'edging.no-end-shows',
          side === 'upper'
            ? `“${record.id}” is to cover upper ends, but no side of “${frame.box.id}” shows its end there, or a back is let into it.`
            : `“${record.id}” is to cover ${side} ends, but no panel of “${frame.box.id}” shows its end there.`,
          side === 'upper'
            ? 'Leave “upper” out of “sides”, or let the case have a lid between its sides, and a back that is applied.'
            : `Leave “${side}” out of “sides”, or let the lid lie “over” the sides, or the bottom “under” them.`,
        );
  const [share, of] = SETTING_OUT.endEdging.of;
  if (of * l.ticks(thick) > share * l.ticks(frame.board))
    say(
      'edging.end-too-thick',
      `Strips “${record.strip}” are ${toMm(l.ticks(thick))} mm thick: over an end they take the wood that the screws of the corner stand in.`,
      `Use veneer tape, or strips of at most ${Math.floor((toMm(l.ticks(frame.board)) * share * 10) / of) / 10} mm.`,
    );
}

/** The ends of one panel that are edged. */
export function endsOf(draft: Draft, frame: CaseFrame, panel: DraftPart): readonly EndSide[] {
  const ends = edgedEnds(draft, frame);
  const through = runsThrough(frame);
  const upright = axisOf(panel.place.length).axis === 2;
  if (upright) {
    const hand = panel.role === 'left-side' ? 'left' : panel.role === 'right-side' ? 'right' : undefined;
    return hand && ends.has('upper') && !through.lid[hand] ? ['upper'] : [];
  }
  if (panel.role !== 'bottom' && panel.role !== 'lid') return [];
  const runs = through[panel.role];
  return (['left', 'right'] as const).filter((side) => runs[side] && ends.has(side));
}

/** A strip on one end of a panel, mitred with the one at its front; tape there ends at the panel’s front, to be covered. */
export function endStrip(draft: Draft, frame: CaseFrame, panel: DraftPart, side: EndSide): DraftPart {
  const l = draft.ledger;
  const { edging, edgingThickness } = frame;
  const lot = draft.lot(edging!.strip);
  const thickness = draft.thickness(lot);
  const mitred = edgesFront(frame) && lot.tape === undefined;
  const { min, max } = panel.box;
  const front = mitred ? l.less('tip of the mitre, before the panel', min[1], edgingThickness) : min[1];
  const long = l.less('length of the strip on the end', max[1], front);
  const { length, width, front: tip } = LIES[side];
  const at: Triple =
    side === 'upper'
      ? [min[0], front, max[2]]
      : [side === 'left' ? l.less('left of the strip', min[0], thickness) : max[0], front, min[2]];
  const allowance = l.row(mitred ? SETTING_OUT.mitreAllowance : SETTING_OUT.edgingAllowance);
  const strip = draft.panel({
    record: edging!.id,
    role: `${side}-on:${panel.id}`,
    name: `${side} edging for ${panel.name}`,
    family: 'edging',
    lot,
    at,
    size: side === 'upper' ? [panel.thickness, long, thickness] : [thickness, long, panel.thickness],
    length,
    width,
    rough: {
      length: l.sum('length to cut before trimming', long, allowance, allowance),
      width: draft.typed(`shop/rack/lots/${lot.id}/width`, lot.width!),
      thickness,
    },
  });
  if (mitred) mitredTip(strip, tip, 'front');
  return strip;
}
