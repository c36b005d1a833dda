import type { RecordOf } from '../../job/index.ts';
import { DRAWERS, SETTING_OUT } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart, Triple } from '../draft.ts';
import { depthIn } from '../joints/let-in.ts';
import { jointOf } from './wooden-choice.ts';

/** What a drawer's box is made to: its outer sizes and place, and how it is joined. */
export interface BoxSpec {
  readonly record: RecordOf<'drawers'>;
  /** `` or `:2`, and `drawer 2 of tools`. */
  readonly suffix: string;
  readonly name: string;
  readonly at: Triple;
  readonly size: Triple;
}

/** The box of a drawer, with its channels cut. */
export interface DrawerBox {
  readonly left: DraftPart;
  readonly right: DraftPart;
  readonly front: DraftPart;
  readonly back: DraftPart;
  readonly bottom: DraftPart;
  readonly joint: NonNullable<RecordOf<'drawers'>['joint']>;
  readonly bottomFitting: NonNullable<RecordOf<'drawers'>['bottomFitting']>;
  /** How deep its ends stand in its sides, and its bottom in its grooves; absent where they only meet. */
  readonly deep: Traced | undefined;
  readonly groove: Traced | undefined;
  readonly inside: { readonly width: Traced; readonly depth: Traced };
}

/** Sides that run from front to back, ends between them, a bottom in grooves or laid under. */
export function drawerBox(draft: Draft, spec: BoxSpec): DrawerBox {
  const l = draft.ledger;
  const { record, at, size } = spec;
  const lot = draft.lot(record.board);
  const board = draft.thickness(lot);
  const thin = draft.thickness(draft.lot(record.bottomBoard));
  const joint = jointOf(record);
  const bottomFitting = record.bottomFitting ?? 'groove';
  const applied = bottomFitting === 'applied';
  const foot = applied ? l.sum('lower edge of the sides, on the bottom', at[2], thin) : at[2];
  const high = applied ? l.less('height of the sides, on the bottom', size[2], thin) : size[2];
  const deep =
    joint === 'rabbet' || joint === 'dado'
      ? depthIn(
          draft,
          `depth of the ${joint} at the corner`,
          board,
          joint === 'rabbet' ? SETTING_OUT.cornerRabbet : SETTING_OUT.dadoDepth,
        )
      : undefined;
  const rear = l.sum('back of the box', at[1], size[1]);
  const right = l.sum('right side of the box', at[0], size[0]);
  const part = (
    role: string,
    what: string,
    family: 'drawer side' | 'drawer end',
    corner: Triple,
    extent: Triple,
    length: '+x' | '-x' | '+y' | '-y',
    between = false,
  ) =>
    draft.panel({
      record: record.id,
      role: `${role}${spec.suffix}`,
      name: `${what} of ${spec.name}`,
      family,
      lot,
      at: corner,
      size: extent,
      length,
      width: '+z',
      between,
    });
  const sideSize: Triple = [board, size[1], high];
  const left = part('left', 'left side', 'drawer side', [at[0], at[1], foot], sideSize, '-y');
  const rightSide = part(
    'right',
    'right side',
    'drawer side',
    [l.less('inner face of the right side', right, board), at[1], foot],
    sideSize,
    '+y',
  );
  const innerLeft = l.sum('inner face of the left side', at[0], board);
  const inner = l.less('clear width of the box', size[0], board, board);
  const endLeft =
    deep === undefined ? innerLeft : l.less('where the end begins, inside its side', innerLeft, deep);
  const endLong =
    deep === undefined ? inner : l.sum('clear width and what goes into the sides', inner, deep, deep);
  const front = part(
    'box-front',
    'box front',
    'drawer end',
    [endLeft, at[1], foot],
    [endLong, board, high],
    '+x',
    true,
  );
  const lift = applied ? undefined : bottomPlace(draft);
  const backFoot = lift ? l.sum('lower edge of the back, on the bottom', foot, lift.inset, thin) : foot;
  const backIn = joint === 'dado' ? l.row(DRAWERS.backIn) : undefined;
  const backAt = l.less('front of the back', rear, board, ...(backIn === undefined ? [] : [backIn]));
  const back = part(
    'box-back',
    'box back',
    'drawer end',
    [endLeft, backAt, backFoot],
    [endLong, board, lift ? l.less('height of the back, above the bottom', high, lift.inset, thin) : high],
    '-x',
    true,
  );
  const insideDepth = l.less('clear depth of the box', backAt, at[1], board);
  const box = {
    left,
    right: rightSide,
    front,
    back,
    joint,
    bottomFitting,
    deep,
    inside: { width: inner, depth: insideDepth },
  };
  corners(draft, box, joint, deep, backIn);
  const common = {
    record: record.id,
    role: `bottom${spec.suffix}`,
    name: `bottom of ${spec.name}`,
    family: 'drawer bottom' as const,
    lot: draft.lot(record.bottomBoard),
    length: '+x' as const,
    width: '+y' as const,
  };
  if (!lift) {
    const bottom = draft.panel({ ...common, at, size: [size[0], size[1], thin] });
    return { ...box, bottom, groove: undefined };
  }
  const groove = depthIn(draft, 'depth of the groove for the bottom', board, SETTING_OUT.dadoDepth);
  for (const [p, edge] of [
    [left, 'left'],
    [rightSide, 'right'],
    [front, 'front'],
  ] as const)
    p.features.push({
      kind: 'groove',
      id: `${p.id}#bottom`,
      purpose: `for the bottom of ${spec.name}`,
      face: 'under',
      edge: 'near',
      inset: lift.inset,
      width: l.sum(
        'width of the groove: the bottom, and a little to slide in',
        thin,
        l.row(SETTING_OUT.dadoClear),
      ),
      depth: groove,
      from: draft.nothing,
      to: edge === 'front' ? front.length : p.length,
    });
  const clear = l.row(DRAWERS.bottomClear);
  const bottom = draft.panel({
    at: [
      l.sum(
        'left edge of the bottom, clear of its groove',
        l.less('floor of the left groove', innerLeft, groove),
        clear,
      ),
      l.sum(
        'front edge of the bottom, clear of its groove',
        l.sum('floor of the front groove', at[1], l.less('wood before the groove', board, groove)),
        clear,
      ),
      l.sum('underside of the bottom', foot, lift.inset),
    ],
    size: [
      l.less(
        'width of the bottom, clear of both grooves',
        l.sum('width between the grooves', inner, groove, groove),
        clear,
        clear,
      ),
      l.less(
        'depth of the bottom, to the back of the box’s back',
        l.sum('from the front groove to the back’s rear face', insideDepth, groove, board),
        clear,
      ),
      thin,
    ],
    between: true,
    ...common,
  });
  return { bottom, groove, ...box };
}

