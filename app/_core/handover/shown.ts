/**
 * What this room knows: what stands on the page a site is handed over with, as plain lines.
 * What it leaves out: where each line comes from, and the signatures, which are kept beside it.
 * Where the numbers come from: what people entered and devices sent.
 */

/** The sections of the page, in their order. After practice in shift work; common practice, no source. */
export const SECTIONS = [
  { id: 'alone', title: 'In alone', none: 'Nobody said that they are.' },
  { id: 'alarms', title: 'Open alarms', none: 'No alarm is open.' },
  { id: 'suppressed', title: 'Alarms that call nobody', none: 'Every alarm calls.' },
  { id: 'states', title: 'States in force', none: 'Everything is in normal running, as far as anybody has said.' },
  { id: 'watched', title: 'Watched since a state ended', none: 'Nothing.' },
  { id: 'seconds', title: 'Wants a second signature', none: 'Nothing.' },
  { id: 'off', title: 'Safeguards off', none: 'None.' },
  { id: 'untested', title: 'Safeguards untested', none: 'Every safeguard was tested in its time.' },
  { id: 'animals', title: 'Animals under watch', none: 'None.' },
  { id: 'overdue', title: 'Checks overdue', none: 'None.' },
  { id: 'used', title: 'Used more or less than usual', none: 'Nothing, as far as the rounds tell.' },
  { id: 'notices', title: 'Others at work', none: 'Nobody, as far as was said.' },
  { id: 'on', title: 'Who holds the phone', none: 'Nobody is on: nobody is called first.' },
] as const;
export type SectionId = (typeof SECTIONS)[number]['id'];

/** One line. Instants are ISO 8601 in UTC; people stand by their ids, so that what is kept holds no name. */
export interface ShownLine {
  /** What it is: an alarm, a state, an animal. */
  what: string;
  /** The system it is at, by name; null for the site. */
  where: string | null;
  /** What else is to be known. */
  more: string | null;
  since: string | null;
  until: string | null;
  /** Ids of accounts or of people of the rota. */
  who: string[];
  /** Past its time, or calling. */
  isAbnormal: boolean;
}

/** What stands at a site at a moment. */
export type Shown = Record<SectionId, ShownLine[]>;

/** The lines of a section; none on a page that was kept before there was such a section. */
export function linesOf(shown: Partial<Shown>, id: SectionId): readonly ShownLine[] {
  return shown[id] ?? [];
}

/** How many lines are out of order, over all sections. */
export function countAbnormal(shown: Shown): number {
  return SECTIONS.reduce((sum, { id }) => sum + linesOf(shown, id).filter((line) => line.isAbnormal).length, 0);
}
