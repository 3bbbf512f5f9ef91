import type { Metadata } from 'next';
import { DocumentPageBody } from '#ui/document/document-page';
import { answered } from '../../../../../view/answered';
import { chosenView } from '../../../../../view/chosen-view';
import type { SystemAddress } from '../ask-system';
import { askDocument } from './ask-document';

interface Address {
  params: Promise<SystemAddress>;
}

export async function generateMetadata({ params }: Address): Promise<Metadata> {
  const answer = await askDocument(await params);
  return { title: answer.ok ? `Review of ${answer.value.system.name}` : 'No such system' };
}

export default async function DocumentPage({ params }: Address) {
  const page = answered(await askDocument(await params));
  const { units } = await chosenView();
  return <DocumentPageBody page={page} units={units} />;
}
