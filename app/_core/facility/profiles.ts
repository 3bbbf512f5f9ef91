import profiles from './profiles.json';
import type { ToleranceProfile } from './stock';
import type { SystemKind } from './system';

/**
 * The tolerance profiles that every site has, one for each kind of system; the profile's key is the kind.
 * Each says where its figures come from and how far they can be trusted. A test reads the file through the shape of a
 * profile, because the compiler takes the pairs in it for lists and the words for any text.
 */
export const DEFAULT_PROFILES = profiles as unknown as readonly ToleranceProfile[];

/**
 * The default profile of a kind of system, used for stock that names none.
 *
 * @param kind kind of system
 * @returns its profile; every kind has one
 */
export function defaultProfile(kind: SystemKind): ToleranceProfile {
  const found = DEFAULT_PROFILES.find(({ key }) => key === kind);
  if (!found) throw new Error(`No default tolerance profile for ${kind}`);
  return found;
}
