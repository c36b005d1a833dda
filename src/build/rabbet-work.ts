import { HOLDING } from '../materials/index.ts';
import type { Part, Rabbet } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { CAUTION } from './cautions.ts';
import { stopsOf } from './groove-work.ts';
import type { Setting } from './one-setting.ts';
import { sideWords } from './words.ts';

/**
 * Rabbets of parts that are worked alike: routed; or kerfed from the face and pared, where there is no
 * router. A portable saw never runs on a panel’s edge (common practice).
 */
export function rabbets(bench: Bench, batch: readonly [Part, ...Part[]]): void {
  const [part] = batch;
  const t = (size: Part['length']) => bench.ledger.ticks(size);
  const small = t(part.length) < HOLDING.board && t(part.width) < HOLDING.board;
  const sawn = !small && !bench.tool('router') && bench.tool('circular-saw') !== undefined;
  const all = part.features.filter((f): f is Rabbet => f.kind === 'rabbet');
  for (const r of all) {
    const kind = small ? 'marking' : sawn ? 'circular-saw' : 'router';
    // What goes in must go in: a coarser setting never makes it tighter.
    const how = sawn ? 'up' : 'nearest';
    const width = bench.set(kind, r.width, how);
    const depth = bench.set(kind, r.depth, how);
    const stops = stopsOf(bench, part, r);
    const alone = all.every((other) => other === r || other.edge !== r.edge);
    const begin = stops.find((s) => s.from === 'near' || s.from === 'start')?.at;
    const end = stops.find((s) => s.from === 'far' || s.from === 'end')?.at;
    bench.settings.push({
      id: `${part.mark}/rabbet-${r.edge}${alone ? '' : `-${r.face}`}`,
      kind: 'rabbet',
      what: small
        ? 'Saw the step at one end of'
        : `${sawn ? 'Saw and pare' : 'Rabbet'} the ${sideWords(part, r.edge)} of`,
      parts: batch,
      purpose: r.purpose,
      does: {
        act: 'rabbet',
        workpieces: batch.map((p) => p.mark),
        edge: r.edge,
        face: r.face,
        width,
        depth,
        ...(begin === undefined ? {} : { from: begin }),
        ...(end === undefined ? {} : { before: end }),
      },
      faceUp: `${sideWords(part, r.face)} up`,
      reference: small ? 'that end' : `the ${sideWords(part, r.edge)}`,
      lengths: [width, depth, ...stops.map((s) => s.at)],
      ...(small
        ? BY_HAND
        : sawn
          ? bySaw(part, r, run(part, r, stops))
          : byRouter(part, r, run(part, r, stops))),
    });
  }
}

/** How far it runs, in words; its stops are the third length and on. */
function run(part: Part, r: Rabbet, stops: ReturnType<typeof stopsOf>): string {
  const across = r.edge === 'start' || r.edge === 'end';
  if (stops.length === 0)
    return `right through from ${across ? 'edge to edge' : 'end to end'}, with a waste block where the bit comes out`;
  const from = stops.map((s, i) => `{${i + 2}} from the ${sideWords(part, s.from)}`);
  return `stopping ${from.join(' and ')}; square the corner${stops.length > 1 ? 's' : ''} with a chisel`;
}

type Way = Pick<Setting, 'tool' | 'lines' | 'cautions' | 'times'>;

/** What is too small for a machine, and for hands near one. */
const BY_HAND: Way = {
  times: 2,
  lines: [
    'Mark {0} in from the end on the face that lies up and down both edges, and {1} down from that face on the end and both edges.',
    'Too small for the router: in a vice, saw down across the grain to the second line with a fine handsaw, then from the end along it, both on the waste side; pare to the lines with a chisel.',
  ],
  cautions: [CAUTION.chisel],
};

function byRouter(part: Part, r: Rabbet, runs: string): Way {
  return {
    tool: 'router',
    lines: [
      `Straight bit, edge guide on the ${sideWords(part, r.edge)}: {0} in from the edge, ${runs}.`,
      'Depth {1}, in two or three passes. A bit wider than the rabbet hangs over the edge by the rest: a sacrificial strip on the edge guide gives it room. One that is narrower clears the edge first, and then runs by the guide. Try both settings on an offcut with a piece of the panel that goes in.',
    ],
    cautions: [CAUTION.router, CAUTION.dust],
  };
}

function bySaw(part: Part, r: Rabbet, runs: string): Way {
  return {
    tool: 'circular-saw',
    times: 2,
    lines: [
      `A rabbet, by saw and chisel: the part lies flat, clamped down, the saw on its face, never on its edge. The blade stands {1} deep: prove that on an offcut.`,
      `First kerf: its inner side {0} in from the ${sideWords(part, r.edge)}, the rail or a straight board on the part. Then kerf after kerf out to the edge, fins of wood thinner than the blade between them; ${runs.replace(', with a waste block where the bit comes out', '')}.`,
      'Break out what stands and pare the floor level with a wide chisel, along the kerfs; try it with a piece of the panel that goes in.',
    ],
    cautions: [CAUTION.saw, CAUTION.chisel, CAUTION.dust],
  };
}
