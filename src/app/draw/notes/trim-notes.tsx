import { type RecordOf, treeOf, walledEnds } from '../../../job/index.ts';
import { INDOORS, movementBetween } from '../../../materials/index.ts';
import { ChoiceField, LotField } from '../../fields/choice-field.tsx';
import { EditButton } from '../../fields/edit-button.tsx';
import { LengthField } from '../../fields/text-field.tsx';
import { useApp } from '../../state/use-desk.ts';
import { backFittingEdit, baseFormEdit, stripsForButtons, topFitEdit, topMovesEdit } from '../case-edits.ts';
import { removeEdit } from '../design-edits.ts';
import { edgedSides } from './edged-sides.ts';
import { Note } from './note.tsx';

/** What lies round the case: top, base, back and edging, each with a way to take it off. */

export function TopNote({ top, over }: { top: RecordOf<'top'>; over?: string }) {
  const at = `design/records/${top.id}`;
  const fit = top.fit ?? 'applied';
  return (
    <Note title={over === undefined ? 'Top' : `Top over ${over}`}>
      <p>
        Of <LotField path={`${at}/board`} label="Board of the top" form="board" end="," />{' '}
        <ChoiceField
          path={`${at}/fit`}
          label="Where the top lies"
          absent="applied"
          choices={[
            ['applied', 'lying on the case'],
            ['flush', 'level with the case all round'],
            ...(over === undefined ? [['inset', 'between the sides'] as const] : []),
          ]}
          editOf={(v) => topFitEdit(top, v as NonNullable<RecordOf<'top'>['fit']>)}
          end={fit === 'applied' ? ',' : '.'}
        />{' '}
        {fit === 'applied' && (
          <>
            standing out{' '}
            <LengthField path={`${at}/overhangFront`} label="Overhang in front" empty="nothing" /> in front,{' '}
            <LengthField path={`${at}/overhangSides`} label="Overhang at the sides" empty="nothing" /> at each
            side, <LengthField path={`${at}/overhangBack`} label="Overhang behind" empty="nothing" /> behind.{' '}
          </>
        )}
        {fit !== 'inset' && (
          <>
            Edged with{' '}
            <LotField
              path={`${at}/edging`}
              label="Edging of the top"
              form="strip"
              none="nothing"
              {...(top.edging === undefined ? { end: '.' } : {})}
            />
          </>
        )}
        {top.edging !== undefined && (
          <>
            {' '}
            <ChoiceField
              path={`${at}/edgedSides`}
              label="Edged sides of the top"
              absent="front-and-sides"
              choices={[
                ['front', 'at the front'],
                ['front-and-sides', 'at the front and sides'],
                ['all-round', 'all round'],
              ]}
              end="."
            />
          </>
        )}
        {over !== undefined && <Scribed top={top} />}
        <Moves top={top} over={over} />
        {' It carries '}
        <LengthField
          path={`${at}/load`}
          label="Load on the top"
          empty="the usual load"
          end={fit === 'inset' ? '.' : ','}
        />{' '}
        {fit !== 'inset' && (
          <>
            and{' '}
            <ChoiceField
              path={`${at}/hinged`}
              label="How the top lies"
              absent="false"
              choices={[
                ['false', 'lies fixed'],
                ['true', 'opens as a lid, hinged to the back'],
              ]}
              editOf={(v) => ({ edit: 'set', at: `${at}/hinged`, ...(v === 'true' ? { value: true } : {}) })}
              end="."
            />{' '}
          </>
        )}
        {top.hinged && <Held at={at} />}
        <TakeAway id={top.id} />
      </p>
    </Note>
  );
}

