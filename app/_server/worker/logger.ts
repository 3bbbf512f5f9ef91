import 'server-only';
import { Logger } from 'graphile-worker';
import { logError, logInfo } from '../log';

/** What the job library has to say, in the log's own form; its chatter about every job is left out. */
export const workerLogger = new Logger(() => (level, message) => {
  if (level === 'error') logError('job', message);
  if (level === 'warning') logInfo('job', { warning: message });
});
