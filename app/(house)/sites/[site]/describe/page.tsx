import type { Metadata } from 'next';
import { getDescription, getDescriptionShape } from '#server/describe/get-description';
import { ask } from '#server/gate/ask';
import { DescriptionPage } from '#ui/describe/description-page';
import { answered } from '../../../view/answered';
import type { SiteAddress } from '../ask-site';

const askDescription = ask(getDescriptionShape, getDescription);

export const metadata: Metadata = { title: 'Description' };

export default async function DescribePage({ params }: { params: Promise<SiteAddress> }) {
  const { site } = await params;
  return <DescriptionPage page={answered(await askDescription({ site: decodeURIComponent(site) }))} />;
}
