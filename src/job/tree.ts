import type { JobDocument } from './document.ts';
import { type DesignRecord, isChild, type RecordKind, type RecordOf } from './records/design-record.ts';

/** The records of a design by id, and who belongs to whom. Read-only; made afresh from a document. */
export class RecordTree {
  private readonly byId = new Map<string, DesignRecord>();
  private readonly brothers = new Map<string, DesignRecord[]>();
  private readonly ofKind = new Map<RecordKind, DesignRecord[]>();
  readonly piece: RecordOf<'piece'> | undefined;

  constructor(records: readonly DesignRecord[]) {
    let piece: RecordOf<'piece'> | undefined;
    records.forEach((r) => {
      this.byId.set(r.id, r);
      if (r.kind === 'piece') piece ??= r;
      else if (isChild(r)) {
        const list = this.brothers.get(r.parent);
        if (list) list.push(r);
        else this.brothers.set(r.parent, [r]);
      }
    });
    this.piece = piece;
    // Array sort is stable, so equal orders keep the file's order.
    for (const list of this.brothers.values()) list.sort((a, b) => orderOf(a) - orderOf(b));
    for (const r of this.byId.values()) {
      const list = this.ofKind.get(r.kind);
      if (list) list.push(r);
      else this.ofKind.set(r.kind, [r]);
    }
  }

  get(id: string): DesignRecord | undefined {
    return this.byId.get(id);
  }

  /** All records of one kind, as they stand in the file. */
  all<K extends RecordKind>(kind: K): readonly RecordOf<K>[] {
    return (this.ofKind.get(kind) ?? []) as readonly DesignRecord[] as readonly RecordOf<K>[];
  }

  /** All that belongs to a record, in order. */
  children(id: string): readonly DesignRecord[] {
    return this.brothers.get(id) ?? [];
  }

  /** What of one kind belongs to a record, in order. */
  childrenOf<K extends RecordKind>(id: string, kind: K): readonly RecordOf<K>[] {
    return this.children(id).filter((r): r is RecordOf<K> => r.kind === kind);
  }

  /** The case that a record belongs to, or is. */
  caseOf(id: string): RecordOf<'case'> | undefined {
    let record = this.byId.get(id);
    // A design that isn't checked yet may go round in a circle.
    for (let steps = 0; record && steps <= this.byId.size; steps++) {
      if (record.kind === 'case') return record;
      record = isChild(record) ? this.byId.get(record.parent) : undefined;
    }
    return undefined;
  }

  /** The cases and groups that stand in a group, in order. */
  membersOf(id: string): readonly RecordOf<'case' | 'group'>[] {
    return this.children(id).filter(
      (r): r is RecordOf<'case' | 'group'> => r.kind === 'case' || r.kind === 'group',
    );
  }

  /** What stands in a group from its beginning to its end: its cases and groups, and fillers. */
  rowOf(id: string): readonly RecordOf<'case' | 'group' | 'filler'>[] {
    return this.children(id).filter(
      (r): r is RecordOf<'case' | 'group' | 'filler'> =>
        r.kind === 'case' || r.kind === 'group' || r.kind === 'filler',
    );
  }

  /** All cases under a record, in order: those of a group one after another. */
  casesOf(id: string): readonly RecordOf<'case'>[] {
    return this.membersOf(id).flatMap((m) => (m.kind === 'case' ? [m] : this.casesOf(m.id)));
  }

  /** The case that stands right beside one in its row; undefined at the end of the row, or beside a group. */
  neighbourOf(box: RecordOf<'case'>, hand: 'left' | 'right'): RecordOf<'case'> | undefined {
    const row = this.byId.get(box.parent);
    if (row?.kind !== 'group' || row.lay !== 'across') return undefined;
    const members = this.rowOf(row.id);
    const beside = members[members.indexOf(box) + (hand === 'left' ? -1 : 1)];
    return beside?.kind === 'case' ? beside : undefined;
  }

  /** The one child of a kind, if there is one. */
  childOf<K extends RecordKind>(id: string, kind: K): RecordOf<K> | undefined {
    return this.childrenOf(id, kind)[0];
  }
}

/** The tree of a document's design. */
export function treeOf(job: JobDocument): RecordTree {
  return new RecordTree(job.design.records);
}

function orderOf(r: DesignRecord): number {
  return 'order' in r && r.order !== undefined ? r.order : 0;
}
