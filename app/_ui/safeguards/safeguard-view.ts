import type { Standing } from '#core/plans/due';
import type { QuietSpan } from '#core/plans/quiet-at';
import type { Safeguard, SafeguardKind } from '#core/plans/safeguard';
import { NO_SYSTEM, siteAddress } from '../frame/site-address';

/** A safeguard and how it stands on a day. */
export interface LineView extends Standing {
  /** The system it belongs to; null for one of the site itself. */
  system: { key: string; name: string } | null;
  key: string;
  name: string;
  kind: SafeguardKind;
  testEveryDays: number;
  off: Safeguard['off'] | null;
}

/** Where a safeguard is found. */
export interface PlaceView {
  site: string;
  system: string;
  safeguard: string;
}

/** One test in a ledger. */
export interface TestView {
  id: string;
  on: string;
  result: string;
  by: string | null;
  steps: string | null;
  expected: string | null;
  seen: string | null;
  /** UTC, ISO. */
  recordedAt: string;
  recordedBy: string | null;
  withdrawn: { at: string; by: string | null; reason: string | null } | null;
}

/** A safeguard with its ledger, and what may be done with it. */
export interface SafeguardView {
  site: { key: string; name: string; zone: string };
  place: PlaceView;
  /** ISO date at the site. */
  today: string;
  line: LineView;
  ledger: TestView[];
  mayTest: boolean;
  maySwitch: boolean;
  self: string | null;
  nextEntry: string;
  /** Quiet hours of these days, where its test is loud. */
  quiet: QuietSpan[];
}

/** Kinds of safeguard in words. */
export const SAFEGUARD_WORDS: Record<SafeguardKind, string> = {
  'cut-out': 'cut-out',
  interlock: 'interlock',
  'run-limit': 'run limit',
  'siphon-break': 'siphon break',
  'state-end': 'end of a state',
  'standby-power': 'standby power',
  'standby-air': 'standby air',
  alarm: 'alarm',
};

/** Address of a safeguard's page. */
export function safeguardAddress(site: string, { system, key }: Pick<LineView, 'system' | 'key'>): string {
  return siteAddress(site, 'safeguards', system?.key ?? NO_SYSTEM, key);
}
