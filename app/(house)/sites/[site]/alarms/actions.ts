'use server';

import { acknowledgeAlarm, acknowledgeAlarmShape } from '#server/alarms/acknowledge-alarm';
import { noteAlarm, noteAlarmShape } from '#server/alarms/note-alarm';
import { act } from '#server/gate/act';

/** Pages that show something else once somebody has said something of an alarm. */
const shown = ({ site, occurrence }: { site: string; occurrence: string }) => [
  '/',
  `/sites/${site}`,
  `/sites/${site}/alarms`,
  `/sites/${site}/alarms/${occurrence}`,
];

export const acknowledgeAlarmAction = act(acknowledgeAlarmShape, acknowledgeAlarm, shown);

export const noteAlarmAction = act(noteAlarmShape, noteAlarm, shown);
