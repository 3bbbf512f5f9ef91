import type { Figure } from '../facility/figure';

export const SAFEGUARD_KINDS = [
  'cut-out',
  'interlock',
  'run-limit',
  'siphon-break',
  'state-end',
  'standby-power',
  'standby-air',
  'alarm',
] as const;
export type SafeguardKind = (typeof SAFEGUARD_KINDS)[number];

/** One proof: on which day, what it did, who looked; and what was done, what should have happened, what was seen. */
export interface SafeguardTest {
  /** ISO date. */
  on: string;
  result: 'worked' | 'failed';
  by?: string;
  steps?: string;
  expected?: string;
  seen?: string;
}

/** Anything that prevents or limits harm without depending on what failed, with its ledger of tests. */
export interface Safeguard {
  key: string;
  name: string;
  kind: SafeguardKind;
  testEveryDays: number;
  tests: SafeguardTest[];
  /** Whether its test is heard, so that quiet hours count for it; absent: those of the generator and of standby air are. */
  loud?: boolean;
  /** Part of the times it is needed at which it fails, 0 to 1, as somebody found. Without a source it is not used. */
  failsOnDemand?: Figure;
  /** Taken out of service: by whom, why, and until when (ISO dates). */
  off?: { by: string; why: string; since: string; until: string };
}
