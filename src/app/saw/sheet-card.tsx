import { useMemo, useRef } from 'react';
import { lengthsOf, numberedCuts, PLEX, sheetLayout, sheetScale } from '../../book/index.ts';
import type { LotBreakdown, PlannedNode, PlannedSheet } from '../../breakdown/index.ts';
import { formatOf } from '../../job/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { Plan } from '../../plan/index.ts';
import { DrawingPicture } from '../drawing/drawing-picture.tsx';
import { useWidth } from '../drawing/use-width.ts';
import { Length, Sizes } from '../numbers/number.tsx';

const PIXELS = 3.9;
/** No sheet is drawn taller than this, in millimetres of paper: it is to be seen at once. */
const TALLEST = 118;

interface SheetProps {
  readonly plan: Pick<Plan, 'job' | 'setOut' | 'build'>;
  readonly lot: LotBreakdown;
  readonly sheet: PlannedSheet;
}

/** One sheet or strip with its cuts, drawn as it lies and listed in their order. */
export function SheetCard({ plan, lot, sheet }: SheetProps) {
  const place = useRef<HTMLDivElement>(null);
  const width = useWidth(place);
  const { ledger } = plan.setOut;
  const { source } = sheet;
  const strip = lot.lot.form === 'strip';
  const cuts = useMemo(() => numberedCuts(sheet, plan.build.operations), [sheet, plan]);
  const drawing = useMemo(() => {
    if (width === 0) return undefined;
    const lengths = lengthsOf(ledger, formatOf(plan.job.shop));
    const mm = (t: Traced) => toMm(ledger.ticks(t));
    // Sheets of a lot are drawn to one scale, so that an offcut looks like one; strips take the width there is.
    const longest = Math.max(...lot.sheets.map((s) => mm(s.source.length)));
    const widest = Math.max(...lot.sheets.map((s) => mm(s.source.width)));
    const room = { width: width / PIXELS, height: TALLEST };
    const scale = sheetScale(longest, strip ? undefined : widest, room);
    return sheetLayout(
      {
        sheet,
        form: lot.lot.form,
        kerf: lot.problem.kerf,
        ...(lot.problem.yard ? { roughKerf: lot.problem.yard.kerf } : {}),
        cuts,
        ledger,
        lengths,
      },
      scale,
      PLEX,
    );
  }, [width, ledger, plan, lot, sheet, cuts, strip]);
  return (
    <article className={strip ? 'sheet-card strips' : 'sheet-card'} ref={place}>
      <h3>
        <span className="mark">{sheet.name}</span> {source.stock.name ?? source.stock.id},{' '}
        {strip ? (
          <Length of={plan.setOut} t={source.length} />
        ) : (
          <Sizes of={plan.setOut} sizes={[source.length, source.width]} />
        )}{' '}
        <span className="faint">{source.onRack ? 'from the rack' : 'to buy'}</span>
      </h3>
      <div className="sheet-work">
        {drawing && (
          <DrawingPicture
            drawing={drawing}
            label={`How ${sheet.name} is cut up`}
            of={plan.setOut}
            pixels={PIXELS}
          />
        )}
        {cuts.length > 0 && (
          <ol className="cuts">
            {cuts.map(({ number, node, marked }) => (
              // Equal strips come off at one stop, all under the number of one card.
              <li key={`${number} ${gives(node.parts)}`}>
                <span className="mark">{number}</span> {node.across === 'width' ? 'along' : 'across'} the
                grain,{' '}
                <Length
                  of={plan.setOut}
                  t={marked ?? (node.across === 'width' ? node.parts[0].width : node.parts[0].length)}
                />{' '}
                {node.yard && 'roughly, at the yard, '}
                from the {node.across === 'width' ? 'lower edge' : 'left end'}:{' '}
                <span className="faint">{gives(node.parts)}</span>
              </li>
            ))}
          </ol>
        )}
      </div>
    </article>
  );
}

/** What the two halves of a cut are. */
function gives(halves: readonly PlannedNode[]): string {
  return halves
    .map((h) => {
      if (h.kind === 'piece') return h.part.mark;
      if (h.kind === 'left') return h.name ?? '';
      return `a piece for ${marksUnder(h).join(', ')}`;
    })
    .filter((w) => w !== '')
    .join('; ');
}

function marksUnder(node: PlannedNode): string[] {
  if (node.kind === 'piece') return [node.part.mark];
  return node.kind === 'cut' ? node.parts.flatMap(marksUnder) : [];
}
