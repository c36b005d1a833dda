import type { Fixing, FixingOf } from '../../job/index.ts';
import { BISCUITS, DOWELS, SETTING_OUT } from '../../materials/index.ts';
import type { RatioRow, Traced } from '../../measure/index.ts';
import type { Draft } from '../draft.ts';

/** What a dowel or biscuit is chosen by: the thinner of the boards, and the wood it finds in the one whose face it goes into. */
export interface PegRoom {
  readonly edge: Traced;
  readonly wood: Traced;
  /** How long the joint is. */
  readonly joint: Traced;
}

/** A fixing that suits, and the holes or slots for it. */
export interface ChosenPeg {
  readonly kind: 'dowel' | 'biscuit';
  readonly fixing: string;
  readonly across: Traced;
  readonly wide: Traced;
  /** How deep the holes in the edge and in the face are. */
  readonly deep: readonly [edge: Traced, face: Traced];
  /** How deep it stands in either. */
  readonly holds: readonly [edge: Traced, face: Traced];
}

function ofRack<K extends Fixing['kind']>(draft: Draft, kind: K): readonly FixingOf<K>[] {
  return (draft.job.shop.rack.fixings ?? []).filter((f): f is FixingOf<K> => f.kind === kind);
}

function isOwned({ have }: Fixing): boolean {
  return (have ?? 0) > 0;
}

/** True where a length is at most a share of another. */
function within(draft: Draft, part: Traced, whole: Traced, { of: [over, under] }: RatioRow): boolean {
  return under * draft.ledger.ticks(part) <= over * draft.ledger.ticks(whole);
}

/**
 * The dowel for a board's end on another's face: between a third and half as thick as the thinner board, as thick and then as
 * long as may be, those on the rack before those to buy. In the face its hole leaves wood behind, and as much at either
 * end of the joint; what is left of the dowel goes into the end.
 */
export function chooseDowel(draft: Draft, { edge, wood, joint }: PegRoom): ChosenPeg | undefined {
  const l = draft.ledger;
  const t = (x: Traced) => l.ticks(x);
  const extra = l.row(DOWELS.extra);
  const fitting = ofRack(draft, 'dowel').flatMap((fixing) => {
    const size = (field: 'diameter' | 'length') =>
      draft.typed(`shop/rack/fixings/${fixing.id}/${field}`, fixing[field]);
    const [wide, across] = [size('diameter'), size('length')];
    if (!within(draft, wide, edge, DOWELS.thickest) || 3 * t(wide) < t(edge)) return [];
    if (t(joint) < t(wide) + 2 * t(l.row(DOWELS.skin))) return [];
    const half = l.ratio('half of the dowel', across, SETTING_OUT.half);
    const face = l.round(
      'as fine as the drill is set',
      l.least(
        'depth of the hole in the face',
        l.sum('half of the dowel, and room for glue', half, extra),
        l.less('as deep as the wood lets it', wood, l.row(DOWELS.skin)),
      ),
      draft.stepOf('drill'),
      'down',
    );
    const inFace = l.less('how deep it stands in the face', face, extra);
    if (t(inFace) < t(wide)) return [];
    const inEdge = l.less('how deep it stands in the end', across, inFace);
    const deep = l.round(
      'as fine as the drill is set',
      l.sum('depth of the hole in the end, with room for glue', inEdge, extra),
      draft.stepOf('drill'),
      'up',
    );
    return [{ fixing, wide, across, deep: [deep, face] as const, holds: [inEdge, inFace] as const }];
  });
  fitting.sort(
    (a, b) =>
      Number(isOwned(b.fixing)) - Number(isOwned(a.fixing)) ||
      t(b.wide) - t(a.wide) ||
      t(b.across) - t(a.across) ||
      (a.fixing.id < b.fixing.id ? -1 : 1),
  );
  const [best] = fitting;
  return best && { ...best, kind: 'dowel', fixing: best.fixing.id };
}

/** The joiner's cutter: how wide its slots are, and how wide it is across. */
export function cutterOf(draft: Draft): { readonly kerf: Traced; readonly cutter: Traced } {
  const joiner = draft.job.shop.tools.find((t) => t.kind === 'biscuit-joiner');
  if (joiner?.kind !== 'biscuit-joiner')
    return { kerf: draft.ledger.row(BISCUITS.kerf), cutter: draft.ledger.row(BISCUITS.cutter) };
  const size = (field: 'kerf' | 'cutter') => draft.typed(`shop/tools/${joiner.id}/${field}`, joiner[field]);
  return { kerf: size('kerf'), cutter: size('cutter') };
}

/** How far a slot of a depth reaches to either side of its middle, at the surface, in ticks. Geometry of a circle. */
export function halfSlot(draft: Draft, deep: Traced): number {
  const radius = draft.ledger.ticks(cutterOf(draft).cutter) / 2;
  const short = radius - draft.ledger.ticks(deep);
  return Math.ceil(Math.sqrt(Math.max(0, radius * radius - short * short)));
}

/**
 * The biscuit for a board's end on another's face: as thick as the joiner's slot, not too deep for the wood, and the
 * largest that the joint has room for; those on the rack before those to buy.
 */
export function chooseBiscuit(draft: Draft, { edge, wood, joint }: PegRoom): ChosenPeg | undefined {
  const l = draft.ledger;
  const t = (x: Traced) => l.ticks(x);
  const { kerf } = cutterOf(draft);
  if (!within(draft, kerf, edge, BISCUITS.edge)) return undefined;
  const fitting = ofRack(draft, 'biscuit').flatMap((fixing) => {
    const size = (field: 'length' | 'width' | 'thickness') =>
      draft.typed(`shop/rack/fixings/${fixing.id}/${field}`, fixing[field]);
    const [wide, across, thick] = [size('length'), size('width'), size('thickness')];
    const play = t(kerf) - t(thick);
    if (play < 0 || play > t(l.row(BISCUITS.play))) return [];
    const half = l.ratio('half of the biscuit', across, SETTING_OUT.half);
    const deep = l.round(
      'as fine as the joiner is set',
      l.sum('depth of the slot, with room for glue', half, l.row(BISCUITS.extra)),
      draft.stepOf('biscuit-joiner'),
      'up',
    );
    const skin = t(l.row(BISCUITS.skin));
    if (t(wood) - t(deep) < skin || 2 * (halfSlot(draft, deep) + skin) > t(joint)) return [];
    return [{ fixing, wide, across, deep: [deep, deep] as const, holds: [half, half] as const }];
  });
  fitting.sort(
    (a, b) =>
      Number(isOwned(b.fixing)) - Number(isOwned(a.fixing)) ||
      t(b.across) - t(a.across) ||
      t(b.wide) - t(a.wide) ||
      (a.fixing.id < b.fixing.id ? -1 : 1),
  );
  const [best] = fitting;
  return best && { ...best, kind: 'biscuit', fixing: best.fixing.id };
}
