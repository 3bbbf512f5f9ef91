import Link from '#ui/frame/link';
import { Page } from '#ui/frame/page';

export const metadata = { title: 'Not found' };

// Head and foot stand around it already.
export default function NotFound() {
  return (
    <Page title="There is no such page">
      <p>
        What stood here may have been renamed, retired or taken out of its facility file; or it is of a site that you
        may not see. <Link href="/">To the systems</Link>
      </p>
    </Page>
  );
}
