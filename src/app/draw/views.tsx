import { useDeferredValue, useMemo, useRef } from 'react';
import { PLEX, type View, type ViewName, view } from '../../book/index.ts';
import { formatOf } from '../../job/index.ts';
import { toMm } from '../../measure/index.ts';
import type { SetOut } from '../../setting-out/index.ts';
import { DrawingPicture } from '../drawing/drawing-picture.tsx';
import { useWidth } from '../drawing/use-width.ts';
import { useApp } from '../state/use-desk.ts';

/** Screen pixels for a millimetre of paper: figures of 3.1 mm are then read like the text beside them. */
const PIXELS = 4;
/** Paper that dimensions take at the left of a view, and between two views. */
const ROOM = 24;
/** On a page narrower than this many pixels each view stands alone. */
const NARROW = 600;
const NAMES: Readonly<Record<ViewName, string>> = {
  front: 'Front',
  side: 'From the right',
  plan: 'From above',
};

/** Front, side and plan, as large as their place allows, in line with one another where there is room. */
export function Views() {
  const place = useRef<HTMLDivElement>(null);
  const width = useWidth(place);
  const drawn = useDeferredValue(useApp((s) => s.setOut));
  const shop = useApp((s) => s.history.job.shop);
  const format = formatOf(shop);
  const views = useMemo(
    () => (width > 0 && drawn.parts.length > 0 ? laidOut(drawn, width / PIXELS, format) : []),
    [drawn, width, format],
  );
  return (
    <div className="views" ref={place}>
      {views.map((v) => (
        <figure
          key={v.name}
          className={`view ${v.name}`}
          style={width > NARROW ? standing(v, views) : undefined}
        >
          <figcaption>{NAMES[v.name]}</figcaption>
          <DrawingPicture drawing={v} label={`${NAMES[v.name]}, with sizes`} of={drawn} pixels={PIXELS} />
        </figure>
      ))}
    </div>
  );
}

function laidOut(drawn: SetOut, paper: number, format: Parameters<typeof view>[3]): readonly View[] {
  const mm = (t: SetOut['overall']['width']) => toMm(drawn.ledger.ticks(t));
  const { width, height, depth } = drawn.overall;
  const beside = (paper - ROOM * 2.4) / (mm(width) + mm(depth));
  const alone = (paper - ROOM) / Math.max(mm(width), mm(depth));
  // On a narrow page each view stands alone; nothing is drawn taller than can be seen at once.
  const scale = Math.min(paper > NARROW / PIXELS ? beside : alone, 150 / mm(height));
  return (['front', 'side', 'plan'] as const).map((name) => view(drawn, name, scale, format, PLEX));
}

/** Front and side stand on one line, and the plan lies under the front. */
function standing(v: View, views: readonly View[]): React.CSSProperties {
  const below = (w: View) => w.height - w.picture.top - w.picture.height;
  const front = views[0]!;
  if (v.name === 'plan')
    return { marginInlineStart: Math.max(0, front.picture.left - v.picture.left) * PIXELS };
  const deepest = Math.max(...views.slice(0, 2).map(below));
  return { marginBlockEnd: (deepest - below(v)) * PIXELS };
}
