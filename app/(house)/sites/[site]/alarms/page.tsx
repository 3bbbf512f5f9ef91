import type { Metadata } from 'next';
import { listAlarms, listAlarmsShape } from '#server/alarms/list-alarms';
import { listCallOuts, listCallOutsShape } from '#server/call-outs/list-call-outs';
import { ask } from '#server/gate/ask';
import { AlarmsBody } from '#ui/alarms/alarms-body';
import { answered } from '../../../view/answered';
import { chosenView } from '../../../view/chosen-view';
import type { SiteAddress } from '../ask-site';
import { acknowledgeAlarmAction, callForHelpAction } from './actions';

const askAlarms = ask(listAlarmsShape, listAlarms);
const askCallOuts = ask(listCallOutsShape, listCallOuts);

export const metadata: Metadata = { title: 'Alarms' };

export default async function AlarmsPage({ params }: { params: Promise<SiteAddress> }) {
  const { site } = await params;
  const asked = { site: decodeURIComponent(site) };
  const page = answered(await askAlarms(asked));
  const alone = answered(await askCallOuts(asked)).open;
  const { units } = await chosenView();
  return (
    <AlarmsBody page={page} units={units} acknowledge={acknowledgeAlarmAction} call={callForHelpAction} alone={alone} />
  );
}
