import 'server-only';
import type { TaskList } from 'graphile-worker';
import { anchorDaily } from './tasks/anchor-daily';
import { backupDue } from './tasks/backup-due';
import { callOutReminder } from './tasks/call-out-reminder';
import { callOutsDue } from './tasks/call-outs-due';
import { demoGoesOn } from './tasks/demo-goes-on';
import { diskWatch } from './tasks/disk-watch';
import { dutyMail } from './tasks/duty-mail';
import { heartbeat } from './tasks/heartbeat';
import { mailPath } from './tasks/mail-path';
import { mailLinkTask } from './tasks/mail-link';
import { makeCallTask } from './tasks/make-call';
import { pingOutside } from './tasks/ping-outside';
import { readingParts } from './tasks/reading-parts';
import { reviewSiteTask } from './tasks/review-site';
import { reviewsDue } from './tasks/reviews-due';
import { sendAnchor } from './tasks/send-anchor';
import { sheetsDueTask } from './tasks/sheets-due';
import { statesDue } from './tasks/states-due';
import { studySiteTask } from './tasks/study-site';
import { testCalls } from './tasks/test-calls';
import { tidyAccounts } from './tasks/tidy-accounts';

/** Every task by the name it is woken by, which is the name of its file. */
export const taskList: TaskList = {
  'anchor-daily': anchorDaily,
  'backup-due': backupDue,
  'call-out-reminder': callOutReminder,
  'call-outs-due': callOutsDue,
  'demo-goes-on': demoGoesOn,
  'disk-watch': diskWatch,
  'duty-mail': dutyMail,
  heartbeat,
  'mail-link': mailLinkTask,
  'mail-path': mailPath,
  'make-call': makeCallTask,
  'ping-outside': pingOutside,
  'reading-parts': readingParts,
  'review-site': reviewSiteTask,
  'reviews-due': reviewsDue,
  'send-anchor': sendAnchor,
  'sheets-due': sheetsDueTask,
  'states-due': statesDue,
  'study-site': studySiteTask,
  'test-calls': testCalls,
  'tidy-accounts': tidyAccounts,
};

/** When tasks run of themselves: minute, hour, day of the month, month, day of the week, in UTC. */
export const crontab = [
  '* * * * * heartbeat',
  '* * * * * reviews-due',
  '* * * * * demo-goes-on',
  '* * * * * disk-watch',
  '* * * * * backup-due',
  '* * * * * call-outs-due',
  '* * * * * ping-outside',
  '* * * * * states-due',
  '*/5 * * * * mail-path',
  '*/10 * * * * test-calls',
  '10 * * * * anchor-daily',
  '17 * * * * tidy-accounts',
  '7 * * * * sheets-due',
  '23 3 * * * reading-parts',
].join('\n');
