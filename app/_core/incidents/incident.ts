/**
 * What this room knows: what an incident is made of, and what follows from its entries: its story, its marks and the times
 * between them, its losses, what became of its actions, whether it is signed.
 * What it leaves out: where entries are kept, and what the rest of the record says of the hours around them.
 * Where the numbers come from: those who were there, and the readings; nothing here is reckoned by the model.
 */
import type { SensorQuantity } from '../facility/system';
import type { Instant } from '../time/zone';

/** Kinds of entry. */
export const ENTRY_KINDS = [
  'step',
  'sample',
  'measurement',
  'log',
  'mark',
  'loss',
  'safeguard',
  'cause',
  'action',
  'action-done',
  'summary',
  'signature',
] as const;
export type EntryKind = (typeof ENTRY_KINDS)[number];

/** What is done first, in this order; none waits for the one before. The last four keep the evidence. */
export const STEPS = [
  'people-safe',
  'isolate',
  'air-on',
  'dosing-off',
  'part-kept',
  'photographs',
  'animals-kept',
  'logs-kept',
] as const;
export type StepName = (typeof STEPS)[number];

/** How a line is known: read off a device or its log, on a round, seen by somebody, or concluded from something else. */
export const SOURCES = ['device', 'round', 'witness', 'inferred'] as const;
export type Source = (typeof SOURCES)[number];

/** Marks of an incident in the order in which they ought to come. */
export const MARKS = [
  'fault-began',
  'first-abnormal',
  'first-alarm',
  'told',
  'acknowledged',
  'on-scene',
  'hands-on',
  'put-right',
  'normal',
  'stood-down',
] as const;
export type MarkName = (typeof MARKS)[number];

/** What a safeguard did. */
export const DEEDS = ['worked', 'failed', 'absent', 'off', 'untested', 'not-made-for-this'] as const;
export type Deed = (typeof DEEDS)[number];

/** Kinds of cause; none of them is a person. */
export const CAUSES = [
  'equipment',
  'design',
  'change',
  'procedure',
  'workload',
  'knowledge',
  'supplier',
  'environment',
] as const;
export type CauseKind = (typeof CAUSES)[number];

/** How strongly an action keeps the cause from coming back, strongest first. */
export const STRENGTHS = ['remove', 'independent-device', 'automatic-detection', 'procedure', 'reminder'] as const;
export type Strength = (typeof STRENGTHS)[number];

/** Parts of what is written when it is over. `case` names the review's fault case that it is held against. */
export const PARTS = ['what-happened', 'went-well', 'lucky', 'elsewhere', 'case'] as const;
export type Part = (typeof PARTS)[number];

/** Who signs as what; a sole keeper where there is nobody else to sign. */
export const SIGNERS = ['lead', 'manager', 'sole-keeper'] as const;
export type Signer = (typeof SIGNERS)[number];

/** One figure of a meter; in the facility file's unit of the quantity. */
export interface MeterFigure {
  quantity: SensorQuantity;
  /** Id of the sensor it became a reading of; absent where none is described. */
  sensor?: string;
  value: number;
}

/** What an entry of each kind holds. Texts name nobody. */
export interface Bodies {
  step: { step: StepName; notDone?: string; note?: string };
  sample: { bottles: ('chilled' | 'frozen')[]; where?: string; notDone?: string; note?: string };
  measurement: { figures: MeterFigure[]; where?: string; notDone?: string; note?: string };
  log: { text: string; source: Source };
  /** `latest`: the fault began no later than this, ms since 1970. */
  mark: { mark: MarkName; latest?: Instant; source: Source; note?: string };
  loss: {
    group: string;
    dead: number;
    putDown: number;
    affected: number;
    missing: number;
    /** Litres. */
    waterL: number;
    note?: string;
  };
  /** `safeguard`: its id. */
  safeguard: { safeguard: string; did: Deed; evidence: string };
  cause: { cause: CauseKind; text: string; certainty: 'fact' | 'opinion' };
  /** `due`: ISO date at the site. `cause`: id of the entry it answers. */
  action: { text: string; owner: string; due: string; strength: Strength; cause?: string; why?: string };
  'action-done': { action: string; proof: string };
  summary: { part: Part; text: string };
  /** `covers`: ids of the entries that were there; `sha256`: over all that they say. */
  signature: { as: Signer; covers: string[]; sha256: string; why?: string };
}

/** One entry; its body is null when it only takes back the one it supersedes. */
export interface EntryOf<K extends EntryKind> {
  id: string;
  kind: K;
  /** When it happened, and when it was written down. */
  atMs: Instant;
  recordedMs: Instant;
  /** Account, or `local`. */
  by: string;
  body: Bodies[K] | null;
  /** Id of the entry in whose place it stands, and why. */
  supersedes: string | null;
  reason: string | null;
}

export type Entry = { [K in EntryKind]: EntryOf<K> }[EntryKind];
