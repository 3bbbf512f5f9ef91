'use client';

import { Page } from '#ui/frame/page';
import { NotForYou } from '#ui/frame/not-for-you';
import { TryAgain } from '#ui/frame/try-again';
import { NOT_ALLOWED } from './view/not-allowed';

// Head and foot stand around it already.
export default function ErrorPage({ error, reset }: { error: Error & { digest?: string }; reset: () => void }) {
  if (error.digest === NOT_ALLOWED)
    return (
      <Page title="This is not for you to see">
        <NotForYou />
      </Page>
    );
  return (
    <Page title="Something broke">
      <TryAgain id={error.digest} again={reset} />
    </Page>
  );
}
