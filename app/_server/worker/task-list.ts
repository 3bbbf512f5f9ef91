import 'server-only';
import type { TaskList } from 'graphile-worker';
import { heartbeat } from './tasks/heartbeat';
import { mailResetTask } from './tasks/mail-reset';
import { reviewSiteTask } from './tasks/review-site';
import { reviewsDue } from './tasks/reviews-due';
import { tidyAccounts } from './tasks/tidy-accounts';

/** Every task by the name it is woken by, which is the name of its file. */
export const taskList: TaskList = {
  heartbeat,
  'mail-reset': mailResetTask,
  'review-site': reviewSiteTask,
  'reviews-due': reviewsDue,
  'tidy-accounts': tidyAccounts,
};

/** When tasks run of themselves: minute, hour, day of the month, month, day of the week, in UTC. */
export const crontab = ['* * * * * heartbeat', '* * * * * reviews-due', '17 * * * * tidy-accounts'].join('\n');
