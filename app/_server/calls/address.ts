import 'server-only';
import { env } from '../env';

/** Where Holdfast is reached when nothing was said, as `npm start` has it. */
const USUAL = 'http://localhost:3200';

/** The whole address of a page, for messages. @param path of the page, from the root */
export function wholeAddress(path: string): string {
  return new URL(path, env().HOLDFAST_ADDRESS ?? USUAL).href;
}
