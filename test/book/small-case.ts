import { fromMm, Ledger, type Traced } from '../../src/measure/index.ts';
import {
  Dimensions,
  type Direction,
  type Feature,
  type Opening,
  type Part,
  type SetOut,
} from '../../src/setting-out/index.ts';

/** A bookcase set out by hand: two sides, bottom, top, divider, shelf, a back in a rabbet and a mitred base. */
export function smallCase(): SetOut {
  const l = new Ledger();
  const typed = (path: string, mm: number) => l.document(path, fromMm(mm), `${mm} mm`);
  const width = typed('design.case.width', 800);
  const height = typed('design.case.height', 620);
  const depth = typed('design.case.depth', 320);
  const base = typed('design.base.height', 70);
  const setback = typed('design.base.setback', 40);
  const shelfAt = typed('design.shelf.height', 240);
  const t = typed('shop.rack.birch18.thickness', 17.6);
  const tBack = typed('shop.rack.birch6.thickness', 6.2);
  const rabbet = typed('design.back.rabbet', 9);
  const none = typed('design.floor', 0);

  const parts: Part[] = [];
  const add = (
    id: string,
    name: string,
    mark: string,
    size: readonly [Traced, Traced, Traced],
    origin: readonly [Traced, Traced, Traced],
    [length, wide, thick]: readonly [Direction, Direction, Direction],
    features: Feature[] = [],
    more: Partial<Part> = {},
  ) => {
    const [record, role] = id.split('/') as [string, string];
    parts.push({
      id,
      record,
      role,
      name,
      mark,
      lot: 'birch18',
      form: 'sheet',
      length: size[0],
      width: size[1],
      thickness: size[2],
      cut: { length: size[0], width: size[1] },
      grain: 'length',
      place: { origin, length, width: wide, thickness: thick },
      features,
      hand: 'none',
      between: false,
      ...more,
    });
  };
  const backRabbet = (part: string, face: 'show' | 'under', run: Traced): Feature => ({
    id: `${part}#back`,
    purpose: 'for the back',
    kind: 'rabbet',
    face,
    edge: 'far',
    width: tBack,
    depth: rabbet,
    from: none,
    to: run,
  });
  const pockets = (part: string, edge: 'start' | 'end', face: 'show' | 'under'): Feature[] =>
    [50, 160, 270].map((at, i) => ({
      id: `${part}#${edge}:${i + 1}`,
      purpose: `for the screws into the ${edge === 'start' ? 'left' : 'right'} side`,
      kind: 'pocket',
      face,
      edge,
      along: typed(`shop.jig.${part}.${edge}.${i}`, at),
    }));

  const carcase = l.less('height of the case', height, base);
  const clear = l.less('clear width between the sides', width, l.times('both sides', t, 2));
  const inner = l.sum('inner face of the left side', none, t);
  const innerRight = l.less('inner face of the right side', width, t);
  const floor = l.sum('upper face of the bottom', base, t);
  const ceiling = l.less('under face of the top', height, t);
  const clearHeight = l.less('clear height of the case', ceiling, floor);
  const bays = l.less('both bays', clear, t);
  const bay = l.share('width of the left bay', bays, [1, 1], 0);
  const bayRight = l.share('width of the right bay', bays, [1, 1], 1);
  const dividerLeft = l.sum('left face of the divider', inner, bay);
  const dividerRight = l.sum('right face of the divider', dividerLeft, t);
  const within = l.less('depth in front of the back', depth, tBack);
  const shelfUnder = l.sum('under face of the shelf', floor, shelfAt);
  const shelfTop = l.sum('upper face of the shelf', shelfUnder, t);

  add(
    'case/left-side',
    'left side',
    'A',
    [carcase, depth, t],
    [inner, none, base],
    ['+z', '+y', '-x'],
    [backRabbet('case/left-side', 'under', carcase)],
    { hand: 'left' },
  );
  add(
    'case/right-side',
    'right side',
    'B',
    [carcase, depth, t],
    [innerRight, none, height],
    ['-z', '+y', '+x'],
    [backRabbet('case/right-side', 'under', carcase)],
    { hand: 'right' },
  );
  add(
    'case/bottom',
    'bottom',
    'C',
    [clear, depth, t],
    [inner, none, base],
    ['+x', '+y', '+z'],
    [
      backRabbet('case/bottom', 'show', clear),
      ...pockets('case/bottom', 'start', 'under'),
      ...pockets('case/bottom', 'end', 'under'),
    ],
    { between: true },
  );
  add(
    'case/top',
    'top',
    'D',
    [clear, depth, t],
    [inner, none, ceiling],
    ['+x', '+y', '+z'],
    [
      backRabbet('case/top', 'under', clear),
      ...pockets('case/top', 'start', 'show'),
      ...pockets('case/top', 'end', 'show'),
    ],
    { between: true },
  );
  add(
    'divider/divider',
    'divider',
    'E',
    [clearHeight, within, t],
    [dividerRight, none, floor],
    ['+z', '+y', '-x'],
    [],
    {
      between: true,
    },
  );
  add(
    'shelf/shelf',
    'shelf in the right bay',
    'F',
    [bayRight, within, t],
    [dividerRight, none, shelfUnder],
    ['+x', '+y', '+z'],
    [...pockets('shelf/shelf', 'start', 'under'), ...pockets('shelf/shelf', 'end', 'under')],
    { between: true },
  );

  const lip = l.times('both rabbets', rabbet, 2);
  add(
    'back/back',
    'back',
    'G',
    [l.sum('length of the back', clearHeight, lip), l.sum('width of the back', clear, lip), tBack],
    [
      l.sum('right edge of the back', innerRight, rabbet),
      depth,
      l.less('bottom edge of the back', floor, rabbet),
    ],
    ['+z', '-x', '-y'],
    [],
    { lot: 'birch6' },
  );

  const mitre = (part: string): Feature[] =>
    (['start', 'end'] as const).map((edge) => ({
      id: `${part}#${edge}`,
      purpose: 'mitre of the base',
      kind: 'bevel',
      edge,
      angle: 45,
      fullFace: 'show',
    }));
  const baseWide = l.less('width of the base', width, l.times('both setbacks', setback, 2));
  const baseDeep = l.less('depth of the base', depth, setback);
  const strip = (
    id: string,
    name: string,
    mark: string,
    long: Traced,
    origin: readonly [Traced, Traced, Traced],
    way: Direction,
    thick: Direction,
  ) =>
    add(`base/${id}`, name, mark, [long, base, t], origin, [way, '+z', thick], mitre(`base/${id}`), {
      form: 'strip',
    });
  const right = l.less('right end of the base', width, setback);
  const behindFront = l.sum('inner face of the front of the base', setback, t);
  strip('front', 'front of the base', 'H', baseWide, [setback, behindFront, none], '+x', '-y');
  strip(
    'back',
    'back of the base',
    'I',
    baseWide,
    [right, l.less('inner face of the back of the base', depth, t), none],
    '-x',
    '+y',
  );
  strip(
    'left',
    'left end of the base',
    'J',
    baseDeep,
    [l.sum('inner face of the left end', setback, t), depth, none],
    '-y',
    '-x',
  );
  strip(
    'right',
    'right end of the base',
    'K',
    baseDeep,
    [l.less('inner face of the right end', right, t), setback, none],
    '+y',
    '+x',
  );

  const opening = (
    id: string,
    x: readonly [Traced, Traced, Traced],
    z: readonly [Traced, Traced, Traced],
  ): Opening => ({
    id,
    box: { min: [x[0], none, z[0]], max: [x[1], within, z[1]] },
    width: x[2],
    height: z[2],
    depth: within,
  });
  const whole = [floor, ceiling, clearHeight] as const;
  const rightBay = [dividerRight, innerRight, bayRight] as const;
  const aboveShelf = l.less('clear height above the shelf', ceiling, shelfTop);
  const openings = [
    opening('case', [inner, innerRight, clear], whole),
    opening('bay:1', [inner, dividerLeft, bay], whole),
    opening('bay:2', rightBay, whole),
    opening('bay:2/below', rightBay, [floor, shelfUnder, shelfAt]),
    opening('bay:2/above', rightBay, [shelfTop, ceiling, aboveShelf]),
  ];
  return {
    ledger: l,
    parts,
    joints: [],
    fasteners: [],
    pegs: [],
    openings,
    surfaces: [],
    doors: [],
    fits: [],
    pinned: [],
    sliding: [],
    drawers: [],
    lids: [],
    scribedTops: [],
    pulls: [],
    levellers: [],
    gluedPanels: [],
    cleats: [],
    joinedBlanks: [],
    splines: [],
    overall: { width, height, depth },
    dimensions: new Dimensions([['case.width', width]]),
    sides: [],
    joinery: [{ record: 'case', joints: 'pocket-screws' }],
    snags: [],
  };
}
