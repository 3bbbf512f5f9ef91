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

/** A watch of animals that was ended lately. Instants are UTC, ISO. */
export interface EndedWatchView {
  id: string;
  what: string;
  at: string;
  by: string;
  note: string;
  taken: { at: string; by: string; reason: string } | null;
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
  ended: EndedWatchView[];
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
