import 'server-only';
import type { Who } from '../gate/who';

/** Whether somebody looks after Holdfast itself: administrator everywhere, not only at a site. */
export function isAdministrator({ everywhere }: Who): boolean {
  return everywhere === 'admin';
}
