import { useCallback, useRef } from 'react';
import { type Edit, readPlace } from '../../job/index.ts';
import { useApp } from '../state/use-desk.ts';
import { useDraft, useWanted } from './use-draft.ts';

interface FieldProps {
  /** Where in the document it stands. */
  readonly path: string;
  /** What it is, for those who don't see the sentence it stands in. */
  readonly label: string;
  /** Shown while nothing is written. */
  readonly empty?: string;
  /** With its label before it, on a line of its own. */
  readonly row?: boolean;
  /** The full stop or comma after it, which stays on its line. */
  readonly end?: string;
}

/** A length or mass as it was typed, written in place. Left empty, an optional one is taken away. */
export function LengthField(props: FieldProps) {
  return <WrittenField {...props} meaning={(text) => text} />;
}

/** Words, or a day: as they were typed. */
export function TextField(props: FieldProps) {
  return <WrittenField {...props} meaning={(text) => text} />;
}

/** A whole number or an amount of money. */
export function NumberField(props: FieldProps) {
  return (
    <WrittenField
      {...props}
      meaning={(text) => (/^[+-]?\d+([.,]\d+)?$/.test(text) ? Number(text.replace(',', '.')) : text)}
    />
  );
}

function WrittenField({
  path,
  label,
  empty,
  row,
  end,
  meaning,
}: FieldProps & { readonly meaning: (text: string) => unknown }) {
  const value = useApp((s) => {
    const stands = readPlace(s.history.job, path);
    return stands === undefined ? '' : String(stands);
  });
  const editOf = (text: string): Edit =>
    text === '' ? { edit: 'set', at: path } : { edit: 'set', at: path, value: meaning(text) };
  return <Written {...{ path, label, empty, row, end, value, editOf }} />;
}

interface WrittenProps {
  readonly path: string;
  readonly label: string;
  readonly empty?: string | undefined;
  readonly row?: boolean | undefined;
  readonly end?: string | undefined;
  readonly value: string;
  readonly editOf: (text: string) => Edit | string;
}

/** A place to write on, as wide as what stands there. Enter or leaving it counts, Escape takes it back. */
export function Written({ path, label, empty, row, end, value, editOf }: WrittenProps) {
  const { id, text, setText, wrong, commit, giveUp } = useDraft(value, editOf);
  const input = useRef<HTMLInputElement>(null);
  useWanted(
    path,
    useCallback(() => {
      input.current?.scrollIntoView({ block: 'center' });
      input.current?.focus();
      input.current?.select();
    }, []),
  );
  return (
    <span className={row ? 'written row' : 'written'}>
      {row && <label htmlFor={id}>{label}</label>}
      <input
        ref={input}
        id={id}
        value={text}
        placeholder={empty}
        data-unsaved={text !== value}
        aria-label={row ? undefined : label}
        aria-invalid={wrong !== undefined}
        aria-describedby={wrong === undefined ? undefined : `${id}-wrong`}
        style={
          {
            '--figures': Math.max(text.length, text === '' ? (empty?.length ?? 0) : 0, 2) + 1.6,
          } as React.CSSProperties
        }
        autoComplete="off"
        autoCapitalize="off"
        spellCheck={false}
        onChange={(e) => setText(e.target.value)}
        onBlur={commit}
        onKeyDown={(e) => {
          if (e.key === 'Enter') commit();
          else if (e.key === 'Escape') {
            e.stopPropagation();
            giveUp();
          }
        }}
      />
      {end}
      {wrong !== undefined && (
        <span className="wrong" id={`${id}-wrong`} role="alert">
          {wrong}
        </span>
      )}
    </span>
  );
}
