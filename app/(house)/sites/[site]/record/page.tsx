import type { Metadata } from 'next';
import { ask } from '#server/gate/ask';
import { readRecord, readRecordShape } from '#server/record/read-record';
import { RecordBody } from '#ui/record/record-body';
import { answered } from '../../../view/answered';
import type { SiteAddress } from '../ask-site';
import { verifyRecordAction } from './actions';

interface Address {
  params: Promise<SiteAddress>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

const askRecord = ask(readRecordShape, readRecord);

export const metadata: Metadata = { title: 'Record' };

export default async function RecordPage({ params, searchParams }: Address) {
  const { site } = await params;
  const page = answered(await askRecord({ ...(await searchParams), site: decodeURIComponent(site) }));
  return <RecordBody page={page} verify={verifyRecordAction} />;
}
