import { formatOf } from '../../job/index.ts';
import { printSetting, type Traced } from '../../measure/index.ts';
import type { SetOut } from '../../setting-out/index.ts';
import { useApp, useDesk } from '../state/use-desk.ts';

/** A length that tells where it comes from when it is clicked. `bare` leaves out the unit, for lists that name it once. */
export function Length({ of, t, bare }: { of: SetOut; t: Traced; bare?: boolean }) {
  const desk = useDesk();
  const shop = useApp((s) => s.history.job.shop);
  const words = printSetting(of.ledger.ticks(t), formatOf(shop));
  return (
    <button
      type="button"
      className="length"
      title="Where this comes from"
      onClick={(e) => {
        e.stopPropagation();
        desk.ask(of, t);
      }}
    >
      {bare ? words.replace(/ mm$/, '') : words}
    </button>
  );
}

/** Several lengths with a cross between, as on a list: 1442 × 394 × 17.6. */
export function Sizes({ of, sizes }: { of: SetOut; sizes: readonly Traced[] }) {
  return (
    <span className="sizes">
      {sizes.map((t, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: length, width and thickness keep their places
        <span key={i}>
          {i > 0 && <span className="times"> × </span>}
          <Length of={of} t={t} bare />
        </span>
      ))}
    </span>
  );
}
