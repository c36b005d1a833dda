import { fromMm, type LengthRow } from '../measure/index.ts';

const MEMORY = 'from memory of usual tools';

function size(id: string, mm: number, says: string): LengthRow {
  return { id: `tool-body.${id}`, value: fromMm(mm), says, source: MEMORY };
}

/** A thing that turns a screw: what sits behind the bit, and what a hand holds aside of it. */
export interface DriverBody {
  readonly id: string;
  /** Round body behind the bit, about its axis. */
  readonly length: LengthRow;
  readonly radius: LengthRow;
  /** A round bar that stands aside of the body, its axis so far behind the bit's end. */
  readonly grip: { readonly behind: LengthRow; readonly length: LengthRow; readonly radius: LengthRow };
}

/** How far bits stand out of what turns them: a plain one, a long plain one, one in a holder, a long one for pockets. */
export const BITS: readonly LengthRow[] = [
  size('bit.plain', 15, 'a plain bit stands about 15 mm out of a chuck'),
  size('bit.long', 40, 'a bit of 50 mm stands about 40 mm out of a chuck'),
  size('bit.holder', 65, 'a bit in a holder stands about 65 mm out of a chuck'),
  size('bit.extended', 85, 'a bit of 100 mm stands about 85 mm out of a chuck'),
  size('bit.pocket', 130, 'a bit for pocket holes, 150 mm long, stands about 130 mm out of a chuck'),
];

export const BIT_RADIUS = size('bit.radius', 4, 'a bit is hardly 8 mm wide, or the screw’s head is wider');

/** What turns bits, the handiest first. */
export const DRIVERS: readonly DriverBody[] = [
  {
    id: 'drill',
    length: size('drill.length', 185, 'a small drill is about 185 mm long behind its chuck'),
    radius: size('drill.radius', 26, 'a small drill’s body is about 52 mm wide about its axis'),
    grip: {
      behind: size(
        'drill.grip',
        125,
        'a small drill’s grip stands about 125 mm behind the front of its chuck',
      ),
      length: size('drill.grip-length', 170, 'a small drill’s grip reaches about 170 mm from its axis'),
      radius: size('drill.grip-radius', 24, 'a grip with a hand round it is about 48 mm thick'),
    },
  },
  {
    id: 'angled head',
    length: size(
      'angled.length',
      77,
      'an angled head, or a short screwdriver, is about 77 mm long behind its bit',
    ),
    radius: size('angled.radius', 18, 'an angled head is about 36 mm wide'),
    grip: {
      behind: size(
        'angled.grip',
        52,
        'the drill stands aside of an angled head about 52 mm behind its front',
      ),
      length: size('angled.grip-length', 150, 'a hand holds an angled head about 150 mm aside of its axis'),
      radius: size('angled.grip-radius', 24, 'a drill that is held aside is about 48 mm thick'),
    },
  },
];

/** A bar clamp: two jaws that press on the outside of what is glued, and the bar beside it that carries them. */
export const CLAMP = {
  throat: size('clamp.throat', 100, 'a bar clamp’s jaws reach about 100 mm from its bar'),
  pad: size('clamp.pad', 15, 'a clamp’s pad with its scrap of wood is about 30 mm wide'),
  bar: size('clamp.bar', 14, 'a clamp’s bar and slide are about 28 mm thick'),
  jaw: size('clamp.jaw', 35, 'a clamp’s jaw stands about 35 mm before what it presses'),
  screw: size('clamp.screw', 120, 'a clamp’s screw and the hand on it reach about 120 mm behind its jaw'),
} as const;
