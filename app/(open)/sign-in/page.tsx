import { askOpenly } from '#server/gate/open';
import { waysIn, waysInShape } from '#server/sign-in/ways-in';
import { Page } from '#ui/frame/page';
import { OtherWays } from '#ui/sign-in/other-ways';
import { SignInForm } from '#ui/sign-in/sign-in-form';
import { askPasskeyAction, outsideAction, passkeyAction, signInAction } from './actions';

const askWays = askOpenly(waysInShape, waysIn);

export const metadata = { title: 'Sign in' };

interface Asked {
  searchParams: Promise<{ to?: string | string[]; problem?: string | string[] }>;
}

export default async function SignInPage({ searchParams }: Asked) {
  const { to: asked, problem } = await searchParams;
  const to = typeof asked === 'string' ? asked : undefined;
  const ways = await askWays(undefined);
  return (
    <Page
      title="Sign in"
      lead={problem === 'outside' ? <p role="alert">That did not let you in: nobody here has that account.</p> : null}
    >
      <SignInForm signIn={signInAction} to={to} />
      {ways.ok ? (
        <OtherWays ways={ways.value} to={to} ask={askPasskeyAction} passkey={passkeyAction} outside={outsideAction} />
      ) : null}
    </Page>
  );
}
