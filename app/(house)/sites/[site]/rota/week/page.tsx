import type { Metadata } from 'next';
import { ask } from '#server/gate/ask';
import { getWeek, getWeekShape } from '#server/rota/get-week';
import { WeekBody } from '#ui/rota/week-body';
import { answered } from '../../../../view/answered';
import type { SiteAddress } from '../../ask-site';

const askWeek = ask(getWeekShape, getWeek);

export const metadata: Metadata = { title: 'Rota, the week' };

interface WeekAddress {
  params: Promise<SiteAddress>;
  searchParams: Promise<{ from?: string | string[] }>;
}

export default async function WeekPage({ params, searchParams }: WeekAddress) {
  const [{ site }, { from }] = await Promise.all([params, searchParams]);
  const page = answered(await askWeek({ site: decodeURIComponent(site), from }));
  return <WeekBody page={page} />;
}
