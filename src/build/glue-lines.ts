import { isPegged, type Joint, opposite, type Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { isLetIn, jointDirection, type Standing } from './seating.ts';
import { listWords } from './words.ts';

/** Marks of the parts there that a newcomer is glued to as well as screwed or pegged. */
export function gluedTo(bench: Bench, standing: Standing, part: Part): readonly string[] {
  return bench.setOut.joints.flatMap((j) => {
    const other = j.part === part.id ? j.mate : j.mate === part.id ? j.part : undefined;
    return other !== undefined && (j.hold === 'glue-and-screws' || isPegged(j)) && standing.has(other)
      ? [partById(bench, other).mark]
      : [];
  });
}

/** What a card says of the glue on an end that is screwed or pegged as well. */
export function endGlueLines(part: Part, meets: readonly string[]): readonly string[] {
  return meets.length > 0
    ? [
        `A thin even film of glue where ${part.mark} and ${listWords(meets)} meet; the edge drinks, so wait a minute and spread again. Wipe off what comes out.`,
      ]
    : [];
}

const DIAGONALS = 'Measure both diagonals once more: the back holds the case as it is now.';

/** Where a part is also glued: panels in their dados, the back in the rabbets of the sides. */
export function glueLines(bench: Bench, standing: Standing, part: Part): readonly string[] {
  const into = bench.setOut.joints.filter(isLetIn);
  const entered = into.filter((j) => j.part === part.id && standing.has(j.mate));
  const takes = into.filter((j) => j.mate === part.id && standing.has(j.part));
  if (entered.length + takes.length > 0) {
    const marks = [...new Set([...entered.map((j) => j.mate), ...takes.map((j) => j.part)])].map(
      (id) => partById(bench, id).mark,
    );
    return [
      `Try it dry first. Then glue on the walls of the channels between ${part.mark} and ${listWords(marks)}, a thin even film.`,
      goesHome(bench, entered, takes),
      ...(entered.some((j) => j.kind === 'dado')
        ? ['The dado says where it comes; distances are there to check it by.']
        : []),
    ];
  }
  if (bench.setOut.joints.some((j) => j.part === part.id && j.kind === 'groove'))
    return ['Slide it along the grooves of both sides from the upper end, without glue.'];
  const mates = bench.setOut.joints
    .filter((j) => j.part === part.id && j.kind === 'rabbet' && j.hold === 'glue' && standing.has(j.mate))
    .map((j) => partById(bench, j.mate).mark);
  const isBack = bench.setOut.joints.some((j) => j.part === part.id && j.duty === 'back');
  return mates.length > 0
    ? [
        DIAGONALS,
        `A thin line of glue in the rabbets of ${listWords(mates)}; wipe off what comes out. The same gap on both sides; a batten along each rabbet, clamped from front to back, until the glue has set.`,
      ]
    : isBack
      ? [DIAGONALS]
      : [];
}

/** How it comes into channels: straight where all of them close one way, else along them. */
function goesHome(bench: Bench, entered: readonly Joint[], takes: readonly Joint[]): string {
  const inDados = (joints: readonly Joint[]) => joints.filter((j) => j.kind === 'dado');
  const ways = new Set([
    ...inDados(entered).map((j) => jointDirection(bench, j)),
    ...inDados(takes).map((j) => opposite(jointDirection(bench, j))),
  ]);
  if (ways.size < 2) return 'Press it home with a clamp and a batten across; wipe off what comes out.';
  return takes.length === 0
    ? 'Let it down into its dados from behind, until its front is where it belongs.'
    : 'Let it down from behind, along all these channels at once, until its front is where it belongs: they close in different ways, and pressed straight into one it can’t come into the other. Spread the glue thin, and don’t stop half way.';
}

function partById(bench: Bench, id: string): Part {
  return bench.setOut.parts.find((p) => p.id === id)!;
}
