import { isFormula, type JobDocument, type RecordKind, type RecordOf, treeOf } from '../../src/job/index.ts';
import type { SetOut } from '../../src/setting-out/index.ts';

/** Something that the design language can say, and whether a job says it. */
interface Row {
  readonly feature: string;
  readonly in: (job: JobDocument, piece: SetOut) => boolean;
}

/** True when a record of a kind is there, and is so. */
function has<K extends RecordKind>(
  kind: K,
  so: (r: RecordOf<K>, job: JobDocument) => boolean = () => true,
): Row['in'] {
  return (job) =>
    treeOf(job)
      .all(kind)
      .some((r) => so(r, job));
}

/** True for a back of an opening that is parted off so. */
function backOf(split: 'across' | 'down') {
  return ({ parent }: RecordOf<'back'>, job: JobDocument): boolean => {
    const bay = treeOf(job).get(parent);
    const whole = bay?.kind === 'opening' ? treeOf(job).get(bay.parent) : undefined;
    return whole?.kind === 'opening' && whole.split === split;
  };
}

function backsIn(job: JobDocument, box: string): readonly RecordOf<'back'>[] {
  const tree = treeOf(job);
  return tree.all('back').filter((b) => tree.caseOf(b.id)?.id === box);
}

/** What generated designs must say now and then: a row for each thing that the language can say. */
const ROWS: readonly Row[] = [
  { feature: 'cases side by side', in: has('group', (g) => g.lay === 'across') },
  { feature: 'cases one on the other', in: has('group', (g) => g.lay === 'up') },
  { feature: 'openings side by side', in: has('opening', (o) => o.split === 'across') },
  { feature: 'openings one above the other', in: has('opening', (o) => o.split === 'down') },
  { feature: 'things to be held', in: has('thing') },
  { feature: 'a hidden space behind', in: has('opening', (o) => o.split === 'back') },
  { feature: 'dividers that are named', in: has('divider') },
  { feature: 'sizes by formula', in: usesFormulas },
  { feature: 'sizes from a doorway', in: usesDoorway },
  { feature: 'shelves', in: has('shelf') },
  { feature: 'shelves for books or records', in: has('shelf', (s) => s.rowOf !== undefined) },
  { feature: 'shelves set back', in: has('shelf', (s) => s.setback !== undefined) },
  { feature: 'drawers', in: (_, piece) => piece.drawers.length > 0 },
  {
    feature: 'drawers graded in height',
    in: has('drawers', (d) => d.grade !== undefined && (d.count ?? 1) > 1),
  },
  {
    feature: 'drawers on wooden runners',
    in: (_, piece) => piece.drawers.some((d) => d.wooden !== undefined),
  },
  {
    feature: 'drawers on a centre runner',
    in: (_, piece) => piece.drawers.some((d) => d.centre !== undefined),
  },
  { feature: 'fronts from one strip', in: (_, piece) => piece.parts.some((p) => p.strip !== undefined) },
  { feature: 'drawers with overlay fronts', in: has('drawers', (d) => d.hang === 'overlay') },
  { feature: 'loose shelves on pins', in: has('pins') },
  { feature: 'tray dividers', in: has('trays') },
  { feature: 'a bottom under the sides', in: has('case', (c) => c.bottom === 'under') },
  { feature: 'a lid over the sides', in: has('case', (c) => c.lid === 'over') },
  {
    feature: 'a bottom under one side alone',
    in: has('case', (c) => c.bottom === 'under-left' || c.bottom === 'under-right'),
  },
  {
    feature: 'a lid over one side alone',
    in: has('case', (c) => c.lid === 'over-left' || c.lid === 'over-right'),
  },
  { feature: 'pocket screws asked for', in: has('case', (c) => c.joints === 'pocket-screws') },
  { feature: 'screws through faces asked for', in: has('case', (c) => c.joints === 'face-screws') },
  { feature: 'screws plugged', in: (_, piece) => piece.fasteners.some((f) => f.plug !== undefined) },
  { feature: 'rabbets at the corners', in: has('case', (c) => c.joints === 'rabbet') },
  { feature: 'dados', in: has('case', (c) => c.joints === 'dado') },
  { feature: 'tongues in dados', in: has('case', (c) => c.joints === 'tongue') },
  { feature: 'stopped dados', in: has('case', (c) => c.joints === 'stopped-dado') },
  {
    feature: 'sides, or dividers, of one blank',
    in: (_, piece) => piece.joinedBlanks.length > 0,
  },
  { feature: 'dowels', in: (_, piece) => piece.pegs.some((p) => p.kind === 'dowel') },
  { feature: 'biscuits', in: (_, piece) => piece.pegs.some((p) => p.kind === 'biscuit') },
  { feature: 'mitred corners', in: has('case', (c) => c.joints === 'mitre') },
  { feature: 'biscuits in mitres', in: has('case', (c) => c.inMitres === 'biscuits') },
  { feature: 'splines in mitres', in: has('case', (c) => c.inMitres === 'spline') },
  { feature: 'a back in rabbets', in: has('back', (b) => b.fitting === 'rabbet') },
  { feature: 'a back in grooves', in: has('back', (b) => b.fitting === 'groove') },
  { feature: 'a back laid on', in: has('back', (b) => b.fitting === 'applied') },
  { feature: 'backs of several bays', in: has('back', backOf('across')) },
  {
    feature: 'backs side by side, some in rabbets and some in grooves',
    in: (job) =>
      treeOf(job)
        .all('case')
        .some((c) => new Set(backsIn(job, c.id).map((b) => b.fitting)).size > 1),
  },
  { feature: 'backs one above another', in: has('back', backOf('down')) },
  { feature: 'a top', in: has('top') },
  { feature: 'a top with strips mitred round it', in: has('top', (t) => t.edging !== undefined) },
  { feature: 'a flush top', in: has('top', (t) => t.fit === 'flush') },
  { feature: 'an inset top', in: has('top', (t) => t.fit === 'inset') },
  {
    feature: 'a side that two cases share',
    in: has('case', (c) => c.leftSide === 'shared' || c.rightSide === 'shared'),
  },
  { feature: 'fillers to scribe to a wall', in: has('filler') },
  { feature: 'tops to scribe to a wall', in: (_, piece) => piece.scribedTops.length > 0 },
  {
    feature: 'one top over several cases',
    in: (job) =>
      treeOf(job)
        .all('top')
        .some((t) => treeOf(job).get(t.parent)?.kind === 'group'),
  },
  {
    feature: 'a top glued up from boards',
    in: (_, piece) => piece.gluedPanels.length > 0,
  },
  {
    feature: 'a top of solid wood, free to move',
    in: (_, piece) => piece.fasteners.some((f) => f.washer !== undefined),
  },
  {
    feature: 'a top whose screws stand in slots',
    in: (_, piece) => piece.parts.some((p) => p.features.some((f) => f.kind === 'slot' && f.use === 'screw')),
  },
  {
    feature: 'a top held by wooden buttons',
    in: (_, piece) => piece.joints.some((j) => j.duty === 'button'),
  },
  {
    feature: 'one base under several cases',
    in: (job) =>
      treeOf(job)
        .all('base')
        .some((b) => treeOf(job).get(b.parent)?.kind === 'group'),
  },
  { feature: 'a mitred base', in: has('base', (b) => (b.form ?? 'frame') === 'frame') },
  { feature: 'a kick board', in: has('base', (b) => b.form === 'toe-kick') },
  { feature: 'legs with aprons', in: has('base', (b) => b.form === 'legs') },
  { feature: 'feet', in: has('base', (b) => b.form === 'feet') },
  { feature: 'levellers', in: (_, piece) => piece.levellers.length > 0 },
  { feature: 'a floor that falls', in: has('room', (r) => r.floorFall !== undefined) },
  { feature: 'a wall of a known kind', in: has('room', (r) => r.wall !== undefined) },
  { feature: 'rails to hang by', in: has('hanging', (h) => h.by !== 'cleat') },
  { feature: 'a bevelled cleat to hang by', in: has('hanging', (h) => h.by === 'cleat') },
  {
    feature: 'a bevelled cleat on a back that is laid on or in rabbets',
    in: (job) =>
      treeOf(job)
        .all('hanging')
        .some((h) => h.by === 'cleat' && treeOf(job).childOf(h.parent, 'back')?.fitting !== 'groove'),
  },
  {
    feature: 'front edging',
    in: (job) =>
      treeOf(job)
        .all('edging')
        .some((e) => treeOf(job).get(e.parent)?.kind === 'case'),
  },
  {
    feature: 'ends of panels edged',
    in: (job) =>
      treeOf(job)
        .all('edging')
        .some((e) => treeOf(job).get(e.parent)?.kind === 'case' && e.sides !== undefined),
  },
  {
    feature: 'loose shelves edged in front',
    in: (job) =>
      treeOf(job)
        .all('edging')
        .some((e) => treeOf(job).get(e.parent)?.kind === 'pins'),
  },
  {
    feature: 'veneer tape',
    in: (job) => {
      const tape = new Set(job.shop.rack.lots.filter((l) => l.tape).map((l) => l.id));
      return treeOf(job)
        .all('edging')
        .some((e) => tape.has(e.strip));
    },
  },
  { feature: 'doors edged round', in: edged('door') },
  { feature: 'drawers’ fronts edged round', in: edged('drawers') },
  { feature: 'holes for cables', in: has('cable') },
  { feature: 'rows of holes', in: has('holes', (h) => (h.count ?? 1) > 1) },
  {
    feature: 'rows of holes about the middle of something else, or measured to their own',
    in: has('holes', (h) => h.about !== undefined || h.measured !== undefined),
  },
  { feature: 'holes mirrored for the other hand', in: has('holes', mirrored) },
  { feature: 'a hinged lid over a fixed front', in: (_, piece) => piece.lids.length > 0 },
  { feature: 'bought pulls', in: has('pull') },
  { feature: 'shop-made handles', in: has('handle') },
  {
    feature: 'handles or pulls about the middle of something else, or measured to their own',
    in: (job, piece) => [has('handle', placed), has('pull', placed)].some((row) => row(job, piece)),
  },
  { feature: 'two bought pulls on a front', in: has('pull', (p) => (p.count ?? 1) > 1) },
  { feature: 'two shop-made handles on a front', in: has('handle', (h) => (h.count ?? 1) > 1) },
  { feature: 'vents of slots', in: has('vent', (v) => v.form === 'slots') },
  { feature: 'vents of holes', in: has('vent', (v) => v.form === 'holes') },
  { feature: 'inset doors', in: has('door', (d) => d.hang === 'inset') },
  { feature: 'overlay doors', in: has('door', (d) => d.hang === 'overlay') },
  { feature: 'doors that lift up or drop down', in: (_, piece) => piece.doors.some((d) => d.held) },
  { feature: 'pairs of doors', in: has('door', (d) => d.count === 2) },
  { feature: 'sliding doors', in: has('sliding-doors') },
  { feature: 'sliding doors for one opening each', in: has('sliding-doors', (d) => d.closes === 'each') },
];