/** How a top of solid wood can move on what carries it. */
function Moves({ top, over }: { top: RecordOf<'top'>; over: string | undefined }) {
  const job = useApp((s) => s.history.job);
  const at = `design/records/${top.id}`;
  const wood = job.shop.rack.lots.find((l) => l.id === top.board)?.material;
  const solid = wood !== undefined && movementBetween(wood, INDOORS.dryest, INDOORS.dampest) !== undefined;
  if (top.moves === undefined && (!solid || top.hinged || top.fit === 'inset')) return null;
  const onButtons = top.moves === 'buttons';
  return (
    <>
      {' Behind the screws in front it is held '}
      <ChoiceField
        path={`${at}/moves`}
        label="How the top can move"
        absent="holes"
        choices={[
          ['holes', 'by screws in wide holes'],
          ['slots', 'by screws in slots'],
          ...(over === undefined && (onButtons || stripsForButtons(job))
            ? [['buttons', 'by wooden buttons'] as const]
            : []),
        ]}
        editOf={(v) => topMovesEdit(job, top, v)}
        {...(onButtons ? {} : { end: '.' })}
      />
      {onButtons && (
        <>
          {' of '}
          <LotField path={`${at}/buttons`} label="Strips for the buttons" form="strip" end="." />
        </>
      )}
    </>
  );
}

/** How much longer a top over fillers is cut, to be scribed to their walls. */
function Scribed({ top }: { top: RecordOf<'top'> }) {
  const job = useApp((s) => s.history.job);
  if (top.scribe === undefined && walledEnds(top, treeOf(job)).length === 0) return null;
  return (
    <>
      {' It is cut '}
      <LengthField path={`design/records/${top.id}/scribe`} label="Scribe of the top" empty="no" /> longer at
      each wall, to be scribed to it.
    </>
  );
}

/** What a lid hangs on and is held by. */
function Held({ at }: { at: string }) {
  const rack = useApp((s) => s.history.job.shop.rack);
  const hinges = (rack.hinges ?? []).filter((h) => h.kind === 'butt');
  return (
    <>
      It hangs on{' '}
      <ChoiceField
        path={`${at}/hinge`}
        label="Hinge of the lid"
        choices={[['', 'the first butt hinge'], ...hinges.map((h) => [h.id, h.name ?? h.id] as const)]}
      />{' '}
      and is held open by{' '}
      <ChoiceField
        path={`${at}/stay`}
        label="Stay of the lid"
        choices={[
          ['', 'the first stay that does'],
          ...(rack.stays ?? []).map((s) => [s.id, s.name ?? s.id] as const),
        ]}
        end="."
      />{' '}
    </>
  );
}

/** The fixed front of a chest. */
export function FrontNote({ front }: { front: RecordOf<'front'> }) {
  const at = `design/records/${front.id}`;
  return (
    <Note title="Front">
      <p>
        Fixed, of{' '}
        <LotField
          path={`${at}/board`}
          label="Board of the front"
          form="sheet"
          none="the case’s own"
          end=","
        />{' '}
        with <LengthField path={`${at}/gap`} label="Gap under the lid" empty="room for fingers" /> open under
        the lid. <TakeAway id={front.id} />
      </p>
    </Note>
  );
}

