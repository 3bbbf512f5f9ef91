import 'server-only';
import { join } from 'node:path';

/**
 * File with the authority's certificate alone, which everybody may have. It stands apart from what makes certificates: no page
 * loads that.
 *
 * @param folder   of certificates
 */
export function authorityFile(folder: string): string {
  return join(folder, 'authority.crt');
}
