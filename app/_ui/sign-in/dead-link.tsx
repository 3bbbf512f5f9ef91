import Link from '../frame/link';
import { Page } from '../frame/page';

/**
 * A link that does nothing any more.
 * @param how how one comes by another
 */
export function DeadLink({ how }: { how: string }) {
  return (
    <Page title="This link leads nowhere any more">
      <p>It was used, a newer one took its place, or its time is over. {how}</p>
      <p>
        <Link href="/sign-in">Sign in</Link>
      </p>
    </Page>
  );
}
