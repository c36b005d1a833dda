import type { Act, Operation } from '../../build/index.ts';
import { PIECE } from '../assembly.ts';
import type { DryFitFault } from '../report.ts';

/** How long things must be left alone, and what was promised. */
export interface Care {
  /** Minutes that glue must be left in clamps, at least, and a coat until the next thing is done to it. */
  readonly glueSets: number;
  readonly coatDries: number;
  /** How many coats what is finished gets, by what the cards call it. */
  readonly coats: ReadonlyMap<string, number>;
}

type ConditionFault = Pick<DryFitFault, 'code' | 'on' | 'sentence'>;

/** Of so many parts that were put together one by one a frame or a box has come, which must be checked for square. */
const BOX = 4;

/**
 * What can’t be seen in the shape of the wood: measured, marked, sanded, masked, wet with glue, coated, rubbed down,
 * square, fixed. Each card may need some of it, and brings about some of it.
 */
export class Condition {
  private measured = false;
  private sawTried = false;
  private lookedOver = false;
  private fixed = false;
  private readonly marked = new Set<string>();
  private readonly sanded = new Set<string>();
  private readonly masked = new Set<string>();
  private readonly rehearsed = new Set<string>();
  /** Boards whose edges were planed, and what was glued up of them. */
  private readonly straight = new Set<string>();
  private readonly squared = new Set<string>();
  private readonly waxed = new Set<string>();
  private readonly sliding = new Set<string>();
  /** Strips of edging, which are trimmed and sanded with their boards. */
  private readonly strips = new Set<string>();
  /** Parts that stand in glue, and the card that put them there. */
  private readonly wet = new Map<string, string>();
  /** Parts whose mitres are folded or drawn together in glue: tape and band hold them, and no screw does. */
  private readonly folded = new Map<string, string>();
  private readonly coatsOn = new Map<string, number>();
  private readonly coatsGiven = new Map<string, number>();
  private readonly unrubbed = new Set<string>();
  /** Parts that were put together one by one, by assembly. */
  private readonly putInto = new Map<string, string[]>();
  private readonly care: Care;

  constructor(care: Care) {
    this.care = care;
  }

  /** What a card lacks before it is done; afterwards what it brings about is so. `marksOf` tells what hangs together with a name. */
  meet(o: Operation, marksOf: (name: string) => readonly string[]): readonly ConditionFault[] {
    const { does } = o;
    switch (does.act) {
      case 'saw':
      case 'part':
        return this.saw(o, does.workpiece);
      case 'saw-alike':
        return does.cuts.flatMap((c) => this.saw(o, c.workpiece));
      case 'rip-apart':
        return this.ripApart(o, does);
      case 'bevel':
      case 'rabbet':
      case 'groove':
      case 'notch':
      case 'slot':
      case 'spline-groove':
      case 'pocket':
      case 'drill':
      case 'pin-holes':
        return without(
          does.workpieces,
          this.marked,
          (list) => `${list} has no mark yet, so nobody knows its edges`,
        );
      case 'plane':
        if (does.across === 'width') added(this.straight, does.workpieces);
        return [];
      case 'glue-up':
        return this.glueUp(o, does);
      case 'edge':
        return this.edge(o, does);
      case 'flush':
        return this.still(does.workpieces);
      case 'set':
        return this.set(o, does, marksOf);
      case 'screw':
        this.wet.delete(does.workpiece);
        this.wet.delete(does.mate);
        // Whoever screws into a corner that only tape holds racks it.
        return this.still([does.workpiece, does.mate].filter((m) => this.folded.has(m)));
      case 'hinge':
        return this.still([does.workpiece, does.post]);
      case 'lift-in':
        this.sliding.add(does.workpiece);
        return [];
      case 'other':
        return this.other(o, does.on, marksOf);
      default:
        return [];
    }
  }

  /** Which of these parts have not had a coat yet. */
  bare(marks: readonly string[]): readonly string[] {
    return marks.filter((m) => !this.coatsOn.has(m));
  }

