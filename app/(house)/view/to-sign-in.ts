/** Header of a request by which the path that was asked for comes to the page: a page does not know its own. */
export const PATH_HEADER = 'x-holdfast-path';

/**
 * Where somebody signs in who has to.
 *
 * @param path   what they asked for, if it is known
 */
export function toSignIn(path: string | null): string {
  return path === null || path === '/' ? '/sign-in' : `/sign-in?${new URLSearchParams({ to: path })}`;
}
