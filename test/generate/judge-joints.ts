import type { Traced } from '../../src/measure/index.ts';
import { glueAreaMm2, type Joint, type Part, type SetOut } from '../../src/setting-out/index.ts';

type Vec = readonly [number, number, number];

/** A part's corners in the piece, in ticks. */
function boxOf(setOut: SetOut, part: Part): { readonly min: Vec; readonly max: Vec } {
  const t = (x: Traced) => setOut.ledger.ticks(x);
  const min: number[] = part.place.origin.map(t);
  const max = [...min];
  for (const run of ['length', 'width', 'thickness'] as const) {
    const k = 'xyz'.indexOf(part.place[run][1]!);
    const to = min[k]! + (part.place[run].startsWith('+') ? 1 : -1) * t(part[run]);
    [min[k], max[k]] = [Math.min(min[k]!, to), Math.max(max[k]!, to)];
  }
  return { min: min as never, max: max as never };
}

/** Faces that should touch and don't, or are said to touch elsewhere, or to be glued over more than they touch. */
export function jointFaults(setOut: SetOut): string[] {
  return setOut.joints.flatMap((j) => [...touchFaults(setOut, j), ...glueFaults(setOut, j)]);
}

/** What of a button lies against its top: all but the step that is sawn off above its tongue. */
function bodyOf(setOut: SetOut, part: Part): { readonly min: Vec; readonly max: Vec } {
  const { min, max } = boxOf(setOut, part);
  const step = part.features.find((f) => f.kind === 'rabbet' && f.edge === 'start' && f.face === 'show');
  if (step?.kind !== 'rabbet') throw new Error(`${part.id} has no tongue`);
  const off = setOut.ledger.ticks(step.width);
  const k = 'xyz'.indexOf(part.place.length[1]!);
  const by = (v: Vec, d: number) => v.map((x, i) => (i === k ? x + d : x)) as unknown as Vec;
  return part.place.length.startsWith('+') ? { min: by(min, off), max } : { min, max: by(max, -off) };
}

function touchFaults(setOut: SetOut, joint: Joint): string[] {
  if (joint.kind !== 'butt') return [];
  const [part, mate] = [joint.part, joint.mate].map((id) => setOut.parts.find((p) => p.id === id)!);
  const [a, b] = [
    joint.duty === 'button' ? bodyOf(setOut, part!) : boxOf(setOut, part!),
    boxOf(setOut, mate!),
  ];
  const stated = { min: joint.contact.min, max: joint.contact.max };
  const between = joint.over === undefined ? undefined : setOut.parts.find((p) => p.id === joint.over)!;
  const over = between && boxOf(setOut, between);
  const faults: string[] = [];
  for (const k of [0, 1, 2] as const) {
    const [low, high] = [stated.min[k], stated.max[k]].map((x) => setOut.ledger.ticks(x)) as unknown as [
      number,
      number,
    ];
    if (low === high) {
      // What lies between touches both.
      const meets = (at: number, side: 'min' | 'max') =>
        over
          ? over[side][k] === at && b[side][k] === over[side === 'min' ? 'max' : 'min'][k]
          : b[side][k] === at;
      const faces = a.max[k] === low ? meets(low, 'min') : a.min[k] === low && meets(low, 'max');
      if (!faces) faults.push(`${joint.id}: its faces don’t meet at ${low}`);
    } else if (low !== Math.max(a.min[k], b.min[k]) || high !== Math.min(a.max[k], b.max[k]))
      faults.push(`${joint.id}: touches along ${k} otherwise than it says`);
  }
  return faults;
}

function glueFaults(setOut: SetOut, joint: Joint): string[] {
  const stated = glueAreaMm2(setOut, joint);
  const glued = !['pocket-screws', 'face-screws'].includes(joint.hold);
  if (!glued) return stated === undefined ? [] : [`${joint.id}: glued without glue`];
  if (stated === undefined || !(stated > 0)) return [`${joint.id}: glued over nothing`];
  if (joint.kind !== 'butt') return [];
  const sides = ([0, 1, 2] as const).map(
    (k) => (setOut.ledger.ticks(joint.contact.max[k]) - setOut.ledger.ticks(joint.contact.min[k])) / 3200,
  );
  const most = sides.filter((s) => s > 0).reduce((x, y) => x * y, 1);
  return stated <= most + 1 ? [] : [`${joint.id}: glued over more than touches`];
}
