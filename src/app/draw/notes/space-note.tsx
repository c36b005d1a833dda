import { type RecordOf, treeOf } from '../../../job/index.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { EditButton } from '../../fields/edit-button.tsx';
import { LengthField, Written } from '../../fields/text-field.tsx';
import { Length } from '../../numbers/number.tsx';
import { useApp } from '../../state/use-desk.ts';
import { addThingEdit } from '../case-edits.ts';
import {
  addDoorsEdit,
  addDrawersEdit,
  addPinsEdit,
  addShelfEdit,
  addTraysEdit,
  canHaveDoors,
  divideEdit,
  spacesEdit,
  undivideEdit,
} from '../design-edits.ts';
import { DrawersNote } from './drawers-note.tsx';
import { PinsNote } from './pins-note.tsx';
import { ShelfNote } from './shelf-note.tsx';
import { TraysNote } from './trays-note.tsx';

/** One space of the case: divided, or with shelves in it. */
export function SpaceNote({ id }: { id: string }) {
  const job = useApp((s) => s.history.job);
  const tree = treeOf(job);
  const opening = tree.get(id);
  if (opening?.kind !== 'opening') return null;
  return opening.split ? <Divided opening={opening} /> : <Whole id={id} />;
}

function Divided({ opening }: { opening: RecordOf<'opening'> }) {
  const job = useApp((s) => s.history.job);
  const spaces = treeOf(job).childrenOf(opening.id, 'opening');
  const at = `design/records/${opening.id}`;
  return (
    <>
      <p>
        Divided into{' '}
        <Written
          path={`${at}/spaces`}
          label={`Number of spaces in ${opening.id}`}
          value={`${spaces.length}`}
          editOf={(text) =>
            spacesEdit(job, opening.id, Number(text)) ??
            `A space is divided into 2 to 20, and “${text}” is not such a number.`
          }
        />{' '}
        spaces{' '}
        <ChoiceField
          path={`${at}/split`}
          label={`How ${opening.id} is divided`}
          choices={[
            ['across', 'side by side'],
            ['down', 'one above the other'],
            ['back', 'one behind the other'],
          ]}
          end="."
        />{' '}
        <EditButton edit={() => undivideEdit(job, opening.id)} quiet>
          Make it one space
        </EditButton>
        <DoorActs opening={opening.id} />
      </p>
      <ul className="spaces">
        {spaces.map((s) => (
          <li key={s.id}>
            <SpaceSize space={s} split={opening.split!} />
            <SpaceNote id={s.id} />
          </li>
        ))}
      </ul>
    </>
  );
}

/** What a space is given, and what it comes to. */
function SpaceSize({ space, split }: { space: RecordOf<'opening'>; split: 'across' | 'down' | 'back' }) {
  const setOut = useApp((s) => s.setOut);
  const clear = setOut.openings.find((o) => o.id === space.id);
  const path = `design/records/${space.id}/size`;
  return (
    <p>
      <strong>{space.id}</strong> <LengthField path={path} label={`Size of ${space.id}`} empty="equal" />
      {clear && (
        <span className="faint">
          {' '}
          comes to{' '}
          <Length of={setOut} t={{ across: clear.width, down: clear.height, back: clear.depth }[split]} />{' '}
          clear
        </span>
      )}
    </p>
  );
}

function Whole({ id }: { id: string }) {
  const job = useApp((s) => s.history.job);
  const shelves = treeOf(job).childrenOf(id, 'shelf');
  const loose = treeOf(job).childOf(id, 'pins');
  const drawers = treeOf(job).childOf(id, 'drawers');
  const trays = treeOf(job).childOf(id, 'trays');
  const full = loose ?? drawers ?? trays;
  return (
    <>
      {shelves.map((s) => (
        <ShelfNote key={s.id} shelf={s} />
      ))}
      {loose && <PinsNote pins={loose} />}
      {drawers && <DrawersNote drawers={drawers} />}
      {trays && <TraysNote trays={trays} />}
      <p className="acts">
        {!full && (
          <EditButton edit={() => addShelfEdit(job, id)} quiet>
            Add a shelf
          </EditButton>
        )}
        {!full && shelves.length === 0 && (
          <>
            <EditButton edit={() => addPinsEdit(job, id)} quiet>
              Add loose shelves
            </EditButton>
            <EditButton edit={() => addDrawersEdit(job, id)} quiet>
              Add drawers
            </EditButton>
            <EditButton edit={() => addTraysEdit(job, id)} quiet>
              Add tray dividers
            </EditButton>
          </>
        )}
        <EditButton edit={() => divideEdit(job, id, 'across')} quiet>
          Divide side by side
        </EditButton>
        <EditButton edit={() => divideEdit(job, id, 'down')} quiet>
          Divide in height
        </EditButton>
        <EditButton edit={() => divideEdit(job, id, 'back')} quiet>
          Divide one behind the other
        </EditButton>
        <EditButton edit={() => addThingEdit(job, id)} quiet>
          Add what it holds
        </EditButton>
        <DoorActs opening={id} />
      </p>
    </>
  );
}

/** Ways to close a space that nothing closes yet. */
function DoorActs({ opening }: { opening: string }) {
  const job = useApp((s) => s.history.job);
  if (!canHaveDoors(job, opening)) return null;
  return (
    <>
      <EditButton edit={() => addDoorsEdit(job, opening, 'door')} quiet>
        Hang a door
      </EditButton>
      <EditButton edit={() => addDoorsEdit(job, opening, 'sliding-doors')} quiet>
        Close by sliding doors
      </EditButton>
    </>
  );
}
