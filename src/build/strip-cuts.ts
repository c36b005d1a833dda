import type { PlannedNode, PlannedSheet } from '../breakdown/index.ts';
import type { Traced } from '../measure/index.ts';
import { trimTo } from './after-cut.ts';
import { layAsDrawn } from './as-it-lies.ts';
import type { Bench } from './bench.ts';
import { cutAlike, type StripCut } from './cut-alike.ts';
import { cut, isTape, stripSaw } from './saw-cut.ts';
import { nameWhole, sawTree } from './saw-tree.ts';
import { isTooSmall } from './too-small.ts';

/** What is still to be cut of a strip. */
interface Rest {
  readonly sheet: PlannedSheet;
  readonly node: PlannedNode;
  readonly uncut: boolean;
}

/** A strip whose next cut takes a part off its end, and what is to be cut of it then. */
interface Due {
  readonly rest: Rest;
  readonly setting: string;
  readonly cut: StripCut;
  readonly next?: Rest;
}

/** Cuts strips to parts: the longest first, and all that are equal at one setting, from whatever strip they come. */
export function sawStrips(bench: Bench, sheets: readonly PlannedSheet[]): void {
  for (const sheet of sheets) begin(bench, sheet);
  let rests: readonly Rest[] = sheets.map((sheet) => ({ sheet, node: sheet.root, uncut: true }));
  while (rests.length > 0) {
    const due: Due[] = [];
    for (const rest of rests) {
      const next = nextCut(bench, rest);
      if (next) due.push(next);
      else otherwise(bench, rest);
    }
    rests = atOneSetting(bench, due);
  }
}

/** Lays a strip as it is drawn, and squares its end where the stock asks for it. */
function begin(bench: Bench, sheet: PlannedSheet): void {
  const { trim } = sheet.source;
  layAsDrawn(bench, sheet, sheet.name);
  if (bench.ledger.ticks(trim) > 0)
    cut(bench, {
      id: `${sheet.name}/square-end`,
      title: `Square an end of strip ${sheet.name}`,
      kind: 'square-end',
      workpiece: sheet.name,
      of: sheet.source,
      across: 'length',
      at: bench.set('circular-saw', trim),
      keep: 'behind',
      yields: [undefined, { name: sheet.name, turned: false }],
      tape: isTape(bench, sheet.lot),
    });
}

/** Makes the cuts that give the longest parts, of each strip as many as follow one another; gives what stays to be cut. */
function atOneSetting(bench: Bench, due: readonly Due[]): readonly Rest[] {
  if (due.length === 0) return [];
  const long = ({ cut: { at } }: Due) => bench.ledger.ticks(at);
  const { setting } = due.reduce((a, b) => (long(b) > long(a) ? b : a));
  const now: StripCut[] = [];
  const rests = due.flatMap((d): readonly Rest[] => {
    let on: Due | undefined = d;
    let rest: Rest | undefined = d.rest;
    while (on?.setting === setting) {
      now.push(on.cut);
      rest = on.next;
      on = rest && nextCut(bench, rest);
    }
    return rest ? [rest] : [];
  });
  cutAlike(bench, now as unknown as readonly [StripCut, ...StripCut[]]);
  return rests;
}

/** The next cut of a strip, where it takes a part off its end. */
function nextCut(bench: Bench, rest: Rest): Due | undefined {
  const { sheet, node } = rest;
  if (node.kind === 'left') return undefined;
  if (node.kind === 'piece') {
    const at = trimTo(bench, node, 'length');
    return at && dueOf(bench, rest, at, { part: node.part, turned: node.turned });
  }
  const [first, second] = node.parts;
  if (first.kind !== 'piece') return undefined;
  const { length, part, turned } = first;
  if (second.kind === 'cut' || (second.kind === 'piece' && trimTo(bench, second, 'length') !== undefined))
    return {
      ...dueOf(bench, rest, length, { part, turned, stays: { name: sheet.name, as: 'strip' } }),
      next: { sheet, node: second, uncut: false },
    };
  if (second.kind === 'piece')
    return dueOf(bench, rest, length, { part, turned, stays: { name: second.part.mark, as: second } });
  const { name } = second;
  return dueOf(bench, rest, length, { part, turned, ...(name ? { stays: { name, as: 'left' } } : {}) });
}

function dueOf(bench: Bench, rest: Rest, at: Traced, what: Pick<StripCut, 'part' | 'turned' | 'stays'>): Due {
  const { sheet, node, uncut } = rest;
  const tape = isTape(bench, sheet.lot);
  const byHand = !tape && isTooSmall(bench, stripSaw(bench, at), { of: node, across: 'length', at });
  const setting = `${sheet.lot} ${byHand} ${bench.ledger.ticks(at)}`;
  return { rest, setting, cut: { ...what, strip: sheet.name, uncut, of: node, at, tape, byHand } };
}

/** What needs no cut gets its mark; what is cut otherwise, such as beside a flaw, goes by its tree. */
function otherwise(bench: Bench, { sheet, node }: Rest): void {
  if (node.kind === 'piece') nameWhole(bench, node.part, node.turned, sheet.name);
  else if (node.kind === 'cut') sawTree(bench, sheet, node, sheet.name, { strips: 0 });
}
