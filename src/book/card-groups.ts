import type { Operation } from '../build/index.ts';

/** An operation under its number in the order of work. */
export interface NumberedOperation {
  readonly operation: Operation;
  readonly number: number;
}

/** Operations that stand on one card, the first of them its heading. */
export type CardGroup = readonly [NumberedOperation, ...NumberedOperation[]];

/** No card grows longer than this many operations. */
const MOST = 6;

/**
 * Operations that follow one another and are one piece of work to the hands, on one card: a part and its screws, both
 * mitres of a strip, a cut and the trimming of what it left, all cuts of a strip. Their numbers stay.
 */
export function cardGroups(operations: readonly Operation[]): CardGroup[] {
  const groups: [NumberedOperation, ...NumberedOperation[]][] = [];
  operations.forEach((operation, i) => {
    const card = groups.at(-1);
    const numbered = { operation, number: i + 1 };
    if (card && card.length < MOST && joins(card, operation)) card.push(numbered);
    else groups.push([numbered]);
  });
  return groups;
}

function joins(card: CardGroup, next: Operation): boolean {
  const first = card[0].operation;
  const last = card.at(-1)!.operation;
  if (next.stage !== last.stage) return false;
  const [did, does] = [last.does, next.does];
  switch (does.act) {
    case 'saw':
      return did.act === 'saw' && sawsOn(first, last, next);
    case 'bevel':
      return did.act === 'bevel' && sameMarks(did.workpieces, does.workpieces);
    case 'rabbet':
      return did.act === 'rabbet';
    case 'groove':
      return did.act === 'groove' && (sameMarks(did.workpieces, does.workpieces) || readsAlike(last, next));
    case 'notch':
      return did.act === 'notch';
    case 'pocket':
      return (
        did.act === 'pocket' &&
        ((sameMarks(did.workpieces, does.workpieces) && last.faceUp === next.faceUp) ||
          readsAlike(last, next))
      );
    case 'drill':
    case 'pin-holes':
    case 'slot':
      return did.act === does.act && readsAlike(last, next);
    case 'edge':
      return (
        did.act === 'edge' &&
        sameMarks(
          did.pairs.map((p) => p.board),
          does.pairs.map((p) => p.board),
        )
      );
    case 'flush':
      return did.act === 'flush';
    case 'set':
      return does.glue && did.act === 'set' && did.glue && did.into === does.into;
    case 'screw':
      return first.does.act === 'set' && !first.does.glue && first.does.into === does.into;
    case 'rest':
      return first.does.act === 'set' && first.does.workpiece === does.workpiece;
    default:
      return false;
  }
}

/** Is it the same work on other parts, such as the second of a pair? Their figures are told for each. */
function readsAlike(last: Operation, next: Operation): boolean {
  return (
    sameMarks(last.lines, next.lines) && last.faceUp === next.faceUp && last.reference === next.reference
  );
}

/** Truing and squaring a sheet; trimming what the card has just cut; one strip's cuts. */
function sawsOn(first: Operation, last: Operation, next: Operation): boolean {
  if (first.does.act !== 'saw' || last.does.act !== 'saw' || next.does.act !== 'saw') return false;
  const { workpiece } = next.does;
  const given = last.does.yields.some((y) => y?.name === workpiece);
  if (next.kind === 'square-end') return last.kind === 'true-edge' && given;
  if (next.stage === 'strips') return given;
  return given && next.does.yields[0]?.name === workpiece && last.kind !== 'square-end';
}

function sameMarks(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && a.every((mark, i) => mark === b[i]);
}
