import type { Metadata } from 'next';
import { MasterListBody } from '#ui/alarms/master-list-body';
import { answered } from '../../../../../view/answered';
import { chosenView } from '../../../../../view/chosen-view';
import { askSystem, type SystemAddress } from '../ask-system';

interface Address {
  params: Promise<SystemAddress>;
}

export const metadata: Metadata = { title: 'Master alarm list' };

export default async function MasterListPage({ params }: Address) {
  const { facility, system, review, mayDescribe } = answered(await askSystem(await params));
  const { units } = await chosenView();
  return <MasterListBody facility={facility} system={system} review={review} units={units} mayDescribe={mayDescribe} />;
}
