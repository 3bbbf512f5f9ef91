import 'server-only';
import { type ParseArgsConfig, parseArgs } from 'node:util';
import { fail } from './said';

/**
 * What stands after a command's name.
 *
 * @param config   the options it knows
 * @param usage    how it is called, said with what is wrong
 * @returns        options and the rest; a word it does not know ends the program with exit code 2
 */
export function wordsGiven<T extends ParseArgsConfig>(config: T, usage: string): ReturnType<typeof parseArgs<T>> {
  try {
    return parseArgs(config);
  } catch (error) {
    return fail(`${error instanceof Error ? error.message : String(error)}\n${usage}`);
  }
}
