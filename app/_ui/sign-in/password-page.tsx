import type { FormAction } from '../form/answer';
import { Page } from '../frame/page';
import { NewPassword } from './account-fields';
import { PersonForm } from './person-form';

/** A page on which somebody chooses a password by a link. */
export function PasswordPage({
  title,
  person: { name, email },
  token,
  send,
}: {
  title: string;
  person: { name: string | null; email: string | null };
  token: string;
  send: FormAction<never>;
}) {
  return (
    <Page title={title} lead={<p>{name ? `${name}, choose` : 'Choose'} the password you will sign in by.</p>}>
      <PersonForm send={send} hidden={{ token }} button="Keep it and sign in">
        {/* A password keeper files the new password under this address. */}
        <input type="email" name="$email" autoComplete="username" value={email ?? ''} readOnly hidden />
        <NewPassword />
      </PersonForm>
    </Page>
  );
}
