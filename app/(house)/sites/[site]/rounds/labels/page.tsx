import type { Metadata } from 'next';
import { ask } from '#server/gate/ask';
import { listLabels, listLabelsShape } from '#server/rounds/list-labels';
import { LabelsBody } from '#ui/labels/labels-body';
import { answered } from '../../../../view/answered';
import type { SiteAddress } from '../../ask-site';

export const metadata: Metadata = { title: 'Labels of the tanks' };

const asked = ask(listLabelsShape, listLabels);

export default async function LabelsPage({ params }: { params: Promise<SiteAddress> }) {
  const { site } = await params;
  return <LabelsBody page={answered(await asked({ site: decodeURIComponent(site) }))} />;
}
