import type { Metadata } from 'next';
import { ask } from '#server/gate/ask';
import { listAnchors, listAnchorsShape } from '#server/record/list-anchors';
import { AnchorBody } from '#ui/record/anchor-body';
import { answered } from '../../../../view/answered';
import { askSite, type SiteAddress } from '../../ask-site';

const askAnchors = ask(listAnchorsShape, listAnchors);

export const metadata: Metadata = { title: 'Anchors kept elsewhere' };

export default async function AnchorsPage({ params }: { params: Promise<SiteAddress> }) {
  const address = await params;
  const site = answered(await askSite(address));
  return <AnchorBody site={site} kept={answered(await askAnchors({ site: decodeURIComponent(address.site) }))} />;
}
