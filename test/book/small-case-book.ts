import type { BookInput } from '../../src/book/index.ts';
import {
  type Act,
  type BuildPlan,
  type Operation,
  type OperationKind,
  type StageId,
  scheduleBuild,
} from '../../src/build/index.ts';
import { fromMm, type LengthFormat, type Traced } from '../../src/measure/index.ts';
import type { Part, SetOut } from '../../src/setting-out/index.ts';
import { smallCase } from './small-case.ts';
import { smallCaseSheets } from './small-case-sheets.ts';

/** Everything the plan book of the small case needs, written out by hand. */
export function smallCaseBook(
  format: LengthFormat = { unit: 'mm', step: 0.5 },
  paper: 'a4' | 'letter' = 'a4',
): BookInput {
  const setOut = smallCase();
  return {
    title: 'Bookcase for the landing',
    subtitle: 'Birch plywood on a mitred base, two bays',
    paper,
    format,
    setOut,
    breakdown: smallCaseSheets(setOut),
    build: smallBuild(setOut),
    tools: [
      { id: 'saw', name: 'circular saw on the guide rail' },
      { id: 'jig', name: 'pocket-hole jig and drill' },
      { id: 'router', name: 'router with edge guide' },
      { id: 'driver', name: 'drill driver' },
    ],
    railWidth: fromMm(190),
    people: [{ id: 'maker', name: 'maker' }],
    shopping: {
      currency: 'EUR',
      buy: [
        {
          what: 'Birch plywood 18 mm, 2500 × 1250',
          count: 1,
          unit: 'sheet',
          each: 96,
          from: 'cutting plan; price from the rack list',
        },
        { what: 'Pocket screws 4 × 32 mm', count: 1, unit: 'box of 100', from: '26 screws by the joints' },
      ],
      rack: [
        { what: 'Birch plywood 18 mm, offcut 700 × 360', used: '1 of 1' },
        { what: 'Birch plywood 6 mm, 1250 × 1250', used: '1 of 2', left: '1230 × 660' },
      ],
      cost: [
        { what: 'Plywood', amount: 96, from: '1 sheet at 96.00' },
        { what: 'Work', amount: 210, from: '7.5 hours at 28.00' },
      ],
    },
    minutesFrom:
      'Minutes are common practice for one person with portable tools; your own times replace them once noted.',
    proof: [
      'The dry fit ran every card on virtual stock and found the piece as drawn, to 0.5 mm.',
      'The sheets hold all parts: judged by a second program that took no part in the planning.',
    ],
    cautions: [
      'Wear eye and ear protection at every cut, and a dust mask when sanding plywood.',
      'Pull the plug or the battery before you change a blade or a bit.',
      'Fix the finished piece to the wall before it is loaded.',
    ],
    snags: [
      {
        code: 'sag.shelf',
        level: 'mind',
        where: { part: 'shelf in the right bay' },
        sentence: 'The shelf in the right bay sags 1.4 mm under 40 kg of books after a year.',
        figures: { value: 1.42, limit: 1.24, margin: -0.18, unit: 'mm' },
        rule: {
          says: 'a shelf looks straight up to 1/300 of its span',
          source: 'common practice',
          confirmed: false,
        },
        cures: [
          { says: 'Edge the front with a strip of ash 40 mm high.' },
          { says: 'Carry no more than 34 kg on it.' },
        ],
      },
      {
        code: 'note.price',
        level: 'note',
        where: { lot: 'pocket screws 4 × 32 mm' },
        sentence: 'There is no price for pocket screws 4 × 32 mm, so the cost leaves them out.',
        cures: [{ says: 'Write the price into the rack list.' }],
      },
    ],
  };
}

