import type { Metadata } from 'next';
import { ask } from '#server/gate/ask';
import { listStates, listStatesShape } from '#server/states/list-states';
import { StatesBody } from '#ui/states/states-body';
import { answered } from '../../../view/answered';
import type { SiteAddress } from '../ask-site';
import { endStateAction, putOffStateAction } from './actions';

const askStates = ask(listStatesShape, listStates);

export const metadata: Metadata = { title: 'States' };

export default async function StatesPage({ params }: { params: Promise<SiteAddress> }) {
  const { site } = await params;
  const page = answered(await askStates({ site: decodeURIComponent(site) }));
  return <StatesBody page={page} actions={{ putOff: putOffStateAction, end: endStateAction }} />;
}
