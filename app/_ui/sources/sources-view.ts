import type { FormAction } from '../form/answer';

/** A source of readings. Instants are UTC, ISO. */
export interface SourceView {
  id: string;
  name: string;
  gateway: string | null;
  by: string;
  createdAt: string;
  endedAt: string | null;
  usedAt: string | null;
}

/** A sensor that a name can be said to be of. */
export interface SensorChoice {
  id: string;
  /** What is always understood: the keys of system and sensor. */
  path: string;
  name: string;
  systemName: string;
  quantity: string;
}

/** A name that came and that no sensor has. */
export interface UnknownView {
  name: string;
  seenAt: string;
  unit: string | null;
  value: number | null;
}

/** Who may send readings of a site. */
export interface SourcesView {
  site: { key: string; name: string; zone: string };
  sources: SourceView[];
  gateways: { key: string; name: string }[];
  sensors: SensorChoice[];
  aliases: { name: string; sensor: string }[];
  unknown: UnknownView[];
}

/** What is shown once, when a source was made. */
export interface MadeView {
  name: string;
  token: string;
  address: string;
  example: string | null;
}

/** What can be done on the page. */
export interface SourceActions {
  make: FormAction<MadeView>;
  end: FormAction<{ source: string }>;
  name: FormAction<{ name: string }>;
  unname: FormAction<{ name: string }>;
}
