import type { Entry } from '#core/incidents/incident';
import type { IncidentState } from '#core/incidents/state';
import type { Doer } from '#core/incidents/timeline';
import { siteAddress } from '../frame/site-address';

/** A site as the pages of an incident speak of it. */
export interface SiteView {
  key: string;
  name: string;
  /** IANA zone. */
  zone: string;
}

/** What every page of an incident shows at its top. */
export interface HeadView {
  site: SiteView;
  /** ISO date at the site. */
  today: string;
  number: number;
  title: string;
  system: { key: string; name: string } | null;
  alarm: string | null;
  openedMs: number;
  openedBy: Doer;
  state: IncidentState;
  signedMs: number | null;
  signatures: { as: string; who: Doer; atMs: number }[];
  mayLog: boolean;
  mayInvestigate: boolean;
}

/** One entry as it is shown. */
export interface StoryView {
  entry: Entry;
  who: Doer;
  isSuperseded: boolean;
  isAfterSigning: boolean;
}

/** A sensor for which a meter can be read. */
export interface SensorView {
  id: string;
  key: string;
  name: string;
  quantity: string;
}

/** Fields nobody sees that every form of an incident sends. */
export function placeOf({ site, number }: HeadView, entry: string | undefined): Record<string, string> {
  return { site: site.key, number: String(number), entry: entry ?? '' };
}

/** Address of an incident, or of one of its pages. */
export function incidentAddress({ site, number }: Pick<HeadView, 'site' | 'number'>, ...parts: string[]): string {
  return siteAddress(site.key, 'incidents', String(number), ...parts);
}
