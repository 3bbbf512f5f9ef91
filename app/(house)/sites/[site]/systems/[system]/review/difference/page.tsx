import type { Metadata } from 'next';
import { ask } from '#server/gate/ask';
import { compareKept, compareKeptShape } from '#server/reviews/compare-kept';
import { KeptDifferenceBody } from '#ui/review/kept-difference';
import { answered } from '../../../../../../view/answered';
import type { SystemAddress } from '../../ask-system';

const askDifference = ask(compareKeptShape, compareKept);

export const metadata: Metadata = { title: 'Two reviews of a system' };

interface Address {
  params: Promise<SystemAddress>;
  searchParams: Promise<{ from?: string; to?: string }>;
}

export default async function DifferencePage({ params, searchParams }: Address) {
  const { site, system } = await params;
  const { from, to } = await searchParams;
  const place = { site: decodeURIComponent(site), system: decodeURIComponent(system) };
  return <KeptDifferenceBody page={answered(await askDifference({ ...place, from, to }))} />;
}
