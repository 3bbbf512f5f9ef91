import { notFound } from 'next/navigation';
import type { Result } from '#core/result';
import type { Refusal } from '#server/gate/refusal';
import { refusalWords } from '#server/gate/refusal-words';

/**
 * What a page was answered. What is not there, or not to be seen, leads to the page that says so.
 *
 * @throws Error with the refusal in words, for a refusal that no page can do anything about
 */
export function answered<T>(answer: Result<T, Refusal>): T {
  if (answer.ok) return answer.value;
  const { why } = answer.reason;
  if (why === 'not-found' || why === 'invalid') notFound();
  throw new Error(refusalWords(answer.reason));
}
