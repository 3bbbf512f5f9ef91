import type { Metadata } from 'next';
import { ask } from '#server/gate/ask';
import { getSheet, getSheetShape } from '#server/rounds/sheets/get-sheet';
import { SheetBody } from '#ui/sheets/sheet-body';
import { answered } from '../../../../../view/answered';
import type { SiteAddress } from '../../../ask-site';
import { dropSheetDraftAction, retireSheetAction, writeSheetAction } from '../actions';

export const metadata: Metadata = { title: 'Round sheet' };

const asked = ask(getSheetShape, getSheet);

export default async function SheetPage({ params }: { params: Promise<SiteAddress & { sheet: string }> }) {
  const { site, sheet } = await params;
  const page = answered(await asked({ site: decodeURIComponent(site), sheet: decodeURIComponent(sheet) }));
  return <SheetBody page={page} write={writeSheetAction} drop={dropSheetDraftAction} retire={retireSheetAction} />;
}
