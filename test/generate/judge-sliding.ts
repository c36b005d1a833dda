import type { Part, SetOut, SlidingSet } from '../../src/setting-out/index.ts';
import { boxOf } from './judge-set-out.ts';

// A judge of sliding doors: its own arithmetic, in ticks of 1/3200 mm.

const MM = 3200;
type Box = ReturnType<typeof boxOf>;

/** Everything that is wrong with the sliding doors of a set-out piece. */
export function slidingFaults(setOut: SetOut): string[] {
  return setOut.sliding.flatMap((set) =>
    [
      ...set.leaves.flatMap((leaf) => inItsGrooves(setOut, set, leaf.part)),
      ...freeToSlide(setOut, set),
      ...closes(setOut, set),
      ...handlesLetPass(setOut, set),
    ].map((what) => `${set.record}: ${what}`),
  );
}

function partOf(setOut: SetOut, id: string): Part {
  return setOut.parts.find((p) => p.id === id)!;
}

function box(setOut: SetOut, id: string): Box {
  return boxOf(setOut, partOf(setOut, id));
}

/** A door stands on the floor of one groove, at least 1.5 mm in the other, and can be lifted out of the lower one. */
function inItsGrooves(setOut: SetOut, set: SlidingSet, id: string): string[] {
  const t = (x: typeof set.lift) => setOut.ledger.ticks(x);
  const door = box(setOut, id);
  const floor = box(setOut, set.below).max[2];
  const ceiling = box(setOut, set.above).min[2];
  const [upper, lower] = [t(set.groove.upper), t(set.groove.lower)];
  const faults: string[] = [];
  const want = (fine: boolean, what: string) => {
    if (!fine) faults.push(`${id} ${what}`);
  };
  want(floor - door.min[2] === lower, 'does not stand on the floor of its groove');
  want(door.max[2] - ceiling >= 1.5 * MM, 'hardly stands in its upper groove');
  want(door.max[2] + lower + 1.5875 * MM <= ceiling + upper, 'can’t be lifted over the lower edge');
  want(2 * upper <= t(partOf(setOut, set.above).thickness), 'runs in too deep a groove above');
  // What runs is the door from its front; rabbets behind leave it. Grooves are counted from the panel's front edge.
  const runs = [door.min[1], door.min[1] + t(set.tongue)] as const;
  for (const [panel, depth] of [
    [set.below, lower],
    [set.above, upper],
  ] as const) {
    const front = box(setOut, panel).min[1];
    const grooves = partOf(setOut, panel).features.filter(
      (f) => f.kind === 'groove' && f.purpose.includes('track'),
    );
    const around = grooves.some((g) => {
      if (g.kind !== 'groove' || t(g.depth) !== depth) return false;
      const [from, to] = [front + t(g.inset), front + t(g.inset) + t(g.width)];
      const play = t(g.width) - t(set.tongue);
      return from < runs[0] && to > runs[1] && play >= 0.8 * MM && play <= 2 * MM;
    });
    want(around, `has no groove round it in ${panel}`);
  }
  return faults;
}

/** Over their whole way doors meet only what they run in; those of one track don't overlap. */
function freeToSlide(setOut: SetOut, set: SlidingSet): string[] {
  const faults: string[] = [];
  const [left, right] = [box(setOut, set.left).max[0], box(setOut, set.right).min[0]];
  const handles = setOut.joints.filter((j) => j.duty === 'handle').map((j) => j.mate);
  // Handles are judged by what they leave closed.
  const own = new Set([...set.leaves.map((l) => l.part), ...handles]);
  for (const leaf of set.leaves) {
    const door = box(setOut, leaf.part);
    if (door.min[0] < left || door.max[0] > right) faults.push(`${leaf.part} reaches beyond its ends`);
    for (const p of setOut.parts) {
      if (p.id === leaf.part || p.id === set.below || p.id === set.above) continue;
      const other = boxOf(setOut, p);
      const meets =
        other.min[0] < right &&
        other.max[0] > left &&
        other.min[1] < door.max[1] + MM / 2 &&
        other.max[1] > door.min[1] - MM / 2 &&
        other.min[2] < door.max[2] &&
        other.max[2] > door.min[2];
      if (!own.has(p.id) && meets) faults.push(`${leaf.part} slides into ${p.id}`);
      const beside = set.leaves.find((l) => l.part === p.id);
      if (!beside) continue;
      if (beside.track !== leaf.track && meets) faults.push(`${leaf.part} and ${p.id} don’t pass`);
      if (beside.track === leaf.track && other.min[0] < door.max[0] && other.max[0] > door.min[0])
        faults.push(`${leaf.part} and ${p.id} stand in one place`);
    }
  }
  return faults;
}