  /** What is wanting at the end. */
  atEnd(): readonly ConditionFault[] {
    const faults = [...this.still([...this.wet.keys(), ...this.folded.keys()])];
    for (const [name, asked] of this.care.coats) {
      const given = this.coatsGiven.get(name) ?? 0;
      if (given !== asked)
        faults.push(leftOut(name, `${name} was to get ${asked} coats of finish, and gets ${given}.`));
    }
    for (const marks of this.putInto.values())
      if (marks.length >= BOX && !marks.some((m) => this.squared.has(m)))
        faults.push(
          leftOut(marks[0]!, `${marks[0]} and what it was put together with was never checked for square.`),
        );
    for (const mark of this.sliding)
      if (!this.waxed.has(mark)) faults.push(leftOut(mark, `${mark} slides in grooves that nobody waxed.`));
    if (!this.fixed) faults.push(leftOut(PIECE, 'Nobody set the piece in its place and fixed it.'));
    return faults;
  }

  private saw(o: Operation, workpiece: string): readonly ConditionFault[] {
    const faults: ConditionFault[] = [];
    // The yard cuts before anything comes home to be measured.
    if (o.kind === 'yard-cut') return faults;
    if (!this.measured) faults.push(leftOut(workpiece, 'nobody has measured the stock yet.'));
    if (o.kind === 'true-edge' && !this.sawTried)
      faults.push(leftOut(workpiece, 'the saw has not been tried on waste yet.'));
    // Told once.
    this.measured = true;
    this.sawTried ||= o.kind === 'true-edge';
    return faults;
  }

  /** What was written on a blank is on both its halves. */
  private ripApart(
    o: Operation,
    { workpiece, yields }: Extract<Act, { act: 'rip-apart' }>,
  ): readonly ConditionFault[] {
    if (this.marked.has(workpiece)) added(this.marked, yields);
    return [
      ...this.saw(o, workpiece),
      ...without([workpiece], this.marked, (list) => `${list} has no mark yet, so nobody knows its edges`),
    ];
  }

  private glueUp(o: Operation, { boards, as }: Extract<Act, { act: 'glue-up' }>): readonly ConditionFault[] {
    const faults = [
      ...without(boards, this.straight, (list) => `${list} has edges that were not planed: no joint closes`),
      ...this.tooSoon(o, this.care.glueSets, 'glue', as),
    ];
    this.straight.add(as);
    return faults;
  }

  private edge(o: Operation, { pairs }: Extract<Act, { act: 'edge' }>): readonly ConditionFault[] {
    for (const { strip, board } of pairs) {
      this.strips.add(strip);
      // Tape that is ironed on holds as soon as it is cold.
      if (o.kind !== 'iron') this.wet.set(board, o.title);
    }
    if (o.kind === 'iron' || o.minutes.waiting === 0) return [];
    const faults = this.tooSoon(o, this.care.glueSets, 'glue', pairs[0]?.strip);
    for (const { board } of pairs) this.wet.delete(board);
    return faults;
  }

  private set(
    o: Operation,
    act: Extract<Act, { act: 'set' }>,
    marksOf: (name: string) => readonly string[],
  ): readonly ConditionFault[] {
    const newcomers = marksOf(act.workpiece);
    const there = act.touches.map((t) => t.of).filter((of) => of !== 'bench');
    const faults: ConditionFault[] = newcomers.length > 1 ? [...this.still(newcomers)] : [];
    // A board with its edging counts as one; an assembly has a name that is no mark.
    if (newcomers.includes(act.workpiece) && o.stage === 'assemble')
      this.putInto.set(act.into, [...(this.putInto.get(act.into) ?? []), act.workpiece]);
    if (!act.glue || there.length === 0) return faults;
    const bare = [act.workpiece, ...there].find((m) => (this.coatsOn.get(m) ?? 0) > 0 && !this.masked.has(m));
    if (bare !== undefined)
      faults.push({
        code: 'glue-on-finish',
        on: bare,
        sentence: `${bare} has been finished and was not masked first: glue does not hold there.`,
      });
    if (o.together !== undefined && !this.rehearsed.has(act.workpiece))
      faults.push(leftOut(act.workpiece, `${act.workpiece} was not tried in its place without glue.`));
    (act.folds ? this.folded : this.wet).set(act.workpiece, o.title);
    return faults;
  }