function smallBuild(setOut: SetOut): BuildPlan {
  const l = setOut.ledger;
  const part = (mark: string): Part => setOut.parts.find((p) => p.mark === mark)!;
  const typed = (path: string, mm: number) => l.document(path, fromMm(mm), `${mm} mm`);
  const operations: Operation[] = [];
  const add = (
    stage: StageId,
    kind: OperationKind,
    title: string,
    does: Act,
    lines: string[],
    lengths: Traced[] = [],
    more: Partial<Operation> = {},
  ) => {
    operations.push({
      id: `${title}/${kind}`,
      kind,
      title,
      does,
      stage,
      after: [],
      lines,
      lengths,
      minutes: { active: 6, waiting: 0 },
      cautions: [],
      ...more,
    });
  };
  const sawing = {
    tool: 'saw',
    faceUp: 'the face to be seen lies down',
    reference: 'the trued long edge',
    cautions: ['Support both halves, so that the kerf does not close on the blade.'],
  };
  const saw = (
    workpiece: string,
    across: 'length' | 'width',
    at: Traced,
    before: string,
    behind: string | undefined,
    title: string,
  ) =>
    add(
      'sheets',
      across === 'length' ? 'crosscut' : 'rip',
      title,
      {
        act: 'saw',
        workpiece,
        across,
        at,
        keep: 'before',
        yields: [
          { name: before, turned: false },
          behind === undefined ? undefined : { name: behind, turned: false },
        ],
      },
      [
        `Mark {0} from the ${across === 'length' ? 'squared end, once near each long edge' : 'trued edge, once near each end'}.`,
        'Lay the rail on the part to keep, its edge on both marks; the kerf falls on the far side of the line.',
        `What comes off is ${before}. Write it on.`,
      ],
      [at],
      sawing,
    );
  saw('S1', 'width', part('A').width, 'S1.1', 'S1.2', 'Rip piece S1.1 off sheet S1');
  saw('S1.1', 'length', part('A').length, 'A', 'S1.3', 'Crosscut A off piece S1.1');
  saw('S1.3', 'length', part('B').length, 'B', 'S1.4', 'Crosscut B off piece S1.3');
  saw('S1.4', 'length', part('C').length, 'C', 'S1-left1', 'Crosscut C off piece S1.4');
  saw('S1.2', 'width', part('D').width, 'S1.5', 'S1-left3', 'Rip piece S1.5 off piece S1.2');
  saw('S1.5', 'length', part('D').length, 'D', 'S1.6', 'Crosscut D off piece S1.5');
  saw('S1.6', 'length', part('F').length, 'F', 'S1-left2', 'Crosscut F off piece S1.6');

  const rabbet = part('A').features.find((f) => f.kind === 'rabbet')!;
  add(
    'machine',
    'rabbet',
    'Rabbet the back edges of A and B',
    {
      act: 'rabbet',
      workpieces: ['A', 'B'],
      edge: 'far',
      face: 'under',
      width: rabbet.width,
      depth: rabbet.depth,
    },
    [
      'Set the router to {0} deep and the edge guide to {1} wide.',
      'Run it from left to right along the back edge, in two passes.',
    ],
    [rabbet.depth, rabbet.width],
    {
      tool: 'router',
      faceUp: 'inner face',
      reference: 'back edge',
      cautions: ['Move against the turn of the bit; a climbing cut runs away.'],
    },
  );
  const pockets = part('C').features.flatMap((f) =>
    f.kind === 'pocket' && f.edge === 'start' ? [f.along] : [],
  );
  add(
    'machine',
    'pocket',
    'Pocket holes in C and D, left end',
    {
      act: 'pocket',
      workpieces: ['C', 'D'],
      face: 'under',
      edge: 'start',
      from: 'near',
      along: pockets,
      collar: part('C').thickness,
    },
    ['Set the jig and the collar for {0} stock.', 'Drill at {1}, {2} and {3} from the front edge.'],
    [part('C').thickness, ...pockets],
    { tool: 'jig', faceUp: 'under face', reference: 'front edge' },
  );
  const pilots = [typed('shop.pilot.1', 60), typed('shop.pilot.2', 187), typed('shop.pilot.3', 313)];
  const up = typed('shop.pilot.up', 160);
  add(
    'machine',
    'drill',
    'Clearance holes through F',
    {
      act: 'drill',
      workpieces: ['F'],
      side: 'show',
      from: 'start',
      at: pilots.map((p) => [p, up] as const),
      diameter: typed('shop.bit', 4.5),
    },
    ['Drill {0} holes at {1}, {2} and {3} from the left end, {4} from the front edge.'],
    [typed('shop.bit', 4.5), ...pilots, up],
    { tool: 'driver', faceUp: 'upper face', reference: 'left end and front edge' },
  );
  add(
    'machine',
    'bevel',
    'Mitre both ends of H, I, J and K',
    {
      act: 'bevel',
      workpieces: ['H', 'I', 'J', 'K'],
      edge: 'end',
      at: part('H').length,
      angle: 45,
      fullFace: 'show',
    },
    [
      'Tilt the saw to 45° and try it on waste: two cuts must make a true square.',
      'Cut so that the long side measures {0}.',
    ],
    [part('H').length],
    {
      tool: 'saw',
      faceUp: 'show face',
      reference: 'the squared end',
      cautions: ['A tilted blade throws the waste: stand aside of it.'],
    },
  );
  const set = (mark: string, title: string, line: string, glue = false) =>
    add(
      'assemble',
      'assemble',
      title,
      {
        act: 'set',
        workpiece: mark,
        into: 'case',
        turn: { length: '+x', width: '+y' },
        touches: [
          { side: '-x', of: 'A', face: '+x' },
          { side: '-y', of: 'A', face: '-y' },
          { side: '-z', of: 'A', face: '-z' },
        ],
        glue,
      },
      [line],
    );
  set('A', 'Lay A on the bench', 'Lay the left side on its outer face, front edge toward you.');
  set('C', 'Stand C on A', 'Stand the bottom on the left side, front edges and lower ends flush.');
  add(
    'assemble',
    'screw',
    'Screw C to A',
    {
      act: 'screw',
      workpiece: 'C',
      into: 'case',
      mate: 'A',
      by: 'pockets',
      side: 'start',
      screw: 'pocket32',
      length: typed('shop.screw.length', 32),
      diameter: typed('shop.screw.diameter', 4),
      count: 3,
    },
    [
      'Clamp across the joint and drive three pocket screws {0} long.',
      'Stop when the head sits; the last turn by hand.',
    ],
    [typed('shop.screw.length', 32)],
    { tool: 'driver' },
  );
  set('D', 'Stand D on A', 'Stand the top on the left side, front edges and upper ends flush.');
  set('E', 'Set the divider E between C and D', 'Slide it in from the front until both marks meet.');
  set('F', 'Set the shelf F against E', 'Rest it on the gauge sticks; pockets underneath.');
  set('B', 'Close the case with B', 'Lay the right side on, front edges flush all round.');
  add(
    'assemble',
    'check-square',
    'Check that the case is square',
    { act: 'other', on: ['case'] },
    [
      'Measure both diagonals of the front; they must agree to {0}.',
      'If they differ, clamp across the longer one until they do.',
    ],
    [typed('shop.square', 1)],
    { minutes: { active: 4, waiting: 0 } },
  );
  add(
    'finish',
    'finish',
    'Oil all faces',
    { act: 'other', on: ['case'] },
    ['Wipe on a thin coat and take off what stands after a quarter of an hour.'],
    [],
    {
      minutes: { active: 45, waiting: 720 },
      cautions: [
        'Oily rags can catch fire by themselves: spread them out to dry outdoors or drown them in a closed tin of water.',
      ],
    },
  );
  const stage = (id: StageId, title: string) => ({
    id,
    title,
    operations: operations.filter((o) => o.stage === id).map((o) => o.id),
  });
  const shop = { people: [{ id: 'maker', lift: '30 kg' }], tools: [] } as never;
  return {
    gauges: [],
    stories: [],
    glueUps: [],
    stock: [
      {
        name: 'S1',
        lot: 'birch18',
        stock: 'full sheet',
        length: typed('shop.s1.length', 2480),
        width: typed('shop.s1.width', 1230),
        thickness: part('A').thickness,
        raw: { ends: typed('shop.s1.trim', 0), edges: typed('shop.s1.trim', 0) },
      },
    ],
    operations,
    stages: [
      stage('sheets', 'Cut the sheets'),
      stage('machine', 'Joints and holes'),
      stage('assemble', 'Put it together'),
      stage('finish', 'Finish'),
    ],
    schedule: scheduleBuild({ shop, work: {} }, operations).schedule,
    snags: [],
  };
}
