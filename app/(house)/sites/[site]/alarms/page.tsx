import type { Metadata } from 'next';
import { listAlarms, listAlarmsShape } from '#server/alarms/list-alarms';
import { ask } from '#server/gate/ask';
import { AlarmsBody } from '#ui/alarms/alarms-body';
import { answered } from '../../../view/answered';
import { chosenView } from '../../../view/chosen-view';
import type { SiteAddress } from '../ask-site';
import { acknowledgeAlarmAction } from './actions';

const askAlarms = ask(listAlarmsShape, listAlarms);

export const metadata: Metadata = { title: 'Alarms' };

export default async function AlarmsPage({ params }: { params: Promise<SiteAddress> }) {
  const { site } = await params;
  const page = answered(await askAlarms({ site: decodeURIComponent(site) }));
  const { units } = await chosenView();
  return <AlarmsBody page={page} units={units} acknowledge={acknowledgeAlarmAction} />;
}
