import type { Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { CAUTION } from './cautions.ts';
import { listWords } from './words.ts';

/** Begins the work: what must be there and measured before anything is cut. */
export function gather(bench: Bench): void {
  const screws = new Map<string, number>();
  for (const f of bench.setOut.fasteners) screws.set(f.screw, (screws.get(f.screw) ?? 0) + 1);
  const lots = bench.job.shop.rack.lots.filter((lot) => bench.setOut.parts.some((p) => p.lot === lot.id));
  bench.do(
    {
      id: 'gather/stock',
      kind: 'gather',
      stage: 'gather',
      title: 'Gather and measure the stock',
      does: { act: 'other', on: [] },
      lines: [
        ...lots.map(
          (lot, i) =>
            `${lot.name}: reckoned ${lot.thickness === undefined ? 'at its nominal' : 'as measured, at'} {${i}} thick. Measure again at four corners; if it differs by more than 0.2 mm, enter what you find and plan again.`,
        ),
        ...[...screws].map(([id, n]) => {
          const screw = bench.job.shop.rack.screws.find((s) => s.id === id)!;
          return `${n} × ${screw.name ?? screw.id} (on the rack: ${screw.have ?? 0}).`;
        }),
      ],
      lengths: lots
        .map((lot) => bench.setOut.parts.find((p) => p.lot === lot.id)!)
        .map((p) => (p.form === 'strip' ? (p.rough?.thickness ?? p.thickness) : p.thickness)),
      cautions: [CAUTION.lift],
    },
    [],
  );
}

/** Sands all parts before they are put together, where every face can still be reached. */
export function sandParts(bench: Bench): void {
  const edging = new Set(bench.setOut.joints.filter((j) => j.duty === 'edging').map((j) => j.part));
  const byLetter = new Map<string, Part[]>();
  for (const p of bench.setOut.parts) {
    if (edging.has(p.id)) continue;
    const letter = p.mark[0]!;
    byLetter.set(letter, [...(byLetter.get(letter) ?? []), p]);
  }
  for (const parts of byLetter.values()) {
    const marks = parts.map((p) => p.mark);
    bench.do(
      {
        id: `${marks[0]}/sand`,
        kind: 'sand',
        stage: 'sand',
        title: `Sand ${listWords(marks)}`,
        does: { act: 'other', on: marks },
        tool: 'sander',
        times: parts.length,
        lines: [
          'Panels from 150 or 180 on to 220: their veneer is thin, so pencil a few lines across and stop when they are gone.',
          'Edges by hand, arrises eased a little; no sanding where glue or another part will come. Write the mark again where it was sanded off.',
        ],
        cautions: [CAUTION.dust],
      },
      marks,
    );
  }
}

/** Finish, and the way to its place. */
export function finishAndSetUp(bench: Bench): void {
  const finish = bench.job.shop.rack.finishes[0];
  const whole = ['case'];
  bench.do(
    {
      id: 'finish/prepare',
      kind: 'inspect',
      stage: 'finish',
      title: 'Look the piece over before the finish',
      does: { act: 'other', on: whole },
      lines: [
        'With a lamp held low: glue spots, pencil lines, dents. What shows now will show more under the finish.',
      ],
    },
    whole,
  );
  for (const coat of [1, 2])
    bench.do(
      {
        id: `finish/coat-${coat}`,
        kind: 'finish',
        stage: 'finish',
        title: `${coat === 1 ? 'First' : 'Second'} coat of ${finish ? finish.material.replaceAll('-', ' ') : 'finish'}`,
        does: { act: 'other', on: whole },
        lines: [
          coat === 1
            ? 'Insides first, then outside, the top last. Thin and even; take off what stands after the time on the tin.'
            : 'Rub down lightly by hand, wipe off the dust, and coat again: insides, outside, top.',
          'Let it dry as long as its label says.',
        ],
        cautions: [CAUTION.oil],
      },
      whole,
    );
  bench.do(
    {
      id: 'home/set-up',
      kind: 'anchor',
      stage: 'home',
      title: 'Set it in its place, level, and fix it to the wall',
      does: { act: 'other', on: whole },
      lines: [
        'Level it both ways with thin packing under the base, then fix it to the wall through the back near the top.',
        'Load the lowest shelves first.',
      ],
      cautions: [CAUTION.lift, CAUTION.tip],
    },
    whole,
  );
}
