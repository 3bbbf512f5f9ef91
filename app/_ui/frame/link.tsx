import NextLink from 'next/link';
import type { ComponentProps } from 'react';

/**
 * A link to a page of ours, which is fetched when somebody follows it. Every page is drawn for whoever asks, so that nothing of it
 * can be fetched beforehand but that it is there: for a table of systems that was a request a link, a hundred for a look.
 */
export default function Link(props: ComponentProps<typeof NextLink>) {
  return <NextLink {...props} prefetch={false} />;
}
