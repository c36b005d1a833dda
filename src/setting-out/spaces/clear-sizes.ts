import { type ClearSize, type RecordOf, readOpeningSize } from '../../job/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { CaseFrame } from '../case/frame-of-case.ts';
import type { Draft } from '../draft.ts';
import { shareOut } from './shared-out.ts';

/**
 * The clear sizes of a case's openings, each worked out when it is first asked for, so that a formula anywhere in the
 * design may use any of them.
 */
export class ClearSizes {
  private readonly draft: Draft;
  private readonly frame: CaseFrame;
  private readonly splits = new Map<string, readonly Traced[] | undefined>();

  constructor(draft: Draft, frame: CaseFrame) {
    this.draft = draft;
    this.frame = frame;
  }

  /** A clear size of an opening; nothing where its split doesn't come out (a stop says so). */
  of(id: string, size: ClearSize): Traced {
    const { draft, frame } = this;
    const opening = draft.tree.get(id) as RecordOf<'opening'>;
    const parent = draft.tree.get(opening.parent)!;
    if (parent.kind !== 'opening')
      return { width: frame.insideWidth, height: frame.insideHeight, depth: frame.insideDepth }[size];
    if (size !== splitSize(parent)) return this.of(parent.id, size);
    // A fixed size is its own: another that rests on it must not wait for the whole split.
    const own = this.own(opening, size);
    if (own !== undefined) return own;
    const place = draft.tree.childrenOf(parent.id, 'opening').indexOf(opening);
    return this.parted(parent.id)?.[place] ?? draft.nothing;
  }

  /** What an opening measures, or the size that it was given; undefined where it takes a share. */
  private own(opening: RecordOf<'opening'>, size: ClearSize): Traced | undefined {
    return (
      this.draft.measured(`${opening.id}.${size}`) ??
      (isFixed(opening) ? this.draft.field(opening, 'size') : undefined)
    );
  }

  /** The sizes of a split's openings along the split; undefined where they don't come out. */
  parted(id: string): readonly Traced[] | undefined {
    if (!this.splits.has(id)) this.splits.set(id, this.part(this.draft.tree.get(id) as RecordOf<'opening'>));
    return this.splits.get(id);
  }

  /** Each opening's size along the split: as measured, fixed ones as typed, the rest by shares of what is left. */
  private part(split: RecordOf<'opening'>): readonly Traced[] | undefined {
    const { draft, frame } = this;
    const openings = draft.tree.childrenOf(split.id, 'opening');
    const named = draft.tree.childrenOf(split.id, 'divider');
    const dividers = openings
      .slice(1)
      .map((_, i) => draft.thickness(draft.lot(named[i]?.board ?? frame.box.board)));
    const total = this.of(split.id, splitSize(split)!);
    const claims = openings.map((o) => ({
      asked: readOpeningSize(o.size ?? 'equal')!,
      fixed: this.own(o, splitSize(split)!),
    }));
    const shared = shareOut(draft, WORDS, total, dividers, claims);
    if ('sizes' in shared) return shared.sizes;
    if (shared.wrong === 'does-not-add-up')
      draft.stop(
        'openings.do-not-add-up',
        split,
        'split',
        `The openings of “${split.id}” are all of a fixed size or measured, and ${shared.left > 0 ? 'leave' : 'lack'} ${toMm(Math.abs(shared.left))} mm.`,
        {
          says: 'Let one of them be “equal”, and measure all but that one.',
          edits: [{ record: openings.at(-1)!.id, field: 'size', value: 'equal' }],
        },
      );
    else
      draft.stop(
        'openings.no-room',
        split,
        'split',
        `The dividers and fixed sizes of “${split.id}” leave no room for its other openings.`,
        { says: 'Make the piece larger, a fixed opening smaller, or have fewer openings.' },
      );
    return undefined;
  }
}

const WORDS = {
  clear: 'clear size to share among the openings',
  share: 'an equal share of the clear size',
  uneven: 'its share of the clear size',
} as const;

/** Which clear size a split divides. */
function splitSize(split: RecordOf<'opening'>): ClearSize | undefined {
  const sizes = { across: 'width', down: 'height', back: 'depth' } as const;
  return split.split && sizes[split.split];
}

function isFixed(opening: RecordOf<'opening'>): boolean {
  return 'fixed' in (readOpeningSize(opening.size ?? 'equal') ?? {});
}
