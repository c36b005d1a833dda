import type { Traced } from '../measure/index.ts';
import { type Direction, type Groove, opposite, type Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { markWords } from './mark-words.ts';
import { looks } from './words.ts';

/** Puts in the buttons that hold tops of solid wood, once finish is on: none of it then glues a tongue fast. */
export function fitButtons(bench: Bench): void {
  const { setOut } = bench;
  const posts = new Map<string, { post: Part; top: Part; buttons: Part[] }>();
  for (const joint of setOut.joints) {
    if (joint.duty !== 'button') continue;
    const [button, top] = [joint.part, joint.mate].map((id) => setOut.parts.find((p) => p.id === id)!) as [
      Part,
      Part,
    ];
    const post = setOut.parts.find((p) => mortiseOf(p, button))!;
    const key = `${post.id} ${button.place.length}`;
    const known = posts.get(key) ?? { post, top, buttons: [] };
    known.buttons.push(button);
    posts.set(key, known);
  }
  for (const { post, top, buttons } of posts.values()) putIn(bench, post, top, buttons as [Part, ...Part[]]);
}

function mortiseOf(post: Part, button: Part): Groove | undefined {
  return post.features.find((f): f is Groove => f.kind === 'groove' && f.id === `${post.id}#${button.id}`);
}

function putIn(bench: Bench, post: Part, top: Part, buttons: readonly [Part, ...Part[]]): void {
  const l = bench.ledger;
  const [first] = buttons;
  const marks = buttons.map((b) => b.mark);
  const fastener = bench.setOut.fasteners.find((f) => f.through[0] === first.id)!;
  const screw = bench.job.shop.rack.screws.find((s) => s.id === fastener.screw)!;
  const rabbet = first.features.find((f) => f.kind === 'rabbet')!;
  const face = first.place.length;
  const { deep, off } = tongueIn(bench, post, first, rabbet.width);
  const places = buttons.map((b) => placeIn(bench, post, b));
  const lengths: Traced[] = [fastener.length, fastener.diameter, off, deep];
  const put = (t: Traced) => `{${lengths.push(t) - 1}}`;
  const alike = places.every(
    (p) => l.ticks(p.beside) === l.ticks(places[0]!.beside) && l.ticks(p.moves) === l.ticks(places[0]!.moves),
  );
  const lie = (mark: string, { beside, moves }: Place) =>
    `${mark} lies ${put(beside)} behind the front end of its mortise, so that ${top.mark} can move ${put(moves)} to the front and as much to the back.`;
  const where = alike
    ? [lie(marks.length > 1 ? 'Each' : marks[0]!, places[0]!)]
    : marks.map((mark, i) => lie(mark, places[i]!));
  bench.do(
    {
      id: `${post.mark}/buttons-${first.mark}`,
      kind: 'screw',
      stage: 'finish',
      title: `Hold ${top.mark} (${top.name}) at ${post.mark} with ${buttons.length > 1 ? 'buttons' : 'button'} ${markWords(marks)}`,
      does: {
        act: 'buttons',
        workpieces: marks,
        into: 'case',
        post: post.mark,
        face,
        top: top.mark,
        turn: { length: first.place.length, width: first.place.width },
        tongue: deep,
        beside: places.map((p) => p.beside),
        moves: places.map((p) => p.moves),
        screw: fastener.screw,
        length: fastener.length,
        diameter: fastener.diameter,
      },
      tool: 'drill',
      times: buttons.length,
      lines: [
        `${marks.length > 1 ? 'From the front: the tongue of each' : 'Its tongue'} into ${marks.length > 1 ? 'its' : 'the'} mortise in ${post.mark}, {3} deep, so that the shoulder stands {2} off ${post.mark}. No glue.`,
        ...where,
        `The tongue lies up against the wood above the mortise as the button touches ${top.mark}. Where it is loose there, take a shaving off the face of the button that goes against ${top.mark}.`,
        `1 × ${screw.name ?? screw.id}, {1} × {0}, up through ${marks.length > 1 ? 'each' : 'it'} into the pilot in ${top.mark}: snug, so that it can’t turn.`,
      ],
      lengths,
    },
    [...marks, post.mark, top.mark, 'case'],
  );
}

/** Where a button lies in its mortise, and how far it may go there. */
interface Place {
  readonly beside: Traced;
  readonly moves: Traced;
}

/** In the middle of its mortise, as it is drawn. */
function placeIn(bench: Bench, post: Part, button: Part): Place {
  const l = bench.ledger;
  const mortise = mortiseOf(post, button)!;
  const near = (p: Part) => {
    const { origin, width } = p.place;
    return width === '+y' ? origin[1] : l.less('its front side', origin[1], p.width);
  };
  const begins =
    post.place.width === '+y'
      ? mortise.from
      : l.less('from the front edge to the mortise', post.width, mortise.to);
  const before = l.less(
    'from the mortise to the button',
    near(button),
    l.sum('front end of the mortise', near(post), begins),
  );
  const behind = l.less(
    'free behind the button',
    l.less('length of the mortise', mortise.to, mortise.from),
    before,
    button.width,
  );
  return {
    beside: bench.set('marking', before),
    moves: bench.set('marking', l.least('free on the narrower side', before, behind), 'down'),
  };
}

/** How deep the tongue stands in its upright, and how far off that the shoulder is: both as they are made. */
function tongueIn(
  bench: Bench,
  post: Part,
  button: Part,
  tongue: Traced,
): { readonly deep: Traced; readonly off: Traced } {
  const l = bench.ledger;
  const out: Direction = button.place.length;
  const side = (['show', 'under'] as const).find((s) => looks(post, s) === out)!;
  const axis = 'xyz'.indexOf(out[1]!);
  const tip = button.place.origin[axis]!;
  const plane = facePlane(bench, post, side);
  const long = bench.set('marking', tongue);
  const deep = bench.set(
    'marking',
    opposite(out).startsWith('-')
      ? l.less('how deep the tongue stands', plane, tip)
      : l.less('how deep the tongue stands', tip, plane),
  );
  return { deep, off: l.less('from the upright to the shoulder', long, deep) };
}

function facePlane(bench: Bench, post: Part, side: 'show' | 'under'): Traced {
  const l = bench.ledger;
  const axis = 'xyz'.indexOf(post.place.thickness[1]!);
  const origin = post.place.origin[axis]!;
  if (side === 'under') return origin;
  return post.place.thickness.startsWith('+')
    ? l.sum('its face', origin, post.thickness)
    : l.less('its face', origin, post.thickness);
}
