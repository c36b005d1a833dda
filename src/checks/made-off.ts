import { type JobDocument, treeOf } from '../job/index.ts';
import { FIT_LIMITS } from '../materials/index.ts';
import { type LengthFormat, printLength, type Ticks, type Traced } from '../measure/index.ts';
import { type Part, partsAndBoards, type SetOut, setOut } from '../setting-out/index.ts';
import type { Cure, Snag } from '../snag/index.ts';
import { ShopWords } from './shop-words.ts';

type Size = 'length' | 'width';

/** A size that a part has because it was made so, and what it would be cut to if it were still to be made. */
interface Off {
  readonly part: Part;
  readonly size: Size;
  readonly made: Ticks;
  readonly meant: Ticks;
  /** Where in the document it is said. */
  readonly path: string;
}

/**
 * Parts that were made to another size than the drawing asks of them, by more than can be sprung in. Told where the piece no
 * longer comes out: what is made stays as it is, so either it is cut again, or the drawing is brought after it.
 */
export function madeOff(job: JobDocument, drawn: SetOut): readonly Snag[] {
  const { measured, done, made } = job.work;
  if (!measured && !done && !made) return [];
  const meant = setOut(unmade(job));
  const parts = new Map(partsAndBoards(meant).map((p) => [p.id, p]));
  const offs = partsAndBoards(drawn).flatMap((part): Off[] => {
    const other = parts.get(part.id);
    if (!other) return [];
    return (['length', 'width'] as const).flatMap((size) => {
      const now = sizeOf(part, size);
      const path = pathOf(drawn, now);
      const [is, was] = [drawn.ledger.ticks(now), meant.ledger.ticks(sizeOf(other, size))];
      if (path === undefined || Math.abs(is - was) <= FIT_LIMITS.tooLong.value) return [];
      return [{ part, size, made: is, meant: was, path }];
    });
  });
  return offs.map((off) => snagOf(job, drawn, off));
}

/** The size that a part has in the end: what is cut to its opening, as it is then. */
function sizeOf(part: Part, size: Size): Traced {
  return (part.fitted ?? part.cut)[size];
}

/** Where the document says that a size is made; undefined where it is only worked out. */
function pathOf(drawn: SetOut, size: Traced): string | undefined {
  const { operation, reason } = drawn.ledger.entry(size);
  if (operation === 'measured') return `work/measured/${reason}`;
  return operation === 'document' && reason.startsWith('work/') ? reason : undefined;
}

/** The job as if no part were made: openings and lots are as they were measured. */
function unmade(job: JobDocument): JobDocument {
  const { done: _, made: __, measured, ...work } = job.work;
  const tree = treeOf(job);
  const lots = new Set(job.shop.rack.lots.map((l) => l.id));
  const kept = Object.entries(measured ?? {}).filter(([name]) => {
    const of = name.slice(0, name.lastIndexOf('.'));
    return lots.has(of) || tree.get(of)?.kind === 'opening';
  });
  return { ...job, work: { ...work, ...(measured ? { measured: Object.fromEntries(kept) } : {}) } };
}

function snagOf(job: JobDocument, drawn: SetOut, off: Off): Snag {
  const { part, size, made, meant, path } = off;
  const words = new ShopWords(job);
  const text = (t: Ticks) => words.ticks(t);
  const how = size === 'length' ? 'long' : 'wide';
  return {
    code: 'work.made-off',
    level: 'stop',
    where: { path, part: part.id, record: part.record },
    sentence: `${part.mark}, the ${part.name}, is made ${text(made)} ${how}, and by the drawing it would be ${text(meant)}: with it the piece does not come out as drawn.`,
    cures: [
      {
        says:
          made > meant
            ? `Cut ${part.mark} down to ${text(meant)}.`
            : `Cut ${part.mark} anew, ${text(meant)} ${how}.`,
      },
      ...goOn(job, drawn, off),
    ],
  };
}

/** How the drawing can be brought after a side or a bottom: by the clear size between the panels, which is then as if measured. */
function goOn(job: JobDocument, drawn: SetOut, { part, size, made, meant }: Off): readonly Cure[] {
  const upright = part.role === 'left-side' || part.role === 'right-side';
  if (size !== 'length' || !(upright || part.role === 'bottom')) return [];
  const root = treeOf(job).childOf(part.record, 'opening');
  const inside = root && drawn.openings.find((o) => o.id === root.id);
  if (!inside) return [];
  const along = upright ? 'height' : 'width';
  const name = `${root.id}.${along}`;
  if (job.work.measured?.[name] !== undefined) return [];
  const finest: LengthFormat =
    job.shop.units === 'mm' ? { unit: 'mm', step: 0.1 } : { unit: 'in', denominator: 64 };
  const value = printLength((drawn.ledger.ticks(inside[along]) + made - meant) as Ticks, finest).text;
  // Tried before it is offered: the part must come out as it was made.
  const tried = setOut(
    unmade({ ...job, work: { ...job.work, measured: { ...job.work.measured, [name]: value } } }),
  );
  const after = tried.parts.find((p) => p.id === part.id);
  const before = new Set(drawn.snags.map((s) => s.code));
  const near = after && Math.abs(tried.ledger.ticks(sizeOf(after, size)) - made) <= FIT_LIMITS.tooLong.value;
  if (!near || tried.snags.some((s) => s.level === 'stop' && !before.has(s.code))) return [];
  return [
    {
      says: `Or go on with it: note “${name}” as measured at ${value}, and all that is still to be cut follows; the piece comes out ${made > meant ? 'larger' : 'smaller'} by as much.`,
    },
  ];
}
