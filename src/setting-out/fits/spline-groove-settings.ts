import type { Shop } from '../../job/index.ts';
import { BISCUITS, SETTING_OUT } from '../../materials/index.ts';
import type { Ledger, Traced } from '../../measure/index.ts';
import type { SplineGroove } from '../feature.ts';
import { channelSettings, OVERLAP, toolStep } from './channel-settings.ts';
import { sawKerf, sawStep } from './cut-size.ts';

/** How a groove in the slope of a mitre is cut, as its card prints it, and how wide it comes out. */
export type SplineGrooveSettings = { readonly width: Traced } & (
  | {
      /** Its base on the slope; the nearer side of the bit so far down from the inner edge, pass by pass. */
      readonly by: 'router';
      readonly bit: Traced;
      readonly depth: Traced;
      readonly insets: readonly Traced[];
    }
  | {
      /**
       * Its base on the inner face, the blade tilted to 45 degrees: so far beyond the inner edge it comes through the plane of
       * that face, and so far it reaches along itself from there.
       */
      readonly by: 'circular-saw';
      readonly kerf: Traced;
      readonly passes: readonly { readonly beyond: Traced; readonly blade: Traced }[];
    }
);

/** What grooves for splines are cut with: a router, or the saw where there is none. */
export function splineTool({ tools }: Pick<Shop, 'tools'>): 'router' | 'circular-saw' {
  const owns = (kind: string) => tools.some((t) => t.kind === kind);
  return !owns('router') && owns('circular-saw') ? 'circular-saw' : 'router';
}

/** The settings for a groove, with the tools of the shop. */
export function splineGrooveSettings(l: Ledger, shop: Shop, g: SplineGroove): SplineGrooveSettings {
  if (splineTool(shop) === 'circular-saw') return sawnGroove(l, shop, g);
  const { bit, depth, fences, width } = channelSettings(l, shop, [
    { ...g, kind: 'groove', face: g.slopeFrom },
  ]);
  return { by: 'router', bit, depth, insets: fences[0]!, width };
}

function sawnGroove(l: Ledger, shop: Shop, g: SplineGroove): SplineGrooveSettings {
  const t = (x: Traced) => l.ticks(x);
  const kerf = sawKerf(l, shop);
  const step = toolStep(l, shop, 'marking');
  const overSlope = (says: string, down: Traced) => l.ratio(says, down, BISCUITS.overSlope);
  const first = l.round(
    'as fine as lines are marked',
    overSlope('beyond the inner edge, in the plane of the inner face', g.inset),
    step,
    'nearest',
  );
  // Marks are coarse beside the room for glue, so that is left to them.
  const wider = l.less(
    'how much thicker the spline is than the blade',
    g.width,
    l.row(SETTING_OUT.dadoClear),
    kerf,
  );
  const shifts = Math.max(0, Math.ceil(t(wider) / (t(kerf) * (1 - OVERLAP))));
  const moved =
    shifts === 0
      ? l.row(SETTING_OUT.nothing)
      : l.round(
          'as fine as lines are marked',
          overSlope('how far the saw is moved in all', wider),
          step,
          'up',
        );
  const even = Array.from({ length: shifts }, () => 1);
  const beyond = [
    first,
    ...even.map((_, i) =>
      i + 1 === shifts
        ? l.sum('the last pass', first, moved)
        : l.round(
            'as fine as lines are marked',
            l.sum(
              'a pass between',
              first,
              l.times('shares up to here', l.share('an even share', moved, even, 0), i + 1),
            ),
            step,
            'nearest',
          ),
    ),
  ];
  const passes = beyond.map((at) => ({
    beyond: at,
    blade: l.round(
      'as fine as the saw is set',
      l.sum(
        'from the plane of the inner face to the floor, along the blade',
        l.ratio('down the slope to the blade', at, BISCUITS.downSlope),
        g.depth,
      ),
      sawStep(l, shop),
      'nearest',
    ),
  }));
  const width = l.sum(
    'width of the groove: the blade, and how far down the slope it is moved',
    kerf,
    l.ratio('down the slope', moved, BISCUITS.downSlope),
  );
  return { by: 'circular-saw', kerf, passes, width };
}
