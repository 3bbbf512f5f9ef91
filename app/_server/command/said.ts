import 'server-only';
import type { FileError } from '#shape/facility/file-error';

/** Exit code for input that cannot be used. */
const BAD_INPUT = 2;

/** Say one sentence on the error stream and end with exit code 2. */
export function fail(message: string): never {
  process.stderr.write(`${message}\n`);
  process.exit(BAD_INPUT);
}

/** Say everything that is wrong with a file, a line each, and that it was not `done` with; end with exit code 2. */
export function printErrors(path: string, errors: readonly FileError[], done = 'reviewed'): never {
  for (const error of errors)
    process.stderr.write(`${path}:${error.line}:${error.column} ${error.path}: ${error.message}\n`);
  return fail(`${path}: ${counted(errors.length, 'error')}; nothing was ${done}`);
}

/** A number of things: `1 system`, `2 systems`. */
export function counted(count: number, thing: string): string {
  return `${count} ${thing}${count === 1 ? '' : 's'}`;
}
