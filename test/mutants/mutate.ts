import type { Act, BuildPlan, Operation, PieceDirection, Touch, WorkEdge } from '../../src/build/index.ts';
import { fromMm, type Ticks, type Traced } from '../../src/measure/index.ts';

/** A build plan with one mistake in it. */
export interface Mutant {
  /** What was done to it, and where. */
  readonly name: string;
  readonly operator: string;
  readonly build: BuildPlan;
  /** The first card that is not as it was. */
  readonly from: number;
  /** Mistakes outside the cards: what the saw takes away besides its kerf, in ticks. */
  readonly widerKerf?: number;
}

type Of<K extends Act['act']> = Extract<Act, { act: K }>;

/** Lengths that stand in no ledger are written as numbers beyond any of its entries. */
const BEYOND = 1e9;

/** A length `mm` longer than that of an entry; read with `readMutated`. */
export function longer(t: Traced, mm: number, read: (t: Traced) => Ticks): Traced {
  return (BEYOND + 5e8 + readMutated(read)(t) + fromMm(mm)) as Traced;
}

/** Reads entries of the ledger, and lengths made by `longer`. */
export function readMutated(read: (t: Traced) => Ticks): (t: Traced) => Ticks {
  return (t) => (t >= BEYOND ? ((t - BEYOND - 5e8) as Ticks) : read(t));
}

const OPPOSITE: Record<WorkEdge, WorkEdge> = { start: 'end', end: 'start', near: 'far', far: 'near' };
const ACROSS: Record<WorkEdge, WorkEdge> = { start: 'near', end: 'far', near: 'start', far: 'end' };
const face = (f: 'show' | 'under') => (f === 'show' ? 'under' : 'show');
const turnedOver = (d: PieceDirection) => `${d[0] === '+' ? '-' : '+'}${d[1]}` as PieceDirection;

/** Kinds of work that change no shape, and yet are missed. */
const CHANGES: ReadonlySet<Operation['kind']> = new Set([
  'gather',
  'mark',
  'test-cut',
  'sand',
  'mask',
  'rehearse',
  'check-square',
  'cure',
  'prefinish',
  'rub',
  'finish',
  'wax',
  'anchor',
]);
const LEFT_ALONE: ReadonlySet<Operation['kind']> = new Set(['edge', 'cure', 'prefinish', 'finish']);

function isFirst({ touches }: Of<'set'>): boolean {
  return touches.every((t) => t.of === 'bench');
}

/** Every way of breaking a build plan with one mistake, at every place where it can be made. */
export function* mutants(build: BuildPlan, read: (t: Traced) => Ticks): Generator<Mutant> {
  const { operations } = build;
  const marks = [...new Set(operations.flatMap(({ does }) => (does.act === 'set' ? [does.workpiece] : [])))];
  const another = (mark: string) => marks[(marks.indexOf(mark) + 1) % marks.length]!;
  const more = (t: Traced, mm: number) => longer(t, mm, read);

  for (const [i, o] of operations.entries()) {
    const { does } = o;
    const withAct = (operator: string, act: Act): Mutant => ({
      operator,
      from: i,
      name: `${operator}: ${o.title}`,
      build: {
        ...build,
        operations: operations.map((x, n): Operation => (n === i ? { ...x, does: act } : x)),
      },
    });
    if (does.act !== 'other' || CHANGES.has(o.kind))
      yield {
        operator: does.act === 'other' ? `drop a card: ${o.kind}` : 'drop a card',
        from: i,
        name: `drop: ${o.title}`,
        build: { ...build, operations: operations.filter((_, n) => n !== i) },
      };
    const moved = (operator: string, from: number, to: number): Mutant => {
      const others = operations.filter((_, n) => n !== from);
      return {
        operator,
        from: Math.min(from, to),
        name: `${operator}: ${operations[from]!.title}`,
        build: { ...build, operations: [...others.slice(0, to), operations[from]!, ...others.slice(to)] },
      };
    };
    for (const by of [1, 4, 15]) {
      const other = operations[i + by];
      if (!other || does.act === 'other' || other.does.act === 'other') continue;
      const swapped = [...operations];
      [swapped[i], swapped[i + by]] = [other, o];
      yield {
        operator: 'swap two cards',
        from: i,
        name: `swap: ${o.title} / ${other.title}`,
        build: { ...build, operations: swapped },
      };
    }
    yield* actMutants(does, withAct, more, another);
    if (o.minutes.waiting > 0 && LEFT_ALONE.has(o.kind))
      yield {
        operator: `left alone too short: ${o.kind}`,
        from: i,
        name: `left alone too short: ${o.title}`,
        build: {
          ...build,
          operations: operations.map(
            (x, n): Operation => (n === i ? { ...x, minutes: { ...x.minutes, waiting: 5 } } : x),
          ),
        },
      };
    const glued = operations.findIndex(({ does: d }, n) => n > i && d.act === 'set' && d.glue);
    // What is done to loose parts, done too late; and the finish before the glue.
    if ((o.kind === 'mask' || o.kind === 'sand' || o.kind === 'mark') && i + 1 < operations.length)
      yield moved(`too late: ${o.kind}`, i, operations.length - 1);
    if (o.kind === 'finish') {
      const first = operations.findIndex(({ does: d }) => d.act === 'set' && d.glue && !isFirst(d));
      if (first >= 0 && first < i) yield moved('finish before glue', i, first);
    }
    if (o.kind === 'cure' && glued >= 0) yield moved('cure too late', i, operations.length - 1);
  }

  for (const [i, s] of build.stock.entries()) {
    const withStock = (operator: string, change: Partial<typeof s>): Mutant => ({
      operator,
      from: 0,
      name: `${operator}: ${s.name}`,
      build: { ...build, stock: build.stock.map((x, n) => (n === i ? { ...x, ...change } : x)) },
    });
    yield withStock('stock thicker', { thickness: more(s.thickness, 0.4) });
    yield withStock('stock thinner', { thickness: more(s.thickness, -0.4) });
    yield withStock('stock shorter', { length: more(s.length, -80) });
    yield withStock('stock narrower', { width: more(s.width, -(read(s.width) / fromMm(1)) / 4) });
    yield {
      operator: 'stock missing',
      from: 0,
      name: `stock missing: ${s.name}`,
      build: { ...build, stock: build.stock.filter((x) => x !== s) },
    };
  }
  yield {
    operator: 'forget the kerf',
    from: 0,
    name: 'a kerf of 4 mm more than was planned',
    build,
    widerKerf: fromMm(4),
  };
}

