import type { RecordOf } from '../../../job/index.ts';
import { LengthField } from '../../fields/text-field.tsx';
import { useApp } from '../../state/use-desk.ts';

/** A name of more letters is written smaller, so that all of it is seen. */
const LONG = 24;

/** The piece as a whole: its name, and its sizes over everything. */
export function PieceNote({ piece }: { piece: RecordOf<'piece'> }) {
  const at = `design/records/${piece.id}`;
  const snags = useApp((s) => s.setOut.snags);
  const stop = snags.find((s) => s.level === 'stop');
  return (
    <section className="note piece-note">
      <h1 className={(piece.name?.length ?? 0) > LONG ? 'long' : undefined}>
        <LengthField path={`${at}/name`} label="Name of the piece" />
      </h1>
      <p>
        <LengthField path={`${at}/width`} label="Width over all" /> wide,{' '}
        <LengthField path={`${at}/height`} label="Height over all" /> high,{' '}
        <LengthField path={`${at}/depth`} label="Depth over all" /> deep, over everything.
      </p>
      <p className="faint">
        Its place is <LengthField path={`${at}/spaceWidth`} label="Width of its place" empty="not said" />{' '}
        wide, <LengthField path={`${at}/spaceHeight`} label="Height of its place" empty="not said" /> high.
      </p>
      {stop && (
        <p className="wrong" role="alert">
          {stop.sentence}
        </p>
      )}
    </section>
  );
}
