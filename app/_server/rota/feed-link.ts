import 'server-only';
import { env } from '../env';

/** Where Holdfast is reached when nothing was said, as `npm start` has it. */
const USUAL = 'http://localhost:3200';

/** The whole address at which a calendar reads the rota. The id of the site stands in it, so that one site is asked. */
export function feedLink(siteId: string, token: string): string {
  return new URL(`/api/rota/${siteId}.${token}.ics`, env().HOLDFAST_ADDRESS ?? USUAL).href;
}
