import { type ClearSize, type RecordOf, readOpeningSize } from '../../job/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import { asAsked } from '../as-asked.ts';
import type { Draft } from '../draft.ts';
import { finishedThickness } from '../glued/panel-of-boards.ts';
import { ClearSizes } from '../spaces/clear-sizes.ts';
import { shareOut } from '../spaces/shared-out.ts';
import { type CaseFrame, depthOfOverlayDoors, frameOfCase } from './frame-of-case.ts';
import { insideGroup } from './inside-group.ts';
import { sidesOfCase } from './shared-sides.ts';
import { isBoredFor, sharesAsSawn } from './shares-as-sawn.ts';
import { type Site, wholePiece, within } from './site.ts';

/** A case or a group of them. */
type Member = RecordOf<'case' | 'group'>;

/** What stands in a row. */
type InRow = Member | RecordOf<'filler'>;

/** A case with the planes it is hung on and the clear sizes inside. */
export interface StandingCase {
  readonly frame: CaseFrame;
  readonly clear: ClearSizes;
}

/** The cases of a piece, and where each of them stands: alone, or with others in rows and stacks. */
export class Cases {
  /** In the order in which they stand: a group's from the left, or from the floor. */
  readonly all: readonly StandingCase[];
  private readonly draft: Draft;
  private readonly byId: ReadonlyMap<string, StandingCase>;
  private readonly sites = new Map<string, Site>();
  private readonly insides = new Map<string, Site>();
  private readonly sizes = new Map<string, readonly Traced[] | undefined>();
  private readonly doors = new Map<string, Traced | undefined>();

  constructor(draft: Draft) {
    this.draft = draft;
    const boxes = draft.tree.casesOf(draft.piece.id);
    this.all = boxes.map((box) => {
      const frame = frameOfCase(draft, box, this.siteOf(box), boxes.length === 1);
      return { frame, clear: new ClearSizes(draft, frame) };
    });
    this.byId = new Map(this.all.map((c) => [c.frame.box.id, c]));
  }

  /** A clear size of an opening of any case. */
  clearSize(opening: string, size: ClearSize): Traced {
    return this.byId.get(this.draft.tree.caseOf(opening)!.id)!.clear.of(opening, size);
  }

  /** What the overall sizes really come to: as asked, but for what was measured inside. */
  overall(): Record<ClearSize, Traced> {
    const [alone, another] = this.all;
    if (alone && !another && this.draft.tree.get(alone.frame.box.parent)?.kind === 'piece') {
      const { width, height, depth } = alone.frame.outside;
      return { width, height, depth };
    }
    const whole = wholePiece(this.draft);
    const frames = this.all.map((c) => c.frame);
    const furthest = (size: 'width' | 'height') => {
      const measured = frames.some((f) => this.isMeasured(f.box, size));
      if (!measured) return whole[size];
      const ends = frames.map((f) =>
        within(this.draft, 'where a case ends', f.site[BEGINS[size]], f.outside[size]),
      );
      const tops = this.tops.map((top) => (size === 'height' ? this.overTop(top) : this.rightEndOf(top)));
      // A row ends at the wall, with what closes its gap.
      const gaps = this.draft.tree.all('filler').map((f) => {
        const gap = this.gapOf(f);
        return within(this.draft, 'where a filler ends', gap[BEGINS[size]], gap[size]);
      });
      return this.draft.ledger.greatest(`${size}, as measured inside`, ...ends, ...gaps, ...tops);
    };
    return { width: furthest('width'), height: furthest('height'), depth: whole.depth };
  }

  /** Tops that lie over all cases of a group. */
  get tops(): readonly RecordOf<'top'>[] {
    return this.draft.tree.all('top').filter((t) => this.draft.tree.get(t.parent)?.kind === 'group');
  }

  /** The gap that a filler closes: as deep and as high as its row. */
  gapOf(filler: RecordOf<'filler'>): Site {
    return this.siteOf(filler);
  }

  /** The place of what lies round all cases of a group. */
  placeOf(round: RecordOf<'top'>): Site {
    return this.siteOf(this.groupOf(round));
  }

  /** Underside of the top over a group: as drawn, or on the highest of its cases where they were measured inside. */
  underTop(top: RecordOf<'top'>): Traced {
    const { draft } = this;
    const group = this.groupOf(top);
    const inside = this.insideOf(group);
    const boxes = draft.tree.casesOf(group.id);
    if (!boxes.some((box) => this.isMeasured(box, 'height')))
      return within(draft, 'underside of the top over the cases', inside.floor, inside.height);
    const heads = boxes.map((box) => this.byId.get(box.id)!.frame.head);
    return draft.ledger.greatest('underside of the top, on the highest of the cases', ...heads);
  }

