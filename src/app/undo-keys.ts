import { useEffect } from 'react';
import { useDesk } from './state/use-desk.ts';

/** Ctrl or Cmd with Z undoes, with Shift and Z (or Y) redoes. A field that is being written in has its own undo. */
export function useUndoKeys(): void {
  const desk = useDesk();
  useEffect(() => {
    const press = (e: KeyboardEvent) => {
      if (!(e.ctrlKey || e.metaKey) || e.altKey) return;
      const key = e.key.toLowerCase();
      if (key !== 'z' && key !== 'y') return;
      if (isBeingWritten(e.target)) return;
      e.preventDefault();
      if (key === 'y' || e.shiftKey) desk.redo();
      else desk.undo();
    };
    window.addEventListener('keydown', press);
    return () => window.removeEventListener('keydown', press);
  }, [desk]);
}

/** Whether a field holds text that doesn't count yet. */
function isBeingWritten(target: EventTarget | null): boolean {
  return target instanceof HTMLInputElement && target.dataset.unsaved === 'true';
}
