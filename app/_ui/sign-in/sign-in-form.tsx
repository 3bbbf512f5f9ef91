import type { FormAction } from '../form/answer';
import { Field } from './field';
import { PersonForm } from './person-form';

/**
 * Address and password.
 * @param to where to go on to
 */
export function SignInForm({ signIn, to }: { signIn: FormAction<never>; to: string | undefined }) {
  return (
    <PersonForm send={signIn} hidden={to === undefined ? {} : { to }} button="Sign in">
      <Field label="E-mail address" name="email" type="email" autoComplete="username webauthn" required />
      <Field label="Password" name="password" type="password" autoComplete="current-password" required />
    </PersonForm>
  );
}
