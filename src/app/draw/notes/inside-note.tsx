import { Note } from './note.tsx';
import { SpaceNote } from './space-note.tsx';

/** How the inside is divided. */
export function InsideNote({ opening }: { opening: string }) {
  return (
    <Note title="Inside">
      <SpaceNote id={opening} />
    </Note>
  );
}
