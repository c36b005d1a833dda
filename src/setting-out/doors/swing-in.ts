/** A door on its way in: sizes in mm. */
export interface Swing {
  /** Height of the door, and thickness of what goes into the groove. */
  readonly door: number;
  readonly thick: number;
  /** Clear height between the faces, depth of the upper groove, and how much wider than the door the groove is. */
  readonly clear: number;
  readonly upper: number;
  readonly play: number;
  /** From the front of the case back to the far wall of the door's grooves: so far its lower end swings. */
  readonly reach: number;
}

/** Angles that are looked at, from upright to where the lower end is out in front. */
const STEPS = 120;

/** So much higher than the lower edge its lowest corner is carried over it, mm. */
const CARRIED = 0.5;

/**
 * What a door lacks of room to be swung in, mm; nothing or less when it goes in. Its upper end stands in the upper
 * groove, its lower end is still in front: leaning by an angle a, it must stand x = door cos a + thick sin a - clear
 * (and a little more) deep in that groove for its lowest corner to pass over the lower edge, and between the groove's walls it then needs
 * x tan a of room beyond its thickness, of which thick (1 - cos a) is its own. Geometry.
 */
export function lackToSwingIn({ door, thick, clear, upper, play, reach }: Swing): number {
  const out = Math.asin(Math.min(1, reach / door));
  let worst = door - clear - upper;
  for (let i = 0; i <= STEPS; i++) {
    const a = (out * i) / STEPS;
    const [sine, cosine] = [Math.sin(a), Math.cos(a)];
    const inside = Math.max(0, door * cosine + thick * sine - clear + CARRIED);
    worst = Math.max(worst, inside - upper, (inside * sine) / cosine - thick * (1 - cosine) - play);
  }
  return Math.round(worst * 1000) / 1000;
}