function* actMutants(
  a: Act,
  as: (operator: string, act: Act) => Mutant,
  more: (t: Traced, mm: number) => Traced,
  another: (mark: string) => string,
): Generator<Mutant> {
  switch (a.act) {
    case 'saw':
      for (const mm of [-3, 3]) yield as(`saw ${mm} mm off`, { ...a, at: more(a.at, mm) });
      yield as('kerf on the wrong side', { ...a, keep: a.keep === 'before' ? 'behind' : 'before' });
      yield as('saw across instead of along', { ...a, across: a.across === 'length' ? 'width' : 'length' });
      yield as('keep the wrong half', { ...a, yields: [a.yields[1], a.yields[0]] });
      return;
    case 'saw-alike':
      for (const mm of [-3, 3]) yield as(`saw ${mm} mm off`, { ...a, at: more(a.at, mm) });
      yield as('leave one of the equal cuts out', { ...a, cuts: a.cuts.slice(0, -1) });
      return;
    case 'name':
      yield as('turn a blank', { ...a, as: { ...a.as, turned: !a.as.turned } });
      return;
    case 'plane':
      for (const mm of [-1.5, 3]) yield as(`plane ${mm} mm off`, { ...a, to: more(a.to, mm) });
      if (a.workpieces.length > 1)
        yield as('forget to plane one', { ...a, workpieces: a.workpieces.slice(1) });
      return;
    case 'glue-up':
      yield as('glue up one board too few', { ...a, boards: a.boards.slice(1) });
      yield as('glue up another board', { ...a, boards: [another(a.boards[0]!), ...a.boards.slice(1)] });
      return;
    case 'part':
      for (const mm of [-3, 3]) yield as(`part ${mm} mm off`, { ...a, at: more(a.at, mm) });
      for (const degrees of [-4, 4])
        yield as(`part ${degrees} degrees off`, { ...a, angle: a.angle + degrees });
      yield as('write the wrong half', { ...a, yields: [a.yields[1], a.yields[0]] });
      return;
    case 'rip-apart': {
      const [near, far] = a.widths;
      for (const mm of [-3, 3]) {
        yield as(`near part ripped ${mm} mm off`, { ...a, widths: [more(near, mm), far] });
        yield as(`far part ripped ${mm} mm off`, { ...a, widths: [near, more(far, mm)] });
      }
      yield as('write the wrong half', { ...a, yields: [a.yields[1], a.yields[0]] });
      return;
    }
    case 'bevel':
      for (const mm of [-3, 3]) yield as(`mitre ${mm} mm off`, { ...a, at: more(a.at, mm) });
      for (const degrees of [-4, 4])
        yield as(`mitre ${degrees} degrees off`, { ...a, angle: a.angle + degrees });
      yield as('mitre the other end', { ...a, edge: OPPOSITE[a.edge] });
      yield as('mitre the wrong way', { ...a, fullFace: face(a.fullFace) });
      return;
    case 'rabbet':
      for (const mm of [-1.5, 1.5]) {
        yield as(`rabbet ${mm} mm wide`, { ...a, width: more(a.width, mm) });
        yield as(`rabbet ${mm} mm deep`, { ...a, depth: more(a.depth, mm) });
      }
      yield as('rabbet the other edge', { ...a, edge: OPPOSITE[a.edge] });
      yield as('rabbet an edge across', { ...a, edge: ACROSS[a.edge] });
      yield as('rabbet the other face', { ...a, face: face(a.face) });
      return;
    case 'pocket':
      yield as('move a pocket', { ...a, along: a.along.map((x, n) => (n === 0 ? more(x, 4) : x)) });
      yield as('forget a pocket', { ...a, along: a.along.slice(1) });
      yield as('pockets in the other face', { ...a, face: face(a.face) });
      yield as('pockets at the other end', { ...a, edge: OPPOSITE[a.edge] });
      yield as('pockets from the wrong edge', { ...a, from: OPPOSITE[a.from] });
      yield as('collar set for a thicker board', { ...a, collar: more(a.collar, 3) });
      yield* batchMutants(a, as);
      return;
    case 'drill':
      yield as('move a hole', {
        ...a,
        at: a.at.map((x, n) =>
          n === 0 ? ([x[0] === 'middle' ? a.diameter : more(x[0], 4), x[1]] as const) : x,
        ),
      });
      yield as('move a hole aside', {
        ...a,
        at: a.at.map((x, n) =>
          n === 0 ? ([x[0], x[1] === 'middle' ? a.diameter : more(x[1], 3)] as const) : x,
        ),
      });
      yield as('forget a hole', { ...a, at: a.at.slice(1) });
      yield as('holes in the other side', {
        ...a,
        side: a.side === 'show' || a.side === 'under' ? face(a.side) : OPPOSITE[a.side],
      });
      yield as('holes from the wrong edge', { ...a, from: OPPOSITE[a.from] });
      yield as('holes too wide', { ...a, diameter: more(a.diameter, 1.5) });
      if (a.depth !== undefined) yield as('holes too deep', { ...a, depth: more(a.depth, 3) });
      if (a.countersink !== undefined)
        yield as('countersunk too wide', { ...a, countersink: more(a.countersink, 4) });
      if (a.counterbore)
        yield as('plug holes too deep', {
          ...a,
          counterbore: { ...a.counterbore, depth: more(a.counterbore.depth, 4) },
        });
      yield* batchMutants(a, as);
      return;
    case 'biscuit-slot':
      yield as('move a slot', {
        ...a,
        at: a.at.map((x, n) => (n === 0 ? ([more(x[0], 4), x[1]] as const) : x)),
      });
      yield as('move a slot aside', {
        ...a,
        at: a.at.map((x, n) => (n === 0 ? ([x[0], more(x[1], 3)] as const) : x)),
      });
      yield as('forget a slot', { ...a, at: a.at.slice(1) });
      yield as('slots in the other side', {
        ...a,
        side: a.side === 'show' || a.side === 'under' ? face(a.side) : OPPOSITE[a.side],
      });
      yield as('slots too shallow', { ...a, depth: more(a.depth, -3) });
      yield* batchMutants(a, as);
      return;
    case 'spline-groove':
      yield as('groove in the other end', { ...a, edge: OPPOSITE[a.edge] as 'start' | 'end' });
      yield as('groove from the other face', { ...a, slopeFrom: face(a.slopeFrom) });
      if ('routed' in a.by) {
        yield as('groove further down', {
          ...a,
          by: { ...a.by, routed: a.by.routed.map((x) => more(x, 3)) },
        });
        yield as('groove too shallow', { ...a, by: { ...a.by, depth: more(a.by.depth, -3) } });
        yield as('another bit', { ...a, by: { ...a.by, bit: more(a.by.bit, 1) } });
      } else {
        yield as('groove further down', {
          ...a,
          by: { sawn: a.by.sawn.map((p) => ({ ...p, beyond: more(p.beyond, 3) })) },
        });
        yield as('groove too shallow', {
          ...a,
          by: { sawn: a.by.sawn.map((p) => ({ ...p, blade: more(p.blade, -3) })) },
        });
      }
      yield* batchMutants(a, as);
      return;
    case 'edge': {
      const boards = a.pairs.map((p) => p.board);
      if (boards.length > 1)
        yield as('strips on one another’s boards', {
          ...a,
          pairs: a.pairs.map((p, n) => ({ ...p, board: boards[(n + 1) % boards.length]! })),
        });
      yield as('forget a strip', { ...a, pairs: a.pairs.slice(1) });
      yield* touchMutants(a, as, more);
      return;
    }
    case 'flush':
      for (const side of a.sides)
        yield as('a side not trimmed', { ...a, sides: a.sides.filter((s) => s !== side) });
      yield* batchMutants(a, as);
      return;
    case 'set':
      yield as('the other part', { ...a, workpiece: another(a.workpiece) });
      yield as('end for end', { ...a, turn: { ...a.turn, length: turnedOver(a.turn.length) } });
      yield as('back to front', { ...a, turn: { ...a.turn, width: turnedOver(a.turn.width) } });
      if (a.pegs) {
        yield as('no dowels or biscuits', { ...a, pegs: [] });
        yield as('a dowel or biscuit too few', {
          ...a,
          pegs: a.pegs.map((p, n) => (n === 0 ? { ...p, count: p.count - 1 } : p)),
        });
        yield as('longer dowels or biscuits', {
          ...a,
          pegs: a.pegs.map((p, n) => (n === 0 ? { ...p, across: more(p.across, 5) } : p)),
        });
      }
      if (a.splines) {
        yield as('no splines', { ...a, splines: [] });
        yield as('a spline elsewhere along its joint', {
          ...a,
          splines: a.splines.map((s) => ({ ...s, behind: more(s.behind, 12) })),
        });
      }
      yield* touchMutants(a, as, more);
      return;
    case 'screw':
      yield as('longer screws', { ...a, length: more(a.length, 8) });
      yield as('shorter screws', { ...a, length: more(a.length, -8) });
      yield as('thicker screws', { ...a, diameter: more(a.diameter, 2) });
      yield as('a screw too few', { ...a, count: a.count - 1 });
      yield as('screws into another part', { ...a, mate: another(a.mate) });
      yield as('screws from the other part', { ...a, workpiece: a.mate, mate: a.workpiece });
      yield as('screws through holes that aren’t there', {
        ...a,
        by: a.by === 'holes' ? 'pockets' : 'holes',
      });
      return;
    case 'plug':
      yield as('a plug too few', { ...a, count: a.count - 1 });
      yield as('wider plugs', { ...a, diameter: more(a.diameter, 2) });
      yield as('plugs in the other face', { ...a, side: a.side === 'show' ? 'under' : 'show' });
      return;
    default:
      yield* fittingMutants(a, as, more, another);
  }
}

