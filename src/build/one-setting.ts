import type { Traced } from '../measure/index.ts';
import type { Part } from '../setting-out/index.ts';
import type { Bench, OperationDraft } from './bench.ts';
import { markWords } from './mark-words.ts';
import type { Act } from './operation.ts';
import type { StageId } from './stages.ts';

/** Work on loose parts: what one setting of a tool does to them. */
export interface Setting extends Omit<OperationDraft, 'title' | 'does' | 'times' | 'stage'> {
  /** The heading up to the names of the parts: `Rabbet the back edge of`. */
  readonly what: string;
  readonly parts: readonly [Part, ...Part[]];
  /** What it is for, in a few words; told where it is the same for all. */
  readonly purpose?: string;
  readonly does: Extract<Act, { readonly workpieces: readonly string[] }>;
  /** How many times the kind’s own minutes each part takes, and the setting itself. */
  readonly times?: number;
  readonly once?: number;
}

/**
 * Writes down what was gathered at the bench: what is done at one setting in one operation, and mirrored parts, whose
 * cards read alike, one behind the other.
 */
export function writeSettings(bench: Bench, stage: StageId): void {
  const alike = new Map<string, Setting[]>();
  for (const setting of bench.settings.splice(0)) {
    const key = readingOf(bench, setting);
    alike.set(key, [...(alike.get(key) ?? []), setting]);
  }
  for (const settings of alike.values()) {
    const same = new Map<string, Setting[]>();
    for (const setting of settings) {
      const key = actOf(bench, setting.does);
      same.set(key, [...(same.get(key) ?? []), setting]);
    }
    for (const all of same.values()) write(bench, all as [Setting, ...Setting[]], stage);
  }
}

/** All that a maker reads on a card but for the names of the parts. A mitre’s second end comes behind its first. */
function readingOf(
  bench: Bench,
  { id, kind, what, faceUp, reference, lines, lengths = [] }: Setting,
): string {
  const ticks = lengths.map((t) => bench.ledger.ticks(t));
  return JSON.stringify([kind === 'bevel' ? id : '', what, faceUp, reference, lines, ticks]);
}

/** What is done, whatever it is done to. */
function actOf(bench: Bench, act: Setting['does']): string {
  return JSON.stringify(act, (key, value: unknown) =>
    key === 'workpieces'
      ? undefined
      : typeof value === 'number' && !NUMBERS.has(key)
        ? bench.ledger.ticks(value as Traced)
        : value,
  );
}

/** Numbers of an act that are no lengths. */
const NUMBERS: ReadonlySet<string> = new Set(['angle', 'count']);

function write(bench: Bench, settings: readonly [Setting, ...Setting[]], stage: StageId): void {
  const [first] = settings;
  const { what, parts: _, purpose, once = 0, times: __, ...draft } = first;
  const parts = settings.flatMap((s) => s.parts);
  const marks = parts.map((p) => p.mark);
  const named = parts.length === 1 ? `${parts[0]!.mark} (${parts[0]!.name})` : markWords(marks);
  const told = purpose !== undefined && settings.every((s) => s.purpose === purpose);
  bench.do(
    {
      ...draft,
      stage,
      title: `${what} ${named}${told ? `${/^(for |“)/.test(purpose) ? ',' : ':'} ${purpose}` : ''}`,
      does: { ...first.does, workpieces: marks },
      times: settings.reduce((sum, s) => sum + s.parts.length * (s.times ?? 1), once),
    },
    [...marks, ...(stage === 'hang' ? boardsOf(bench, parts) : [])],
  );
}

/** Marks of the boards that strips go on: mitres wait until these are cut to their opening. */
function boardsOf({ setOut }: Bench, strips: readonly Part[]): readonly string[] {
  const ids = new Set(strips.map((p) => p.id));
  const boards = new Set(
    setOut.joints.filter((j) => j.duty === 'edging' && ids.has(j.part)).map((j) => j.mate),
  );
  return setOut.parts.filter((p) => boards.has(p.id)).map((p) => p.mark);
}
