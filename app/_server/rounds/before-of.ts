import 'server-only';
import type { Check } from '#core/rounds/check';
import type { Entry, EntryValue } from '#core/rounds/entry';
import { LOOK_BACK, lookAlikes } from '#core/rounds/questions';
import { type Latest, latestOf } from '#data/readings/series';
import { listBefore } from '#data/rounds/entries';
import type { KeptRound } from '#data/rounds/round-row';
import type { SiteEntry } from '#data/sites';
import type { LastValue } from './round-page';

/** What was known before a round. */
interface Before {
  /** The latest first. */
  lasts: Map<string, LastValue[]>;
  /** Lines whose number looks as though nobody had looked. */
  alike: Check[];
}

/** What was known of the lines of a round before it: the last reading that a sensor gave by itself, or the last round. */
export async function beforeOf(
  site: Pick<SiteEntry, 'id'>,
  round: KeptRound,
  checks: readonly Check[],
  standing: ReadonlyMap<string, Entry>,
): Promise<Before> {
  const [before, latest] = await Promise.all([
    listBefore(
      site.id,
      round.begunAt,
      checks.map(({ key }) => key),
      LOOK_BACK,
    ),
    latestOf(site.id),
  ]);
  const lasts = new Map<string, LastValue[]>();
  for (const check of checks) {
    const sensor = round.sheet.sensors[`${check.about.system}/${check.about.key}`];
    const reading = check.kind === 'number' && sensor !== undefined ? latest.get(sensor) : undefined;
    const seen = (before.get(check.key) ?? []).map(
      ({ value, at }): LastValue => ({ value, at: at.toISOString(), from: 'round' }),
    );
    lasts.set(check.key, [...(reading && reading.origin !== 'hand' ? [bySensor(reading)] : []), ...seen]);
  }
  const rounds = Array.from({ length: LOOK_BACK }, (_, back) => valuesAt(before, back));
  return { lasts, alike: lookAlikes(checks, valuesOf(standing), rounds) };
}

function bySensor({ value, quality, atMs }: Latest): LastValue {
  return { value: { kind: 'number', value, quality }, at: new Date(atMs).toISOString(), from: 'sensor' };
}

function valuesAt(before: ReadonlyMap<string, { value: EntryValue }[]>, back: number): Map<string, EntryValue> {
  return new Map([...before].flatMap(([key, list]) => (list[back] ? [[key, list[back].value] as const] : [])));
}

function valuesOf(standing: ReadonlyMap<string, Entry>): Map<string, EntryValue> {
  return new Map([...standing].flatMap(([key, { value }]) => (value ? [[key, value] as const] : [])));
}
