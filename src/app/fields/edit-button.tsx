import { useState } from 'react';
import type { Edit } from '../../job/index.ts';
import { useDesk } from '../state/use-desk.ts';

/** A button that makes an edit, and says so when it can't. */
export function EditButton({
  edit,
  children,
  quiet,
}: {
  edit: () => Edit;
  children: React.ReactNode;
  quiet?: boolean;
}) {
  const desk = useDesk();
  const [wrong, setWrong] = useState<string>();
  return (
    <>
      <button
        type="button"
        className={quiet ? 'act quiet' : 'act'}
        onClick={() => setWrong(desk.edit(edit())[0]?.sentence)}
      >
        {children}
      </button>
      {wrong !== undefined && (
        <span className="wrong" role="alert">
          {wrong}
        </span>
      )}
    </>
  );
}
