import { type JobDocument, type RecordOf, treeOf } from '../../src/job/index.ts';
import type { SetOut } from '../../src/setting-out/index.ts';
import { boxOf, outerBoxOf } from './judge-set-out.ts';

/** Where a case says how its panels meet, corner by corner, and they don’t: what runs through has its end outside, all the other’s stands before its face. */
export function cornerFaults(job: JobDocument, setOut: SetOut): string[] {
  return treeOf(job)
    .all('case')
    .flatMap((box) => (box.joints === 'mitre' ? [] : faultsAt(box, setOut)));
}

function faultsAt(box: RecordOf<'case'>, setOut: SetOut): string[] {
  const panel = (role: string) => setOut.parts.find((p) => p.id === `${box.id}/${role}`);
  const faults: string[] = [];
  for (const hand of ['left', 'right'] as const) {
    const side = panel(`${hand}-side`);
    if (!side) continue;
    const [own, outer] = [boxOf(setOut, side), outerBoxOf(setOut, side)];
    const out = hand === 'left' ? 'min' : 'max';
    for (const [role, past, up] of [
      ['bottom', ['under', `under-${hand}`], 'min'],
      ['lid', ['over', `over-${hand}`], 'max'],
    ] as const) {
      const flat = panel(role);
      if (!flat) continue;
      const lies = outerBoxOf(setOut, flat);
      const through = past.some((so) => so === box[role]);
      const beyond = (a: number, b: number, end: 'min' | 'max') => (end === 'min' ? a < b : a > b);
      const right = through
        ? lies[out][0] === own[out][0] && beyond(lies[up][2], outer[up][2], up)
        : beyond(own[out][0], lies[out][0], out) && !beyond(lies[up][2], outer[up][2], up);
      if (!right) faults.push(`${flat.id} and ${side.id}: not as the case says at that corner`);
    }
  }
  return faults;
}
