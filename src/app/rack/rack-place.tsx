import { useApp } from '../state/use-desk.ts';
import { LotCard } from './lot-card.tsx';
import { Screws } from './screws.tsx';
import { ShopNote } from './shop-note.tsx';
import { Tools } from './tools.tsx';
import { WaysOfCutting } from './ways-of-cutting.tsx';
import { WorkingTimes } from './working-times.tsx';

/** What is in the shop: stock by lots, screws, tools, hours and hands, and how things are written there. */
export function RackPlace() {
  const lots = useApp((s) => s.history.job.shop.rack.lots);
  return (
    <div className="rack">
      <h1>Rack</h1>
      <p className="lead">
        Measure the stock before it is cut: every groove, shelf and screw follows from what it really
        measures.
      </p>
      <div className="lots">
        {lots.map((lot) => (
          <LotCard key={lot.id} lot={lot} />
        ))}
      </div>
      <WaysOfCutting />
      <Screws />
      <Tools />
      <WorkingTimes />
      <ShopNote />
    </div>
  );
}