export function BaseNote({ base, over }: { base: RecordOf<'base'>; over?: string }) {
  const at = `design/records/${base.id}`;
  const form = base.form ?? 'frame';
  const job = useApp((s) => s.history.job);
  const levellers = (job.shop.rack.fixings ?? []).filter((f) => f.kind === 'leveller');
  return (
    <Note title={over === undefined ? 'Base' : `Base under ${over}`}>
      <p>
        {over === undefined ? (
          <ChoiceField
            path={`${at}/form`}
            label="What the case stands on"
            absent="frame"
            choices={[
              ['frame', 'A mitred frame'],
              ['toe-kick', 'A kick board between the sides'],
              ['feet', 'Feet'],
              ['legs', 'Legs with aprons'],
              ['levellers', 'Levellers'],
            ]}
            editOf={(v) => baseFormEdit(job, base, v as NonNullable<RecordOf<'base'>['form']>)}
          />
        ) : (
          'A mitred frame'
        )}{' '}
        {form === 'feet' ? (
          <>
            of <LotField path={`${at}/strip`} label="Strip of the feet" form="strip" end="," />{' '}
          </>
        ) : form === 'levellers' ? (
          <>
            <ChoiceField
              path={`${at}/leveller`}
              label="Leveller of the base"
              choices={[
                ['', 'the first of the rack'],
                ...levellers.map((f) => [f.id, f.name ?? f.id] as const),
              ]}
              end=","
            />{' '}
            <LengthField path={`${at}/height`} label="Height of the base" empty="turned right in" /> high,{' '}
          </>
        ) : (
          <>
            {form === 'legs' ? (
              <>
                of <LotField path={`${at}/strip`} label="Strip of the legs" form="strip" end="," /> aprons{' '}
                <LengthField path={`${at}/apron`} label="Height of the aprons" empty="100 mm" /> high{' '}
              </>
            ) : null}
            of <LotField path={`${at}/board`} label="Board of the base" form="sheet" end="," />{' '}
            <LengthField path={`${at}/height`} label="Height of the base" /> high,{' '}
          </>
        )}
        set back <LengthField path={`${at}/setback`} label="Setback of the base" empty="nothing" />
        {form === 'toe-kick' ? (
          ' in front. '
        ) : (
          <>
            {' '}
            in front and at the sides,{' '}
            <LengthField path={`${at}/setbackBack`} label="Setback of the base behind" empty="as much" />{' '}
            behind.{' '}
          </>
        )}
        <TakeAway id={base.id} />
      </p>
    </Note>
  );
}

export function HangingNote({ hanging }: { hanging: RecordOf<'hanging'> }) {
  const at = `design/records/${hanging.id}`;
  const what = hanging.by === 'cleat' ? 'cleat' : 'hanging rail';
  return (
    <Note title="On the wall">
      <p>
        Hung by{' '}
        <ChoiceField
          path={`${at}/by`}
          label="What it hangs by"
          absent="rails"
          choices={[
            ['rails', 'rails screwed to the wall'],
            ['cleat', 'a bevelled cleat'],
          ]}
          end=","
        />{' '}
        of <LotField path={`${at}/board`} label={`Board of the ${what}`} form="sheet" end="," />{' '}
        <LengthField
          path={`${at}/height`}
          label={`Height of the ${what}`}
          empty={hanging.by === 'cleat' ? '80 mm' : '90 mm'}
        />{' '}
        high. <TakeAway id={hanging.id} />
      </p>
    </Note>
  );
}

export function BackNote({ back, bay }: { back: RecordOf<'back'>; bay?: string }) {
  const job = useApp((s) => s.history.job);
  const at = `design/records/${back.id}`;
  return (
    <Note title={bay === undefined ? 'Back' : `Back of ${bay}`}>
      <p>
        Of <LotField path={`${at}/board`} label="Board of the back" form="sheet" end="," />{' '}
        <ChoiceField
          path={`${at}/fitting`}
          label="How the back is fitted"
          choices={[
            ['rabbet', 'let into a rabbet'],
            ['groove', 'let into a groove'],
            ['applied', 'laid over the back edges'],
          ]}
          editOf={(v) => backFittingEdit(job, back, v)}
          end="."
        />{' '}
        <TakeAway id={back.id} />
      </p>
    </Note>
  );
}

export function EdgingNote({ edging }: { edging: RecordOf<'edging'> }) {
  const at = `design/records/${edging.id}`;
  return (
    <Note title="Edging">
      <p>
        <ChoiceField
          path={`${at}/sides`}
          label="What the edging covers"
          choices={edgedSides(edging.sides)}
          editOf={(v) => ({
            edit: 'set',
            at: `${at}/sides`,
            ...(v === '' ? {} : { value: v.split(',') }),
          })}
        />{' '}
        faced with <LotField path={`${at}/strip`} label="Strip of the front edging" form="strip" end="." />{' '}
        <TakeAway id={edging.id} />
      </p>
    </Note>
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
