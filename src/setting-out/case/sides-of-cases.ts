import type { Draft, DraftPart } from '../draft.ts';
import { ownSides, sideDepth } from './case-panels.ts';
import type { CaseFrame } from './frame-of-case.ts';
import { type Hand, servesCase } from './shared-sides.ts';

const HANDS: readonly Hand[] = ['left', 'right'];
const OTHER = { left: 'right', right: 'left' } as const;

/** The sides of all cases, made before anything stands between them: a case may close on its neighbour’s. */
export class SidesOfCases {
  private readonly draft: Draft;
  private readonly own: ReadonlyMap<string, Readonly<Partial<Record<Hand, DraftPart>>>>;

  constructor(draft: Draft, frames: readonly CaseFrame[]) {
    this.draft = draft;
    this.own = new Map(frames.map((frame) => [frame.box.id, ownSides(draft, frame)]));
  }

  /** Both sides of a case, its own or a neighbour’s; undefined where one can’t serve it, which a stop says. */
  of(frame: CaseFrame): Readonly<Record<Hand, DraftPart>> | undefined {
    const { draft } = this;
    const rear = draft.ledger.sum('back edge of its sides', frame.panelFront, sideDepth(draft, frame));
    const [left, right] = HANDS.map((hand) => {
      const { of } = frame.sides[hand];
      if (of === frame.box) return this.own.get(of.id)?.[hand];
      const side = this.own.get(of.id)?.[OTHER[hand]];
      return side && servesCase(draft, frame, side, hand, rear) ? side : undefined;
    });
    return left && right ? { left, right } : undefined;
  }
}
