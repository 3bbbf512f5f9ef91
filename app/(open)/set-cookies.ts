import { cookies } from 'next/headers';
import { redirect } from 'next/navigation';
import type { Answer } from '#server/gate/act';
import type { Entered } from '#server/sign-in/enter';
import type { SetCookie } from '#server/sign-in/set-cookie';

/** Gives cookies to the browser whose form is answered. */
export async function setCookies(given: readonly SetCookie[]): Promise<void> {
  const jar = await cookies();
  for (const cookie of given) jar.set(cookie);
}

/** Lets somebody in who has proved who they are, and leads them on; else the form is answered with the refusal. */
export async function letIn(answer: Answer<Entered>): Promise<Answer<never>> {
  if (!answer.ok) return answer;
  await setCookies(answer.value.cookies);
  redirect(answer.value.to);
}
