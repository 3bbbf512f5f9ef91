import { askOpenly } from '#server/gate/open';
import { waysIn, waysInShape } from '#server/sign-in/ways-in';
import { Page } from '#ui/frame/page';
import { Field } from '#ui/sign-in/field';
import { PersonForm } from '#ui/sign-in/person-form';
import { askResetAction } from './actions';

const askWays = askOpenly(waysInShape, waysIn);

export const metadata = { title: 'A new password' };

export default async function ResetPage() {
  const ways = await askWays(undefined);
  if (!ways.ok || !ways.value.mail) {
    return (
      <Page title="A new password">
        <p>
          No mail is sent from here. Whoever looks after the machine gives you a link, by{' '}
          <code>npm run -s account -- link EMAIL</code>.
        </p>
      </Page>
    );
  }
  return (
    <Page title="A new password" lead={<p>You get a link by mail. It works once, within an hour.</p>}>
      <PersonForm
        send={askResetAction}
        button="Send the link"
        done="If this address has an account, the link is on its way."
      >
        <Field label="E-mail address" name="email" type="email" autoComplete="username" required />
      </PersonForm>
    </Page>
  );
}
