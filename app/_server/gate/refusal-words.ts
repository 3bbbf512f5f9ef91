import 'server-only';
import type { Fault, Refusal } from './refusal';

/**
 * A refusal as a sentence for the person who asked.
 *
 * @param refusal   the reason
 * @returns         one sentence; the faults of what was sent are counted, and said one by one by `faultWords`
 */
export function refusalWords(refusal: Refusal): string {
  switch (refusal.why) {
    case 'not-signed-in':
      return 'You are not signed in, or no longer: sign in and try again.';
    case 'not-allowed':
      return 'Your role at this site does not allow this.';
    case 'own-work':
      return 'You wrote this yourself: somebody else has to do this.';
    case 'not-own-work':
      return 'Somebody else wrote this: only they can do this.';
    case 'wrong-sign-in':
      return 'This does not let you in: the address or the password is wrong, or the account has ended.';
    case 'too-often':
      return refusal.waitS === null
        ? 'The password was wrong too often: choose a new one by a link.'
        : `Too many tries: wait ${waitWords(refusal.waitS)}, then try again.`;
    case 'not-found':
      return `There is no such ${refusal.what}.`;
    case 'invalid':
      return refusal.faults.length === 1
        ? 'One thing is wrong; nothing was changed.'
        : `${refusal.faults.length} things are wrong; nothing was changed.`;
    case 'conflict':
      return refusal.now;
    case 'too-late':
      return 'It is too late for this.';
    case 'no-room':
      return 'Nothing was changed: the disk Holdfast writes to is full. Whoever looks after Holdfast has to make room; reading goes on.';
  }
}

function waitWords(seconds: number): string {
  if (seconds < 60) return seconds === 1 ? '1 second' : `${seconds} seconds`;
  const minutes = Math.ceil(seconds / 60);
  return minutes === 1 ? '1 minute' : `${minutes} minutes`;
}

/** One fault as a line: place, path, what is wrong. */
export function faultWords({ path, message, line, column }: Fault): string {
  const place = line === undefined ? '' : `line ${line}, column ${column ?? 1}: `;
  return `${place}${path}${path === '' ? '' : ': '}${message}`;
}
