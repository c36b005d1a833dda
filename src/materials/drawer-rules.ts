import { fromMm, type LengthRow, type RatioRow } from '../measure/index.ts';

const PRACTICE = 'common practice';

function length(id: string, mm: number, says: string): LengthRow {
  return { id, value: fromMm(mm), says, source: PRACTICE };
}

/** The lengths and proportions that drawers are set out by. Each stands in a trace as a leaf. */
export const DRAWERS = {
  driverRoom: length(
    'drawer.driver-room',
    95,
    'to drive screws inside a box, a short drill driver with its bit needs about this much',
  ),
  insetGap: length('drawer.gap.inset', 2, 'the gap round an inset drawer front is 1.5 to 2.5 mm'),
  overlayGap: length('drawer.gap.overlay', 3, 'the gap between overlay drawer fronts is about 3 mm'),
  belowBox: length(
    'drawer.below',
    12,
    'the box of a drawer begins about this far above its front’s lower edge',
  ),
  aboveBox: length(
    'drawer.above',
    12,
    'the box of a drawer ends about this far below its front’s upper edge',
  ),
  behindBox: length('drawer.behind', 10, 'behind the box of a drawer this much is left free'),
  lowestBox: length('drawer.lowest', 50, 'a drawer whose box is lower than this holds next to nothing'),
  bottomUp: length(
    'drawer.bottom',
    8,
    'the groove for a drawer’s bottom stands this far above the lower edge',
  ),
  bottomClear: length(
    'drawer.bottom-clear',
    0.5,
    'a drawer’s bottom is this much smaller on each side than its grooves are deep',
  ),
  backIn: length(
    'drawer.back-in',
    12,
    'a drawer’s back in dados stands this far in from the ends of its sides',
  ),
  runnerWider: length(
    'drawer.runner.wider',
    0.8,
    'between drawer and case a runner may have up to 1/32 in more than it needs, and no less',
  ),
  slideRoom: length('drawer.slide-room', 0.5, 'a drawer passes its front gaps by at least this much'),
  frontEnd: length(
    'drawer.front-screws',
    55,
    'the screws of a drawer’s front stand about this far from the ends of the box',
  ),
  frontRow: length(
    'drawer.front-row',
    30,
    'the screws of a drawer’s front stay this far from the edges of the box’s front',
  ),
  frontRowsFrom: length(
    'drawer.front-rows-from',
    90,
    'a front of a box at least this high is screwed in two rows',
  ),
  woodBeside: length(
    'drawer.wood.beside',
    1,
    'between the box of a drawer on wooden runners and an upright this much is left on each side',
  ),
  woodClear: length(
    'drawer.wood.clear',
    0.8,
    'the groove in a drawer’s side is this much wider than the wooden runner in it',
  ),
  woodBehind: length(
    'drawer.wood.behind',
    0.5,
    'the groove in a drawer’s side is this much deeper than the wooden runner stands in it',
  ),
  woodStop: length(
    'drawer.wood.stop',
    40,
    'the groove for a wooden runner stops this far behind the front end of the side',
  ),
  woodAhead: length(
    'drawer.wood.ahead',
    1,
    'a wooden runner begins this far behind the end of its groove, to be eased until the front comes level',
  ),
  woodWeb: length(
    'drawer.wood.web',
    2,
    'between the groove for a runner and what is let into the other face this much wood is left',
  ),
  woodEdge: length(
    'drawer.wood.edge',
    8,
    'above and below the groove for a wooden runner this much of a side is left, at least',
  ),
  woodScrew: length(
    'drawer.wood.screw',
    30,
    'the outermost screws of a wooden runner stand this far from its ends',
  ),
  woodLong: length(
    'drawer.wood.long',
    250,
    'a wooden runner longer than this has a third screw, in its middle',
  ),
  woodMost: length(
    'drawer.wood.most',
    1.5,
    'a wooden runner with more than this much play in its groove lets the drawer droop',
  ),
  centrePlay: length(
    'drawer.centre.play',
    0.4,
    'between a centre runner and the guide on each side of it there is a slip of card',
  ),
  centreMost: length(
    'drawer.centre.most',
    2,
    'a drawer with more play than this beside its centre runner racks',
  ),
  centreAir: length(
    'drawer.centre.air',
    1,
    'a centre runner and its guides stay at least this far from the drawer’s bottom and from what is below it',
  ),
  centreHold: length('drawer.centre.hold', 2, 'guides reach at least this far down beside a centre runner'),
  centreAbove: length(
    'drawer.centre.above',
    2,
    'a drawer on a centre runner ends this far below what is above it, which keeps it from tipping when it is drawn out',
  ),
  woodTravel: {
    id: 'drawer.wood.travel',
    of: [2, 3],
    says: 'a drawer on wooden runners comes out until a third of them still carries it',
    source: PRACTICE,
  } satisfies RatioRow as RatioRow,
  travelShare: {
    id: 'drawer.travel',
    of: [3, 4],
    says: 'a usual runner lets a drawer out by three quarters of its length',
    source: PRACTICE,
  } satisfies RatioRow as RatioRow,
  aside: length(
    'drawer.aside',
    6,
    'a runner whose screws would meet others is moved up or down in steps of this',
  ),
  cornerSpacingLeast: length(
    'drawer.corner.least',
    40,
    'screws of a drawer’s corner stand at least this far apart',
  ),
  cornerSpacingMost: length(
    'drawer.corner.most',
    120,
    'screws of a drawer’s corner stand at most this far apart',
  ),
  cornerEnd: length(
    'drawer.corner.end',
    25,
    'the first screw of a drawer’s corner stands about this far from its edge',
  ),
  cornerEndLeast: length(
    'drawer.corner.end-least',
    25,
    'no screw of a drawer’s corner stands closer to its edge',
  ),
} as const;
