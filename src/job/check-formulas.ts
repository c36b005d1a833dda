import { nearestNames, type Snag } from '../snag/index.ts';
import type { JobDocument } from './document.ts';
import { namesIn } from './formula/formula.ts';
import { type ClearSize, formulaNames, type NamedSize, TAKEN } from './formula/formula-names.ts';
import { readFormula } from './formula/read-formula.ts';
import { type DesignRecord, formulaFields, type RecordOf } from './records/design-record.ts';
import { RecordTree } from './tree.ts';
import { isFormula, readOpeningSize } from './typed.ts';

/** A formula where it stands. */
interface Placed {
  readonly path: string;
  readonly record: DesignRecord;
  readonly text: string;
  readonly names: ReturnType<typeof namesIn>;
}

/** Names that nothing has, and formulas that go round in a circle. Every one is told. */
export function checkFormulas(job: JobDocument): readonly Snag[] {
  const names = formulaNames(job);
  const placed = formulasOf(job, names);
  return [...takenNames(job), ...unknownNames(placed, names), ...circles(job, placed, names)];
}

function formulasOf(job: JobDocument, names: ReadonlyMap<string, NamedSize>): readonly Placed[] {
  return job.design.records.flatMap((record) =>
    formulaFields(record.kind).flatMap(({ field }): Placed[] => {
      const text: unknown = Reflect.get(record, field);
      if (typeof text !== 'string' || !isFormula(text)) return [];
      if (field === 'size' && 'weight' in (readOpeningSize(text) ?? {})) return [];
      const read = readFormula(text, (name) => names.has(name));
      const found = read.ok ? namesIn(read.formula) : [];
      return [{ path: pathOf(record.id, field), record, text, names: found }];
    }),
  );
}

function takenNames(job: JobDocument): readonly Snag[] {
  return job.design.records
    .filter((r) => r.kind === 'size' && TAKEN.has(r.id))
    .map((r) => ({
      code: 'formula.name-taken',
      level: 'stop' as const,
      where: { path: `design/records/${r.id}/id`, record: r.id },
      sentence: `“${r.id}” already means something in a formula, so no size can have it for its name.`,
      cures: [{ says: 'Give the size another name.' }],
    }));
}

function unknownNames(placed: readonly Placed[], known: ReadonlyMap<string, NamedSize>): readonly Snag[] {
  return placed.flatMap(({ path, record, text, names }) =>
    names
      .filter(({ name }) => !known.has(name))
      .map(({ name, at }) => ({
        code: 'formula.no-such-name',
        level: 'stop' as const,
        where: { path, record: record.id },
        sentence: `\`${text}\`: nothing is called “${name}”, at character ${at}.`,
        cures: [
          {
            says: `Nearest: ${nearestNames(name, known.keys()).join(', ')}. Or add a record of kind “size” with the id “${name}”.`,
          },
        ],
      })),
  );
}

/** What rests on no other size of the design. */
const LEAVES: ReadonlySet<NamedSize['is']> = new Set(['thickness', 'room', 'doorway']);

/** What a top takes of the sizes under it, besides its thickness. */
const OVERHANGS: Readonly<Record<ClearSize, readonly string[]>> = {
  width: ['overhangSides'],
  height: [],
  depth: ['overhangFront', 'overhangBack'],
};

/** What must be known before a field or an opening's clear size is: fields by path, clear sizes as `bay1.width`. */
class Before {
  private readonly formulas: ReadonlyMap<string, Placed>;
  private readonly names: ReadonlyMap<string, NamedSize>;
  private readonly tree: RecordTree;

  constructor(job: JobDocument, placed: readonly Placed[], names: ReadonlyMap<string, NamedSize>) {
    this.formulas = new Map(placed.map((p) => [p.path, p]));
    this.names = names;
    this.tree = new RecordTree(job.design.records);
  }

  of(key: string): readonly string[] {
    const formula = this.formulas.get(key);
    if (formula)
      return formula.names.flatMap(({ name }) => {
        const named = this.names.get(name);
        if (!named || LEAVES.has(named.is)) return [];
        return named.is === 'field' ? [pathOf(named.record, named.field)] : [name];
      });
    const named = this.names.get(key);
    return named?.is === 'clear' ? this.clear(named.opening, named.size) : [];
  }

