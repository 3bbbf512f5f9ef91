import type { Bodies, EntryKind } from '#core/incidents/incident';
import { idFor } from './seeded-id';
import type { Life } from './lives';

const MINUTE_MS = 60_000;

/** What an entry says; a safeguard is told by `system/key`, and a sensor too, until their ids are known. */
export interface PastIncidentEntry<K extends EntryKind = EntryKind> {
  id: string;
  kind: K;
  atMs: number;
  recordedMs: number;
  /** Key of the person. */
  by: string;
  body: Bodies[K];
}

/** An incident that a site of the demonstration has behind it. */
export interface PastIncident {
  id: string;
  title: string;
  /** Key of the system. */
  system: string;
  /** The alarm it was opened from. */
  life: Life;
  openedMs: number;
  openedBy: string;
  entries: PastIncidentEntry[];
  /** Who signed it, and as what, in order; nobody while it is under investigation. */
  signatures: { by: string; as: 'lead' | 'manager'; atMs: number }[];
}

/** Writes the entries of one incident one after the other. */
export class Logbook {
  readonly entries: PastIncidentEntry[] = [];

  /**
   * @param words    what tells the incident from all others
   * @param zeroMs   the moment from which minutes are counted
   */
  constructor(
    private readonly words: string,
    private readonly zeroMs: number,
  ) {}

  /**
   * Adds an entry.
   *
   * @param minute     when it happened, from the beginning
   * @param by         key of the person
   * @param recorded   when it was written down, minutes from the beginning; a minute later when left out
   * @returns          its id
   */
  write<K extends EntryKind>(kind: K, minute: number, by: string, body: Bodies[K], recorded = minute + 1): string {
    const [atMs, recordedMs] = [this.at(minute), this.at(recorded)];
    const id = idFor(recordedMs, this.words, kind, String(this.entries.length));
    this.entries.push({ id, kind, atMs, recordedMs, by, body });
    return id;
  }

  /** A moment by its minute from the beginning, ms since 1970. */
  at(minute: number): number {
    return this.zeroMs + minute * MINUTE_MS;
  }
}