  private overTop(top: RecordOf<'top'>): Traced {
    const { draft } = this;
    return draft.ledger.sum(
      'upper face of the top over the cases',
      this.underTop(top),
      finishedThickness(draft, draft.lot(top.board)),
    );
  }

  /** A top stands out as far as it was drawn to. */
  private rightEndOf(top: RecordOf<'top'>): Traced {
    const { left, width } = this.placeOf(top);
    return within(this.draft, 'right end of the top over the cases', left, width);
  }

  /** The floor that a base under cases stands on, and where the cases begin on it. */
  floorUnder(base: RecordOf<'base'>): Traced {
    return this.siteOf(this.groupOf(base)).floor;
  }

  overBase(base: RecordOf<'base'>): Traced {
    return this.insideOf(this.groupOf(base)).floor;
  }

  private groupOf(round: RecordOf<'top' | 'base'>): RecordOf<'group'> {
    return this.draft.tree.get(round.parent) as RecordOf<'group'>;
  }

  /** Whether every case has a place in its group; stops say which have none. */
  fit(): boolean {
    const { draft } = this;
    const before = draft.snags.length;
    for (const group of draft.tree.all('group')) {
      if (!this.parted(group)) continue;
      for (const size of group.lay === 'across' ? (['height', 'depth'] as const) : (['depth'] as const))
        this.fillsAcross(group, size);
    }
    return draft.snags.length === before;
  }

  /** Members may be smaller than their group across it, but none larger, and one must be as large. */
  private fillsAcross(group: RecordOf<'group'>, size: 'height' | 'depth'): void {
    const { draft } = this;
    const whole = draft.ledger.ticks(this.insideOf(group)[size]);
    const members = draft.tree.membersOf(group.id);
    const own = members.map((m) =>
      m[size] === undefined ? whole : draft.ledger.ticks(draft.field(m, size)),
    );
    const word = size === 'height' ? 'high' : 'deep';
    members.forEach((m, i) => {
      if (own[i]! > whole)
        draft.stop(
          'cases.larger-than-group',
          m,
          size,
          `“${m.id}” is to have a larger ${size} than “${group.id}”, in which it stands.`,
          {
            says: `Give it a smaller ${size}, or the piece a larger one.`,
          },
        );
    });
    if (own.every((o) => o < whole))
      draft.stop(
        'cases.none-as-large',
        group,
        'lay',
        `None of the cases of “${group.id}” is as ${word} as it, so the piece would not come out as ${word} as asked.`,
        { says: `Leave “${size}” out for one of them, or give the piece a smaller one.` },
      );
  }

  private isMeasured(box: RecordOf<'case'>, size: ClearSize): boolean {
    const root = this.draft.tree.childOf(box.id, 'opening');
    return root !== undefined && this.draft.measured(`${root.id}.${size}`) !== undefined;
  }

  /** The place of a case or a group, worked out when it is first asked for. */
  private siteOf(member: InRow): Site {
    const known = this.sites.get(member.id);
    if (known) return known;
    const parent = this.draft.tree.get(member.parent);
    const site = parent?.kind === 'group' ? this.siteIn(parent, member) : wholePiece(this.draft);
    this.sites.set(member.id, site);
    return site;
  }

  private insideOf(group: RecordOf<'group'>): Site {
    const known = this.insides.get(group.id);
    if (known) return known;
    const inside = insideGroup(this.draft, group, this.siteOf(group));
    this.insides.set(group.id, inside);
    return inside;
  }

  private siteIn(group: RecordOf<'group'>, member: InRow): Site {
    const { draft } = this;
    const l = draft.ledger;
    const all = draft.tree.rowOf(group.id);
    const place = all.indexOf(member);
    const asked: Pick<Member, 'height' | 'depth'> & { readonly id: string } =
      member.kind === 'filler' ? { id: member.id } : member;
    const before = all[place - 1];
    const whole = this.insideOf(group);
    const axis = alongOf(group);
    const own = () => this.parted(group)?.[place] ?? draft.nothing;
    const begin = (): Traced => {
      if (!before) return whole[BEGINS[axis]];
      const last = this.siteOf(before);
      const end = within(draft, 'where the case before it ends', last[BEGINS[axis]], last[axis]);
      const shared = commonSide(draft, before, member);
      return shared === undefined ? end : l.less('where the side begins that both cases share', end, shared);
    };
    const aside = () => (member.kind === 'filler' ? undefined : this.behindOthersDoors(group, member));
    const depth = () => {
      if (asked.depth !== undefined) return draft.field(asked, 'depth');
      const back = aside();
      return back === undefined
        ? whole.depth
        : l.less('depth of a case whose front stands level with others', whole.depth, back);
    };
    return asAsked<Site>({
      left: () => (axis === 'width' ? begin() : whole.left),
      floor: () => (axis === 'height' ? begin() : whole.floor),
      front: () => {
        const back =
          asked.depth !== undefined
            ? l.less('how much shallower it is than its group', whole.depth, draft.field(asked, 'depth'))
            : aside();
        return back === undefined ? whole.front : within(draft, 'front of the case', whole.front, back);
      },
      width: () => (axis === 'width' ? own() : whole.width),
      height: () =>
        axis === 'height' ? own() : asked.height !== undefined ? draft.field(asked, 'height') : whole.height,
      depth,
    });
  }

