/**
 * What it knows: how soon an alarm asks for somebody, and where its limit may stand.
 * What it leaves out: what a fault leads to, which the review works out.
 * Where the numbers come from: the shape of the matrix is that of the two examples that published guidance has (severity ×
 * time available); its bands are in hours, since water is slow: common practice, no source.
 */

/** How soon somebody must act, highest first: three levels, as IEC 62682 and ISA-18.2 have it (three or four). */
export const PRIORITIES = ['high', 'medium', 'low'] as const;
export type Priority = (typeof PRIORITIES)[number];

/** What follows when nobody does anything, gravest first: animals harmed, water on the floor, equipment harmed, nothing. */
export const CONSEQUENCES = ['animals', 'floor', 'equipment', 'none'] as const;
export type Consequence = (typeof CONSEQUENCES)[number];

/** Ends of the bands of time available, minutes; beyond the last is a band of its own. */
export const BANDS_MIN = [15, 60, 240, 720] as const;

/** Priorities by consequence, one for each band of time available, shortest first. */
export const MATRIX: Readonly<Record<Consequence, readonly Priority[]>> = {
  animals: ['high', 'high', 'high', 'medium', 'low'],
  floor: ['high', 'medium', 'medium', 'low', 'low'],
  equipment: ['medium', 'low', 'low', 'low', 'low'],
  none: ['low', 'low', 'low', 'low', 'low'],
};

/**
 * The priority of an alarm.
 *
 * @param availableS   s from the alarm to the last moment at which acting still helps; 0 or less: none
 */
export function priorityFor(consequence: Consequence, availableS: number): Priority {
  const band = BANDS_MIN.findIndex((end) => availableS < end * 60);
  return MATRIX[consequence][band < 0 ? BANDS_MIN.length : band] ?? 'low';
}

/** Whether a person alone cannot be what stands between a fault and its consequence: the gravest, and no time. */
export function needsMoreThanPeople(consequence: Consequence, availableS: number): boolean {
  return consequence === 'animals' && availableS < BANDS_MIN[0] * 60;
}
