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
  return fail(`${path}: ${errors.length} ${errors.length === 1 ? 'error' : 'errors'}; nothing was ${done}`);
}
