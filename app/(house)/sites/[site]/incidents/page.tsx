import type { Metadata } from 'next';
import { ask } from '#server/gate/ask';
import { listIncidents, listIncidentsShape } from '#server/incidents/list-incidents';
import { IncidentsBody } from '#ui/incidents/incidents-body';
import { answered } from '../../../view/answered';
import type { SiteAddress } from '../ask-site';

const askIncidents = ask(listIncidentsShape, listIncidents);

export const metadata: Metadata = { title: 'Incidents' };

export default async function IncidentsPage({ params }: { params: Promise<SiteAddress> }) {
  const { site } = await params;
  return <IncidentsBody {...answered(await askIncidents({ site: decodeURIComponent(site) }))} />;
}
