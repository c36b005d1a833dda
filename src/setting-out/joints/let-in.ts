import { SETTING_OUT } from '../../materials/index.ts';
import type { RatioRow, Traced } from '../../measure/index.ts';
import type { CaseFrame } from '../case/frame-of-case.ts';
import type { Draft, DraftPart, Tongues, Triple } from '../draft.ts';
import { becauseOf } from './joinery.ts';

/** Ways of joining that let shelves and dividers in. */
const DADOS: ReadonlySet<CaseFrame['joints']> = new Set(['dado', 'stopped-dado', 'tongue']);

/** Ways of joining that let the bottom and the lid into the sides. */
const LET_IN: ReadonlySet<CaseFrame['joints']> = new Set([...DADOS, 'rabbet']);

/** True for a case whose bottom and lid are let into its sides, or its sides into them. */
export function cornersLetIn({ joints }: Pick<CaseFrame, 'joints'>): boolean {
  return LET_IN.has(joints);
}

/** How deep a panel goes into a face: a third of the board there, on what the router can be set to. */
export function intoDado(draft: Draft, frame: CaseFrame, mate: DraftPart | undefined): Traced | undefined {
  if (!mate || !DADOS.has(frame.joints)) return undefined;
  return depthIn(draft, becauseOf('depth of the dado', frame.joinery), mate.thickness, SETTING_OUT.dadoDepth);
}

/** How deep the bottom or the lid goes into the end of a side, or a side into what runs through: into a board so thick. */
export function intoCorner(
  draft: Draft,
  frame: Pick<CaseFrame, 'joints' | 'joinery'>,
  board: Traced,
  shared = false,
): Traced | undefined {
  if (!LET_IN.has(frame.joints)) return undefined;
  if (frame.joints === 'tongue')
    return depthIn(draft, becauseOf('depth of the dado', frame.joinery), board, SETTING_OUT.dadoDepth);
  // From both faces of a shared side: a third of it is left between.
  return depthIn(
    draft,
    becauseOf('depth of the rabbet at the corner', frame.joinery),
    board,
    shared ? SETTING_OUT.dadoDepth : SETTING_OUT.cornerRabbet,
  );
}

/** A depth as a share of a board's thickness, rounded down to what the router can be set to. */
export function depthIn(draft: Draft, reason: string, board: Traced, share: RatioRow): Traced {
  const l = draft.ledger;
  return l.round(
    'as fine as the router is set',
    l.ratio(reason, board, share),
    draft.stepOf('router'),
    'down',
  );
}

/** A box between two faces, made longer by what goes into each of them. */
export function lengthened(
  draft: Draft,
  at: Triple,
  size: Triple,
  axis: 0 | 2,
  { start, end }: Tongues,
): { readonly at: Triple; readonly size: Triple } {
  const l = draft.ledger;
  const more = [start, end].filter((t) => t !== undefined);
  if (more.length === 0) return { at, size };
  const low =
    start === undefined ? at[axis] : l.less('where the panel begins, inside its dado', at[axis], start);
  const long = l.sum('clear size and what goes into the dados', size[axis], ...more);
  return axis === 0
    ? { at: [low, at[1], at[2]], size: [long, size[1], size[2]] }
    : { at: [at[0], at[1], low], size: [size[0], size[1], long] };
}
