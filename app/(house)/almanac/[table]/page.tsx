import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { tableOf } from '#core/almanac/catalogue';
import { AlmanacBody } from '#ui/almanac/almanac-body';
import { chosenView } from '../../view/chosen-view';

interface Address {
  params: Promise<{ table: string }>;
}

export async function generateMetadata({ params }: Address): Promise<Metadata> {
  const { table } = await params;
  return { title: tableOf(table)?.title ?? 'Almanac' };
}

export default async function AlmanacTablePage({ params }: Address) {
  const { table } = await params;
  const found = tableOf(table);
  if (!found) notFound();
  const { units } = await chosenView();
  return <AlmanacBody table={found} units={units} />;
}
