'use client';

import { Masthead } from '#ui/frame/masthead';
import { Page } from '#ui/frame/page';
import { TryAgain } from '#ui/frame/try-again';

export default function ErrorPage({ error, reset }: { error: Error & { digest?: string }; reset: () => void }) {
  return (
    <>
      <Masthead />
      <Page title="Something broke">
        <TryAgain id={error.digest} again={reset} />
      </Page>
    </>
  );
}
