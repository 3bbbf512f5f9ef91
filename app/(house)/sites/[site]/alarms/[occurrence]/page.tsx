import type { Metadata } from 'next';
import { cache } from 'react';
import { getAlarm, getAlarmShape } from '#server/alarms/get-alarm';
import { ask } from '#server/gate/ask';
import { AlarmBody } from '#ui/alarms/alarm-body';
import { answered } from '../../../../view/answered';
import { chosenView } from '../../../../view/chosen-view';
import { goAloneAction } from '../../call-outs/actions';
import { acknowledgeAlarmAction, noteAlarmAction, resetAlarmAction, rightAgainAction } from '../actions';

interface Address {
  params: Promise<{ site: string; occurrence: string }>;
}

const asked = ask(getAlarmShape, getAlarm);
const once = cache((site: string, occurrence: string) => asked({ site, occurrence }));

/** The alarm by its address, asked for once a request. */
async function askAlarm({ params }: Address) {
  const { site, occurrence } = await params;
  return await once(decodeURIComponent(site), decodeURIComponent(occurrence));
}

export async function generateMetadata(address: Address): Promise<Metadata> {
  const answer = await askAlarm(address);
  return { title: answer.ok ? `Alarm: ${answer.value.line.name}` : 'No such alarm' };
}

export default async function AlarmPage(address: Address) {
  const page = answered(await askAlarm(address));
  const { units } = await chosenView();
  return (
    <AlarmBody
      page={page}
      units={units}
      acknowledge={acknowledgeAlarmAction}
      note={noteAlarmAction}
      reset={resetAlarmAction}
      rightAgain={rightAgainAction}
      goAlone={goAloneAction}
    />
  );
}
