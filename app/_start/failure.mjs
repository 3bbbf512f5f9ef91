// @ts-check
// What may stop a start that is nobody's mistake in the code: said in one sentence, without a stack.

/** Its message is a whole sentence for the person at the keyboard. */
export class Failure extends Error {}

/**
 * @param {unknown} error what was thrown
 * @param {string} data folder Holdfast writes to
 * @returns {string | undefined} the sentence to print, or nothing when the error is a fault of Holdfast itself
 */
export function sentenceFor(error, data) {
  if (error instanceof Failure) return error.message;
  const { code, path } = /** @type {NodeJS.ErrnoException} */ (error);
  if (code === 'ENOSPC' || code === 'EDQUOT') return diskFull(path ?? data);
  if (code === 'EACCES' || code === 'EPERM' || code === 'EROFS') {
    return `Holdfast may not write to ${path ?? data}: give it that right or name another folder in HOLDFAST_DATA.`;
  }
  return undefined;
}

/**
 * @param {string} place a folder or file on the disk
 * @returns {string} the sentence for a disk without room
 */
export function diskFull(place) {
  return `The disk that holds ${place} is full: make room and start again.`;
}

/**
 * @param {string} output of a program
 * @returns {boolean} whether it says that the disk is full
 */
export function speaksOfFullDisk(output) {
  return /ENOSPC|No space left on device|Disk quota exceeded/i.test(output);
}
