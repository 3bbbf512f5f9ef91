import 'server-only';

/** The stretch of a site's past that an incident is looked at in. */
export interface Window {
  siteId: string;
  /** Null for all systems. */
  systemId: string | null;
  from: Date;
  to: Date;
}

/** Rows of one kind that are read at most; more than anybody reads. */
export const MOST_ROWS = 1000;
