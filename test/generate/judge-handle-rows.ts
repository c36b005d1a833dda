import { type JobDocument, type RecordOf, treeOf } from '../../src/job/index.ts';
import type { Traced } from '../../src/measure/index.ts';
import type { SetOut } from '../../src/setting-out/index.ts';
import { boxOf, outerBoxOf } from './judge-set-out.ts';

// A judge of several handles on one front: its own arithmetic, in ticks of 1/3200 mm.

const MM = 3200;
type OnFront = RecordOf<'handle' | 'pull'>;

/** What stands on one front: its middles from the left edge and from the lower one, and how wide and high that front is. */
interface Row {
  readonly front: string;
  readonly role: string;
  readonly origin: readonly [number, number];
  readonly size: readonly [number, number];
  readonly at: readonly (readonly [number, number])[];
}

/** Everything that is wrong with how many handles stand on a front, and where. */
export function rowOfHandlesFaults(job: JobDocument, setOut: SetOut): string[] {
  const tree = treeOf(job);
  return [...tree.all('handle'), ...tree.all('pull')].flatMap((record) => {
    const parent = tree.get(record.parent);
    const rows = rowsOf(setOut, record);
    const sideways =
      parent?.kind === 'sliding-doors' ||
      (parent?.kind === 'door' && parent.hand !== 'above' && parent.hand !== 'below');
    const k = (record.row ?? (sideways ? 'up' : 'across')) === 'across' ? 0 : 1;
    return rows
      .flatMap((row) => [
        ...(row.at.length === (record.count ?? 1) ? [] : [`${row.at.length} handles`]),
        ...(row.at.length > 1 ? wrongPlaces(record, row, k, (sideways ? 0 : 1) === k) : []),
        ...(record.about === undefined || standsAbout(setOut, record.about, row, k)
          ? []
          : [`does not stand about ${record.about}`]),
      ])
      .concat(mirrored(rows) ? [] : ['the right door does not mirror the left'])
      .map((what) => `${record.id}: ${what}`);
  });
}

function wrongPlaces(record: OnFront, row: Row, k: 0 | 1, opens: boolean): string[] {
  const faults: string[] = [];
  const at = row.at.map((p) => p[k]);
  const whole = row.size[k];
  const [first, last] = [at[0]!, at.at(-1)!];
  if (row.at.some((p) => Math.abs(p[1 - k]! - row.at[0]![1 - k]!) > 2)) faults.push('stand in no line');
  const steps = at.slice(1).map((a, i) => a - at[i]!);
  if (Math.max(...steps) - Math.min(...steps) > 1 * MM) faults.push('are not equally apart');
  if (Math.min(...steps) < 20 * MM) faults.push('leave no room for fingers');
  const [low, high] = k === 0 ? [record.fromLeft, record.fromRight] : [record.fromBelow, record.fromAbove];
  if (
    low === high &&
    record.about === undefined &&
    !(opens && record.fromEdge !== undefined) &&
    Math.abs(first + last - whole) > 4
  )
    faults.push('do not stand about the middle');
  // Told in whole millimetres from the middle.
  const said = low ?? high ?? record.apart;
  if (said === undefined)
    for (const [i, a] of at.entries())
      if (Math.abs(a - (whole * (2 * i + 1)) / (2 * at.length)) > 0.5 * MM + 4)
        faults.push('do not stand in the middle of their shares');
  return faults;
}

/** Is the middle of a row, along its own way, that of what it stands about? */
function standsAbout(setOut: SetOut, about: string, row: Row, k: 0 | 1): boolean {
  const axis = k === 0 ? 0 : 2;
  const t = (x: Traced) => setOut.ledger.ticks(x);
  const opening = setOut.openings.find((o) => o.id === about);
  const boxes = opening
    ? [{ min: opening.box.min.map(t), max: opening.box.max.map(t) }]
    : setOut.parts.filter((p) => p.record === about).map((p) => boxOf(setOut, p));
  const low = Math.min(...boxes.map((b) => b.min[axis]!));
  const high = Math.max(...boxes.map((b) => b.max[axis]!));
  const middle = row.origin[k] + (row.at[0]![k] + row.at.at(-1)![k]) / 2;
  return Math.abs(low + high - 2 * middle) <= 4;
}

/** Of a pair of doors, what stands on the one is as far from its edges as on the other, from left to right exchanged. */
function mirrored(rows: readonly Row[]): boolean {
  const left = rows.find((r) => r.role === 'left-door');
  const right = rows.find((r) => r.role === 'right-door');
  if (!left || !right) return true;
  const key = (x: number, z: number) => `${Math.round(x / MM)} ${Math.round(z / MM)}`;
  const one = left.at.map(([x, z]) => key(x, z)).sort();
  const other = right.at.map(([x, z]) => key(right.size[0] - x, z)).sort();
  return one.join() === other.join();
}

function rowsOf(setOut: SetOut, record: OnFront): readonly Row[] {
  return setOut.parts.flatMap((part) => {
    if (part.record !== record.parent) return [];
    const front = outerBoxOf(setOut, part);
    const at = (record.kind === 'handle' ? handlesOn : pullsOn)(setOut, record, part.id).map(
      ([x, z]) => [x - front.min[0], z - front.min[2]] as const,
    );
    const size = [front.max[0] - front.min[0], front.max[2] - front.min[2]] as const;
    const origin = [front.min[0], front.min[2]] as const;
    return at.length > 0 ? [{ front: part.id, role: part.role, origin, size, at }] : [];
  });
}

type Middle = readonly [x: number, z: number];

function inOrder(at: readonly Middle[]): readonly Middle[] {
  return [...at].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
}

function handlesOn(setOut: SetOut, record: OnFront, front: string): readonly Middle[] {
  return inOrder(
    setOut.joints
      .filter((j) => j.duty === 'handle' && j.part === front)
      .map((j) => setOut.parts.find((p) => p.id === j.mate)!)
      .filter((p) => p.record === record.id)
      .map((p) => boxOf(setOut, p))
      .map((b) => [(b.min[0] + b.max[0]) / 2, (b.min[2] + b.max[2]) / 2]),
  );
}

/** The middle between the holes of each pull. */
function pullsOn(setOut: SetOut, record: OnFront, front: string): readonly Middle[] {
  // The board behind has the same holes, and no pull.
  if (!setOut.pulls.some((p) => p.part === front && p.record === record.id)) return [];
  const part = setOut.parts.find((p) => p.id === front)!;
  const holes = part.features.flatMap((f) => {
    if (f.kind !== 'hole' || !f.id.startsWith(`${front}#${record.id}:`)) return [];
    const at: Record<string, number> = {};
    (['length', 'width'] as const).forEach((run, i) => {
      const way = part.place[run];
      const k = 'xyz'.indexOf(way[1]!);
      const from = setOut.ledger.ticks(part.place.origin[k]!);
      at[way[1]!] = from + (way[0] === '+' ? 1 : -1) * setOut.ledger.ticks(f.at[i]!);
    });
    return [[at.x!, at.z!] as const];
  });
  const each = setOut.pulls.find((p) => p.record === record.id)?.count ?? 1;
  const middles: Middle[] = [];
  for (let i = 0; i < holes.length; i += each) {
    const own = holes.slice(i, i + each);
    middles.push([own.reduce((s, h) => s + h[0], 0) / each, own.reduce((s, h) => s + h[1], 0) / each]);
  }
  return inOrder(middles);
}
