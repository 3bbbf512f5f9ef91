import 'server-only';
import { accountNames } from '#data/accounts/names';
import { type UnsignedRound, unsignedRounds } from '#data/rounds/unsigned';
import type { SiteEntry } from '#data/sites';

/** A round that was begun and never signed, and stands in no list. */
export interface UnsignedLine extends Pick<UnsignedRound, 'name' | 'of' | 'systems'> {
  round: string;
  /** UTC, ISO. */
  begun: { at: string; by: string };
}

/** Those of a site, the latest first, and how many there are. */
export interface Unsigned {
  lines: UnsignedLine[];
  many: number;
}

/** Rounds shown. */
const MOST = 50;

/**
 * The rounds of a site that were begun, never signed and are in the lists no more: too long ago, or of a sheet or a time of the
 * timetable that was changed since. Each stays until it is signed, or a later one of the same is.
 *
 * @param listed   ids of rounds that stand in the lists
 */
export async function listUnsigned({ id }: Pick<SiteEntry, 'id'>, listed: readonly string[]): Promise<Unsigned> {
  const { rounds, many } = await unsignedRounds(id, listed, MOST);
  const names = await accountNames(rounds.map(({ begunBy }) => begunBy));
  const lines = rounds.map(({ id: round, name, of, systems, begunAt, begunBy }) => ({
    ...{ round, name, of, systems },
    begun: { at: begunAt.toISOString(), by: names.get(begunBy) ?? begunBy },
  }));
  return { lines, many };
}
