import type { Traced } from '../measure/index.ts';
import { type Direction, doorsOf, finishOf, glueAreaMm2, type Part } from '../setting-out/index.ts';
import { massWords } from './amounts.ts';
import type { Bench } from './bench.ts';
import { planesOf } from './boxes.ts';
import { apartWords, unitsOf } from './case-units.ts';
import { timeWords } from './duration-words.ts';
import { readyWords } from './finish/ready-words.ts';
import { liftCautions, weightOf } from './lifting.ts';
import { glueOf } from './setting-times.ts';
import { capital, counted, listWords } from './words.ts';

/** The way from the shop to where the piece will stand. */
export function carryHome(bench: Bench): void {
  const { drawers, pinned } = bench.setOut;
  const doors = doorsOf(bench.setOut);
  const way = onTheWay(bench);
  const loose = [
    counted(doors.length, 'door', 'doors'),
    counted(drawers.length, 'drawer', 'drawers'),
    counted(pinned.length, 'loose shelf', 'loose shelves'),
  ];
  const out = loose.flat();
  const scribed = bench.setOut.scribedTops.map(
    (top) => bench.setOut.parts.find((p) => p.id === top.part)!.mark,
  );
  const one = out.length === 1 && doors.length + drawers.length + pinned.length === 1;
  bench.do(
    {
      id: 'home/carry',
      kind: 'move',
      stage: 'home',
      title: 'Carry it to its place',
      does: { act: 'other', on: ['case'] },
      times: 4,
      lines: [
        ...way.lines,
        `${way.each} about ${massWords(bench.job.shop.units, Math.round(weightOf(bench, way.heaviest)))}${out.length > 0 ? ' without what goes on its own' : ''}.`,
        ...(out.length > 0 ? [`Its ${listWords(out)} ${one ? 'goes on its' : 'go on their'} own.`] : []),
        ...scribed.map(
          (mark) => `${mark} goes on its own, its screws out: it is sawn to the walls of its place.`,
        ),
        'The finish is dry but still soft for days: blankets between it and everything else.',
        restLine(bench),
      ],
      lengths: way.lengths,
      cautions: liftCautions(bench, way.heaviest),
    },
    everything(bench),
  );
}

/** What is carried at once, and how it is told. */
interface OnTheWay {
  readonly lines: readonly string[];
  readonly lengths: readonly Traced[];
  /** The parts of the piece, or of the heaviest of its cases, that go together. */
  readonly heaviest: readonly Part[];
  readonly each: string;
}

/** What is taken out or off by hand before the rest is carried, by its parts. */
function goOnTheirOwn({ setOut }: Bench): readonly string[] {
  const drawers = setOut.drawers.flatMap((d) => Object.values(d.parts));
  const tops = setOut.scribedTops.flatMap((top) => [top.part, ...top.strips]);
  return [...doorsOf(setOut), ...drawers, ...setOut.pinned.map((s) => s.part), ...tops];
}

/** What is carried: the piece, or its cases one by one, and how large that is. */
function onTheWay(bench: Bench): OnTheWay {
  const { overall, parts } = bench.setOut;
  const out = new Set(goOnTheirOwn(bench));
  const stay = (of: readonly Part[]) => of.filter((p) => !out.has(p.id));
  const units = unitsOf(bench);
  if (units.length < 2) {
    const lengths = [overall.width, overall.height, overall.depth];
    return {
      lines: [
        `It measures {0} in width, {1} in height and {2} in depth. ${doorsOnTheWay(bench, lengths, overall.height)}`,
      ],
      lengths,
      heaviest: stay(parts),
      each: 'It weighs',
    };
  }
  const l = bench.ledger;
  const most = (low: Direction, high: Direction) => {
    const sizes = units.map(({ parts }) => {
      const planes = parts.map((p) => planesOf(l, p).planes);
      const [from, ...others] = planes.map((p) => p[low]) as [Traced, ...Traced[]];
      const [to, ...more] = planes.map((p) => p[high]) as [Traced, ...Traced[]];
      return l.less(
        'size of the case',
        l.greatest('far side', to, ...more),
        l.least('near side', from, ...others),
      );
    }) as [Traced, ...Traced[]];
    return bench.set('marking', l.greatest('the largest case', ...sizes), 'up');
  };
  const high = most('-z', '+z');
  const lengths = [most('-x', '+x'), high, most('-y', '+y')];
  const finished = bench.job.shop.rack.finishes.length > 0;
  const came = finished ? ', as they came apart for the finish' : `: ${apartWords(bench)}`;
  return {
    lines: [
      `Its ${units.length} cases go one by one${came}. None is more than {0} wide, {1} high and {2} deep. ${doorsOnTheWay(bench, lengths, high)}`,
      'In their place they are screwed together again, in the same order and through the same holes. Of a row begin where the floor is highest: level that case, bring the next to its height with packing, clamp the two and screw them, and so on to both ends.',
    ],
    lengths,
    heaviest: units
      .map((u) => stay(u.parts))
      .reduce((a, b) => (weightOf(bench, b) > weightOf(bench, a) ? b : a)),
    each: 'The heaviest weighs',
  };
}

/** The doors that are known of on the way; what is taller goes through them lying. */
function doorsOnTheWay(bench: Bench, lengths: Traced[], high: Traced): string {
  const l = bench.ledger;
  const doors = bench.job.shop.wayHome?.doors ?? [];
  if (doors.length === 0) return 'Measure doors, stairs and corners on the way first.';
  const told = doors.map((door) => {
    const size = (of: 'width' | 'height') =>
      l.document(`shop/wayHome/doors/${door.id}/${of}`, bench.ticksOf(door[of]), door[of]);
    const at = lengths.push(size('width'), size('height')) - 2;
    const lying = l.ticks(high) > l.ticks(size('height')) ? ': what is higher goes through lying' : '';
    return `${capital(door.name ?? `door “${door.id}”`)} is {${at}} wide and {${at + 1}} high${lying}.`;
  });
  return `${told.join(' ')} Measure stairs and corners as well.`;
}

function everything({ setOut }: Bench): readonly string[] {
  return ['case', ...setOut.parts.map((p) => p.mark)];
}

/** When it may be used and loaded: by the labels, or what is usual. */
function restLine({ job, setOut }: Bench): string {
  const { adhesives, finishes } = job.shop.rack;
  const { lot, kind } = glueOf(adhesives);
  const told = lot?.label?.cureHours;
  const glued = setOut.joints.some((j) => (glueAreaMm2(setOut, j) ?? 0) > 0);
  const cured = `Nothing heavy on its glued joints sooner than ${timeWords((told ?? kind.cureHours) * 60)} after they were clamped${told === undefined ? '' : `, as the label of ${lot!.name ?? kind.name} says`}.`;
  return `It may be used with care ${readyWords(finishOf(finishes), ' after the last coat')}.${glued ? ` ${cured}` : ''}`;
}
