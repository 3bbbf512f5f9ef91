import { type NextRequest, NextResponse } from 'next/server';
import { guard } from '#server/web/guard';

/** Every request passes here before a page or handler sees it, but those named below. */
export function proxy(request: NextRequest): Response {
  const guarded = guard(request);
  if (guarded.answer) return guarded.answer;
  const headers = new Headers(request.headers);
  // Next reads the word that scripts must bear from here.
  headers.set('content-security-policy', guarded.policy);
  // A page does not know its own path; whoever has to sign in first is led back to it.
  headers.set('x-holdfast-path', request.nextUrl.pathname + request.nextUrl.search);
  const response = NextResponse.next({ request: { headers } });
  for (const [name, value] of Object.entries(guarded.headers)) response.headers.set(name, value);
  return response;
}

/**
 * Not what devices send: Next holds a body back for what stands before a page, ten million bytes of it and without asking for
 * a token first. Their entry asks the guard itself.
 */
export const config = { matcher: ['/((?!api/readings$).*)'] };
