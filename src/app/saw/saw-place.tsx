import { PlanWaits } from '../plan-waits.tsx';
import { useApp } from '../state/use-desk.ts';
import { CutAlready, SheetIsCut, TickedAreCut } from './cut-already.tsx';
import { LotSheets } from './lot-sheets.tsx';
import { OwnList } from './own-list.tsx';
import { Searching } from './searching.tsx';

/** How every sheet and strip is cut up, as it lies on the trestles; and lists brought along. */
export function SawPlace() {
  const plan = useApp((s) => s.plan);
  if (!plan) return <PlanWaits title="Saw" />;
  return (
    <div className="saw">
      <h1>Saw</h1>
      <p className="lead">
        Grain from left to right, the trued edge at the bottom, the squared end at the left. The number in a
        ring is the card that makes the cut.
      </p>
      <Searching />
      <CutAlready />
      <TickedAreCut />
      <LotSheets plan={plan} after={(sheet) => <SheetIsCut sheet={sheet} />} />
      <OwnList />
    </div>
  );
}
