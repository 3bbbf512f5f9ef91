import 'server-only';
import type { TaskList } from 'graphile-worker';
import { backupDue } from './tasks/backup-due';
import { diskWatch } from './tasks/disk-watch';
import { heartbeat } from './tasks/heartbeat';
import { reviewSiteTask } from './tasks/review-site';
import { reviewsDue } from './tasks/reviews-due';

/** Every task by the name it is woken by, which is the name of its file. */
export const taskList: TaskList = {
  'backup-due': backupDue,
  'disk-watch': diskWatch,
  heartbeat,
  'review-site': reviewSiteTask,
  'reviews-due': reviewsDue,
};

/** When tasks run of themselves: minute, hour, day of the month, month, day of the week, in UTC. */
export const crontab = [
  '* * * * * heartbeat',
  '* * * * * reviews-due',
  '* * * * * disk-watch',
  '* * * * * backup-due',
].join('\n');
