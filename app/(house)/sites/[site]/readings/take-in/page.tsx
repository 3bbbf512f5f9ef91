import type { Metadata } from 'next';
import { ask } from '#server/gate/ask';
import { listImports, listImportsShape } from '#server/readings/file/list-imports';
import { TakeInBody } from '#ui/readings/file/take-in-body';
import { answered } from '../../../../view/answered';
import type { SiteAddress } from '../../ask-site';
import { lookAtFileAction, takeInFileAction } from './actions';

const askImports = ask(listImportsShape, listImports);

export const metadata: Metadata = { title: 'Take in a file' };

export default async function TakeInPage({ params }: { params: Promise<SiteAddress> }) {
  const { site } = await params;
  const view = answered(await askImports({ site: decodeURIComponent(site) }));
  return <TakeInBody view={view} look={lookAtFileAction} takeIn={takeInFileAction} />;
}
