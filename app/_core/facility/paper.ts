/** What a paper can be about: hazards that no model of mixed water carries. */
export const PAPER_KINDS = [
  'electrical-inspection',
  'chemicals',
  'mains-notices',
  'make-up-tests',
  'gas-pressure',
  'air-intake',
  'gas-in-room',
  'stagnant-water',
  'filter-inspection',
  'lamp-hours',
  'heat-loop',
  'phase-protection',
  'floor-drain',
  'structure',
  'transfer',
  'order-of-rounds',
  'public-side',
  'backup-card',
] as const;
export type PaperKind = (typeof PAPER_KINDS)[number];

/** A dated statement that somebody has dealt with a hazard which the model does not carry. It proves nothing by itself. */
export interface Paper {
  key: string;
  kind: PaperKind;
  /** ISO date on which it was true. */
  on: string;
  /** Where it lies and what it says, in a few words. */
  note?: string;
}