/** How far above the lower edge the bottom lies. */
export function bottomPlace(draft: Draft): { readonly inset: Traced } {
  const l = draft.ledger;
  return {
    inset: l.round(
      'as fine as the router is set',
      l.row(DRAWERS.bottomUp),
      draft.stepOf('router'),
      'nearest',
    ),
  };
}

/** Rabbets at the front corners, rabbets or dados at the back ones. */
function corners(
  draft: Draft,
  { left, right, front, back }: Pick<DrawerBox, 'left' | 'right' | 'front' | 'back'>,
  joint: DrawerBox['joint'],
  deep: Traced | undefined,
  backIn: Traced | undefined,
): void {
  if (deep === undefined) return;
  const l = draft.ledger;
  for (const side of [left, right]) {
    const [frontEnd, backEnd] = side === left ? (['end', 'start'] as const) : (['start', 'end'] as const);
    const common = (end: DraftPart) => ({
      id: `${side.id}#${end.role}`,
      purpose: `for the ${end.name}`,
      face: 'under' as const,
      depth: deep,
      from: draft.nothing,
      to: side.width,
    });
    side.features.push({ kind: 'rabbet', ...common(front), edge: frontEnd, width: front.thickness });
    if (joint === 'dado' && backIn !== undefined)
      side.features.push({
        kind: 'groove',
        ...common(back),
        edge: backEnd,
        inset: backIn,
        width: l.sum(
          'width of the dado: what goes in, and a little for glue',
          back.thickness,
          l.row(SETTING_OUT.dadoClear),
        ),
      });
    else side.features.push({ kind: 'rabbet', ...common(back), edge: backEnd, width: back.thickness });
  }
}
