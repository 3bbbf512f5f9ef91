import type { Metadata } from 'next';
import { ask } from '#server/gate/ask';
import { listSafeguards, listSafeguardsShape } from '#server/safeguards/list-safeguards';
import { CalendarBody } from '#ui/safeguards/calendar-body';
import { answered } from '../../../view/answered';
import type { SiteAddress } from '../ask-site';

const askSafeguards = ask(listSafeguardsShape, listSafeguards);

export const metadata: Metadata = { title: 'Safeguards' };

export default async function SafeguardsPage({ params }: { params: Promise<SiteAddress> }) {
  const { site } = await params;
  return <CalendarBody {...answered(await askSafeguards({ site: decodeURIComponent(site) }))} />;
}
