import type { Metadata } from 'next';
import { ask } from '#server/gate/ask';
import { listSheets, listSheetsShape } from '#server/rounds/sheets/list-sheets';
import { SheetsBody } from '#ui/sheets/sheets-body';
import { answered } from '../../../../view/answered';
import type { SiteAddress } from '../../ask-site';
import { putSheetsAction, startSheetsAction } from './actions';

export const metadata: Metadata = { title: 'Round sheets' };

const asked = ask(listSheetsShape, listSheets);

export default async function SheetsPage({ params }: { params: Promise<SiteAddress> }) {
  const { site } = await params;
  const page = answered(await asked({ site: decodeURIComponent(site) }));
  return <SheetsBody page={page} start={startSheetsAction} put={putSheetsAction} />;
}
