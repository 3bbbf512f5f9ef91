import 'server-only';
import type { Facility } from '#core/facility/facility';
import { type SignedByTwo, signingWords } from '#core/states/signing';
import { accountNames } from '#data/accounts/names';
import { openSignatures } from '#data/states/signatures';

/** A second signature that is wanted, or that was given lately, in plain values. */
export interface SecondLine {
  asked: string;
  kind: SignedByTwo;
  title: string;
  look: string;
  system: string | null;
  at: string;
  by: string;
  note: string | null;
  /** Whether whoever asks did it themselves, and so cannot sign. */
  isOwn: boolean;
  /** Who looked and found it not right; null while nobody has. */
  objected: { at: string; by: string; note: string } | null;
  /** Who looked and found it right; null while nobody has. */
  signed: { at: string; by: string; note: string } | null;
  /** That this was taken back, and is wanted again; null while it counts. */
  taken: { at: string; by: string; reason: string } | null;
}

/** Days that one that was given stays in sight, and can be taken back there. Common practice, no source. */
const GIVEN_DAYS = 7;

/** Second signatures that are wanted at a site, and those given in the past days, the oldest first. @param who   whoever looks */
export async function secondLines(
  site: { id: string },
  { facility, systemIds }: { facility: Facility; systemIds: ReadonlyMap<string, string> },
  who: { id: string },
  at: Date,
): Promise<SecondLine[]> {
  const rows = await openSignatures(site.id, new Date(at.getTime() - GIVEN_DAYS * 86_400_000));
  const names = await accountNames(
    rows.flatMap(({ by, given, taken }) => [by, given?.by ?? [], taken?.by ?? []].flat()),
  );
  const keys = new Map([...systemIds].map(([key, id]) => [id, key]));
  const nameOf = (id: string) => names.get(id) ?? id;
  return rows.map(({ id, kind, systemId, by, note, given, taken, at: done }) => {
    const key = systemId === null ? undefined : keys.get(systemId);
    const said = given && { at: given.at.toISOString(), by: nameOf(given.by), note: given.note };
    return {
      ...{ asked: id, kind, note, ...signingWordsOf(kind) },
      system: facility.systems.find((system) => system.key === key)?.name ?? null,
      at: done.toISOString(),
      by: nameOf(by),
      isOwn: by === who.id,
      objected: given?.isRight === false ? said : null,
      signed: given?.isRight === true ? said : null,
      taken: taken && { at: taken.at.toISOString(), by: nameOf(taken.by), reason: taken.reason },
    };
  });
}

function signingWordsOf(kind: SignedByTwo): { title: string; look: string } {
  const { title, look } = signingWords(kind);
  return { title, look };
}
