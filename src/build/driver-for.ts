import { axisOf, driverAt, type Fastener, type Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { boxOf } from './boxes.ts';

/** The handiest driver that finds room behind a screw among what stands there; undefined where none does. */
export function driverFor(
  bench: Bench,
  fastener: Fastener,
  standing: readonly Part[],
): ReturnType<typeof driverAt> {
  const own = bench.setOut.parts.find((p) => p.id === fastener.through[0])!;
  const others = standing.filter((p) => p !== own).map((p) => boxOf(bench.ledger, p));
  const way = { head: headOf(bench, fastener), out: outOf(fastener) };
  return driverAt(way, boxOf(bench.ledger, own), others);
}

function headOf({ ledger }: Bench, { head }: Fastener): readonly [number, number, number] {
  return [ledger.ticks(head[0]), ledger.ticks(head[1]), ledger.ticks(head[2])];
}

/** From the head out to the hand. */
function outOf({ direction, lean }: Fastener): readonly [number, number, number] {
  const out: [number, number, number] = [0, 0, 0];
  const add = (d: Fastener['direction'], by: number) => {
    const { axis, sign } = axisOf(d);
    out[axis] -= sign * by;
  };
  const radians = ((lean?.degrees ?? 0) * Math.PI) / 180;
  add(direction, Math.cos(radians));
  if (lean) add(lean.toward, Math.sin(radians));
  return out;
}
