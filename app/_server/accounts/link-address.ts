import 'server-only';
import type { LinkPurpose } from '#data/accounts/links';
import { commandEnv } from '../env';

/** Where Holdfast is reached when nothing was said, as `npm start` has it. */
const USUAL = 'http://localhost:3200';

/**
 * The whole address of a one-time link.
 *
 * @param purpose   what it is for
 * @param token     its token
 * @param running   where a Holdfast runs on this machine, if that is known: what was said in HOLDFAST_ADDRESS goes before it
 */
export function linkAddress(purpose: LinkPurpose, token: string, running = USUAL): string {
  return new URL(`/${purpose}/${token}`, commandEnv().HOLDFAST_ADDRESS ?? running).href;
}
