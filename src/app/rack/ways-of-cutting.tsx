import type { Cutting, Edit } from '../../job/index.ts';
import { ChoiceField } from '../fields/choice-field.tsx';
import { EditButton } from '../fields/edit-button.tsx';
import { LengthField, NumberField, Written } from '../fields/text-field.tsx';
import { useApp } from '../state/use-desk.ts';

const AT = 'shop/cutting';
const FIRST = [
  ['', 'either way'],
  ['rip', 'along the grain'],
  ['crosscut', 'across the grain'],
] as const;

/** What the shop asks of the cutting of sheets, and how they come home. */
export function WaysOfCutting() {
  const cutting = useApp((s) => s.history.job.shop.cutting) ?? {};
  return (
    <section aria-label="Ways of cutting">
      <h2>Ways of cutting</h2>
      <p>
        The first cut of a sheet goes{' '}
        <ChoiceField
          path={`${AT}/first`}
          label="First cut of a sheet"
          choices={FIRST}
          editOf={(first) => withField(cutting, 'first', first === '' ? undefined : first)}
          end="."
        />{' '}
        From the sheet to a part cuts take at most{' '}
        <Asked field="stages" label="Stages of cutting" empty="any number of" number /> turns. Of both sides
        of a cut, one is at least <Asked field="hold" label="Least to hold by" empty="anything" /> wide. After{' '}
        <Asked field="carryAfter" label="Cuts until it can be carried" empty="any number of" number /> cuts
        one person can carry what is still to be cut.
      </p>
      {cutting.yard ? <Yard /> : null}
      <p className="acts">
        <EditButton edit={() => withField(cutting, 'yard', cutting.yard ? undefined : A_SMALL_CAR)} quiet>
          {cutting.yard ? 'Bring sheets home whole' : 'Have sheets cut where they are bought'}
        </EditButton>
      </p>
    </section>
  );
}

const A_SMALL_CAR = { cuts: 2, vehicle: { length: '1800 mm', width: '1000 mm' } };

function Yard() {
  return (
    <p>
      Sheets that are bought get at most{' '}
      <NumberField path={`${AT}/yard/cuts`} label="Rough cuts at the yard" empty="no" /> rough cuts where they
      are bought, <LengthField path={`${AT}/yard/over`} label="Beside the line" empty="10 mm" /> beside the
      line; then they go into a vehicle that takes{' '}
      <LengthField path={`${AT}/yard/vehicle/length`} label="Length in the vehicle" /> by{' '}
      <LengthField path={`${AT}/yard/vehicle/width`} label="Width in the vehicle" end="." />
    </p>
  );
}

/** A field of the ways of cutting; the first one that is written brings them with it. */
function Asked(props: {
  readonly field: 'stages' | 'hold' | 'carryAfter';
  readonly label: string;
  readonly empty: string;
  readonly number?: true;
}) {
  const { field, label, empty, number } = props;
  const cutting = useApp((s) => s.history.job.shop.cutting) ?? {};
  const editOf = (text: string): Edit =>
    withField(cutting, field, text === '' ? undefined : number && /^\d+$/.test(text) ? Number(text) : text);
  return (
    <Written
      path={`${AT}/${field}`}
      label={label}
      empty={empty}
      value={cutting[field] === undefined ? '' : String(cutting[field])}
      editOf={editOf}
    />
  );
}

function withField(cutting: Cutting, field: keyof Cutting, value: unknown): Edit {
  const { [field]: _, ...others } = cutting;
  const all = value === undefined ? others : { ...others, [field]: value };
  return Object.keys(all).length > 0 ? { edit: 'set', at: AT, value: all } : { edit: 'set', at: AT };
}
