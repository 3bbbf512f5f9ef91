import { getPerformance, getPerformanceShape } from '#server/alarms/get-performance';
import { ask } from '#server/gate/ask';
import { PerformanceBody } from '#ui/performance/performance-body';
import { answered } from '../../../../view/answered';
import type { SiteAddress } from '../../ask-site';

const askPerformance = ask(getPerformanceShape, getPerformance);

export const metadata = { title: 'How the alarms did' };

export default async function PerformancePage({ params }: { params: Promise<SiteAddress> }) {
  const { site } = await params;
  return <PerformanceBody page={answered(await askPerformance({ site: decodeURIComponent(site) }))} />;
}
