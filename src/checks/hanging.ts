import { treeOf } from '../job/index.ts';
import { BASES } from '../materials/index.ts';
import { N_PER_KG } from '../measure/index.ts';
import type { Part } from '../setting-out/index.ts';
import type { Snag } from '../snag/index.ts';
import type { CheckInput } from './check-input.ts';
import { loadedSurface } from './loaded-surface.ts';
import { practice } from './rule.ts';
import { ShopWords } from './shop-words.ts';
import { standingBox, standingBoxes } from './standing-boxes.ts';

/** What the anchors of a piece that hangs on the wall have to hold: its own mass and its load, down and away from the wall. */
export function hanging({
  job,
  setOut,
  weigh,
}: Pick<CheckInput, 'job' | 'setOut' | 'weigh'>): readonly Snag[] {
  const tree = treeOf(job);
  const [first] = tree.all('hanging');
  const records = new Set(tree.all('hanging').map((r) => r.id));
  // Of a cleat, only the strip on the wall is screwed to it.
  const hooked = new Set(setOut.cleats.flatMap((c) => [c.onCase, c.spacer]));
  const rails = setOut.parts.filter((p) => records.has(p.record) && !hooked.has(p.id));
  if (!first || rails.length === 0) return [];
  const words = new ShopWords(job);
  const own = setOut.parts.reduce((sum, p) => sum + weigh(p.id).kg, 0);
  const load = setOut.surfaces.reduce((sum, s) => sum + loadedSurface({ job, setOut, weigh }, s).loadKg, 0);
  const anchors = rails.reduce(
    (sum, r) => sum + Math.max(2, Math.ceil(setOut.ledger.ticks(r.length) / BASES.anchorApart.value)),
    0,
  );
  const boxes = [...standingBoxes(setOut).values()];
  const foot = Math.min(...boxes.map((b) => b.min[2]));
  const rail = standingBox(setOut, rails[0]!);
  const arm = (rail.min[2] + rail.max[2]) / 2 - foot;
  const deep = Math.max(...boxes.map((b) => b.max[1])) - Math.min(...boxes.map((b) => b.min[1]));
  const down = (own + load) * N_PER_KG;
  const away = (down * deep) / 2 / arm;
  const hollow = tree.all('room').find((r) => r.wall === 'hollow');
  return [
    ...(hollow ? [hollowWall(hollow.id)] : []),
    {
      code: 'hanging.load',
      level: 'note',
      where: { path: `design/records/${first.id}`, record: first.id },
      sentence: `It weighs about ${words.mass(own)} and is reckoned to carry ${words.mass(load)}. With ${anchors} anchors in its ${heldBy(rails, setOut)} each holds ${words.force(down / anchors)} downward and ${words.force(away / anchors)} away from the wall.`,
      rule: practice(
        'screws go into studs or solid masonry; a fixing in plasterboard alone carries no furniture',
      ),
      cures: [
        {
          says: 'Choose anchors that are rated for that in your wall, with the safety their maker asks for; follow local codes, and look for pipes and cables first.',
        },
      ],
    },
  ];
}

/** What the anchors are in: rails, strips of cleats, or both. */
function heldBy(screwed: readonly Part[], { cleats }: CheckInput['setOut']): string {
  const strips = cleats.length > 1 ? 'wall strips' : 'wall strip';
  if (screwed.length > cleats.length && cleats.length > 0) return `rails and ${strips}`;
  return cleats.length > 0 ? strips : 'rails';
}

/** Thin boards carry no furniture. */
function hollowWall(room: string): Snag {
  return {
    code: 'hanging.hollow-wall',
    level: 'mind',
    where: { path: `design/records/${room}/wall`, record: room },
    sentence: 'The wall is of thin boards over nothing that is known, and the piece is to hang on it.',
    rule: practice('what hangs on a wall is screwed to studs, to wood put between them, or to masonry'),
    cures: [
      { says: 'Find the studs, and say “studs”; or put a board between them before the piece is hung.' },
      { says: 'Let the piece stand on the floor.' },
    ],
  };
}
