import type { RecordOf } from '../../../job/index.ts';
import { ChoiceField, LotField } from '../../fields/choice-field.tsx';
import { LengthField } from '../../fields/text-field.tsx';
import { useApp } from '../../state/use-desk.ts';
import { inMitresEdit, jointsEdit, thinnestSheet } from '../case-edits.ts';
import { Note } from './note.tsx';

/** The box: what its panels are cut from, and what stands on its bottom. */
export function CaseNote({ box, alone, topped }: { box: RecordOf<'case'>; alone: boolean; topped: boolean }) {
  const at = `design/records/${box.id}`;
  const thinnest = useApp((s) => thinnestSheet(s.history.job));
  return (
    <Note title={alone ? 'Case' : `Case ${box.id}`}>
      {!alone && (
        <p>
          Takes <LengthField path={`${at}/size`} label="Size along its row or stack" empty="an equal share" />{' '}
          of its row or stack, <LengthField path={`${at}/height`} label="Height of the case" empty="all" /> of
          the height and <LengthField path={`${at}/depth`} label="Depth of the case" empty="all" /> of the
          depth.
        </p>
      )}
      <p>
        Panels of <LotField path={`${at}/board`} label="Board of the case" form="sheet" />, joined{' '}
        <ChoiceField
          path={`${at}/joints`}
          label="How the panels are joined"
          editOf={(v) => jointsEdit(box, v)}
          choices={[
            ['', 'as the tools allow'],
            ['pocket-screws', 'by pocket screws'],
            ['face-screws', 'by screws through their faces'],
            ['rabbet', 'by rabbets at the corners, and pocket screws'],
            ['dado', 'by dados'],
            ['stopped-dado', 'by stopped dados'],
            ['tongue', 'by tongues in narrow dados'],
            ['dowels', 'by dowels'],
            ['biscuits', 'by biscuits'],
            ['mitre', 'by mitres at the corners'],
          ]}
          end="."
        />{' '}
        {box.joints === 'mitre' ? (
          <>
            The mitres are{' '}
            <ChoiceField
              path={`${at}/inMitres`}
              label="What keeps the mitres in place"
              editOf={(v) => inMitresEdit(box, v, thinnest)}
              choices={[
                ['', 'taped, glued and folded up'],
                ['biscuits', 'drawn together on biscuits'],
                ['spline', 'drawn together on splines'],
              ]}
              end={box.inMitres === 'spline' ? '' : '.'}
            />{' '}
            {box.inMitres === 'spline' && (
              <>
                of <LotField
                  path={`${at}/splineBoard`}
                  label="Board of the splines"
                  form="sheet"
                  end="."
                />{' '}
              </>
            )}
          </>
        ) : null}
        {box.joints === 'face-screws' ? (
          <>
            Screw heads that are seen are{' '}
            <ChoiceField
              path={`${at}/heads`}
              label="Screw heads that are seen"
              choices={[
                ['', 'plugged where the rack has plugs'],
                ['plugged', 'plugged'],
                ['countersunk', 'countersunk'],
              ]}
              end="."
            />{' '}
          </>
        ) : null}
        The bottom{' '}
        <ChoiceField
          path={`${at}/bottom`}
          label="Bottom and sides"
          choices={[
            ['', 'stands between the sides'],
            ['under', 'runs through under the sides'],
            ['under-left', 'runs under the left side'],
            ['under-right', 'runs under the right side'],
          ]}
          end=";"
        />{' '}
        {topped ? null : (
          <>
            the lid{' '}
            <ChoiceField
              path={`${at}/lid`}
              label="Lid and sides"
              choices={[
                ['', 'lies between the sides'],
                ['over', 'runs through over the sides'],
                ['over-left', 'runs over the left side'],
                ['over-right', 'runs over the right side'],
              ]}
              end=";"
            />{' '}
            the grain runs{' '}
            <ChoiceField
              path={`${at}/oneStrip`}
              label="Sides and lid from one strip"
              choices={[
                ['', 'as each is cut'],
                ['sides-and-lid', 'round sides and lid'],
              ]}
              end=";"
            />{' '}
          </>
        )}
        {!alone && <SharedSides at={at} />}
        cut two and two as one blank, and parted once worked:{' '}
        <ChoiceField
          path={`${at}/oneBlank`}
          label="Pairs that stay joined"
          choices={[
            ['', 'none'],
            ['sides', 'the sides'],
            ['dividers', 'the dividers'],
            ['sides-and-dividers', 'sides and dividers'],
          ]}
          end=";"
        />{' '}
        the bottom carries{' '}
        <LengthField path={`${at}/load`} label="Load on the bottom" empty="the usual load" end="." />
      </p>
    </Note>
  );
}

/** Whose sides close a case that stands in a row. */
function SharedSides({ at }: { at: string }) {
  return (
    <>
      {(['left', 'right'] as const).map((hand) => (
        <span key={hand}>
          its {hand} side is{' '}
          <ChoiceField
            path={`${at}/${hand}Side`}
            label={`The ${hand} side`}
            choices={[
              ['', 'its own'],
              ['shared', `that of the case on its ${hand}`],
            ]}
            end=";"
          />{' '}
        </span>
      ))}
    </>
  );
}
