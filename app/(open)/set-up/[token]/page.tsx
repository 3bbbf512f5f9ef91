import { askOpenly } from '#server/gate/open';
import { findSetUpLink, setUpLinkShape } from '#server/sign-in/set-up';
import { Page } from '#ui/frame/page';
import { AccountFields } from '#ui/sign-in/account-fields';
import { DeadLink } from '#ui/sign-in/dead-link';
import { PersonForm } from '#ui/sign-in/person-form';
import { setUpAction } from './actions';

const askLink = askOpenly(setUpLinkShape, findSetUpLink);

export const metadata = { title: 'Set up' };

export default async function SetUpPage({ params }: { params: Promise<{ token: string }> }) {
  const { token } = await params;
  const link = await askLink({ token });
  if (!link.ok) return <DeadLink how="`npm start` prints a fresh one as long as nobody has an account." />;
  return (
    <Page title="Set Holdfast up" lead={<p>You are the first. Your account may do everything at every site.</p>}>
      <PersonForm send={setUpAction} hidden={{ token }} button="Make the account">
        <AccountFields isNew />
      </PersonForm>
    </Page>
  );
}
