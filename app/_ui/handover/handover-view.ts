import type { Shown } from '#core/handover/shown';

/** A handover. Instants are UTC, ISO. */
export interface HandoverLineView {
  id: string;
  at: string;
  by: string;
  note: string | null;
  digest: string;
  taken: { at: string; by: string; how: 'session' | 'password'; note: string | null } | null;
  isOwn: boolean;
}

/** The site of a handover. */
export interface SiteOfHandover {
  key: string;
  name: string;
  zone: string;
}

/** What stands now, and the handovers of the past days. */
export interface HandoverPageView {
  site: SiteOfHandover;
  at: string;
  shown: Shown;
  print: string;
  entry: string;
  open: HandoverLineView | null;
  past: HandoverLineView[];
  animals: { id: string; what: string }[];
  systems: { key: string; name: string }[];
  mayGive: boolean;
}

/** One handover as it was given. */
export interface KeptHandoverView {
  site: SiteOfHandover;
  line: HandoverLineView;
  shown: Shown;
  isWhole: boolean;
  mayTake: boolean;
}
