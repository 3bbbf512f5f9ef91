'use client';

import { useId } from 'react';
import type { FormAction } from '../form/answer';
import { ActForm } from '../people/act-form';
import { MadeNote } from './made-note';
import type { MadeView, SensorChoice, SourcesView } from './sources-view';

interface MakeFormProps extends Pick<SourcesView, 'gateways'> {
  site: string;
  make: FormAction<MadeView>;
}

/** Lets another source send readings. */
export function MakeForm({ site, gateways, make }: MakeFormProps) {
  const [name, gateway] = [useId(), useId()];
  return (
    <ActForm action={make} hidden={{ site }} button="Make a token" done={(made) => <MadeNote made={made} />}>
      <label htmlFor={name}>
        What sends them
        <input id={name} name="name" required maxLength={120} autoComplete="off" />
      </label>
      {gateways.length > 0 ? (
        <label htmlFor={gateway}>
          Gateway of the description it is, if it is one
          <select id={gateway} name="gateway" defaultValue="">
            <option value="">none of these</option>
            {gateways.map(({ key, name: called }) => (
              <option key={key} value={key}>
                {called}
              </option>
            ))}
          </select>
        </label>
      ) : null}
    </ActForm>
  );
}

interface EndFormProps {
  site: string;
  source: string;
  isBroker: boolean;
  end: FormAction<{ source: string }>;
}

/** Ends a source. */
export function EndForm({ site, source, isBroker, end }: EndFormProps) {
  return (
    <ActForm
      action={end}
      hidden={{ site, source }}
      button="End it"
      done={() => <p>{isBroker ? 'Nothing of it is heard any more.' : 'Its token opens nothing any more.'}</p>}
    />
  );
}

interface NameFormProps {
  site: string;
  name: string;
  sensors: SensorChoice[];
  action: FormAction<{ name: string }>;
}

/** Says which sensor a name is of. */
export function NameForm({ site, name, sensors, action }: NameFormProps) {
  const sensor = useId();
  return (
    <ActForm
      action={action}
      hidden={{ site, name }}
      button="This is the sensor"
      done={() => <p>What comes under this name is its from now on.</p>}
    >
      <label htmlFor={sensor}>
        Sensor that {name} is
        <select id={sensor} name="sensor" defaultValue="" required>
          <option value="">choose one</option>
          {sensors.map(({ id, name: called, systemName }) => (
            <option key={id} value={id}>
              {systemName}: {called}
            </option>
          ))}
        </select>
      </label>
    </ActForm>
  );
}

/** Takes a name away. */
export function UnnameForm({ site, name, action }: Omit<NameFormProps, 'sensors'>) {
  return (
    <ActForm
      action={action}
      hidden={{ site, name }}
      button="Take the name away"
      done={() => <p>What comes under it is refused.</p>}
    />
  );
}
