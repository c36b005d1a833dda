import { fromMm, type LengthRow, type RatioRow } from '../measure/index.ts';

const PRACTICE = 'common practice';

function length(id: string, mm: number, says: string, source = PRACTICE): LengthRow {
  return { id, value: fromMm(mm), says, source };
}

function ratio(id: string, of: readonly [number, number], says: string, source = PRACTICE): RatioRow {
  return { id, of, says, source };
}

/** The lengths and proportions that setting-out takes from the trade. Each stands in a trace as a leaf. */
export const SETTING_OUT = {
  nothing: length('nothing', 0, 'nothing was asked for here, so it is nothing'),

  carrySpacingLeast: length(
    'screws.carry.least',
    150,
    'screws of a joint that carries stand at least this far apart',
  ),
  carrySpacingMost: length(
    'screws.carry.most',
    200,
    'screws of a joint that carries stand at most this far apart',
  ),
  carryEnd: length('screws.carry.end', 50, 'the first screw stands about this far from the end of the joint'),
  carryEndLeast: length(
    'screws.carry.end-least',
    25,
    'no pocket screw stands closer to the end of its joint',
  ),
  baseSpacingLeast: length(
    'screws.base.least',
    300,
    'screws from a base up into a case stand at least this far apart',
  ),
  baseSpacingMost: length(
    'screws.base.most',
    400,
    'screws from a base up into a case stand at most this far apart',
  ),
  baseEnd: length('screws.base.end', 60, 'a base is screwed near each corner, clear of the mitre'),
  baseEndLeast: length('screws.base.end-least', 35, 'no screw of a base stands closer to a mitred corner'),
  footSpacingLeast: length('screws.foot.least', 50, 'screws into a foot stand at least this far apart'),
  footSpacingMost: length('screws.foot.most', 150, 'screws into a foot stand at most this far apart'),
  footEnd: length('screws.foot.end', 60, 'a screw into a foot stands about this far from its end'),
  footEndLeast: length('screws.foot.end-least', 45, 'no screw into a foot stands closer to its end'),
  backSpacingLeast: length('screws.back.least', 150, 'screws of a back stand at least this far apart'),
  backSpacingMost: length('screws.back.most', 200, 'screws of a back stand at most this far apart'),
  connectSpacingLeast: length(
    'screws.connect.least',
    150,
    'screws that hold two cases together stand at least this far apart',
  ),
  connectSpacingMost: length(
    'screws.connect.most',
    600,
    'screws that hold two cases together stand at most this far apart',
  ),
  connectEnd: length(
    'screws.connect.end',
    60,
    'cases are screwed together about this far in from their edges',
  ),
  endEdging: ratio(
    'edging.end',
    [1, 4],
    'a strip over a panel’s end is at most a quarter as thick as the board: the screws of the corner stand in its middle',
  ),
  washerRim: length(
    'washer.rim',
    3,
    'a washer over a wide hole lies on so much wood, both sides together, even where the screw stands at its edge',
  ),
  connectEndLeast: length(
    'screws.connect.end-least',
    35,
    'no screw between two cases stands closer to an edge, where their own joints are',
  ),
  connectLeast: length(
    'screws.connect.strip-least',
    30,
    'panels of two cases that touch over a narrower strip have no room for screws there',
  ),
  panelEdgeEnd: length(
    'screws.panel-edge.end',
    50,
    'a screw into a panel’s edge stays this far from the panel’s end',
  ),
  panelEdgeCentre: length(
    'screws.panel-edge.centre',
    1,
    'a screw into a panel’s edge is centred within this',
  ),
  farFace: length('screws.far-face', 3, 'a screw stays at least this far from the far face'),
  pocketLongest: ratio(
    'screws.pocket.longest',
    [2, 1],
    'a pocket screw is at most about twice as long as its board is thick',
  ),
  kerf: length('kerf', 3, 'a saw’s kerf, until one is on the list of tools'),
  yardOver: length('yard.over', 10, 'a rough cut at the yard stays this far beside the line'),
  railBeyond: length('rail.beyond', 100, 'a guide rail stands out beyond the sheet by this much in all'),
  setStep: length(
    'step.setting',
    1,
    'places of screws are set to whole millimetres where no tool asks for finer',
  ),
  leastHold: length(
    'screws.least-hold',
    9,
    'a screw that stands less than this in the second part holds too little',
  ),
  wallBeside: length('screws.wall', 1, 'a screw into a panel keeps this much wood beside it'),
  moveAside: length(
    'screws.move-aside',
    6,
    'a screw that would meet another is moved along the joint in steps of this',
  ),

  pocketLean: ratio(
    'pocket.cosine',
    [965926, 1_000_000],
    'a pocket screw goes in at 15 degrees: cosine 0.965926',
    'geometry',
  ),
  pocketDrift: ratio(
    'pocket.sine',
    [258819, 1_000_000],
    'a pocket screw goes in at 15 degrees: sine 0.258819',
    'geometry',
  ),
  pocketSeat: ratio(
    'pocket.seat',
    [1, 1],
    'the head of a pocket screw sits one thickness back from the joint',
  ),
  slantKerf: ratio(
    'kerf.slant',
    [14142, 10000],
    'a blade tilted to 45 degrees takes its kerf over the cosine: 1.4142 times as much of the face',
    'geometry',
  ),
  half: ratio('half', [1, 2], 'the middle', 'arithmetic'),

  rabbetDepth: ratio('rabbet.depth', [2, 3], 'a rabbet is half to two thirds of the thickness deep'),
  backClear: length(
    'back.clear',
    0.5,
    'a back is cut this much smaller on each side than the place it drops into',
  ),
  measureAgain: length(
    'stock.measure-again',
    0.2,
    'stock that measures this much thicker or thinner than was reckoned is set out again',
  ),
  measureAgainInches: length(
    'stock.measure-again.inches',
    0.254,
    'stock that measures 0.01 in thicker or thinner than was reckoned is set out again',
  ),
  dadoDepth: ratio(
    'dado.depth',
    [1, 3],
    'a dado is a third of the thickness deep, in plywood never over half',
  ),
  trayLeast: length('trays.least', 20, 'a hand draws a tray out of a place at least this wide'),
  dadoClear: length('dado.clear', 0.1, 'a dado is up to 0.13 mm wider than what is glued into it measures'),
  dadoStop: length('dado.stop', 11, 'a stopped dado ends 10 to 12 mm behind the front edge'),
  tongue: ratio('tongue.thickness', [1, 2], 'a tongue that a rabbet leaves is about half the thickness'),
  cornerRabbet: ratio('rabbet.corner', [1, 2], 'a rabbet at a corner of a case is half the thickness deep'),
  backGrooveDepth: ratio(
    'back.groove-depth',
    [2, 5],
    'a groove for a back is 6 to 9.5 mm deep, in plywood at most half the thickness',
  ),
  backSetIn: length('back.set-in', 10, 'a back in a groove stands this far in from the back edge'),
  backLip: length('back.lip', 5, 'behind a groove for a back at least this much wood is left'),
  grooveBit: length('bit.straight', 6, 'a straight bit of this size, until one is on the list'),
  guideReach: length('guide.reach', 150, 'a router’s edge guide reaches about this far in from an edge'),
  mitreAllowance: length('mitre.allowance', 6, 'a strip to be mitred is left this much longer at each end'),
  intoMitre: length(
    'mitre.into',
    2,
    'the channel of a back ends so far inside a mitre, where nothing is seen of it',
    'our own choice',
  ),
  cutLaterAllowance: length(
    'cut-later.allowance',
    10,
    'a door is left this much longer and wider until its opening can be measured',
  ),
  edgingAllowance: length(
    'edging.allowance',
    5,
    'edging is left this much longer at each end and trimmed once the glue has set',
  ),

  pilotShare: ratio(
    'pilot.share',
    [7, 10],
    'a pilot hole is about 70 % of the screw’s root in wood of middling density',
    'NDS 2018 12.1.5',
  ),
  rootShare: ratio(
    'screw.root',
    [4, 5],
    'a wood screw’s root is about 80 % of its thread diameter',
    'NDS 2018 Appendix L, from memory',
  ),
  bitStep: length('bits.step', 0.1, 'twist bits come in steps of this'),
  clearanceExtra: length('clearance.extra', 0.5, 'a clearance hole is this much wider than the screw'),
} as const;
