import type { Metadata } from 'next';
import { ask } from '#server/gate/ask';
import { getKeptHandover, getKeptHandoverShape } from '#server/handover/get-handover';
import { KeptHandoverBody } from '#ui/handover/kept-handover-body';
import { answered } from '../../../../view/answered';
import { takeHandoverAction } from '../actions';

const asked = ask(getKeptHandoverShape, getKeptHandover);

export const metadata: Metadata = { title: 'Handed over' };

export default async function KeptHandoverPage({ params }: { params: Promise<{ site: string; handover: string }> }) {
  const { site, handover } = await params;
  const page = answered(await asked({ site: decodeURIComponent(site), handover }));
  return <KeptHandoverBody page={page} take={takeHandoverAction} />;
}
