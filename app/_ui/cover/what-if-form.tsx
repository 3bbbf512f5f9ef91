import Link from '../frame/link';
import { type ReactNode, useId } from 'react';
import type { Facility } from '#core/facility/facility';
import type { CoverView } from './cover-view';
import style from './cover.module.css';

type FormProps = Pick<CoverView, 'asked' | 'wrong' | 'column'> & { facility: Facility; address: string };

const DAY_WORDS = { all: 'every day', weekdays: 'Monday to Friday', weekend: 'Saturday and Sunday' };
const KINDS = { 'on-call': 'on call', 'on-site': 'on site' };

/** Asks what a change of people would make of the cover. It stands in the address, works without scripts and keeps nothing. */
export function WhatIfForm({ asked, wrong, column, facility, address }: FormProps) {
  const { people, shifts } = facility;
  const of = (name: keyof CoverView['asked']) => ({ name, value: asked[name], wrong: wrong[name] });
  const named = Object.fromEntries(people.map(({ key, name }) => [key, name]));
  const kept = Object.fromEntries(shifts.map((one) => [one.key, shiftSaid(one, named)]));
  return (
    <form method="get" action="#what-if" className={style.asked}>
      {column === 'tested' ? <input type="hidden" name="column" value="tested" /> : null}
      <fieldset>
        <legend>One more round</legend>
        <Field label="at" hint="such as 02:00" {...of('check')} />
        <Choice label="on" choices={DAY_WORDS} {...of('checkDays')} />
      </fieldset>
      <fieldset>
        <legend>Somebody nearer, or farther</legend>
        <Choice label="who" none="nobody" choices={named} {...of('person')} />
        <Field label="way to the site, min" isNumber {...of('way')} />
      </fieldset>
      <fieldset>
        <legend>A shift at other times</legend>
        <Choice label="shift" none="none" choices={kept} {...of('shift')} />
        <Field label="from" {...of('shiftFrom')} />
        <Field label="to" {...of('shiftTo')} />
      </fieldset>
      <fieldset>
        <legend>One more person</legend>
        <Choice label="how" none="nobody" choices={KINDS} {...of('more')} />
        <Choice label="on" choices={DAY_WORDS} {...of('moreDays')} />
        <Field label="from" {...of('moreFrom')} />
        <Field label="to" {...of('moreTo')} />
        <Field label="way to the site, min, if on call" isNumber {...of('moreWay')} />
      </fieldset>
      <p className={style.buttons}>
        <button type="submit">See what it would change</button>
        {Object.keys(asked).length > 0 ? <Link href={address}>Ask nothing</Link> : null}
      </p>
    </form>
  );
}

function shiftSaid({ kind, from, to, people }: Facility['shifts'][number], named: Record<string, string>): string {
  const who = people.map((key) => named[key] ?? key).join(', ');
  return `${kind === 'on-site' ? 'on site' : 'on call'} ${from} to ${to}: ${who}`;
}

interface FieldProps {
  name: string;
  label: string;
  value: string | undefined;
  wrong: string | undefined;
}

function Field({ name, label, value, wrong, hint, isNumber }: FieldProps & { hint?: string; isNumber?: boolean }) {
  const id = useId();
  return (
    <Framed id={id} label={hint ? `${label} (${hint})` : label} wrong={wrong}>
      <input
        id={id}
        name={name}
        defaultValue={value}
        size={7}
        inputMode={isNumber ? 'numeric' : 'text'}
        autoComplete="off"
        aria-invalid={wrong !== undefined || undefined}
        aria-describedby={wrong === undefined ? undefined : `${id}w`}
      />
    </Framed>
  );
}

function Choice({
  name,
  label,
  value,
  wrong,
  none,
  choices,
}: FieldProps & { none?: string; choices: Record<string, string> }) {
  const id = useId();
  return (
    <Framed id={id} label={label} wrong={wrong}>
      <select
        id={id}
        name={name}
        defaultValue={value ?? ''}
        aria-describedby={wrong === undefined ? undefined : `${id}w`}
      >
        {none ? <option value="">{none}</option> : null}
        {Object.entries(choices).map(([key, said]) => (
          <option key={key} value={key}>
            {said}
          </option>
        ))}
      </select>
    </Framed>
  );
}

function Framed({
  id,
  label,
  wrong,
  children,
}: {
  id: string;
  label: string;
  wrong: string | undefined;
  children: ReactNode;
}) {
  return (
    <p className={style.field}>
      <label htmlFor={id}>{label}</label>
      {children}
      {wrong === undefined ? null : (
        <span id={`${id}w`} className={style.wrong}>
          <span aria-hidden="true" className={style.mark}>
            ▲
          </span>{' '}
          {label}: {wrong}
        </span>
      )}
    </p>
  );
}
