import { runners } from './drawers.ts';
import { PEGS } from './equipped.ts';
import type { Field, Units } from './typed-length.ts';

/** Parts of a shop that a design can be set out with, whatever the thickness of its boards. */
export function shop(
  units: Units,
  thickness: {
    board: string;
    other: string;
    thin: string;
    strip: string;
    lip: string;
    taped: boolean;
    wood: string;
  },
  router: string | undefined,
): Field {
  const sheet = (id: string, thick: string, material = 'birch-plywood') => ({
    id,
    name: id,
    material,
    form: 'sheet',
    nominal: thick,
    thickness: thick,
    stock: [{ id: `${id}-sheet`, length: '2500 mm', width: '1250 mm', price: 90 }],
  });
  const strips = (id: string, thick: string) => ({
    id,
    name: id,
    material: 'ash-white',
    form: 'strip',
    nominal: thick,
    thickness: thick,
    width: '40 mm',
    stock: [{ id: `${id}-length`, length: '2400 mm', price: 9 }],
  });
  const pocket = [22, 25, 28, 30, 32, 35, 38, 45, 50, 63];
  const countersunk = [16, 20, 25, 30, 35, 40, 45];
  return {
    units,
    precision: units === 'mm' ? '0.5' : '1/32',
    paper: 'A4',
    currency: 'EUR',
    people: [],
    wayHome: {
      doors: [
        { id: 'gate', width: '900 mm', height: '2100 mm' },
        { id: 'hall', width: '36"', height: '80"' },
      ],
    },
    // Not every shop has a router; one that has sets it in steps of its own.
    tools: [
      { id: 'pockets', kind: 'pocket-jig', accuracy: '0.5 mm', step: '1 mm' },
      ...(router === undefined
        ? []
        : [{ id: 'router', kind: 'router', accuracy: '0.3 mm', step: router, edgeGuide: true }]),
    ],
    rack: {
      lots: [
        sheet('board', thickness.board),
        sheet('other', thickness.other, thickness.wood),
        sheet('thin', thickness.thin),
        sheet('spline', '3 mm'),
        strips('strip', thickness.strip),
        thickness.taped
          ? { ...strips('lip', '0.6 mm'), tape: 'iron-on', width: '40 mm' }
          : strips('lip', thickness.lip),
        { ...strips('veneer', '0.6 mm'), tape: 'iron-on' },
        strips('foot', '24 mm'),
        { ...strips('runner-strip', '6 mm'), width: '18 mm' },
        strips('leg', '30 mm'),
        { ...strips('planks', '26 mm'), width: '110 mm' },
      ],
      screws: [
        ...pocket.map((n) => screw(`pocket-${n}`, 'pocket', n, '4 mm', '9 mm')),
        ...countersunk.map((n) => screw(`flat-${n}`, 'countersunk', n, '3 mm', '5.5 mm')),
        screw('face-40', 'countersunk', 40, '4 mm', '8 mm'),
        screw('face-50', 'countersunk', 50, '4.5 mm', '8.8 mm'),
        screw('face-60', 'countersunk', 60, '5 mm', '9.7 mm'),
        screw('face-80', 'countersunk', 80, '5 mm', '9.7 mm'),
        screw('hinge-screw', 'countersunk', 12, '3.5 mm', '7 mm'),
        ...[20, 25, 30, 35, 40, 45, 50, 55, 60].map((n) =>
          screw(`machine-${n}`, 'machine', n, '4 mm', '8 mm'),
        ),
        screw('runner-screw', 'countersunk', 10, '3.5 mm', '7 mm'),
      ],
      fixings: [
        { id: 'washer-3', kind: 'washer', diameter: '3.2 mm', width: '40 mm' },
        { id: 'washer-4', kind: 'washer', diameter: '4.3 mm', width: '40 mm' },
        { id: 'washer-5', kind: 'washer', diameter: '5.3 mm', width: '40 mm' },
        {
          id: 'foot-30',
          kind: 'leveller',
          diameter: '10 mm',
          deep: '11 mm',
          width: '30 mm',
          lowest: '30 mm',
          highest: '65 mm',
        },
        { id: 'plug-10', kind: 'plug', diameter: '10 mm', length: '8 mm' },
        { id: 'plug-12', kind: 'plug', diameter: '12 mm', length: '10 mm' },
        ...PEGS,
      ],
      hinges: [
        cupHinge('full', 'overlay'),
        cupHinge('half', 'half-overlay'),
        cupHinge('cranked', 'inset'),
        {
          id: 'butt',
          kind: 'butt',
          screw: 'hinge-screw',
          length: '50 mm',
          width: '18 mm',
          leaf: '1.5 mm',
          screws: 3,
        },
        {
          id: 'lid-butt',
          kind: 'butt',
          screw: 'hinge-screw',
          length: '50 mm',
          width: '14 mm',
          leaf: '1.5 mm',
          screws: 3,
        },
      ],
      runners: runners(),
      pulls: [{ id: 'bar', holes: '64 mm', thread: '4 mm', deep: '12 mm', length: '80 mm' }],
      stays: [
        { id: 'stay', holds: '40 N m' },
        { id: 'strong-stay', holds: '120 N m' },
      ],
      pins: [{ id: 'pin', diameter: '5 mm', deep: '9 mm', stands: '8 mm' }],
      bits: [],
      adhesives: [{ id: 'glue', material: 'pva' }],
      finishes: [{ id: 'varnish', material: 'water-polyurethane' }],
    },
  };
}

function cupHinge(id: string, suits: string): Field {
  return {
    id,
    kind: 'cup',
    suits,
    screw: 'hinge-screw',
    cup: '35 mm',
    deep: '12.5 mm',
    edge: '4 mm',
    cupScrews: '45 mm',
    cupScrewsBehind: '9.5 mm',
    plateScrews: '32 mm',
    plateBehind: '37 mm',
  };
}

function screw(id: string, kind: string, mmLong: number, diameter: string, head: string): Field {
  return { id, kind, length: `${mmLong} mm`, diameter, head };
}
