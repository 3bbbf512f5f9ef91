import type { Rule } from './rule';

/** Every paperwork check, in the order of the catalogue page. To add one: write its file and list it here. */
export const RULES: readonly Rule[] = [];
