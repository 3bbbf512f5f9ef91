import type { ReactNode } from 'react';
import { SiteNav } from '#ui/frame/site-nav';
import { askSite, type SiteAddress } from './ask-site';

/** Over every page of a site: its name and the way to its other pages. */
export default async function SiteLayout({ params, children }: { params: Promise<SiteAddress>; children: ReactNode }) {
  const answer = await askSite(await params);
  return (
    <>
      {answer.ok ? <SiteNav site={answer.value} /> : null}
      {children}
    </>
  );
}
