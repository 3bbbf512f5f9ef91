import type { Metadata } from 'next';
import { ask } from '#server/gate/ask';
import { getNewIncident, getNewIncidentShape } from '#server/incidents/get-new-incident';
import { NewIncidentBody } from '#ui/incidents/new-incident-body';
import { answered } from '../../../../view/answered';
import type { SiteAddress } from '../../ask-site';
import { openIncidentAction } from '../actions';

const askNew = ask(getNewIncidentShape, getNewIncident);

export const metadata: Metadata = { title: 'Open an incident' };

interface Address {
  params: Promise<SiteAddress>;
  searchParams: Promise<{ alarm?: string; system?: string }>;
}

export default async function NewIncidentPage({ params, searchParams }: Address) {
  const { site } = await params;
  const { alarm, system } = await searchParams;
  const page = answered(await askNew({ site: decodeURIComponent(site), alarm, system }));
  return <NewIncidentBody page={page} open={openIncidentAction} />;
}
