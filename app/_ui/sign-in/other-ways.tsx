import Link from '../frame/link';
import type { FormAction } from '../form/answer';
import { type AskPasskey, PasskeyButton } from './passkey-button';
import { PersonForm } from './person-form';
import style from './sign-in.module.css';

/**
 * The ways in besides a password.
 * @param to where to go on to
 * @param ask asks for a passkey
 */
export function OtherWays({
  ways,
  to,
  ask,
  passkey,
  outside,
}: {
  ways: { passkey: boolean; outside: string | null };
  to: string | undefined;
  ask: AskPasskey;
  passkey: FormAction<never>;
  outside: FormAction<never>;
}) {
  return (
    <div className={style.ways}>
      {ways.passkey ? <PasskeyButton ask={ask} send={passkey} to={to} /> : null}
      {ways.outside === null ? null : (
        <PersonForm
          send={outside}
          hidden={to === undefined ? {} : { to }}
          button={`Sign in with ${ways.outside}`}
          look="second"
        />
      )}
      <p>
        <Link href="/reset">I do not know my password</Link>
      </p>
    </div>
  );
}
