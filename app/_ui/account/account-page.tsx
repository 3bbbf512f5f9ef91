import { CHANNEL_WORDS } from '#core/alarms/channels';
import type { FormAction } from '../form/answer';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { NewPassword } from '../sign-in/account-fields';
import { Field } from '../sign-in/field';
import { PersonForm } from '../sign-in/person-form';
import { AddDevice } from './add-device';
import { AddPasskey, type OfferPasskey } from './add-passkey';
import { type Device, DeviceTable } from './device-table';
import { type Passkey, PasskeyTable } from './passkey-table';
import { type Session, SessionTable } from './session-table';

/** One's own account, as it is shown. */
export interface ShownAccount {
  name: string;
  email: string | null;
  hasPassword: boolean;
  sessions: Session[];
  passkeys: Passkey[];
  canAddPasskey: boolean;
  devices: Device[];
  pushKey: string | null;
}

/** What can be done on the page. */
export interface AccountActions {
  changePassword: FormAction<unknown>;
  endSession: FormAction<unknown>;
  endOthers: FormAction<unknown>;
  offerPasskey: OfferPasskey;
  addPasskey: FormAction<unknown>;
  namePasskey: FormAction<unknown>;
  removePasskey: FormAction<unknown>;
  addDevice: FormAction<unknown>;
  removeDevice: FormAction<unknown>;
}

/** The page of one's own account. */
export function AccountPage({ account, actions }: { account: ShownAccount; actions: AccountActions }) {
  const { name, email, sessions, passkeys } = account;
  return (
    <Page title={name} lead={email === null ? null : <p>You sign in as {email}.</p>}>
      <Section id="sessions" title="Where you are signed in" note={<p>A session ends by itself after twelve hours.</p>}>
        <SessionTable sessions={sessions} end={actions.endSession} />
        {sessions.length > 1 ? (
          <PersonForm send={actions.endOthers} button="Sign out everywhere else" look="second" />
        ) : null}
      </Section>
      <Section
        id="passkeys"
        title="Passkeys"
        note={<p>A passkey signs you in by your device or a key, without a password, and cannot be given away.</p>}
      >
        <PasskeyTable passkeys={passkeys} rename={actions.namePasskey} remove={actions.removePasskey} />
        {account.canAddPasskey ? (
          <AddPasskey offer={actions.offerPasskey} add={actions.addPasskey} />
        ) : (
          <p>Open Holdfast by its name, not by a number, to add one: a browser binds passkeys to names.</p>
        )}
      </Section>
      <Section id="devices" title="Browsers that take calls" note={<p>{CHANNEL_WORDS.push.can}</p>}>
        <DeviceTable devices={account.devices} remove={actions.removeDevice} />
        {account.pushKey === null ? (
          <p>The worker has not run yet: come back once it has.</p>
        ) : (
          <AddDevice publicKey={account.pushKey} add={actions.addDevice} />
        )}
      </Section>
      <Section id="password" title="Password" note={<p>Another password ends every other session.</p>}>
        {account.hasPassword ? (
          <PersonForm send={actions.changePassword} button="Change the password" done="Your password is changed.">
            <Field label="Password now" name="old" type="password" autoComplete="current-password" required />
            <NewPassword label="New password" />
          </PersonForm>
        ) : (
          <p>You have none. An administrator, or a link by mail, gives you one.</p>
        )}
      </Section>
    </Page>
  );
}
