import type { Edit } from '../../job/index.ts';
import { EditButton } from '../fields/edit-button.tsx';
import { LengthField } from '../fields/text-field.tsx';
import { useApp } from '../state/use-desk.ts';

const AT = 'shop/wayHome';
/** What is usual in houses, to be measured over (from memory). */
const USUAL = {
  mm: { ceiling: '2400 mm', width: '780 mm', height: '1980 mm' },
  in: { ceiling: '94"', width: '30"', height: '78"' },
} as const;

/** The ceiling under which the piece is stood up, and the doors that it is carried through. */
export function WayHomeNote() {
  const units = useApp((s) => s.history.job.shop.units);
  const way = useApp((s) => s.history.job.shop.wayHome);
  const usual = USUAL[units];
  const begin = (): Edit => ({ edit: 'set', at: AT, value: { ceiling: usual.ceiling } });
  const addDoor = (): Edit => {
    const doors = way?.doors ?? [];
    const door = { id: freeName(doors.map((d) => d.id)), width: usual.width, height: usual.height };
    return { edit: 'set', at: `${AT}/doors`, value: [...doors, door] };
  };
  const without = (id: string): Edit => {
    const doors = (way?.doors ?? []).filter((d) => d.id !== id);
    return doors.length > 0
      ? { edit: 'set', at: `${AT}/doors`, value: doors }
      : { edit: 'set', at: `${AT}/doors` };
  };
  if (!way)
    return (
      <p>
        <EditButton edit={begin} quiet>
          Tell of the way home
        </EditButton>
      </p>
    );
  return (
    <>
      <p>
        Where it will stand the ceiling is at{' '}
        <LengthField path={`${AT}/ceiling`} label="Height of the ceiling" empty="any height" end="." />{' '}
        <EditButton edit={addDoor} quiet>
          A door on the way
        </EditButton>
      </p>
      <ul className="tools">
        {(way.doors ?? []).map(({ id, name }) => (
          <li key={id}>
            It goes through <strong>{name ?? id}</strong>,{' '}
            <LengthField path={`${AT}/doors/${id}/width`} label={`Width of ${name ?? id}`} /> wide and{' '}
            <LengthField path={`${AT}/doors/${id}/height`} label={`Height of ${name ?? id}`} /> high.{' '}
            <EditButton edit={() => without(id)} quiet>
              Not on the way
            </EditButton>
          </li>
        ))}
      </ul>
    </>
  );
}

function freeName(taken: readonly string[]): string {
  let n = taken.length + 1;
  while (taken.includes(`door${n}`)) n++;
  return `door${n}`;
}
