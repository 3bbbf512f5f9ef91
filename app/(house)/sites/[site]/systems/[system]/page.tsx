import type { Metadata } from 'next';
import { ask } from '#server/gate/ask';
import { getStates, getStatesShape } from '#server/states/get-states';
import { SystemStatesSection } from '#ui/states/system-states-section';
import { SystemPageBody } from '#ui/system/system-page';
import { chosenView } from '../../../../view/chosen-view';
import { answered } from '../../../../view/answered';
import { askSystem, type SystemAddress } from './ask-system';

interface Address {
  params: Promise<SystemAddress>;
}

const askStates = ask(getStatesShape, getStates);

export async function generateMetadata({ params }: Address): Promise<Metadata> {
  const answer = await askSystem(await params);
  return { title: answer.ok ? answer.value.system.name : 'No such system' };
}

export default async function SystemPage({ params }: Address) {
  const page = answered(await askSystem(await params));
  const states = answered(await askStates({ site: page.facility.site.key, system: page.system.key }));
  const { units } = await chosenView();
  return <SystemPageBody page={page} units={units} now={<SystemStatesSection page={states} />} />;
}
