import 'server-only';
import { pingOutside as ping } from '../../health/ping-outside';

/** Asks an address outside every minute, for as long as alarms are being judged. */
export async function pingOutside(): Promise<void> {
  await ping();
}
