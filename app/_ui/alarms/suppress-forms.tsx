'use client';

import { useId, useState } from 'react';
import type { FormAction } from '../form/answer';
import { KeptForm } from '../safeguards/kept-form';
import style from './alarms.module.css';
import { hoursSaid, type SuppressChoiceView } from './suppressed-view';

const LABELS = { alarm: 'Alarm', hours: 'How long', unit: 'Unit', reason: 'Why', owner: 'In the hands of' };

interface SuppressFormProps {
  site: string;
  choices: SuppressChoiceView[];
  /** Id of the alarm that is chosen at first. */
  chosen?: string | undefined;
  action: FormAction<unknown>;
}

/** Shelves an alarm for so many hours, with a reason. */
export function ShelveForm({ site, choices, chosen, action }: SuppressFormProps) {
  const id = useId();
  const [alarm, choose] = useState(chosen ?? choices[0]?.id ?? '');
  const most = choices.find((one) => one.id === alarm);
  return (
    <KeptForm action={action} hidden={{ site }} labels={LABELS} button="Shelve it" done="It is shelved from now.">
      <AlarmField choices={choices} alarm={alarm} choose={choose} />
      <label htmlFor={id} className={style.hours}>
        For how many hours{most ? ` (${hoursSaid(most.shelveH)} at most)` : ''}
        <input id={id} name="hours" type="number" inputMode="decimal" min="0" step="any" defaultValue="1" required />
      </label>
      <ReasonField title="Why" />
    </KeptForm>
  );
}

/** Takes an alarm out of service, with somebody who has it in hand. */
export function OutOfServiceForm({
  site,
  choices,
  chosen,
  people,
  action,
}: SuppressFormProps & { people: { id: string; name: string }[] }) {
  const id = useId();
  const [alarm, choose] = useState(chosen ?? choices[0]?.id ?? '');
  const most = choices.find((one) => one.id === alarm);
  return (
    <KeptForm
      action={action}
      hidden={{ site }}
      labels={LABELS}
      button="Take it out of service"
      done="It is out of service from now."
    >
      <AlarmField choices={choices} alarm={alarm} choose={choose} />
      <div className={style.lasting}>
        <label htmlFor={id}>
          For how long{most ? ` (${hoursSaid(most.outH)} at most)` : ''}
          <input id={id} name="hours" type="number" inputMode="decimal" min="0" step="any" defaultValue="8" required />
        </label>
        <label htmlFor={`${id}u`}>
          in
          <select id={`${id}u`} name="unit" defaultValue="hours">
            <option value="hours">hours</option>
            <option value="days">days</option>
          </select>
        </label>
      </div>
      <label htmlFor={`${id}o`}>
        In the hands of
        <select id={`${id}o`} name="owner" required>
          {people.map((one) => (
            <option key={one.id} value={one.id}>
              {one.name}
            </option>
          ))}
        </select>
      </label>
      <ReasonField title="What is being done" />
    </KeptForm>
  );
}

/** Ends what keeps an alarm from calling. */
export function EndSuppressionForm({
  site,
  run,
  name,
  action,
}: {
  site: string;
  run: string;
  name: string;
  action: FormAction<unknown>;
}) {
  return (
    <KeptForm action={action} hidden={{ site, run }} button={`End it: ${name}`} done="It may call again from now." />
  );
}

function AlarmField({
  choices,
  alarm,
  choose,
}: {
  choices: SuppressChoiceView[];
  alarm: string;
  choose: (id: string) => void;
}) {
  const id = useId();
  return (
    <label htmlFor={id}>
      Alarm
      <select id={id} name="alarm" value={alarm} onChange={(event) => choose(event.currentTarget.value)} required>
        {choices.map((one) => (
          <option key={one.id} value={one.id}>
            {one.system}: {one.name}
            {one.isNever ? ' (never suppressed otherwise)' : ''}
          </option>
        ))}
      </select>
    </label>
  );
}

function ReasonField({ title }: { title: string }) {
  const id = useId();
  return (
    <label htmlFor={id}>
      {title}
      <textarea id={id} name="reason" rows={2} maxLength={2000} required />
    </label>
  );
}
