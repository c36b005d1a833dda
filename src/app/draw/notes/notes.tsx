import { type RecordOf, treeOf } from '../../../job/index.ts';
import { EditButton } from '../../fields/edit-button.tsx';
import { useApp } from '../../state/use-desk.ts';
import { addCaseEdit, removeCaseEdit } from '../case-edits.ts';
import {
  addBaseUnderCasesEdit,
  addBayBacksEdit,
  addCableEdit,
  addFrontEdit,
  addHandlesEdit,
  addHolesEdit,
  addRoomEdit,
  addTopOverCasesEdit,
  addTrimEdit,
  addVentEdit,
  type Trim,
} from '../design-edits.ts';
import { CaseNote } from './case-note.tsx';
import { DoorsNote, SlidingDoorsNote } from './door-notes.tsx';
import { FillersNote } from './fillers-note.tsx';
import { GroupNote } from './group-note.tsx';
import { HandlesNote, PullsNote } from './handle-notes.tsx';
import { InsideNote } from './inside-note.tsx';
import { PieceNote } from './piece-note.tsx';
import { RoomNote } from './room-note.tsx';
import { ThingsNote } from './things-note.tsx';
import { CablesNote, HolesNote, VentsNote } from './through-notes.tsx';
import { BackNote, BaseNote, EdgingNote, FrontNote, HangingNote, TopNote } from './trim-notes.tsx';

const MISSING: readonly (readonly [Trim, string])[] = [
  ['top', 'a top'],
  ['back', 'a back'],
  ['base', 'a base'],
  ['edging', 'front edging'],
  ['hanging', 'rails to hang it on the wall'],
];

/** All that was decided of the piece, in sentences that can be written in. */
export function Notes() {
  const job = useApp((s) => s.history.job);
  const tree = treeOf(job);
  const { piece } = tree;
  if (!piece) return null;
  const boxes = tree.casesOf(piece.id);
  const things = tree.all('thing');
  const rooms = tree.all('room');
  return (
    <div className="notes">
      <PieceNote piece={piece} />
      {rooms.map((room) => (
        <RoomNote key={room.id} room={room} piece={piece} />
      ))}
      {rooms.length === 0 && (
        <p className="acts">
          <EditButton edit={() => addRoomEdit(job, piece)} quiet>
            Measure the room it is built into
          </EditButton>
        </p>
      )}
      {things.length > 0 && <ThingsNote things={things} />}
      {tree.all('group').map((group) => (
        <GroupNotes key={group.id} group={group} />
      ))}
      {boxes.map((box) => (
        <CaseNotes key={box.id} box={box} alone={boxes.length === 1} />
      ))}
    </div>
  );
}

/** What was decided of cases that stand together. */
function GroupNotes({ group }: { group: RecordOf<'group'> }) {
  const job = useApp((s) => s.history.job);
  const tree = treeOf(job);
  const [top, base] = [tree.childOf(group.id, 'top'), tree.childOf(group.id, 'base')];
  return (
    <>
      <GroupNote group={group} />
      {group.lay === 'across' && <FillersNote group={group} fillers={tree.childrenOf(group.id, 'filler')} />}
      {top ? (
        <TopNote top={top} over={group.id} />
      ) : (
        group.lay === 'across' && (
          <p className="acts">
            <EditButton edit={() => addTopOverCasesEdit(job, group)}>Add one top over all of them</EditButton>
          </p>
        )
      )}
      {base ? (
        <BaseNote base={base} over={group.id} />
      ) : (
        group.lay === 'across' && (
          <p className="acts">
            <EditButton edit={() => addBaseUnderCasesEdit(job, group)}>
              Add one base under all of them
            </EditButton>
          </p>
        )
      )}
    </>
  );
}

