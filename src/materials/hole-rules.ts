import { fromMm, type LengthRow } from '../measure/index.ts';
import type { Sourced } from './sourced.ts';

const PRACTICE = 'common practice';

function length(id: string, mm: number, says: string): LengthRow {
  return { id, value: fromMm(mm), says, source: PRACTICE };
}

/** The lengths by which holes through a panel are set out. Each stands in a trace as a leaf. */
export const HOLES = {
  plugClear: length(
    'hole.plug-clear',
    2,
    'a hole is at least this much wider than the plug that goes through',
  ),
  edge: length(
    'hole.edge',
    10,
    'between a hole through a panel and the panel’s edge at least this much wood is left',
  ),
  beside: length('hole.beside', 3, 'a hole through a panel stays this far from what touches the panel'),
  floor: length('hole.floor', 3, 'under a hole that doesn’t go through at least this much wood is left'),
  sawStep: length('hole.saw-step', 5, 'hole saws and Forstner bits are bought in steps of about this'),
} as const;

/** A plug that a cable ends in: what it measures across, corner to corner, seen along its cable. */
export interface Plug extends Sourced {
  readonly id: string;
  readonly name: string;
  readonly across: LengthRow;
}

const PLUG_SIZES: readonly (readonly [id: string, name: string, acrossMm: number, source: string])[] = [
  ['europlug', 'flat europlug', 38, 'EN 50075: 35.3 x 13.7 mm, so 37.9 mm across the corners; from memory'],
  ['earthed-round', 'round earthed plug of the mainland', 40, 'from memory of usual plugs'],
  ['three-flat-pins', 'British plug with three flat pins', 58, 'from memory of usual plugs, passed sideways'],
  ['three-blades', 'North American earthed plug', 36, 'from memory of usual plugs'],
  ['usb-a', 'USB plug, type A', 18, 'USB 2.0: overmould at most 16 x 8 mm, so 17.9 mm; from memory'],
  ['usb-c', 'USB plug, type C', 14, 'USB Type-C: overmould at most 12.35 x 6.5 mm, so 14 mm; from memory'],
  ['hdmi', 'HDMI plug, type A', 25, 'from memory of usual plugs'],
  ['network', 'network plug with its boot', 18, 'from memory of usual plugs'],
  ['phono', 'phono plug', 14, 'from memory of usual plugs'],
  [
    'aerial-uhf',
    'aerial plug with a 5/8 in thread',
    19,
    'from memory: the coupling ring of a PL-259 is about 19 mm',
  ],
  ['jack', 'headphone jack, 1/4 in', 16, 'from memory of usual plugs'],
];

/** Usual plugs. Moulded plugs differ, so the maker's own measure comes first. */
export const PLUGS: readonly Plug[] = PLUG_SIZES.map(([id, name, mm, source]) => ({
  id,
  name,
  across: { id: `plug.${id}`, value: fromMm(mm), says: `a ${name} is about this much across`, source },
  source,
  confirmed: false,
}));

/** A plug of the table. */
export function plug(id: string): Plug | undefined {
  return PLUGS.find((p) => p.id === id);
}
