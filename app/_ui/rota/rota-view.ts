import type { RestWarning } from '#core/rota/rest';
import { clockFormat } from '../words/clock-format';

/** Somebody who is on; instants in ms. */
export interface OnPersonView {
  name: string;
  kind: 'on-site' | 'on-call';
  until: number | null;
}

export interface OnNowView {
  on: OnPersonView[];
  next: (OnPersonView & { from: number })[];
}

export interface MinutesView {
  value: number;
  isDefault: boolean;
}

export interface RotaPersonView {
  key: string;
  name: string;
  role: string;
  travel: MinutesView;
  onSite: MinutesView;
  onCall: MinutesView;
  isOnShift: boolean;
  account: 'none' | 'no-address' | 'mailed';
  devices: number;
  competences: { name: string; until: string | null; attestedBy: string | null; isOver: boolean }[];
}

export interface RotaDayView {
  date: string;
  from: number;
  to: number;
  segments: { from: number; to: number; onSite: string[]; onCall: string[] }[];
}

export interface FeedView {
  id: string;
  scope: 'mine' | 'everybody' | 'rounds';
  createdAt: string;
}

/** The rota of a site. */
export interface RotaView {
  site: { key: string; name: string; zone: string };
  now: number;
  on: OnNowView;
  days: RotaDayView[];
  nobody: { from: number; to: number }[];
  lacking: { name: string; holders: string[]; spans: { from: number; to: number }[] }[];
  twoSites: {
    name: string;
    site: string | null;
    from: number;
    to: number;
    here: 'on-site' | 'on-call';
    there: 'on-site' | 'on-call';
    wayMin: number | null;
    isBetween: boolean;
  }[];
  openChanges: number;
  people: RotaPersonView[];
  warnings: RestWarning[];
  feeds: FeedView[];
  isOnRota: boolean;
  isMailed: boolean;
  mayDescribe: boolean;
  mayPeople: boolean;
}

/** How somebody is on, in words. */
export const ON_WORDS = { 'on-site': 'on site', 'on-call': 'on call' } as const;

/** A day as it heads a row: "Wed 25 Nov". @param date ISO date */
export function daySaid(date: string): string {
  const shown = clockFormat('en-GB', { weekday: 'short', day: 'numeric', month: 'short', timeZone: 'UTC' });
  return shown.format(new Date(`${date}T00:00:00Z`));
}

/** A moment beside another: the time alone on the same day, else with the day. ms */
export function untilSaid(zone: string, at: number, now: number): string {
  const day = clockFormat('en-GB', { dateStyle: 'short', timeZone: zone });
  const time = clockFormat('en-GB', { hour: '2-digit', minute: '2-digit', timeZone: zone });
  if (day.format(at) === day.format(now)) return time.format(at);
  const name = clockFormat('en-GB', { weekday: 'long', timeZone: zone }).format(at);
  const isNear = at - now < 6 * 86_400_000;
  const date = clockFormat('en-GB', { day: 'numeric', month: 'short', timeZone: zone }).format(at);
  return isNear ? `${name} ${time.format(at)}` : `${name} ${date}, ${time.format(at)}`;
}
