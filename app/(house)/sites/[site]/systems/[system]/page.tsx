import type { Metadata } from 'next';
import { SystemPageBody } from '#ui/system/system-page';
import { chosenView } from '../../../../view/chosen-view';
import { answered } from '../../../../view/answered';
import { askSystem, type SystemAddress } from './ask-system';

interface Address {
  params: Promise<SystemAddress>;
}

export async function generateMetadata({ params }: Address): Promise<Metadata> {
  const answer = await askSystem(await params);
  return { title: answer.ok ? answer.value.system.name : 'No such system' };
}

export default async function SystemPage({ params }: Address) {
  const page = answered(await askSystem(await params));
  const { units } = await chosenView();
  return <SystemPageBody page={page} units={units} />;
}
