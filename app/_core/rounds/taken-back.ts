/** What may be taken back by whoever said it, or a lead: it stays to be seen, with the reason, and counts no longer. */
export const TAKEN_WHAT = ['second-look', 'state-look', 'second-signature', 'animal-watch-end'] as const;
export type TakenWhat = (typeof TAKEN_WHAT)[number];
