import { useEffect, useId, useState } from 'react';
import type { Edit } from '../../job/index.ts';
import { useApp, useDesk } from '../state/use-desk.ts';

/**
 * Text that is being written before it counts. `commit` makes the edit; when it is refused the text stays with the
 * reason beside it, and the document is as it was. `editOf` gives the edit, or a sentence why there is none.
 */
export function useDraft(value: string, editOf: (text: string) => Edit | string) {
  const desk = useDesk();
  const id = useId();
  const [text, setText] = useState(value);
  const [wrong, setWrong] = useState<string>();
  useEffect(() => {
    setText(value);
    setWrong(undefined);
  }, [value]);

  const commit = () => {
    const wanted = text.trim();
    if (wanted === value) {
      setText(value);
      setWrong(undefined);
      return;
    }
    const edit = editOf(wanted);
    const reason = typeof edit === 'string' ? edit : desk.edit(edit)[0]?.sentence;
    setWrong(reason);
  };
  const giveUp = () => {
    setText(value);
    setWrong(undefined);
  };
  return { id, text, setText, wrong, commit, giveUp };
}

/** Whether a field is the one that was asked for, to be focused when it appears. */
export function useWanted(path: string, focus: () => void): void {
  const desk = useDesk();
  const wanted = useApp((s) => s.wanted === path);
  useEffect(() => {
    if (!wanted) return;
    focus();
    desk.store.set({ wanted: undefined });
  }, [wanted, focus, desk]);
}
