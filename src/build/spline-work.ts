import type { Traced } from '../measure/index.ts';
import { type Part, type SplineGroove, splineGrooveSettings } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { CAUTION } from './cautions.ts';
import { stopsOf } from './groove-work.ts';
import type { Setting } from './one-setting.ts';
import { sideWords } from './words.ts';

/**
 * Cuts grooves for splines into the slopes of mitred ends, square to these: with a router that is led by a strip under its base, or
 * with the saw tilted, where there is no router.
 */
export function splineGrooves(bench: Bench, batch: readonly [Part, ...Part[]]): void {
  const [part] = batch;
  for (const g of part.features) if (g.kind === 'spline-groove') cut(bench, batch, g);
}

function cut(bench: Bench, batch: readonly [Part, ...Part[]], g: SplineGroove): void {
  const [part] = batch;
  const inner = sideWords(part, g.slopeFrom);
  const [stop, otherStop] = stopsOf(bench, part, g);
  const { does, tool, lines, lengths, cautions } = workOf(bench, part, g);
  const put = (t: Traced) => `{${lengths.push(t) - 1}}`;
  const setting: Setting = {
    id: `${part.mark}/spline-groove-${g.edge}`,
    kind: 'groove',
    what: `Groove, for a spline, the mitre at the ${sideWords(part, g.edge)} of`,
    parts: batch,
    does: {
      act: 'spline-groove',
      workpieces: batch.map((p) => p.mark),
      edge: g.edge,
      slopeFrom: g.slopeFrom,
      by: does,
      ...(stop ? { stop } : {}),
      ...(otherStop ? { otherStop } : {}),
    },
    tool,
    faceUp: `${inner} up, the ${sideWords(part, g.edge)} over the front of the bench`,
    reference: 'the inner edge of the mitre',
    lines: [
      ...lines,
      stop
        ? `It stops ${put(stop.at)} from the ${sideWords(part, stop.from)}${otherStop ? ` and ${put(otherStop.at)} from the ${sideWords(part, otherStop.from)}` : ''}; ends stay round, the spline is short of them.`
        : 'Right through from edge to edge, a waste block where it comes out.',
      'Further down the mitre the groove would come through the outer face. Prove all of it on an offcut with the same mitre and a piece of the spline’s board: it slides in by hand and doesn’t rattle.',
    ],
    lengths,
    cautions,
  };
  bench.settings.push(setting);
}

/** What cuts a groove, with what numbers. */
function workOf(bench: Bench, part: Part, g: SplineGroove) {
  const s = splineGrooveSettings(bench.ledger, bench.job.shop, g);
  const inner = sideWords(part, g.slopeFrom);
  const lengths: Traced[] = [];
  const put = (t: Traced) => `{${lengths.push(t) - 1}}`;
  if (s.by === 'router') {
    const sizes = `Straight bit of ${put(s.bit)}, ${put(s.depth)} deep square to the mitre, in two or three passes.`;
    return {
      does: { routed: s.insets, bit: s.bit, depth: s.depth },
      tool: 'router',
      lines: [
        `Slope guide: a straight strip with one long edge sawn to 45 degrees, screwed under the router’s base, so that this edge lies on the ${inner} while the base lies on the mitre.`,
        sizes,
        `From the sharp edge of the strip, which runs along the inner edge of the mitre, to the nearer side of the bit: ${s.insets.map(put).join(', then ')}.`,
      ],
      lengths,
      cautions: [CAUTION.router, CAUTION.dust],
    } as const;
  }
  return {
    does: { sawn: s.passes },
    tool: 'circular-saw',
    lines: [
      `Blade tilted to 45 degrees, the saw guided along the mitre on the ${inner}, so that the blade runs in under the part from beyond the mitre: there it cuts square into it.`,
      `How far beyond the inner edge of the mitre the blade comes through the plane of that face (${bench.tool('guide-rail') ? 'the edge of the rail lies there' : 'on a rail, its edge lies there'}), and how far it reaches below the base, measured along itself: ${s.passes.map((p) => `${put(p.beyond)} and ${put(p.blade)}`).join('; then ')}.`,
    ],
    lengths,
    cautions: [CAUTION.saw, CAUTION.bevel],
  } as const;
}
