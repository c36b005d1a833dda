import { type Traced, toMm } from '../measure/index.ts';
import type { Fastener, Joint, Part } from '../setting-out/index.ts';
import { angledHeadLines } from './angled-head.ts';
import type { Bench } from './bench.ts';
import type { StageId } from './stages.ts';
import { washerLines } from './washer-lines.ts';
import { listWords, looks, sideWords } from './words.ts';

/** A back under this dimples where a head is drawn too deep; common practice. */
const THIN_MM = 10;

/** The screws of one joint. */
export function driveScrews(bench: Bench, into: string, joint: Joint, stage: StageId = 'assemble'): void {
  const fasteners = joint.fasteners.map((id) => bench.setOut.fasteners.find((f) => f.id === id)!);
  const first: Fastener | undefined = fasteners[0];
  if (!first) return;
  const part = partById(bench, joint.part);
  const mate = partById(bench, joint.mate);
  const pockets = joint.hold === 'pocket-screws';
  // Face screws go in from the side that isn't against the mate.
  const side = pockets ? joint.side : joint.side === 'show' ? 'under' : 'show';
  const screw = bench.job.shop.rack.screws.find((s) => s.id === first.screw)!;
  const over = joint.over === undefined ? undefined : partById(bench, joint.over);
  // Screws of what will lie on this one go through it as well.
  const passed = bench.setOut.joints
    .filter((j) => j.over === part.id && j.mate === mate.id)
    .map((j) => partById(bench, j.part).mark);
  const lengths: Traced[] = [first.length, first.diameter];
  const one = fasteners.length === 1;
  const s = one ? '' : 's';
  const angled = angledHeadLines(bench, into, fasteners, lengths);
  bench.do(
    {
      id: `${part.mark}/screw-${mate.mark}`,
      kind: 'screw',
      stage,
      title: `Screw ${part.mark} to ${mate.mark}`,
      does: {
        act: 'screw',
        workpiece: part.mark,
        into,
        mate: mate.mark,
        by: pockets ? 'pockets' : 'holes',
        ...(over ? { over: over.mark } : {}),
        ...(passed.length > 0 ? { only: 'countersunk' as const } : {}),
        side,
        screw: first.screw,
        length: first.length,
        diameter: first.diameter,
        count: fasteners.length,
      },
      tool: 'drill',
      times: fasteners.length,
      lines: [
        ...toItsMarks(bench, joint, part, mate),
        `${fasteners.length} × ${screw.name ?? screw.id}, {1} × {0}, ${pockets ? `in the pocket${s} at its ${sideWords(part, side)}` : `through its ${passed.length > 0 ? 'countersunk ' : ''}hole${s}${over ? ` and ${one ? 'that' : 'those'} of ${over.mark}` : ''} into the pilot${s} of ${mate.mark}`}.`,
        ...(passed.length > 0
          ? [`Its plain holes stay free: screws through ${listWords(passed)} pass them later.`]
          : []),
        turnLine(joint, toMm(bench.ledger.ticks(part.thickness))),
        ...angled,
        ...washerLines(bench, fasteners, part, mate),
      ],
      lengths,
    },
    [part.mark, mate.mark, into],
  );
}

/** An upright that only its foot holds leans: its upper end comes to its marks before a screw holds it there. */
function toItsMarks({ stories }: Bench, joint: Joint, part: Part, mate: Part): readonly string[] {
  const upper = [
    { of: part, side: joint.side },
    { of: mate, side: joint.mateSide },
  ].find(({ of, side }) => side !== undefined && of.hand === 'none' && looks(of, side) === '+z');
  const marked = stories.some((s) => s.runs === 'across' && s.marks.some((m) => m.part === upper?.of.mark));
  return upper && marked
    ? [`Bring the upper end of ${upper.of.mark} to its marks on the long story stick, and clamp it there.`]
    : [];
}

/** How far the screws of a joint are turned. */
function turnLine(joint: Joint, thicknessMm: number): string {
  if (joint.duty === 'drawer' || joint.duty === 'handle')
    return 'Low clutch setting, the last turns by hand: heads just level.';
  if (joint.hold === 'pocket-screws')
    return 'Low clutch setting: stop when the head sits; more strips the hole.';
  if (joint.duty === 'back')
    return `Heads just level${thicknessMm < THIN_MM ? '; a thin panel dimples if they go deeper' : ''}.`;
  return 'Clamp it first, edges and lines level. Low clutch setting, heads just level: once it spins, the screw holds no more.';
}

function partById(bench: Bench, id: string): Part {
  return bench.setOut.parts.find((p) => p.id === id)!;
}
