import { type Finish, OILY_CLOTHS } from '../materials/index.ts';
import type { Bench } from './bench.ts';
import { glueOf } from './setting-times.ts';

/** Cautions in a sentence each. General good practice; the tools' own manuals and local rules come first. */
export const CAUTION = {
  saw: 'Eyes and ears protected, the wood supported along its whole length, both hands on the saw, cable and offcut clear; wait until the blade stands still.',
  bevel:
    'With the blade tilted the guard opens less readily: clamp the strip, keep hands well behind the saw, and test on an offcut.',
  mitreSaw:
    'Eyes and ears protected, the wood held or clamped against the fence, no hand near the blade; let it stop before it comes up.',
  router:
    'Unplug before changing the bit; eyes and ears protected; rout against the turning of the bit; take deep cuts in several passes.',
  knife: 'A sharp knife on a firm base, cutting away from the hand that holds.',
  handsaw: 'Clamp the part; keep the other hand behind the teeth, and the first strokes short.',
  iron: 'The iron and the edge behind it burn fingers: press with a block of wood; unplug the iron when it is put down.',
  joiner:
    'Clamp the part and keep both hands on the joiner; let the cutter spring back and stand still before it is lifted away.',
  drill: 'Clamp the part; keep fingers from under it where the bit comes out.',
  chisel: 'Both hands behind the cutting edge, the work clamped.',
  dust: 'Wood dust harms the lungs: run the extractor, wear a mask.',
  fingers: 'Keep fingers from under the door and from between doors that pass.',
  pinch:
    'A falling lid crushes fingers and necks: keep hands from under it until its stays hold, and let no child near before they do.',
  pinchFlap:
    'A falling flap crushes fingers: keep hands from under it until its stays hold, and let no child near before they do.',
  noStop:
    'Nothing stops this drawer: drawn out past its pencil line it drops, on a foot or a child. One hand under it.',
  lift: 'Lift with two people and straight backs.',
  edges: 'Wear gloves: raw edges and splinters cut.',
  glue: 'Read the glue’s own label: its open and clamping times come before the ones given here.',
  oil: 'Rags with oil can catch fire by themselves: lay them flat outdoors to dry, or soak them in water in a closed metal can. Air the room.',
  vapour:
    'Vapour is harmful and may burn: air the room, no flame or spark, gloves on; the label’s own warnings come first.',
  air: 'Air the room while it dries, and keep it off skin and eyes; the label’s own warnings come first.',
  hang: 'What hangs on a wall must not come down on anyone: use anchors rated for the wall and the load, never plasterboard alone, and follow local codes.',
  tip: 'Fix the piece to the wall with an anchor that suits the wall, especially where children are about; follow local codes.',
} as const;

/** Where glue is spread: its label, and what its kind does to skin and lungs. */
export function glueCautions(bench: Bench): readonly string[] {
  return [CAUTION.glue, ...glueOf(bench.job.shop.rack.adhesives).kind.cautions];
}

/** Where a finish is spread: rags with drying oil heat themselves, and all but those thinned with water burn. */
export function finishCautions({ cautions, burns }: Finish): readonly string[] {
  return [...(cautions.includes(OILY_CLOTHS) ? [CAUTION.oil] : []), burns ? CAUTION.vapour : CAUTION.air];
}
