import { MINUTES, type OperationKind } from '../../build/index.ts';
import { DAYS, type Edit, type WorkingHours } from '../../job/index.ts';
import { ChoiceField } from '../fields/choice-field.tsx';
import { EditButton } from '../fields/edit-button.tsx';
import { LengthField, TextField, Written } from '../fields/text-field.tsx';
import { useApp } from '../state/use-desk.ts';

/** What counts while a shop says nothing else. */
const USUAL: readonly WorkingHours[] = [
  { days: ['mon', 'tue', 'wed', 'thu', 'fri'], from: '08:00', to: '12:00' },
  { days: ['mon', 'tue', 'wed', 'thu', 'fri'], from: '13:00', to: '17:00' },
];

const HOURS = 'shop/hours';

/** When work is done and by whom, the day it begins, and how long each kind of work takes here. */
export function WorkingTimes() {
  return (
    <section>
      <h2>Hours and hands</h2>
      <p>
        Work begins on{' '}
        <TextField path="work/start" label="First day of work" empty="year-month-day" end="." />
      </p>
      <People />
      <Hours />
      <Minutes />
    </section>
  );
}

function People() {
  const people = useApp((s) => s.history.job.shop.people);
  const all = (next: readonly object[]): Edit => ({ edit: 'set', at: 'shop/people', value: next });
  const id = () =>
    `person${people.reduce((n, p) => Math.max(n, Number(/^person(\d+)$/.exec(p.id)?.[1] ?? 1)), 1) + 1}`;
  return (
    <>
      <ul className="tools">
        {people.map((p, i) => {
          const name = p.name ?? p.id;
          return (
            <li key={p.id}>
              <TextField path={`shop/people/${p.id}/name`} label={`Name of ${name}`} empty={p.id} /> carries{' '}
              <LengthField path={`shop/people/${p.id}/lift`} label={`What ${name} can carry`} /> and{' '}
              <ChoiceField
                path={`shop/people/${p.id}/works`}
                label={`When ${name} works`}
                absent={i === 0 ? 'throughout' : 'when-needed'}
                choices={[
                  ['throughout', 'works throughout'],
                  ['when-needed', 'comes when two are needed'],
                ]}
                end="."
              />{' '}
              {people.length > 1 && (
                <EditButton quiet edit={() => all(people.filter((o) => o !== p))}>
                  Without {name}
                </EditButton>
              )}
            </li>
          );
        })}
      </ul>
      <p>
        <EditButton edit={() => all([...people, { id: id(), lift: '25 kg' }])}>Another person</EditButton>
      </p>
    </>
  );
}

function Hours() {
  const own = useApp((s) => s.history.job.shop.hours);
  const hours = own ?? USUAL;
  const all = (next: readonly WorkingHours[]): Edit => ({ edit: 'set', at: HOURS, value: next });
  const changed = (i: number, field: 'days' | 'from' | 'to', value: unknown): Edit =>
    all(hours.map((h, n) => (n === i ? ({ ...h, [field]: value } as WorkingHours) : h)));
  return (
    <>
      <ul className="tools">
        {hours.map((h, i) => {
          const label = `working hours ${i + 1}`;
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: hours have no names, only their place in the week's list
            <li key={i}>
              On{' '}
              <Written
                path={`${HOURS}/${i}/days`}
                label={`Days of ${label}`}
                value={h.days.join(' ')}
                editOf={(text) => daysOf(text, (days) => changed(i, 'days', days))}
              />{' '}
              from{' '}
              <Written
                path={`${HOURS}/${i}/from`}
                label={`Beginning of ${label}`}
                value={h.from}
                editOf={(text) => changed(i, 'from', clock(text))}
              />{' '}
              to{' '}
              <Written
                path={`${HOURS}/${i}/to`}
                label={`End of ${label}`}
                value={h.to}
                editOf={(text) => changed(i, 'to', clock(text))}
                end="."
              />{' '}
              {hours.length > 1 && (
                <EditButton quiet edit={() => all(hours.filter((_, n) => n !== i))}>
                  Not then
                </EditButton>
              )}
            </li>
          );
        })}
      </ul>
      <p>
        <EditButton edit={() => all([...hours, { days: ['sat'], from: '09:00', to: '12:00' }])}>
          More hours
        </EditButton>{' '}
        {own && (
          <EditButton quiet edit={() => ({ edit: 'set', at: HOURS })}>
            The usual hours
          </EditButton>
        )}
      </p>
    </>
  );
}

/** `mon tue, fri` as days of the week; or why not. */
function daysOf(text: string, edit: (days: readonly string[]) => Edit): Edit | string {
  const words = text
    .toLowerCase()
    .split(/[\s,]+/)
    .filter((w) => w !== '');
  const days = words.map((w) => DAYS.find((d) => w.startsWith(d)));
  const bad = words.find((_, i) => days[i] === undefined);
  if (bad !== undefined) return `“${bad}” is no day: write ${DAYS.join(', ')}.`;
  return words.length === 0 ? 'Name a day at least.' : edit(DAYS.filter((d) => days.includes(d)));
}

/** `8` and `8:30` as times of day. */
function clock(text: string): string {
  const [, hour, minutes] = /^(\d{1,2})(?:[:.](\d{2}))?$/.exec(text) ?? [];
  return hour === undefined ? text : `${hour.padStart(2, '0')}:${minutes ?? '00'}`;
}

/** The maker's own minutes for each kind of work in the plan, beside those that are reckoned. */
function Minutes() {
  const plan = useApp((s) => s.plan);
  const own = useApp((s) => s.history.job.shop.timings) ?? {};
  const kinds = [...new Set(plan?.build.operations.map((o) => o.kind) ?? [])];
  if (kinds.length === 0) return null;
  const told = (kind: OperationKind, text: string): Edit | string => {
    const active = Number(text.replace(',', '.'));
    if (text !== '' && !Number.isFinite(active)) return 'Minutes are a number.';
    const { [kind]: before, ...others } = own;
    const { active: _, ...waiting } = before ?? {};
    const mine = text === '' ? waiting : { ...waiting, active };
    const next = Object.keys(mine).length > 0 ? { ...others, [kind]: mine } : others;
    return Object.keys(next).length > 0
      ? { edit: 'set', at: 'shop/timings', value: next }
      : { edit: 'set', at: 'shop/timings' };
  };
  return (
    <details>
      <summary>Minutes that work takes here</summary>
      <p>Setting up included, for one part or one cut. Ours are rough; your own count before them.</p>
      <div className="list-frame">
        <table className="list">
          <thead>
            <tr>
              <th scope="col">Work</th>
              <th scope="col" className="figure">
                Reckoned
              </th>
              <th scope="col">Yours</th>
            </tr>
          </thead>
          <tbody>
            {kinds.map((kind) => {
              const words = kind.replaceAll('-', ' ');
              return (
                <tr key={kind}>
                  <th scope="row">{words}</th>
                  <td className="figure">{MINUTES[kind].active}</td>
                  <td>
                    <Written
                      path={`shop/timings/${kind}/active`}
                      label={`Minutes to ${words}`}
                      empty="as reckoned"
                      value={own[kind]?.active === undefined ? '' : String(own[kind].active)}
                      editOf={(text) => told(kind, text)}
                    />
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
    </details>
  );
}