/** Doors that close everything leave no slit; else every choice of openings is covered by some order of the doors. */
function closes(setOut: SetOut, set: SlidingSet): string[] {
  const [left, right] = [box(setOut, set.left).max[0], box(setOut, set.right).min[0]];
  const doors = set.leaves.map((l) => ({ ...l, box: box(setOut, l.part) }));
  const wide = doors[0]!.box.max[0] - doors[0]!.box.min[0];
  if (set.closes === 'all') {
    const inOrder = [...doors].sort((a, b) => a.box.min[0] - b.box.min[0]);
    let reached = left;
    for (const d of inOrder) {
      if (d.box.min[0] > reached) return ['leaves a slit'];
      reached = d.box.max[0];
    }
    return reached === right ? [] : ['does not close to its end'];
  }
  const bay = (id: string) => setOut.openings.find((o) => o.id === id)!.box;
  const t = (x: ReturnType<typeof bay>['min'][0]) => setOut.ledger.ticks(x);
  return set.closable.flatMap((ids) => {
    const bays = ids.map((id) => [t(bay(id).min[0]), t(bay(id).max[0])] as const);
    return orders(doors).some((order) => {
      const spans = order.map((d, i) => ({
        track: d.track,
        from: Math.max(left, bays[i]![1] - wide),
        to: Math.min(bays[i]![0], right - wide),
      }));
      if (spans.some((s) => s.from > s.to)) return false;
      return doors.every(({ track }) => {
        let reached = left;
        for (const s of spans.filter((x) => x.track === track)) {
          const at = Math.max(reached, s.from);
          if (at > s.to) return false;
          reached = at + wide;
        }
        return true;
      });
    })
      ? []
      : [`can’t close ${ids.join(', ')}`];
  });
}

function orders<T>(of: readonly T[]): readonly (readonly T[])[] {
  if (of.length < 2) return [of];
  return of.flatMap((first, i) => orders(of.filter((_, k) => k !== i)).map((rest) => [first, ...rest]));
}

/**
 * With what stands out of the doors behind, every choice of openings can still be closed: each door is put as far left as
 * its opening, its neighbours and the handles let it.
 */
function handlesLetPass(setOut: SetOut, set: SlidingSet): string[] {
  const doors = [...set.leaves]
    .map((leaf) => {
      const mates = setOut.joints
        .filter((j) => j.duty === 'handle' && j.part === leaf.part)
        .map((j) => box(setOut, j.mate));
      // All that stands out of a door, from the first handle to the last.
      const handle =
        mates.length === 0
          ? undefined
          : {
              min: [0, 1].map((k) => Math.min(...mates.map((b) => b.min[k]!))),
              max: [Math.max(...mates.map((b) => b.max[0]!))],
            };
      return { ...leaf, box: box(setOut, leaf.part), handle };
    })
    .sort((a, b) => a.order - b.order);
  const [left, right] = [box(setOut, set.left).max[0], box(setOut, set.right).min[0]];
  const wide = doors[0]!.box.max[0] - doors[0]!.box.min[0];
  const t = (x: typeof set.gap) => setOut.ledger.ticks(x);
  const wants =
    set.closes === 'all'
      ? [doors.map((d) => [d.box.min[0] + wide, d.box.min[0]] as const)]
      : set.closable.map((ids) =>
          ids.map((id) => {
            const bay = setOut.openings.find((o) => o.id === id)!.box;
            return [t(bay.max[0]), t(bay.min[0])] as const;
          }),
        );
  const faults: string[] = [];
  for (const want of wants) {
    const places: number[] = [];
    for (const [i, door] of doors.entries()) {
      let at = Math.max(left, want[i]![0] - wide);
      for (const [k, before] of doors.slice(0, i).entries()) {
        const behind = before.track > door.track ? before : door.track > before.track ? door : undefined;
        if (before.track === door.track) at = Math.max(at, places[k]! + wide);
        // Only what comes into the way of the door before it counts.
        if (!behind?.handle) continue;
        const front = behind === before ? door : before;
        if (behind.handle.min[1]! >= front.box.max[1]) continue;
        const [from, to] = [
          behind.handle.min[0]! - behind.box.min[0],
          behind.handle.max[0]! - behind.box.min[0],
        ];
        at = Math.max(at, places[k]! + (behind === before ? to : wide - from));
      }
      if (at > want[i]![1] || at + wide > right)
        faults.push('a handle keeps doors from closing what they should');
      places.push(at);
    }
  }
  return faults;
}