  private other(
    o: Operation,
    on: readonly string[],
    marksOf: (name: string) => readonly string[],
  ): readonly ConditionFault[] {
    switch (o.kind) {
      case 'gather':
        this.measured = true;
        return [];
      case 'test-cut':
        this.sawTried = true;
        return [];
      case 'mark':
        return added(this.marked, on);
      case 'sand': {
        const faults = this.still(on);
        added(this.sanded, on);
        return faults;
      }
      case 'mask':
        return added(this.masked, on);
      case 'rehearse':
        return added(this.rehearsed, on);
      case 'check-square':
        return added(this.squared, on);
      case 'wax':
        return added(this.waxed, on);
      case 'inspect':
        this.lookedOver ||= on.includes(PIECE) && o.stage === 'finish';
        return [];
      case 'rub':
        for (const name of on) this.unrubbed.delete(name);
        return [];
      case 'cure':
        return this.cure(o, on, marksOf);
      case 'prefinish':
      case 'finish':
        return this.coat(o, on, marksOf);
      // Whoever turns a case over in wet glue racks it.
      case 'move':
        return this.still(on.flatMap((name) => marksOf(name)));
      case 'anchor':
        this.fixed = true;
        return this.still(on.flatMap((name) => marksOf(name)));
      default:
        return [];
    }
  }

  private cure(
    o: Operation,
    on: readonly string[],
    marksOf: (name: string) => readonly string[],
  ): readonly ConditionFault[] {
    const marks = on.flatMap((name) => marksOf(name));
    // A card that prints diagonals checks them before it lets the glue set.
    if (o.lengths.length > 0) added(this.squared, on);
    const faults = [...this.tooSoon(o, this.care.glueSets, 'glue', on[0]), ...this.setsAskew(marks)];
    for (const mark of marks) {
      this.wet.delete(mark);
      this.folded.delete(mark);
    }
    return faults;
  }

  /** A frame that stands in wet glue is drawn square before that sets, or never. */
  private setsAskew(marks: readonly string[]): readonly ConditionFault[] {
    const frame = [...this.putInto.values()].find((all) => all.some((m) => marks.includes(m)));
    if (!frame || frame.length < BOX || frame.some((m) => this.squared.has(m))) return [];
    const mark = frame.find((m) => marks.includes(m) && (this.wet.has(m) || this.folded.has(m)));
    return mark === undefined
      ? []
      : [leftOut(mark, `${mark} sets in its glue before anyone has measured diagonals.`)];
  }

  private coat(
    o: Operation,
    on: readonly string[],
    marksOf: (name: string) => readonly string[],
  ): readonly ConditionFault[] {
    const marks = on.flatMap((name) => marksOf(name));
    const faults = [
      ...this.still(marks),
      ...without(
        marks.filter((m) => !this.strips.has(m)),
        this.sanded,
        (list) => `${list} has not been sanded`,
      ),
      ...this.tooSoon(o, this.care.coatDries, 'a coat', on[0]),
    ];
    const rough = on.find((name) => this.unrubbed.has(name));
    if (rough !== undefined)
      faults.push(leftOut(rough, `the coat before was not rubbed down, and this one would not hold on it.`));
    if (o.kind === 'finish' && !this.lookedOver)
      faults.push(leftOut(PIECE, 'nobody has looked the piece over and wiped it clean.'));
    for (const mark of marks) this.coatsOn.set(mark, (this.coatsOn.get(mark) ?? 0) + 1);
    for (const name of on) {
      this.coatsGiven.set(name, (this.coatsGiven.get(name) ?? 0) + 1);
      this.unrubbed.add(name);
    }
    return faults;
  }

  /** Parts on which glue is still wet. */
  private still(marks: readonly string[]): readonly ConditionFault[] {
    const mark = marks.find((m) => this.wet.has(m) || this.folded.has(m));
    return mark === undefined
      ? []
      : [
          {
            code: 'still-wet',
            on: mark,
            sentence: `${mark} still stands in wet glue: let it set after “${this.wet.get(mark) ?? this.folded.get(mark)}” first.`,
          },
        ];
  }

  private tooSoon(
    { minutes }: Operation,
    least: number,
    what: string,
    on: string | undefined,
  ): readonly ConditionFault[] {
    return minutes.waiting >= least
      ? []
      : [
          {
            code: 'still-wet',
            ...(on === undefined ? {} : { on }),
            sentence: `${minutes.waiting} minutes are too short for ${what}, which takes ${least}.`,
          },
        ];
  }
}

function leftOut(on: string, sentence: string): ConditionFault {
  return { code: 'left-out', on, sentence };
}

function added(to: Set<string>, names: readonly string[]): readonly ConditionFault[] {
  for (const name of names) to.add(name);
  return [];
}

/** One fault for all that lack a condition. */
function without(
  names: readonly string[],
  have: ReadonlySet<string>,
  sentence: (first: string) => string,
): readonly ConditionFault[] {
  const first = names.find((n) => !have.has(n));
  return first === undefined ? [] : [leftOut(first, `${sentence(first)}.`)];
}
