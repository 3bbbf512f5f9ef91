import 'server-only';
import { callDue } from '../../call-outs/call-due';
import { now } from '../../clock';

/** Has others called each minute for whoever went in alone and is not back; also woken at the very time they wanted to be. */
export async function callOutsDue(): Promise<void> {
  await callDue(now());
}
