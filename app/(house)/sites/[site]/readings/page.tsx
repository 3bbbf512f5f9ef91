import type { Metadata } from 'next';
import { ask } from '#server/gate/ask';
import { listReadings, listReadingsShape } from '#server/readings/list-readings';
import { ReadingsBody } from '#ui/readings/readings-body';
import { answered } from '../../../view/answered';
import { chosenView } from '../../../view/chosen-view';
import type { SiteAddress } from '../ask-site';

const askReadings = ask(listReadingsShape, listReadings);

export const metadata: Metadata = { title: 'Readings' };

export default async function ReadingsPage({ params }: { params: Promise<SiteAddress> }) {
  const { site } = await params;
  const view = answered(await askReadings({ site: decodeURIComponent(site) }));
  const { units } = await chosenView();
  return <ReadingsBody view={view} units={units} />;
}
