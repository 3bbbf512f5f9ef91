import { Page } from '#ui/frame/page';
import { SignInForm } from '#ui/sign-in/sign-in-form';
import { signInAction } from './actions';

export const metadata = { title: 'Sign in' };

export default async function SignInPage({ searchParams }: { searchParams: Promise<{ to?: string | string[] }> }) {
  const { to } = await searchParams;
  return (
    <Page title="Sign in">
      <SignInForm signIn={signInAction} to={typeof to === 'string' ? to : undefined} />
    </Page>
  );
}
