import 'server-only';
import type { TaskList } from 'graphile-worker';
import { heartbeat } from './tasks/heartbeat';

/** Every task by the name it is woken by, which is the name of its file. */
export const taskList: TaskList = { heartbeat };

/** When tasks run of themselves: minute, hour, day of the month, month, day of the week, in UTC. */
export const crontab = ['* * * * * heartbeat'].join('\n');
