import type { Traced } from '../measure/index.ts';
import type { BoughtPull, Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';

/** Screws bought pulls on once the finish is dry, so that it runs under them and nothing is masked. */
export function fitPulls(bench: Bench): void {
  const onFront = new Map<string, [BoughtPull, ...BoughtPull[]]>();
  for (const pull of bench.setOut.pulls) {
    const there = onFront.get(pull.part);
    if (there) there.push(pull);
    else onFront.set(pull.part, [pull]);
  }
  for (const pulls of onFront.values()) fitPullsOf(bench, pulls);
}

/** All pulls of one front: of one kind, by the same screws. */
function fitPullsOf(bench: Bench, pulls: readonly [BoughtPull, ...BoughtPull[]]): void {
  const [pull] = pulls;
  const many = pulls.length > 1;
  const count = pull.count * pulls.length;
  const partOf = (id: string): Part => bench.setOut.parts.find((p) => p.id === id)!;
  const part = partOf(pull.part);
  const behind = pull.behind === undefined ? undefined : partOf(pull.behind);
  const { rack } = bench.job.shop;
  const name = rack.pulls?.find((p) => p.id === pull.pull)?.name ?? pull.pull;
  const screw = rack.screws.find((s) => s.id === pull.screw)!;
  const lengths: Traced[] = [pull.screwLength, pull.screwDiameter, pull.reach, pull.deep];
  const n = pull.holes === undefined ? -1 : lengths.push(pull.holes) - 1;
  bench.do(
    {
      id: `${part.mark}/pull`,
      kind: 'hang',
      stage: 'finish',
      title: `Screw ${many ? `${pulls.length} × ` : ''}${name} on ${part.mark} (${part.name})`,
      does: {
        act: 'pull',
        workpiece: part.mark,
        ...(behind ? { behind: behind.mark } : {}),
        into: 'case',
        pull: pull.pull,
        screw: pull.screw,
        length: pull.screwLength,
        diameter: pull.screwDiameter,
        count,
        ...(pull.holes === undefined ? {} : { holes: pull.holes }),
        deep: pull.deep,
      },
      tool: 'drill',
      times: pulls.length,
      lines: [
        `${count} × ${screw.name ?? screw.id}, {1} × {0}, from behind${behind ? ` through ${behind.mark} and ${part.mark}` : ''}: {2} of each stand in the pull, whose thread is {3} deep.`,
        ...(n < 0
          ? []
          : [
              `${many ? 'Their holes' : 'Its holes'} are {${n}} apart, as measured on the pull: both screws${many ? ' of each' : ''} begin by hand before either is tight.`,
            ]),
        'By hand at the end, only until it no longer turns; a screw that stops short of tight is too long.',
      ],
      lengths,
    },
    [part.mark, ...(behind ? [behind.mark] : []), 'case'],
  );
}
