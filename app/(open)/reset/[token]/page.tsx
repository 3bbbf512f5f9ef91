import { askOpenly } from '#server/gate/open';
import { findPersonLink, personLinkShape } from '#server/sign-in/new-password';
import { DeadLink } from '#ui/sign-in/dead-link';
import { PasswordPage } from '#ui/sign-in/password-page';
import { resetAction } from './actions';

const askLink = askOpenly(personLinkShape, findPersonLink('reset'));

export const metadata = { title: 'A new password' };

export default async function NewPasswordPage({ params }: { params: Promise<{ token: string }> }) {
  const { token } = await params;
  const link = await askLink({ token });
  if (!link.ok) return <DeadLink how="Ask for another, or let an administrator make one." />;
  return <PasswordPage title="A new password" person={link.value} token={token} send={resetAction} />;
}
