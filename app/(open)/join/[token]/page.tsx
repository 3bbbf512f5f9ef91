import { askOpenly } from '#server/gate/open';
import { findPersonLink, personLinkShape } from '#server/sign-in/new-password';
import { DeadLink } from '#ui/sign-in/dead-link';
import { PasswordPage } from '#ui/sign-in/password-page';
import { joinAction } from './actions';

const askLink = askOpenly(personLinkShape, findPersonLink('join'));

export const metadata = { title: 'Join' };

export default async function JoinPage({ params }: { params: Promise<{ token: string }> }) {
  const { token } = await params;
  const link = await askLink({ token });
  if (!link.ok) return <DeadLink how="Whoever invited you can make another." />;
  return <PasswordPage title="Welcome to Holdfast" person={link.value} token={token} send={joinAction} />;
}
