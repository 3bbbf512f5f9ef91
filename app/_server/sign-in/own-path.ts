import 'server-only';

/** A name nobody has (RFC 2606): what resolves to anything else under it was no path of ours. */
const NOWHERE = 'http://nowhere.invalid';

/**
 * Where to go on to after signing in: only to a page of Holdfast itself, whatever an address that somebody sent says.
 *
 * @param asked   a path with what follows it
 * @returns       that path, or `/`
 */
export function ownPath(asked: string | null | undefined): string {
  // A browser reads a backslash as a slash and skips tabs and line ends, so that `/\evil.example` would lead elsewhere.
  if (!asked?.startsWith('/') || asked.startsWith('//') || /[\\\p{Cc}]/u.test(asked)) return '/';
  if (!URL.canParse(asked, NOWHERE)) return '/';
  const { origin, pathname, search } = new URL(asked, NOWHERE);
  if (origin !== NOWHERE || pathname.startsWith('//') || pathname.startsWith('/sign-in')) return '/';
  return `${pathname}${search}`;
}