function edged(what: RecordKind): Row['in'] {
  return has('edging', (e, job) => treeOf(job).get(e.parent)?.kind === what);
}

/** Handles or pulls whose place is that of something else, or is told to the middle of their row. */
function placed(record: RecordOf<'handle' | 'pull'>): boolean {
  return record.about !== undefined || record.measured !== undefined;
}

/** Holes of both sides of a case, or of a pair of doors. */
function mirrored(record: RecordOf<'holes'>, job: JobDocument): boolean {
  const parent = treeOf(job).get(record.parent);
  return record.mirror === true || (parent?.kind === 'door' && parent.count === 2);
}

function usesFormulas(job: JobDocument): boolean {
  return job.design.records.some((r) =>
    Object.values(r).some((v) => typeof v === 'string' && isFormula(v) && /[(+*/]/.test(v)),
  );
}

function usesDoorway(job: JobDocument): boolean {
  return job.design.records.some((r) =>
    Object.values(r).some((v) => typeof v === 'string' && /(doorway|hall)\./.test(v)),
  );
}

/** Counts, over generated designs, what the ones without a stop say, and what stops the others. */
export class FeatureTable {
  private fine = 0;
  private stopped = 0;
  private readonly counts = ROWS.map(() => 0);
  private readonly stops = new Map<string, number>();

  addFine(job: JobDocument, piece: SetOut): void {
    this.fine++;
    ROWS.forEach((row, i) => {
      if (row.in(job, piece)) this.counts[i]!++;
    });
  }

  addStopped(codes: ReadonlySet<string>): void {
    this.stopped++;
    for (const code of codes) this.stops.set(code, (this.stops.get(code) ?? 0) + 1);
  }

  /** The share of designs without a stop. */
  get share(): number {
    return this.fine / (this.fine + this.stopped);
  }

  /** Features that fewer of the designs without a stop have than so many per cent. */
  rarerThan(percent: number): readonly string[] {
    return ROWS.filter((_, i) => 100 * this.counts[i]! < percent * this.fine).map((row) => row.feature);
  }

  /** The table, to be printed. */
  toString(): string {
    const lines = ROWS.map(
      (row, i) => `${((100 * this.counts[i]!) / this.fine).toFixed(1).padStart(6)} %  ${row.feature}`,
    );
    const stops = [...this.stops].sort(([, a], [, b]) => b - a).map(([code, n]) => `${code} ${n}`);
    return [
      `${this.fine} of ${this.fine + this.stopped} generated designs set out without a stop; stops: ${stops.join(', ') || 'none'}`,
      ...lines,
    ].join('\n');
  }
}
