import type { Metadata } from 'next';
import { cache } from 'react';
import { ask } from '#server/gate/ask';
import { getIncident, getIncidentShape } from '#server/incidents/get-incident';
import { IncidentBody } from '#ui/incidents/incident-body';
import { answered } from '../../../../view/answered';
import { chosenView } from '../../../../view/chosen-view';
import { logEntryAction, withdrawEntryAction } from '../actions';
import { type IncidentAddress, placeIn } from './incident-address';

const asked = ask(getIncidentShape, getIncident);
const once = cache((site: string, number: string) => asked({ site, number }));

interface Address {
  params: Promise<IncidentAddress>;
}

async function askIncident({ params }: Address) {
  const { site, number } = placeIn(await params);
  return await once(site, number);
}

export async function generateMetadata(address: Address): Promise<Metadata> {
  const answer = await askIncident(address);
  return { title: answer.ok ? `Incident ${answer.value.head.number}` : 'No such incident' };
}

export default async function IncidentPage(address: Address) {
  const page = answered(await askIncident(address));
  const { units } = await chosenView();
  return <IncidentBody page={page} units={units} log={logEntryAction} withdraw={withdrawEntryAction} />;
}
