import { type RecordOf, readPlace } from '../../../job/index.ts';
import { ChoiceField, LotField } from '../../fields/choice-field.tsx';
import { EditButton } from '../../fields/edit-button.tsx';
import { LengthField, NumberField, Written } from '../../fields/text-field.tsx';
import { useApp } from '../../state/use-desk.ts';
import { removeEdit } from '../design-edits.ts';
import { FrontEdging } from './front-edging-note.tsx';
import { Note } from './note.tsx';

/** Hinged doors: what each closes, how it hangs and on which side. */
export function DoorsNote({ doors }: { doors: readonly RecordOf<'door'>[] }) {
  const hinges = useApp((s) => s.history.job.shop.rack.hinges) ?? [];
  const stays = useApp((s) => s.history.job.shop.rack.stays) ?? [];
  return (
    <Note title="Hinged doors">
      {doors.map(({ id, count, hand }) => {
        const at = `design/records/${id}`;
        return (
          <p key={id}>
            <strong>{id}</strong>,{' '}
            <ChoiceField
              path={`${at}/count`}
              label={`How many doors, ${id}`}
              absent="1"
              choices={[
                ['1', 'one door'],
                ['2', 'a pair that meets in the middle'],
              ]}
              editOf={(v) => ({ edit: 'set', at: `${at}/count`, value: Number(v) })}
            />{' '}
            of <LotField path={`${at}/board`} label={`Board of ${id}`} form="sheet" end="," /> before{' '}
            <OverField id={id} />{' '}
            <ChoiceField
              path={`${at}/hang`}
              label={`How ${id} hangs`}
              choices={[
                ['inset', 'inside the opening'],
                ['overlay', 'before the front of the case'],
              ]}
              end=","
            />{' '}
            {count === 2 ? null : (
              <>
                hung on{' '}
                <ChoiceField
                  path={`${at}/hand`}
                  label={`Side that ${id} hangs on`}
                  absent="left"
                  choices={[
                    ['left', 'the left'],
                    ['right', 'the right'],
                    ['above', 'what is above it, lifting up'],
                    ['below', 'what is below it, dropping down'],
                  ]}
                  end=","
                />{' '}
              </>
            )}
            {(hand === 'above' || hand === 'below') && (
              <>
                held by{' '}
                <ChoiceField
                  path={`${at}/stay`}
                  label={`Stay of ${id}`}
                  choices={[
                    ['', 'the first stay that does'],
                    ...stays.map((s) => [s.id, s.name ?? s.id] as const),
                  ]}
                  end=","
                />{' '}
              </>
            )}
            with <LengthField path={`${at}/gap`} label={`Gap round ${id}`} empty="the usual gap" /> and{' '}
            <ChoiceField
              path={`${at}/hinge`}
              label={`Hinge of ${id}`}
              choices={[
                ['', 'the first hinge that suits'],
                ...hinges.map((h) => [h.id, h.name ?? h.id] as const),
              ]}
              end="."
            />{' '}
            <FrontEdging of={id} /> <TakeAway id={id} />
          </p>
        );
      })}
    </Note>
  );
}

/** Doors that slide: how many in how many grooves, what they close, and the sizes of the grooves. */
export function SlidingDoorsNote({ doors }: { doors: readonly RecordOf<'sliding-doors'>[] }) {
  return (
    <Note title="Sliding doors">
      {doors.map(({ id }) => {
        const at = `design/records/${id}`;
        const size = (name: string, label: string, empty: string, end?: string) => (
          <LengthField
            path={`${at}/${name}`}
            label={`${label}, ${id}`}
            empty={empty}
            {...(end ? { end } : {})}
          />
        );
        return (
          <p key={id}>
            <strong>{id}</strong>,{' '}
            <NumberField path={`${at}/count`} label={`How many sliding doors, ${id}`} empty="2" /> of{' '}
            <LotField path={`${at}/board`} label={`Board of ${id}`} form="sheet" end="," /> in{' '}
            <ChoiceField
              path={`${at}/tracks`}
              label={`Grooves of ${id}`}
              absent="2"
              choices={[
                ['2', 'two grooves'],
                ['3', 'three grooves'],
              ]}
              editOf={(v) => ({ edit: 'set', at: `${at}/tracks`, value: Number(v) })}
            />{' '}
            before <OverField id={id} />{' '}
            <ChoiceField
              path={`${at}/closes`}
              label={`What each of ${id} closes`}
              absent="all"
              choices={[
                ['all', 'closing all of it together'],
                ['each', 'each closing one opening'],
              ]}
              end=","
            />{' '}
            lapping by {size('overlap', 'Lap of the doors', 'the usual', ',')} with{' '}
            {size('gap', 'Air between the doors', 'the usual air')} between. The first groove stands{' '}
            {size('setIn', 'From the front to the first groove', 'the usual')} behind the front; grooves are{' '}
            {size('upperGroove', 'Depth of the upper groove', 'the usual')} deep above and{' '}
            {size('lowerGroove', 'Depth of the lower groove', 'the usual')} below, and a door that is down
            still stands {size('engagement', 'Left in the upper groove', 'the usual')} in the upper one. In
            them runs {size('tongue', 'Thickness of the tongue', 'the whole thickness', '.')} Recess to push
            by: {size('fingerHole', 'Diameter of the recess', 'none', '.')} <TakeAway id={id} />
          </p>
        );
      })}
    </Note>
  );
}

/** The openings that doors close, by name. */
function OverField({ id }: { id: string }) {
  const path = `design/records/${id}/over`;
  const value = useApp((s) => [readPlace(s.history.job, path)].flat().join(', '));
  return (
    <Written
      path={path}
      label={`Openings that ${id} closes`}
      value={value}
      editOf={(text) => ({ edit: 'set', at: path, value: text.split(/[\s,;]+/).filter((o) => o !== '') })}
      end=","
    />
  );
}

function TakeAway({ id }: { id: string }) {
  const job = useApp((s) => s.history.job);
  return (
    <EditButton edit={() => removeEdit(job, id)} quiet>
      Take away
    </EditButton>
  );
}
