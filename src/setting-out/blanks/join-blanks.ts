import { formatOf } from '../../job/index.ts';
import { printSetting, type Ticks, type Traced } from '../../measure/index.ts';
import type { MadeCase } from '../case/case-in-full.ts';
import { ofCase } from '../case/frame-of-case.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Feature } from '../feature.ts';
import { twoKerfs } from '../fits/cut-size.ts';
import { opposite } from '../place.ts';
import { sharedWork } from './shared-work.ts';

type Pair = readonly [near: DraftPart, far: DraftPart];

/**
 * Makes one blank of two sides, or of two dividers, where their case asks for it: it is as wide as both and what two kerfs
 * take between them. The sides lie with their inner faces up and their back edges at the line where they are parted, so
 * that both fronts are edges of the blank. Where it can’t be, the parts are cut one by one, and a snag tells why.
 */
export function joinBlanks(draft: Draft, { frame, panels, partings }: MadeCase): void {
  const { box } = frame;
  const asked = box.oneBlank;
  if (asked === undefined) return;
  if (asked !== 'dividers') {
    const { left, right } = panels;
    if (left.record === box.id && right.record === box.id)
      join(draft, [left, right], 'sides-blank', `blank of both sides${ofCase(frame)}`);
    else
      cutApart(
        draft,
        box.id,
        `“${box.id}” shares a side with its neighbour, so there are no two of its own to be cut as one blank.`,
      );
  }
  if (asked === 'sides') return;
  const dividers = partings.filter((p) => p.upright && !p.thin && !p.behind).map((p) => p.part);
  if (dividers.length < 2)
    cutApart(draft, box.id, `“${box.id}” has no two dividers that could be cut as one blank.`);
  for (let i = 0; i + 1 < dividers.length; i += 2)
    join(
      draft,
      [dividers[i]!, dividers[i + 1]!],
      `dividers-blank:${i / 2 + 1}`,
      `blank of dividers ${i + 1} and ${i + 2}${ofCase(frame)}`,
      box.id,
    );
}

function join(draft: Draft, pair: Pair, role: string, name: string, record = pair[0].record): void {
  const l = draft.ledger;
  const [near, far] = pair;
  const id = `${record}/${role}`;
  const made = new Set((draft.job.work.made ?? []).map((m) => m.part));
  // What was cut by itself is not joined again.
  if (!made.has(id) && pair.some((p) => made.has(p.id))) return;
  const width = l.sum(
    'both parts, and what parting them takes',
    near.width,
    twoKerfs(l, draft.job.shop),
    far.width,
  );
  const work = sharedWork(l, pair, width);
  const whyNot = unlike(draft, pair, work.shared) ?? (made.has(id) ? undefined : noSheet(draft, pair, width));
  if (whyNot !== undefined) return cutApart(draft, record, whyNot);
  const { at, size } = boxOf(draft, near, width);
  const blank = draft.panel({
    record,
    role,
    name,
    family: 'joined blank',
    lot: draft.lot(near.lot),
    at,
    size,
    length: near.place.length,
    width: near.place.width,
    ...(near.hand === 'none' ? {} : { hand: near.hand }),
    joins: [
      { mark: near.mark, looks: opposite(near.place.width) },
      { mark: far.mark, looks: far.place.width },
    ],
    apart: true,
  });
  blank.features.push(...work.onBlank.map((f) => ({ ...f, id: f.id.replace(/^[^#]*/, blank.id) })));
  draft.joinedBlanks.push({ record, blank, parts: [near.id, far.id], shared: work.shared });
}

/** Where the near part stands, but as wide as both. */
function boxOf(draft: Draft, near: DraftPart, width: Traced) {
  const { min, max } = near.box;
  const l = draft.ledger;
  const thick = l.less('thickness', max[0], min[0]);
  const high = l.less('height', max[2], min[2]);
  return { at: min, size: [thick, width, high] as const };
}

/** Why two parts have nothing to be joined for. */
function unlike(draft: Draft, [near, far]: Pair, shared: ReadonlySet<Feature>): string | undefined {
  const t = (x: Traced) => draft.ledger.ticks(x);
  const both = `The ${near.name} and the ${far.name}`;
  if (near.rough || far.rough)
    return `${both} have mitred ends, which are sawn on each by itself: they are cut one by one.`;
  if (near.lot !== far.lot || t(near.length) !== t(far.length))
    return `${both} are not of one length and board, so they can’t be cut as one blank.`;
  if (shared.size > 0) return undefined;
  return `${both} have no dados or rows of holes at the same heights that run on from one to the other, so nothing is gained by cutting them as one blank: they are cut one by one.`;
}

/** Why no sheet takes a blank of both. */
function noSheet(draft: Draft, [near, far]: Pair, width: Traced): string | undefined {
  const t = (x: Traced): number => draft.ledger.ticks(x);
  const lot = draft.lot(near.lot);
  const path = `shop/rack/lots/${lot.id}`;
  const [long, wide] = [t(near.length), t(width)];
  const takesIt = lot.stock.some((s) => {
    if ((s.have ?? 0) === 0 && s.price === undefined) return false;
    const trim =
      s.trim !== undefined
        ? draft.typed(`${path}/stock/${s.id}/trim`, s.trim)
        : lot.trim === undefined
          ? draft.nothing
          : draft.typed(`${path}/trim`, lot.trim);
    const inside = (field: 'length' | 'width') =>
      t(draft.typed(`${path}/stock/${s.id}/${field}`, s[field]!)) - 2 * t(trim);
    const [along, across] = [inside('length'), inside('width')];
    const turns = near.grain === 'free' || s.grain === 'free';
    return (long <= along && wide <= across) || (turns && long <= across && wide <= along);
  });
  if (takesIt) return undefined;
  const print = (x: Traced) => printSetting(draft.ledger.ticks(x) as Ticks, formatOf(draft.job.shop));
  return `The ${near.name} and the ${far.name} as one blank would be ${print(near.length)} long and ${print(width)} wide, and no sheet of “${lot.name}” is so large: they are cut one by one.`;
}

function cutApart(draft: Draft, record: string, sentence: string): void {
  draft.snags.push({
    code: 'blanks.cut-apart',
    level: 'mind',
    where: { record, path: `design/records/${record}/oneBlank` },
    sentence,
    cures: [{ says: 'Leave “oneBlank” out.', edits: [{ record, field: 'oneBlank' }] }],
  });
}
