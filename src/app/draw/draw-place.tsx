import { Model } from './model/model.tsx';
import { Notes } from './notes/notes.tsx';
import { PartsList } from './parts-list.tsx';
import { Views } from './views.tsx';

/** The sheet of drawing paper: notes, the piece in the round, its views, its parts. */
export function DrawPlace() {
  return (
    <div className="draw">
      <Notes />
      <Model />
      <Views />
      <PartsList />
    </div>
  );
}
