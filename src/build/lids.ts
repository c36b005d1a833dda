import type { Traced } from '../measure/index.ts';
import { axisOf, type Lid, type Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { type PartPlanes, planesOf } from './boxes.ts';
import { CAUTION } from './cautions.ts';
import { liftCautions } from './lifting.ts';
import type { Touch } from './operation.ts';
import { offset } from './seating.ts';
import { fitStays } from './stays.ts';
import { touchesTold } from './touch-words.ts';
import { stand } from './turning.ts';
import { capital, listWords, looks } from './words.ts';

/** Hangs the lids of chests on their backs, and fits the stays that hold them open. */
export function hangLids(bench: Bench): void {
  if (bench.setOut.lids.length > 0) stand(bench, 'hang');
  for (const lid of bench.setOut.lids) {
    letIn(bench, lid);
    layOn(bench, lid);
    screwOn(bench, lid);
    if (lid.stays) fitStays(bench, { ...lid, says: 'lid' }, lid.stays);
  }
}

function partOf(bench: Bench, id: string): Part {
  return bench.setOut.parts.find((p) => p.id === id)!;
}

/** Butt hinges are let in where they are marked round, not by drawn numbers alone. */
function letIn(bench: Bench, lid: Lid): void {
  const [part, back] = [partOf(bench, lid.part), partOf(bench, lid.back)];
  const places = lid.hinges.map((t) => bench.set('marking', t));
  const n = places.length;
  const lengths = [...places, lid.leaf.length, lid.leaf.width, lid.leaf.thickness];
  const told = touchesTold(bench, touchesOf(bench, lid), lengths);
  bench.do(
    {
      id: `${part.mark}/mortise`,
      kind: 'mortise',
      stage: 'hang',
      title: `Let the hinges into ${back.mark} and ${part.mark}`,
      does: { act: 'other', on: [part.mark, 'case'] },
      times: n,
      lines: [
        `Middles of the hinges at ${listWords(places.map((_, i) => `{${i}}`))} from the left side of ${back.mark}, on its upper ${sideThere(back)}.`,
        `Lay an opened hinge there, its pin just clear behind the back, and mark round the leaf with a knife: {${n}} long, {${n + 1}} wide. Chisel out {${n + 2}} deep, so that the leaf lies level.`,
        `Lay ${part.mark} in its place, ${listWords(told)}, and carry the marks over to its underside; let in the other leaves there. The lid must come down on the sides, not on the hinges.`,
      ],
      lengths,
      cautions: [CAUTION.chisel],
    },
    [part.mark, 'case'],
  );
}

/** Is the upper side of a panel an end or an edge? */
function sideThere(panel: Part): string {
  return axisOf(panel.place.length).axis === 2 ? 'end' : 'edge';
}

/** On the upper ends of the sides, level with the back behind. */
function touchesOf(bench: Bench, lid: Lid): readonly [Touch, Touch, Touch] {
  const l = bench.ledger;
  const part = partOf(bench, lid.part);
  const mine = planesOf(l, part);
  const side = planesOf(l, bench.setOut.parts.find((p) => p.hand === 'left')!);
  const back = planesOf(l, partOf(bench, lid.back));
  const strip = bench.setOut.joints
    .filter((j) => j.duty === 'edging' && j.mate === part.id)
    .map((j) => partOf(bench, j.part))
    .find((p) => looks(p, 'show') === '-x');
  const outer: PartPlanes = strip ? planesOf(l, strip) : mine;
  return [
    { ...offset(bench, outer, '-x', side), ...(strip ? { part: strip.mark } : {}) },
    offset(bench, mine, '+y', back),
    { side: '-z', of: side.part.mark, face: '+z' },
  ];
}

function layOn(bench: Bench, lid: Lid): void {
  const part = partOf(bench, lid.part);
  const touches = touchesOf(bench, lid);
  const lengths: Traced[] = [];
  const told = touchesTold(bench, touches, lengths);
  const n = lengths.push(bench.set('marking', lid.gap)) - 1;
  bench.do(
    {
      id: `${part.mark}/set`,
      kind: 'hang',
      stage: 'hang',
      title: `Lay ${part.mark} (${part.name}) on the case`,
      does: {
        act: 'set',
        workpiece: part.mark,
        into: 'case',
        turn: { length: part.place.length, width: part.place.width },
        touches,
        glue: false,
      },
      lines: [
        `${capital(listWords(told))}.`,
        `Under its front edge {${n}} stay open: measure it at both ends, for fingers and for air.`,
      ],
      lengths,
      cautions: liftCautions(bench, [part]),
    },
    [part.mark, 'case'],
  );
}

function screwOn(bench: Bench, lid: Lid): void {
  const [part, back] = [partOf(bench, lid.part), partOf(bench, lid.back)];
  const { rack } = bench.job.shop;
  const hinge = rack.hinges?.find((h) => h.id === lid.hinge);
  const screw = rack.screws.find((s) => s.id === lid.screw)!;
  const count = lid.hinges.length;
  bench.do(
    {
      id: `${part.mark}/hinges`,
      kind: 'hang',
      stage: 'hang',
      title: `Hang ${part.mark} on ${back.mark}`,
      does: { act: 'other', on: [part.mark, 'case'] },
      tool: 'drill',
      times: count,
      lines: [
        `${count} × ${hinge?.name ?? lid.hinge}, ${count * lid.screwsPerHinge} × ${screw.name ?? screw.id}, {0} long and {1} thick.`,
        'Pilot holes through the leaves, {2} wide and {3} deep, a little inward so that the screws draw them home; into the back’s edge right in its middle. One screw in each leaf first; open and close the lid, then the others.',
        'Somebody holds the lid until its stays are on.',
      ],
      lengths: [lid.screwLength, lid.screwDiameter, lid.pilot, bench.set('drill', lid.screwLength, 'down')],
      cautions: [CAUTION.pinch],
    },
    [part.mark, 'case'],
  );
}