/** What was decided of one case. */
function CaseNotes({ box, alone }: { box: RecordOf<'case'>; alone: boolean }) {
  const job = useApp((s) => s.history.job);
  const tree = treeOf(job);
  const has = (kind: Trim) => tree.childOf(box.id, kind) !== undefined;
  const [opening, top, base, back, edging] = [
    tree.childOf(box.id, 'opening'),
    tree.childOf(box.id, 'top'),
    tree.childOf(box.id, 'base'),
    tree.childOf(box.id, 'back'),
    tree.childOf(box.id, 'edging'),
  ];
  const doors = tree.childrenOf(box.id, 'door');
  const sliding = tree.childrenOf(box.id, 'sliding-doors');
  const cables = tree.all('cable').filter((c) => tree.caseOf(c.id) === box);
  const hanging = tree.childOf(box.id, 'hanging');
  const front = tree.childOf(box.id, 'front');
  const vents = tree.all('vent').filter((v) => tree.caseOf(v.id) === box);
  const handles = tree.all('handle').filter((h) => tree.caseOf(h.id) === box);
  const pulls = tree.all('pull').filter((p) => tree.caseOf(p.id) === box);
  const opened = [...doors, ...sliding].filter(
    (d) => !tree.childOf(d.id, 'handle') && !tree.childOf(d.id, 'pull'),
  );
  const bayBacks = tree.all('back').filter((b) => b !== back && tree.caseOf(b.id) === box);
  const rows = tree.all('holes').filter((h) => tree.caseOf(h.id) === box);
  // A case stands on the floor, on the base of its row, or hangs on the wall.
  const based = tree.childOf(box.parent, 'base') !== undefined;
  const missing = MISSING.filter(
    ([kind]) =>
      !(based && (kind === 'base' || kind === 'hanging')) &&
      !(kind === 'back' && bayBacks.length > 0) &&
      !has(kind) &&
      (kind !== 'hanging' || !has('base')) &&
      (kind !== 'base' || !has('hanging')),
  );
  return (
    <>
      <CaseNote box={box} alone={alone} topped={tree.childOf(box.id, 'top') !== undefined} />
      {opening ? (
        <InsideNote opening={opening.id} />
      ) : (
        <p className="acts">
          <EditButton
            edit={() => ({ edit: 'add', record: { kind: 'opening', id: freeId(job), parent: box.id } })}
          >
            Fit out the inside
          </EditButton>
        </p>
      )}
      {doors.length > 0 && <DoorsNote doors={doors} />}
      {sliding.length > 0 && <SlidingDoorsNote doors={sliding} />}
      {handles.length > 0 && <HandlesNote handles={handles} />}
      {pulls.length > 0 && <PullsNote pulls={pulls} />}
      {opened.length > 0 && (
        <p className="acts">
          {opened.map(({ id }) => (
            <EditButton key={id} edit={() => addHandlesEdit(job, id)}>
              Add handles to {id}
            </EditButton>
          ))}
        </p>
      )}
      {top && <TopNote top={top} />}
      {front && <FrontNote front={front} />}
      {top?.hinged && !front && (
        <p className="acts">
          <EditButton edit={() => addFrontEdit(job, box.id)}>Add a fixed front</EditButton>
        </p>
      )}
      {base && <BaseNote base={base} />}
      {hanging && <HangingNote hanging={hanging} />}
      {back && <BackNote back={back} />}
      {bayBacks.map((b) => (
        <BackNote key={b.id} back={b} bay={b.parent} />
      ))}
      {!back && bayBacks.length === 0 && (opening?.split === 'across' || opening?.split === 'down') && (
        <p className="acts">
          <EditButton edit={() => addBayBacksEdit(job, box)} quiet>
            Give each {opening.split === 'across' ? 'bay' : 'storey'} a back of its own
          </EditButton>
        </p>
      )}
      {edging && <EdgingNote edging={edging} />}
      {cables.length > 0 && <CablesNote cables={cables} />}
      {vents.length > 0 && <VentsNote vents={vents} />}
      {rows.length > 0 && <HolesNote rows={rows} />}
      {back && (
        <p className="acts">
          <EditButton edit={() => addCableEdit(job, back.id)} quiet>
            Add a hole for a cable to the back
          </EditButton>
          <EditButton edit={() => addVentEdit(job, back.id)}>Add a vent to the back</EditButton>
          <EditButton edit={() => addHolesEdit(job, box.id)}>Add a row of holes to the sides</EditButton>
        </p>
      )}
      {missing.length > 0 && (
        <p className="acts">
          {missing.map(([kind, words]) => (
            <EditButton key={kind} edit={() => addTrimEdit(job, box, kind)}>
              Add {words}
            </EditButton>
          ))}
        </p>
      )}
      <p className="acts">
        <EditButton edit={() => addCaseEdit(job, box, 'across')} quiet>
          Put a case beside it
        </EditButton>
        <EditButton edit={() => addCaseEdit(job, box, 'up')} quiet>
          Put a case on it
        </EditButton>
        {!alone && (
          <EditButton edit={() => removeCaseEdit(job, box)} quiet>
            Take this case away
          </EditButton>
        )}
      </p>
    </>
  );
}

function freeId(job: { readonly design: { readonly records: readonly { readonly id: string }[] } }): string {
  let id = 'inside';
  while (job.design.records.some((r) => r.id === id)) id += '-1';
  return id;
}
