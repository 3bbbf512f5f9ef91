import type { Planted } from './copy';

/** A breach planted into a copy, and the rule that must complain about that very file. */
export interface Plant extends Planted {
  rule: string;
}

/**
 * One planted breach.
 *
 * @param rule   name of the rule that must catch it, as the checker spells it
 * @param file   path in the copy; the complaint must name it
 * @param lines  its text, line by line
 */
export const plant = (rule: string, file: string, ...lines: string[]): Plant => ({
  rule,
  file,
  text: `${lines.join('\n')}\n`,
});

/** Files a plant leans on, which break nothing themselves. */
export const prop = (file: string, ...lines: string[]): Planted => ({ file, text: `${lines.join('\n')}\n` });
