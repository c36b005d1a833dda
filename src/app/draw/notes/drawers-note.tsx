import type { RecordOf } from '../../../job/index.ts';
import { ChoiceField, LotField } from '../../fields/choice-field.tsx';
import { EditButton } from '../../fields/edit-button.tsx';
import { LengthField, NumberField } from '../../fields/text-field.tsx';
import { useApp } from '../../state/use-desk.ts';
import { removeEdit } from '../design-edits.ts';
import { FrontEdging } from './front-edging-note.tsx';

/** Drawers of a space: how many, of what, how they are joined and hung. */
export function DrawersNote({ drawers }: { drawers: RecordOf<'drawers'> }) {
  const job = useApp((s) => s.history.job);
  const at = `design/records/${drawers.id}`;
  return (
    <p>
      <NumberField path={`${at}/count`} label={`How many drawers, ${drawers.id}`} empty="1" /> drawers, fronts
      of <LotField path={`${at}/frontBoard`} label={`Board of the fronts, ${drawers.id}`} form="sheet" />{' '}
      <ChoiceField
        path={`${at}/hang`}
        label={`How the fronts of ${drawers.id} stand`}
        choices={[
          ['inset', 'inside the opening'],
          ['overlay', 'before the case'],
        ]}
      />
      , each <LengthField path={`${at}/grade`} label={`Grading of ${drawers.id}`} empty="nothing" /> higher
      than the one above; boxes of{' '}
      <LotField path={`${at}/board`} label={`Board of the boxes, ${drawers.id}`} form="sheet" />, joined{' '}
      <ChoiceField
        path={`${at}/joint`}
        label={`Corners of the boxes, ${drawers.id}`}
        choices={[
          ['', 'by rabbets'],
          ['dado', 'by dados'],
          ['screws', 'by screws'],
          ['pocket-screws', 'by pocket screws'],
        ]}
      />
      , bottoms of{' '}
      <LotField path={`${at}/bottomBoard`} label={`Board of the bottoms, ${drawers.id}`} form="sheet" />{' '}
      <ChoiceField
        path={`${at}/bottomFitting`}
        label={`How the bottoms of ${drawers.id} are held`}
        choices={[
          ['', 'in grooves'],
          ['applied', 'laid under'],
        ]}
        end="."
      />{' '}
      They run on{' '}
      <ChoiceField
        path={`${at}/carriedBy`}
        label={`What carries ${drawers.id}`}
        choices={[
          ['', 'runners of the rack'],
          ['wooden-runners', 'wooden runners in grooves of their sides'],
          ['centre-runner', 'what is below, with a runner under their middle'],
        ]}
      />
      {drawers.carriedBy && (
        <>
          , cut from{' '}
          <LotField
            path={`${at}/runnerStrip`}
            label={`Strips for the runners of ${drawers.id}`}
            form="strip"
          />
        </>
      )}
      . The fronts are cut from one strip, called{' '}
      <LengthField
        path={`${at}/oneStrip`}
        label={`Name of the strip for the fronts of ${drawers.id}`}
        empty="none, each for itself"
        end="."
      />{' '}
      Each carries{' '}
      <LengthField
        path={`${at}/load`}
        label={`Load in each drawer of ${drawers.id}`}
        empty="the usual load"
        end="."
      />{' '}
      <FrontEdging of={drawers.id} />{' '}
      <EditButton edit={() => removeEdit(job, drawers.id)} quiet>
        Take away
      </EditButton>
    </p>
  );
}
