import 'server-only';

/**
 * Tables that no backup holds. The rest is held, also a table that is added later and that nobody thought of here.
 * - What lets somebody in for a while: a stolen backup must not, and after a restore everybody signs in again.
 * - What the machine says of itself, which is not true of another one.
 * - The reviews as they are, and what is measured of people, which are computed again from what is held. Those that were kept for good are held.
 * The job library's tables lie in a schema of their own and are made anew.
 */
export const LEFT_OUT: readonly string[] = [
  'session',
  'one_time_link',
  'passkey_challenge',
  'rate_limit',
  'worker_sighting',
  'backup_run',
  'disk_sighting',
  'notice_sent',
  'path_sighting',
  'people_measured',
  'review_result',
  'review_run',
  'review_study',
  'study_run',
  'broker_state',
  'broker_unacked',
  'sparkplug_node',
];
