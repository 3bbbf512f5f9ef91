'use server';

import { acknowledgeAlarm, acknowledgeAlarmShape } from '#server/alarms/acknowledge-alarm';
import { noteAlarm, noteAlarmShape } from '#server/alarms/note-alarm';
import { endSuppression, endSuppressionShape } from '#server/alarms/end-suppression';
import { callForHelp, callForHelpShape } from '#server/alarms/call-for-help';
import { resetAlarm, resetAlarmShape } from '#server/alarms/reset-alarm';
import { rightAgain, rightAgainShape } from '#server/alarms/right-again';
import { shelveAlarm, shelveAlarmShape } from '#server/alarms/shelve-alarm';
import { takeOutOfService, takeOutOfServiceShape } from '#server/alarms/take-out-of-service';
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

export const resetAlarmAction = act(resetAlarmShape, resetAlarm, shown);

export const callForHelpAction = act(callForHelpShape, callForHelp, shown);

export const rightAgainAction = act(rightAgainShape, rightAgain, shown);

/** Pages that show something else once an alarm may call again, or no longer. */
const shownOf = ({ site }: { site: string }) => [
  '/',
  `/sites/${site}`,
  `/sites/${site}/alarms`,
  `/sites/${site}/alarms/suppressed`,
];

export const shelveAlarmAction = act(shelveAlarmShape, shelveAlarm, shownOf);

export const takeOutOfServiceAction = act(takeOutOfServiceShape, takeOutOfService, shownOf);

export const endSuppressionAction = act(endSuppressionShape, endSuppression, shownOf);
