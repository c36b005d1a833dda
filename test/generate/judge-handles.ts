import type { JobDocument } from '../../src/job/index.ts';
import type { SetOut } from '../../src/setting-out/index.ts';
import { rowOfHandlesFaults } from './judge-handle-rows.ts';
import { boxOf } from './judge-set-out.ts';

// A judge of handles: its own arithmetic, in ticks of 1/3200 mm.

const MM = 3200;

/** Everything that is wrong with the handles of a set-out piece: off their doors, or hardly held. */
export function handleFaults(job: JobDocument, setOut: SetOut): string[] {
  return [...pullFaults(setOut), ...madeFaults(setOut), ...rowOfHandlesFaults(job, setOut)];
}

/** Screws of bought pulls that hold in their threads, through holes as far apart as the pull's. */
function pullFaults(setOut: SetOut): string[] {
  const t = (x: SetOut['pulls'][number]['reach']) => setOut.ledger.ticks(x);
  return setOut.pulls.flatMap((pull) => {
    const faults: string[] = [];
    const boards = [pull.part, ...(pull.behind ? [pull.behind] : [])].map(
      (id) => setOut.parts.find((p) => p.id === id)!,
    );
    const wood = boards.reduce((sum, p) => sum + t(p.thickness), 0);
    const reach = t(pull.screwLength) - wood;
    if (reach < t(pull.screwDiameter) || reach >= t(pull.deep))
      faults.push('has screws that don’t fit its thread');
    for (const board of boards) {
      const at = board.features.flatMap((f) =>
        f.kind === 'hole' && f.id.startsWith(`${board.id}#${pull.record}:`) ? [f.at.map(t)] : [],
      );
      const alike = setOut.pulls.filter((p) => p.record === pull.record && p.part === pull.part);
      if (at.length !== pull.count * alike.length) faults.push(`has ${at.length} holes in ${board.id}`);
      for (let i = 0; pull.holes && i + 1 < at.length; i += 2) {
        const [a, b] = [at[i]!, at[i + 1]!];
        if (Math.abs(Math.hypot(a[0]! - b[0]!, a[1]! - b[1]!) - t(pull.holes)) > 2)
          faults.push('has holes that are not as far apart as its own');
      }
    }
    return faults.map((what) => `${pull.record} on ${pull.part} ${what}`);
  });
}

function madeFaults(setOut: SetOut): string[] {
  const t = (x: SetOut['fasteners'][number]['length']) => setOut.ledger.ticks(x);
  return setOut.joints
    .filter((j) => j.duty === 'handle')
    .flatMap((joint) => {
      const [front, handle] = [joint.part, joint.mate].map((id) =>
        boxOf(setOut, setOut.parts.find((p) => p.id === id)!),
      );
      const faults: string[] = [];
      if (handle!.max[1] !== front!.min[1]) faults.push('does not lie on its front');
      for (const k of [0, 2] as const)
        if (handle!.min[k] - front!.min[k] < 5 * MM || front!.max[k] - handle!.max[k] < 5 * MM)
          faults.push('comes to an edge');
      const screws = setOut.fasteners.filter((f) => f.joint === joint.id);
      if (screws.length !== 2) faults.push(`has ${screws.length} screws`);
      const along = handle!.max[0] - handle!.min[0] > handle!.max[2] - handle!.min[2] ? 0 : 2;
      for (const s of screws) {
        const at = t(s.head[along]);
        if (Math.min(at - handle!.min[along], handle!.max[along] - at) < 10 * t(s.diameter))
          faults.push('would split at its end');
        const tip = t(s.head[1]) - t(s.length);
        if (tip < handle!.min[1] + 3 * MM) faults.push('has a screw that nearly comes through');
        if (handle!.max[1] - tip < 5 * MM) faults.push('has a screw that hardly holds');
      }
      return faults.map((what) => `${joint.mate} ${what}`);
    });
}
