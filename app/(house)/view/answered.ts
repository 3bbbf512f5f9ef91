import { notFound, redirect } from 'next/navigation';
import type { Result } from '#core/result';
import type { Refusal } from '#server/gate/refusal';
import { refusalWords } from '#server/gate/refusal-words';
import { NOT_ALLOWED } from './not-allowed';
import { toSignIn } from './to-sign-in';

/**
 * What a page was answered. What is not there, or not to be seen, leads to the page that says so; who is signed in
 * no more, to where they sign in.
 *
 * @throws Error with the refusal in words, for a refusal that no page can do anything about; that something is not allowed is marked, and
 * said as such
 */
export function answered<T>(answer: Result<T, Refusal>): T {
  if (answer.ok) return answer.value;
  const { why } = answer.reason;
  if (why === 'not-found' || why === 'invalid') notFound();
  // The head of the page has led here who comes from outside; this is for whose session ended while they went about.
  if (why === 'not-signed-in') redirect(toSignIn(null));
  const said = new Error(refusalWords(answer.reason));
  throw why === 'not-allowed' ? Object.assign(said, { digest: NOT_ALLOWED }) : said;
}
