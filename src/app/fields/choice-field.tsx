import { useCallback, useId, useRef, useState } from 'react';
import { type Edit, readPlace } from '../../job/index.ts';
import { useApp, useDesk } from '../state/use-desk.ts';
import { useWanted } from './use-draft.ts';

interface ChoiceProps {
  readonly path: string;
  readonly label: string;
  /** Value and words; an empty value takes the field away. */
  readonly choices: readonly (readonly [value: string, words: string])[];
  /** What stands for an absent field. */
  readonly absent?: string;
  readonly editOf?: (value: string) => Edit;
  /** The full stop or comma after it, which stays on its line. */
  readonly end?: string;
}

/** One of a few, chosen within a sentence. */
export function ChoiceField({ path, label, choices, absent = '', editOf, end }: ChoiceProps) {
  const desk = useDesk();
  const id = useId();
  const [wrong, setWrong] = useState<string>();
  const select = useRef<HTMLSelectElement>(null);
  const value = useApp((s) => String(readPlace(s.history.job, path) ?? absent));
  const words = choices.find(([v]) => v === value)?.[1] ?? value;
  useWanted(
    path,
    useCallback(() => select.current?.focus(), []),
  );
  const choose = (v: string) => {
    const edit: Edit =
      editOf?.(v) ?? (v === '' ? { edit: 'set', at: path } : { edit: 'set', at: path, value: v });
    setWrong(desk.edit(edit)[0]?.sentence);
  };
  return (
    <span className="written">
      <span className="choice">
        <span aria-hidden="true">{words}</span>
        <select
          ref={select}
          aria-label={label}
          aria-describedby={wrong === undefined ? undefined : id}
          value={value}
          onChange={(e) => choose(e.target.value)}
        >
          {choices.map(([v, w]) => (
            <option key={v} value={v}>
              {w}
            </option>
          ))}
        </select>
      </span>
      {end}
      {wrong !== undefined && (
        <span className="wrong" id={id} role="alert">
          {wrong}
        </span>
      )}
    </span>
  );
}

/** A lot of the rack, of sheets or of strips; or either, for a board that may be glued up. */
export function LotField({ path, label, form, absent, none, end }: LotFieldProps) {
  const lots = useApp((s) => s.history.job.shop.rack.lots);
  const own = lots
    .filter((l) => l.form === form || (form === 'board' && l.tape === undefined))
    .map((l) => [l.id, l.name] as const);
  const choices = none === undefined ? own : [['', none] as const, ...own];
  return (
    <ChoiceField
      {...{ path, label, choices }}
      {...(absent === undefined ? {} : { absent })}
      {...(end === undefined ? {} : { end })}
    />
  );
}

interface LotFieldProps {
  readonly path: string;
  readonly label: string;
  readonly form: 'sheet' | 'strip' | 'board';
  readonly absent?: string;
  /** Words for no lot, where that is allowed. */
  readonly none?: string;
  readonly end?: string;
}
