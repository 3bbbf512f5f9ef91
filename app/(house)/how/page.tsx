import { Page } from '#ui/frame/page';
import { HowBody } from '#ui/how/how-body';

export const metadata = { title: 'How this is computed' };

export default function HowPage() {
  return (
    <Page title="How this is computed">
      <HowBody />
    </Page>
  );
}