  private clear(id: string, size: ClearSize): readonly string[] {
    const opening = this.tree.get(id);
    if (opening?.kind !== 'opening') return [];
    const parent = this.tree.get(opening.parent);
    if (parent?.kind === 'case') return this.inside(parent, size);
    if (parent?.kind !== 'opening') return [];
    const whole = `${parent.id}.${size}`;
    const sizes = { across: 'width', down: 'height', back: 'depth' } as const;
    if (size !== (parent.split && sizes[parent.split])) return [whole];
    const isFixed = (o: RecordOf<'opening'>) => 'fixed' in (readOpeningSize(o.size ?? 'equal') ?? {});
    if (isFixed(opening)) return [pathOf(id, 'size')];
    const fixed = this.tree.childrenOf(parent.id, 'opening').filter(isFixed);
    return [whole, ...fixed.map((o) => pathOf(o.id, 'size'))];
  }

  /** The clear inside of a case rests on the place that it fills and on what stands round the case. */
  private inside(box: RecordOf<'case'>, size: ClearSize): readonly string[] {
    const [top, base] = [this.tree.childOf(box.id, 'top'), this.tree.childOf(box.id, 'base')];
    return [
      ...this.site(box, size),
      ...(top ? OVERHANGS[size].map((field) => pathOf(top.id, field)) : []),
      ...(base && size === 'height' ? [pathOf(base.id, 'height')] : []),
    ];
  }

  /** The outer size of a case or a group rests on its own field, or on its group and what stands in that besides. */
  private site(
    record: RecordOf<'case' | 'group'>,
    size: ClearSize,
    under: readonly string[] = [],
  ): readonly string[] {
    const parent = this.tree.get(record.parent);
    const above = [...under, record.id];
    if (parent?.kind === 'piece') return [pathOf(parent.id, size)];
    if (parent?.kind !== 'group' || above.includes(parent.id)) return [];
    return [...this.inGroup(record, parent, size, above), ...this.underTop(parent, size)];
  }

  /** What the top over a group and the base under it take of it. */
  private underTop({ id }: RecordOf<'group'>, size: ClearSize): readonly string[] {
    const top = this.tree.childOf(id, 'top');
    const base = size === 'height' ? this.tree.childOf(id, 'base') : undefined;
    return [
      ...(top ? OVERHANGS[size].map((field) => pathOf(top.id, field)) : []),
      ...(base ? [pathOf(base.id, 'height')] : []),
    ];
  }

  private inGroup(
    record: RecordOf<'case' | 'group'>,
    parent: RecordOf<'group'>,
    size: ClearSize,
    above: readonly string[],
  ): readonly string[] {
    if (size === (parent.lay === 'across' ? 'width' : 'height')) {
      const isFixed = (m: RecordOf<'case' | 'group' | 'filler'>) =>
        'fixed' in (readOpeningSize(m.size ?? 'equal') ?? {});
      if (isFixed(record)) return [pathOf(record.id, 'size')];
      const fixed = this.tree.rowOf(parent.id).filter(isFixed);
      return [...this.site(parent, size, above), ...fixed.map((m) => pathOf(m.id, 'size'))];
    }
    return size !== 'width' && record[size] !== undefined
      ? [pathOf(record.id, size)]
      : this.site(parent, size, above);
  }
}

/** Each circle once, from the first of its formulas in the file. */
function circles(
  job: JobDocument,
  placed: readonly Placed[],
  names: ReadonlyMap<string, NamedSize>,
): readonly Snag[] {
  const before = new Before(job, placed, names);
  const done = new Set<string>();
  const snags: Snag[] = [];
  const visit = (key: string, way: readonly string[]): void => {
    const from = way.indexOf(key);
    if (from >= 0) {
      snags.push(...circle(way.slice(from), placed));
      return;
    }
    if (done.has(key)) return;
    for (const next of before.of(key)) visit(next, [...way, key]);
    done.add(key);
  };
  for (const { path } of placed) visit(path, []);
  return snags;
}

function circle(keys: readonly string[], placed: readonly Placed[]): readonly Snag[] {
  const first = placed.find((p) => keys.includes(p.path));
  // Openings that belong to one another in a circle are told as such.
  if (!first) return [];
  const start = keys.indexOf(first.path);
  const round = [...keys.slice(start), ...keys.slice(0, start), first.path];
  const shown = round.map((key) => key.replace(/^design\/records\/(.*)\/(.*)$/, '$1/$2'));
  return [
    {
      code: 'formula.circular',
      level: 'stop',
      where: { path: first.path, record: first.record.id },
      sentence: `\`${first.text}\` rests, in the end, on itself: ${shown.join(' needs ')}.`,
      cures: [{ says: 'Give one of them a size of its own.' }],
    },
  ];
}

function pathOf(record: string, field: string): string {
  return `design/records/${record}/${field}`;
}
