'use client';

import { useId } from 'react';
import type { FormAction } from '../form/answer';
import { ActForm } from '../people/act-form';
import people from '../people/people.module.css';
import type { BrokerView, SourcesView } from './sources-view';

interface MakeBrokerFormProps extends Pick<SourcesView, 'gateways'> {
  site: string;
  make: FormAction<{ source: string }>;
}

/** Has readings come from another broker. */
export function MakeBrokerForm({ site, gateways, make }: MakeBrokerFormProps) {
  const [name, gateway] = [useId(), useId()];
  return (
    <ActForm
      action={make}
      hidden={{ site }}
      button="Connect to it"
      done={() => (
        <p>
          It is in the list now. Say there which topics to listen to; how the connection stands shows within seconds.
        </p>
      )}
    >
      <label htmlFor={name}>
        What it is called here
        <input id={name} name="name" required maxLength={120} autoComplete="off" />
      </label>
      {gateways.length > 0 ? (
        <label htmlFor={gateway}>
          Gateway of the description that sends there, if it is one alone
          <select id={gateway} name="gateway" defaultValue="">
            <option value="">none of these, or several</option>
            {gateways.map(({ key, name: called }) => (
              <option key={key} value={key}>
                {called}
              </option>
            ))}
          </select>
        </label>
      ) : null}
      <BrokerFields />
    </ActForm>
  );
}

interface ChangeBrokerFormProps {
  site: string;
  source: string;
  broker: BrokerView;
  change: FormAction<{ source: string }>;
}

/** Changes where a broker is and who Holdfast is there. */
export function ChangeBrokerForm({ site, source, broker, change }: ChangeBrokerFormProps) {
  return (
    <ActForm
      action={change}
      hidden={{ site, source }}
      button="Connect with this"
      done={() => <p>The connection begins anew with it.</p>}
    >
      <BrokerFields broker={broker} />
    </ActForm>
  );
}

function BrokerFields({ broker }: { broker?: BrokerView }) {
  const [address, username, password, authority, rebirth] = [useId(), useId(), useId(), useId(), useId()];
  return (
    <>
      <label htmlFor={address}>
        Address, such as mqtts://broker.example:8883
        <input
          id={address}
          name="address"
          required
          maxLength={300}
          autoComplete="off"
          spellCheck={false}
          defaultValue={broker?.address ?? ''}
        />
      </label>
      <p>With mqtt:// nothing is encrypted: whoever is on that network can read along, the password too.</p>
      <label htmlFor={username}>
        User there, if one is needed
        <input id={username} name="username" maxLength={200} autoComplete="off" defaultValue={broker?.username ?? ''} />
      </label>
      <label htmlFor={password}>
        {broker?.hasPassword ? 'Another password; the one there is stays if this is left empty' : 'Password'}
        <input id={password} name="password" type="password" maxLength={1000} autoComplete="new-password" />
      </label>
      <label htmlFor={authority}>
        {broker?.hasAuthority
          ? 'Certificate (PEM) that signs the broker’s: paste it again, or it counts as given up'
          : 'Certificate (PEM) that signs the broker’s, where the broker’s is one of your own'}
        <textarea id={authority} name="authority" rows={3} maxLength={20_000} spellCheck={false} />
      </label>
      <label className={people.tick} htmlFor={rebirth}>
        <input id={rebirth} name="rebirth" type="checkbox" value="yes" defaultChecked={broker?.asksRebirth ?? false} />
        Holdfast may ask Sparkplug nodes to be born again
      </label>
      <p>
        It is all that Holdfast ever writes to a broker. Without it a node is not understood after every break, on
        either side, until it is started again.
      </p>
    </>
  );
}
