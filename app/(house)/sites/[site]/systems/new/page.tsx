import { ask } from '#server/gate/ask';
import { getStartForm, startFormShape } from '#server/start/begin-system';
import { Page } from '#ui/frame/page';
import { StartForm } from '#ui/start/start-form';
import { answered } from '../../../../view/answered';
import { chosenView } from '../../../../view/chosen-view';
import type { SiteAddress } from '../../ask-site';
import { keepStartAction, previewStartAction } from './actions';

const askForm = ask(startFormShape, getStartForm);

export const metadata = { title: 'Begin a system' };

export default async function StartPage({ params }: { params: Promise<SiteAddress> }) {
  const { site } = await params;
  const { units } = await chosenView();
  const form = answered(await askForm({ site: decodeURIComponent(site), units }));
  return (
    <Page
      title="Begin a system"
      over={[
        { href: '/', name: 'Systems' },
        { href: `/sites/${encodeURIComponent(form.site.key)}`, name: form.site.name },
      ]}
      lead={
        <p>
          A few questions describe a system well enough for its review to begin. What you leave out is not claimed to be
          there, and figures you do not give are defaults with their source. Everything can be described more closely
          afterwards.
        </p>
      }
    >
      <StartForm key={units} form={form} units={units} preview={previewStartAction} keep={keepStartAction} />
    </Page>
  );
}
