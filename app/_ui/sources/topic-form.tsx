'use client';

import { useId, useState } from 'react';
import type { FormAction } from '../form/answer';
import { ActForm } from '../people/act-form';
import type { SensorChoice, TopicView } from './sources-view';
import { PAYLOAD_WORDS } from './payload-words';

const PAYLOADS: readonly TopicView['payload'][] = ['number', 'field', 'senml', 'sparkplug'];

interface TopicFormProps {
  site: string;
  source: string;
  sensors: SensorChoice[];
  add: FormAction<{ topic: string }>;
}

/** Subscribes to something more. Without scripts it can be a number, as most are. */
export function TopicForm({ site, source, sensors, add }: TopicFormProps) {
  const [topic, payload, sensor] = [useId(), useId(), useId()];
  const [chosen, setChosen] = useState<TopicView['payload']>('number');
  return (
    <ActForm
      action={add}
      hidden={{ site, source }}
      button="Listen to it"
      done={(made) => <p>{made.topic} is listened to.</p>}
    >
      <label htmlFor={topic}>
        Topic, such as plant/{'{system}'}/{'{sensor}'}/value; + stands for any level, # for all that follow
        <input id={topic} name="topic" required maxLength={200} autoComplete="off" spellCheck={false} />
      </label>
      <label htmlFor={payload}>
        What comes there
        <select
          id={payload}
          name="payload"
          value={chosen}
          onChange={({ target }) => setChosen(PAYLOADS.find((one) => one === target.value) ?? 'number')}
        >
          {PAYLOADS.map((one) => (
            <option key={one} value={one}>
              {PAYLOAD_WORDS[one]}
            </option>
          ))}
        </select>
      </label>
      {chosen === 'field' ? <FieldFields /> : null}
      {chosen === 'number' || chosen === 'field' ? (
        <>
          <UnitField />
          <label htmlFor={sensor}>
            Sensor it is, where the topic is of one alone
            <select id={sensor} name="sensor" defaultValue="">
              <option value="">the topic names it, or it is said below once it came</option>
              {sensors.map(({ id, name, systemName }) => (
                <option key={id} value={id}>
                  {systemName}: {name}
                </option>
              ))}
            </select>
          </label>
        </>
      ) : null}
    </ActForm>
  );
}

function FieldFields() {
  const [field, timeField] = [useId(), useId()];
  return (
    <>
      <label htmlFor={field}>
        Where the value stands in the object, such as data.value
        <input id={field} name="field" required maxLength={120} autoComplete="off" spellCheck={false} />
      </label>
      <label htmlFor={timeField}>
        Where its time stands, if it has one
        <input id={timeField} name="timeField" maxLength={120} autoComplete="off" spellCheck={false} />
      </label>
    </>
  );
}

function UnitField() {
  const unit = useId();
  return (
    <label htmlFor={unit}>
      Unit it comes in, if it is not the sensor’s own
      <input id={unit} name="unit" maxLength={40} autoComplete="off" spellCheck={false} />
    </label>
  );
}

interface EndTopicFormProps {
  site: string;
  topic: string;
  action: FormAction<{ topic: string }>;
}

/** Gives a subscription up. */
export function EndTopicForm({ site, topic, action }: EndTopicFormProps) {
  return (
    <ActForm
      action={action}
      hidden={{ site, topic }}
      button="Give it up"
      done={() => <p>Nothing of it is heard any more.</p>}
    />
  );
}
