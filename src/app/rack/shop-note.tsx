import { ChoiceField } from '../fields/choice-field.tsx';
import { NumberField } from '../fields/text-field.tsx';
import { useApp } from '../state/use-desk.ts';
import { WayHomeNote } from './way-home-note.tsx';

const PRECISION = {
  mm: [
    ['0.5', 'half a millimetre'],
    ['0.1', 'a tenth of a millimetre'],
  ],
  in: [
    ['1/16', '1/16 inch'],
    ['1/32', '1/32 inch'],
    ['1/64', '1/64 inch'],
  ],
} as const;

/** How numbers and paper are written in this shop, and at what rate work is reckoned. */
export function ShopNote() {
  const shop = useApp((s) => s.history.job.shop);
  return (
    <section>
      <h2>Ways of the shop</h2>
      <p>
        Sizes are written in{' '}
        <ChoiceField
          path="shop/units"
          label="Units"
          choices={[
            ['mm', 'millimetres'],
            ['in', 'inches'],
          ]}
          editOf={(units) => ({
            edit: 'all',
            of: [
              { edit: 'set', at: 'shop/units', value: units },
              { edit: 'set', at: 'shop/precision', value: units === 'in' ? '1/32' : '0.5' },
            ],
          })}
        />{' '}
        to{' '}
        <ChoiceField
          path="shop/precision"
          label="How finely sizes are written"
          choices={PRECISION[shop.units]}
        />{' '}
        on{' '}
        <ChoiceField
          path="shop/paper"
          label="Paper"
          choices={[
            ['A4', 'A4'],
            ['Letter', 'Letter'],
          ]}
        />{' '}
        paper. An hour of work is reckoned at{' '}
        <NumberField path="shop/hourly" label="Price of an hour" empty="nothing" /> {shop.currency}.
      </p>
      <WayHomeNote />
    </section>
  );
}