/** Mistakes at channels, slots and rows of holes, and at what is hung, laid in, lifted in or drawn out. */
function* fittingMutants(
  a: Act,
  as: (operator: string, act: Act) => Mutant,
  more: (t: Traced, mm: number) => Traced,
  another: (mark: string) => string,
): Generator<Mutant> {
  const first = <T>(of: readonly T[], change: (x: T) => T) => of.map((x, n) => (n === 0 ? change(x) : x));
  switch (a.act) {
    case 'groove':
      for (const mm of [-2, 2]) {
        yield as('a channel moved', {
          ...a,
          channels: first(a.channels, (passes) => passes.map((x) => more(x, 2 * mm))),
        });
        yield as(`channels ${mm} mm deep`, { ...a, depth: more(a.depth, mm) });
      }
      yield as('a channel forgotten', { ...a, channels: a.channels.slice(1) });
      yield as('channels in the other face', { ...a, face: face(a.face) });
      yield as('channels from the wrong edge', { ...a, edge: OPPOSITE[a.edge] });
      yield as('channels with a wider bit', { ...a, bit: more(a.bit, 3) });
      return;
    case 'notch':
      for (const mm of [-4, 4]) yield as(`a notch ${mm} mm long`, { ...a, length: more(a.length, mm) });
      yield as('a notch at the other end', { ...a, end: a.end === 'start' ? 'end' : 'start' });
      yield as('a notch at the other edge', { ...a, edge: a.edge === 'near' ? 'far' : 'near' });
      return;
    case 'scribe':
      yield as('scribed too narrow', { ...a, leaves: more(a.leaves, -5) });
      if (a.edge) yield as('scribed at the other end', { ...a, edge: a.edge === 'start' ? 'end' : 'start' });
      return;
    case 'slot':
      yield as('a slot moved', { ...a, beside: first(a.beside, (x) => more(x, 4)) });
      yield as('a slot forgotten', { ...a, beside: a.beside.slice(1) });
      yield as('slots too short', { ...a, ends: [more(a.ends[0], 8), a.ends[1]] });
      return;
    case 'pin-holes':
      yield as('a row of pin holes forgotten', { ...a, rows: a.rows.slice(1) });
      yield as('pin holes begun too high', {
        ...a,
        rows: first(a.rows, (r) => ({ ...r, first: more(r.first, 6) })),
      });
      if (a.rows.some((r) => r.acrossFrom))
        yield as('pin holes from one edge', {
          ...a,
          rows: a.rows.map(({ acrossFrom: _, ...r }) => r),
        });
      yield as('pin holes in the other face', { ...a, side: face(a.side) });
      yield as('pin holes too wide', { ...a, diameter: more(a.diameter, 1.5) });
      yield as('pin holes from the wrong end', { ...a, from: a.from === 'start' ? 'end' : 'start' });
      return;
    case 'hinge':
      yield as('a hinge too few', { ...a, count: a.count - 1 });
      yield as('hung on another part', { ...a, post: another(a.post) });
      yield as('longer hinge screws', { ...a, length: more(a.length, 10) });
      yield as('plates of another pattern', { ...a, plateScrews: more(a.plateScrews, 6) });
      return;
    case 'rest':
      yield as('pins on another part', { ...a, posts: [another(a.posts[0]), a.posts[1]] });
      yield as('a shelf a level higher', { ...a, level: a.level + 1 });
      return;
    case 'lift-in':
      yield as('a door in the next groove', { ...a, groove: a.groove + 1 });
      yield as('a door lifted too little', { ...a, lift: more(a.lift, -6) });
      yield as('a door between others', { ...a, between: [a.between[1], a.between[0]] });
      return;
    case 'runners':
      yield as('a runner’s screw too few', { ...a, count: a.count - 1 });
      yield as('thicker runners', { ...a, thickness: more(a.thickness, 3) });
      yield as('longer runner screws', { ...a, length: more(a.length, 12) });
      yield as('runners on another part', { ...a, posts: [another(a.posts[0]), a.posts[1]] });
      return;
    case 'draw-out':
      yield as('another runner', { ...a, runners: [another(a.runners[0]), a.runners[1]] });
      return;
    case 'pull':
      yield as('longer pull screws', { ...a, length: more(a.length, 10) });
      yield as('a pull’s screw too few', { ...a, count: a.count - 1 });
      if (a.holes !== undefined) yield as('another pull', { ...a, holes: more(a.holes, 16) });
      return;
    case 'buttons':
      yield as('a tongue too far out of its mortise', { ...a, tongue: more(a.tongue, -12) });
      yield as('a button 8 mm along its mortise', { ...a, beside: first(a.beside, (x) => more(x, 8)) });
      yield as('buttons at another part', { ...a, post: another(a.post) });
      yield as('longer button screws', { ...a, length: more(a.length, 12) });
      yield as('a button forgotten', { ...a, workpieces: a.workpieces.slice(1) });
      return;
    case 'levellers':
      yield as('a leveller too few', { ...a, count: a.count - 1 });
      return;
    default:
      return;
  }
}

/** One part of a batch forgotten. */
function* batchMutants<A extends Of<'pocket' | 'drill' | 'biscuit-slot' | 'spline-groove' | 'flush'>>(
  a: A,
  as: (operator: string, act: Act) => Mutant,
): Generator<Mutant> {
  yield as('forget one of the batch', { ...a, workpieces: a.workpieces.slice(1) });
}

function* touchMutants<A extends Of<'set' | 'edge'>>(
  a: A,
  as: (operator: string, act: Act) => Mutant,
  more: (t: Traced, mm: number) => Traced,
): Generator<Mutant> {
  for (const [n, t] of a.touches.entries()) {
    const withTouch = (operator: string, touch: Touch) => {
      const touches = [...a.touches] as [Touch, Touch, Touch];
      touches[n] = touch;
      return as(operator, { ...a, touches });
    };
    if (t.of === 'bench') continue;
    if (t.gap !== undefined) yield withTouch('a gap 3 mm off', { ...t, gap: more(t.gap, 3) });
    yield withTouch('the wrong side of a neighbour', { ...t, face: turnedOver(t.face) });
    yield withTouch('the wrong side of the part', { ...t, side: turnedOver(t.side) });
  }
}
