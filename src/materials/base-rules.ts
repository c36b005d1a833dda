import { fromMm, type LengthRow, type RatioRow } from '../measure/index.ts';

const PRACTICE = 'common practice';

function length(id: string, mm: number, says: string): LengthRow {
  return { id, value: fromMm(mm), says, source: PRACTICE };
}

/** The lengths by which bases, feet and hanging rails are set out. Each stands in a trace as a leaf. */
export const BASES = {
  footLength: length(
    'foot.length',
    180,
    'a block that serves as a foot is about this long, so that two screws go in',
  ),
  footShare: {
    id: 'foot.share',
    of: [1, 3],
    says: 'a block that serves as a foot takes up a third of the case at most',
    source: PRACTICE,
  } satisfies RatioRow as RatioRow,
  footSetback: length('foot.setback', 40, 'feet stand this far inside the case'),
  footApart: length('foot.apart', 800, 'feet stand at most this far apart'),
  levellersApart: length(
    'levellers.apart-least',
    70,
    'levellers stand at least this far apart, or the case rocks on them',
  ),
  levellerAside: length(
    'levellers.aside',
    5,
    'a leveller that would meet what is bored is moved aside in steps of this',
  ),
  apronHeight: length('apron.height', 100, 'an apron between legs is about this high'),
  apronBack: length('apron.back', 3, 'aprons stand this far behind the faces of their legs'),
  apronLeast: length(
    'apron.least',
    95,
    'screws stay ten diameters from the end of a leg, so an apron this high lets those of two sides pass',
  ),
  apronSpacingLeast: length(
    'apron.spacing.least',
    120,
    'screws from an apron into a leg stand at least this far apart',
  ),
  apronSpacingMost: length(
    'apron.spacing.most',
    240,
    'screws from an apron into a leg stand at most this far apart',
  ),
  apronEnd: length(
    'apron.end',
    18,
    'a screw from an apron into a leg stands about this far from the apron’s edge',
  ),
  apronEndLeast: length(
    'apron.end-least',
    12,
    'no screw from an apron into a leg stands closer to the apron’s edge',
  ),
  skirtingClear: length('skirting.clear', 3, 'a notch for a skirting is this much larger than the skirting'),
  scribe: length('filler.scribe', 12, 'a filler is cut about this much wider, to be scribed to the wall'),
  scribeSpare: length('filler.scribe-spare', 3, 'so much is left to saw off where the wall is furthest away'),
  packApart: length('packing.apart', 600, 'packing under a base stands at most this far apart'),
  studHold: length('wall.stud-hold', 40, 'a screw that carries stands at least this deep in a stud'),
  plugDeeper: length(
    'wall.plug-deeper',
    10,
    'a hole for a plug is bored this much deeper than the plug is long',
  ),
  cleatHeight: length('cleat.height', 80, 'a strip of a bevelled cleat is about this high'),
  cleatFlat: length(
    'cleat.flat',
    20,
    'a strip of a bevelled cleat is this much higher than it is thick, so that there is wood for screws beside its slope',
  ),
  anchorApart: length(
    'hanging.anchor-apart',
    400,
    'what hangs on a wall has an anchor for every so much of its length, and two at least',
  ),
  cleatFree: length(
    'cleat.free',
    8,
    'the strip on the wall is this much shorter at each end, so that the case can be moved a little',
  ),
  cleatLeast: length(
    'cleat.least',
    200,
    'a strip on the wall has room for two anchors, and can be held under a saw',
  ),
  cleatLift: length('cleat.lift', 10, 'a case is lifted this much over the hook of its cleat'),
  railHeight: length('rail.height', 90, 'a rail that a case hangs by is about this high'),
} as const;
