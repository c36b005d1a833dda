import type { Traced } from '../../src/measure/index.ts';
import type { PrintedFit, SetOut } from '../../src/setting-out/index.ts';
import { boxOf, outerBoxOf } from './judge-set-out.ts';

// A judge of fits: it adds up loops, and measures doors in their openings on the boxes of the parts.

/** Everything that is wrong with the fits of a set-out piece. */
export function fitFaults(setOut: SetOut): string[] {
  const ids = setOut.fits.map((f) => f.id);
  return [
    ...(new Set(ids).size === ids.length ? [] : ['two fits with one id']),
    ...setOut.fits.flatMap((fit) => loopFaults(setOut, fit).map((what) => `${fit.id}: ${what}`)),
    ...doorsMeasured(setOut),
    ...unfitted(setOut),
    ...tracks(setOut),
  ];
}

/** What a loop adds up to, in ticks, without the film of the finish if that is asked. */
function sumOf({ ledger }: SetOut, fit: PrintedFit, bare = false): number {
  return fit.loop
    .filter((m) => !bare || m.made.by !== 'finish')
    .reduce((sum, m) => sum + m.sign * (m.times ?? 1) * ledger.ticks(m.length), 0);
}

function loopFaults(setOut: SetOut, fit: PrintedFit): string[] {
  const faults: string[] = [];
  const t = setOut.ledger.ticks(fit.gap);
  if (sumOf(setOut, fit) !== t) faults.push(`the loop adds up to ${sumOf(setOut, fit)}, not to ${t}`);
  if (!fit.loop.some((m) => m.sign > 0) || !fit.loop.some((m) => m.sign < 0))
    faults.push('nothing opens it, or nothing closes it');
  if (fit.most !== undefined && setOut.ledger.ticks(fit.most) <= setOut.ledger.ticks(fit.least))
    faults.push('no gap will do');
  const cut = [...setOut.parts, ...setOut.splines];
  for (const m of fit.loop) {
    const part = cut.find((p) => p.id === m.part);
    if (m.part !== undefined && !part) faults.push(`no part ${m.part}`);
    const { made } = m;
    if (made.by === 'lot' && !cut.some((p) => p.lot === made.lot)) faults.push(`no lot ${made.lot}`);
  }
  const ticks = (x: Traced): number => setOut.ledger.ticks(x);
  const [gap, least, printed] = [ticks(fit.gap), ticks(fit.least), ticks(fit.printed)];
  const all = fit.loop.reduce((sum, m) => sum + m.sign * (m.times ?? 1) * setOut.ledger.ticks(m.printed), 0);
  if (all !== printed) faults.push(`the printed sizes add up to ${all}, not to ${printed}`);
  // Rounding takes a quarter of what a gap may lose at most, and what has room keeps it.
  const keeps = gap > 0 && least < gap ? Math.max(0, gap - (gap - least) / 4) : gap;
  if (fit.toFit !== undefined && printed < keeps - 1) faults.push(`printed ${printed}, drawn ${gap}`);
  if (fit.toFit !== undefined && !cut.some((p) => p.id === fit.toFit)) faults.push(`no part ${fit.toFit}`);
  return faults;
}

/** Doors by the boxes: from the nearest part on one side to the nearest on the other, less the doors. */
function doorsMeasured(setOut: SetOut): string[] {
  return setOut.fits
    .filter((f) => f.kind === 'door')
    .flatMap((fit) => {
      const axis = fit.id.endsWith('/width') ? 0 : 2;
      const leaves = new Set(setOut.doors.map((d) => d.part));
      const inLoop = new Set(fit.loop.map((m) => m.part));
      const doors = setOut.parts.filter((p) => leaves.has(p.id) && inLoop.has(p.id));
      const boxes = doors.map((d) => outerBoxOf(setOut, d));
      const ids = new Set(doors.map((d) => d.id));
      const strips = new Set(
        setOut.joints.filter((j) => j.duty === 'edging' && ids.has(j.mate)).map((j) => j.part),
      );
      const min = [0, 1, 2].map((k) => Math.min(...boxes.map((b) => b.min[k]!)));
      const max = [0, 1, 2].map((k) => Math.max(...boxes.map((b) => b.max[k]!)));
      const beside = setOut.parts
        .filter((p) => !doors.includes(p) && !strips.has(p.id))
        .map((p) => boxOf(setOut, p))
        .filter((b) => [0, 1, 2].every((k) => k === axis || (b.min[k]! < max[k]! && b.max[k]! > min[k]!)));
      const low = Math.max(...beside.map((b) => b.max[axis]!).filter((at) => at <= min[axis]!));
      const high = Math.min(...beside.map((b) => b.min[axis]!).filter((at) => at >= max[axis]!));
      const wide = boxes.reduce((sum, b) => sum + b.max[axis]! - b.min[axis]!, 0);
      const gap = high - low - wide;
      const sum = sumOf(setOut, fit, true);
      return gap === sum ? [] : [`${fit.id}: ${gap} measured on the boxes, ${sum} by its loop`];
    });
}

/** Sliding doors by the boxes: what is above one that is lifted in, and how deep it stands when it is down. */
function tracks(setOut: SetOut): string[] {
  const box = (id: string) => boxOf(setOut, setOut.parts.find((p) => p.id === id)!);
  return setOut.sliding.flatMap((set) => {
    const [floor, ceiling] = [box(set.below).max[2], box(set.above).min[2]];
    const upper = setOut.ledger.ticks(set.groove.upper);
    return set.leaves.flatMap(({ part }) => {
      const door = box(part);
      const is = (end: string) => {
        const fit = setOut.fits.find((f) => f.id === `${part}/${end}`);
        return fit ? sumOf(setOut, fit, true) : undefined;
      };
      const lifted = ceiling + upper - (floor + door.max[2] - door.min[2]);
      return [
        ...(is('lift') === lifted ? [] : [`${part}/lift: ${lifted} on the boxes, ${is('lift')} by its loop`]),
        ...(is('hold') === door.max[2] - ceiling ? [] : [`${part}/hold is ${is('hold')} by its loop`]),
      ];
    });
  });
}

/** Inset doors and panels between panels that have no fit. */
function unfitted(setOut: SetOut): string[] {
  const has = (id: string) => setOut.fits.some((f) => f.id === id);
  return [
    ...setOut.doors.flatMap((d) =>
      d.hang === 'overlay' || (has(`${d.record}/width`) && has(`${d.part}/height`))
        ? []
        : [`${d.part} has no fit`],
    ),
    ...setOut.parts.flatMap((p) =>
      /^[DE]/.test(p.mark) && p.between && !has(`${p.id}/length`) ? [`${p.id} has no fit`] : [],
    ),
  ];
}
