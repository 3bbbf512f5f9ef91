import type { Metadata } from 'next';
import { listSuppressedAlarms, listSuppressedShape } from '#server/alarms/list-suppressed';
import { ask } from '#server/gate/ask';
import { SuppressedBody } from '#ui/alarms/suppressed-body';
import { answered } from '../../../../view/answered';
import type { SiteAddress } from '../../ask-site';
import { endSuppressionAction, shelveAlarmAction, takeOutOfServiceAction } from '../actions';

const askSuppressed = ask(listSuppressedShape, listSuppressedAlarms);

export const metadata: Metadata = { title: 'Alarms that call nobody' };

interface Address {
  params: Promise<SiteAddress>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export default async function SuppressedPage({ params, searchParams }: Address) {
  const { site } = await params;
  const { alarm } = await searchParams;
  const page = answered(await askSuppressed({ site: decodeURIComponent(site) }));
  return (
    <SuppressedBody
      page={page}
      chosen={typeof alarm === 'string' ? alarm : undefined}
      shelve={shelveAlarmAction}
      takeOut={takeOutOfServiceAction}
      end={endSuppressionAction}
    />
  );
}
