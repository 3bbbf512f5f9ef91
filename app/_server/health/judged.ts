import 'server-only';
import type { Judging } from '#data/alarms/judging';

/** ms after which a site that was not judged says that nobody judges: it is done every half minute at least. */
const LATE_MS = 120_000;
/** ms after which somebody who could not be told by any way says that calls do not get out. Common practice, no source. */
const STUCK_MS = 600_000;

/** Whether alarms are being judged: every site was within two minutes. Where there is no site there is nothing to judge. */
export function isJudging({ judgedAt }: Pick<Judging, 'judgedAt'>, at: Date): boolean {
  return judgedAt === null || at.getTime() - judgedAt.getTime() <= LATE_MS;
}

/** Whether calls get out: nobody has waited for one for more than ten minutes. */
export function isCalling({ oldestAt }: Pick<Judging, 'oldestAt'>, at: Date): boolean {
  return oldestAt === null || at.getTime() - oldestAt.getTime() <= STUCK_MS;
}
