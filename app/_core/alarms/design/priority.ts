/** How soon somebody must act, highest first: three levels, as IEC 62682 and ISA-18.2 have it (three or four). */
export const PRIORITIES = ['high', 'medium', 'low'] as const;
export type Priority = (typeof PRIORITIES)[number];