  /** How far a case stays back so that its front stands level with those beside it whose doors lie before theirs. */
  private behindOthersDoors(group: RecordOf<'group'>, member: Member): Traced | undefined {
    const l = this.draft.ledger;
    const most = this.doorsBefore(group);
    const own = this.doorsBefore(member);
    if (most === undefined || (own !== undefined && l.ticks(own) === l.ticks(most))) return undefined;
    return own === undefined ? most : l.less('how much thicker the doors beside it are', most, own);
  }

  /** What the thickest doors of a case, or of those cases of a group that are as deep as it, add before them. */
  private doorsBefore(member: Member): Traced | undefined {
    const { draft } = this;
    if (!this.doors.has(member.id)) {
      const depths =
        member.kind === 'case'
          ? [depthOfOverlayDoors(draft, draft.tree.childrenOf(member.id, 'door'), member.id)]
          : draft.tree
              .membersOf(member.id)
              .filter((m) => m.depth === undefined)
              .map((m) => this.doorsBefore(m));
      const some = depths.filter((d) => d !== undefined);
      const most = some.length < 2 ? some[0] : draft.ledger.greatest('what the thickest doors add', ...some);
      this.doors.set(member.id, most);
    }
    return this.doors.get(member.id);
  }

  /** The outer sizes of a group's members along it; undefined where they don't come out (a stop says so). */
  private parted(group: RecordOf<'group'>): readonly Traced[] | undefined {
    if (!this.sizes.has(group.id)) this.sizes.set(group.id, this.part(group));
    return this.sizes.get(group.id);
  }

  private part(group: RecordOf<'group'>): readonly Traced[] | undefined {
    const { draft } = this;
    const members = draft.tree.rowOf(group.id);
    const axis = alongOf(group);
    const claims = members.map((m) => {
      const asked = readOpeningSize(m.size ?? 'equal')!;
      const measured = m.kind === 'case' && this.isMeasured(m, axis);
      const fixed = measured
        ? this.byId.get(m.id)!.frame.outside[axis]
        : 'fixed' in asked
          ? draft.field(m, 'size')
          : undefined;
      return { asked, fixed };
    });
    const whole = this.insideOf(group)[axis];
    const twice = members.slice(1).flatMap((m, i) => commonSide(draft, members[i]!, m) ?? []);
    const total =
      twice.length === 0
        ? whole
        : draft.ledger.sum('of all cases, sides that two share counted for both', whole, ...twice);
    const shared = shareOut(draft, WORDS, total, [], claims);
    if ('sizes' in shared) {
      const { sizes } = shared;
      const row = members.map((member, i) => ({ member, size: sizes[i]!, free: !claims[i]!.fixed }));
      return twice.length > 0 || (axis === 'width' && isBoredFor(draft, group))
        ? sharesAsSawn(draft, row)
        : sizes;
    }
    if (shared.wrong === 'does-not-add-up')
      draft.stop(
        'cases.do-not-add-up',
        group,
        'lay',
        `The cases of “${group.id}” are all of a fixed size or measured, and ${shared.left > 0 ? 'leave' : 'lack'} ${toMm(Math.abs(shared.left))} mm.`,
        {
          says: 'Let one of them be “equal”.',
          edits: [{ record: members.at(-1)!.id, field: 'size', value: 'equal' }],
        },
      );
    else
      draft.stop(
        'cases.no-room',
        group,
        'lay',
        `The fixed sizes in “${group.id}” leave no room for its other cases.`,
        { says: 'Make the piece larger, a fixed case smaller, or have fewer cases.' },
      );
    return undefined;
  }
}

/** The thickness of the side that two neighbours share; undefined where each has its own. */
function commonSide(draft: Draft, before: InRow, after: InRow): Traced | undefined {
  if (before.kind !== 'case' || after.kind !== 'case') return undefined;
  const { of, shared } = sidesOfCase(draft, after).left;
  return shared ? draft.thickness(draft.lot(of.board)) : undefined;
}

const WORDS = {
  clear: 'what the fixed cases leave',
  share: 'an equal share among the cases',
  uneven: 'its share among the cases',
} as const;

const BEGINS = { width: 'left', height: 'floor', depth: 'front' } as const;

function alongOf(group: RecordOf<'group'>): 'width' | 'height' {
  return group.lay === 'across' ? 'width' : 'height';
}
