import type { Metadata } from 'next';
import { askThing, type ThingAddress } from '../../../../ask-thing';
import { ShowThing } from '../../../../show-thing';

interface Address {
  params: Promise<ThingAddress & { act: string }>;
}

export async function generateMetadata({ params }: Address): Promise<Metadata> {
  const address = await params;
  const answer = await askThing(address);
  return { title: answer.ok ? `${answer.value.name}: ${address.act}` : 'No such thing' };
}

export default async function ThingActPage({ params }: Address) {
  return <ShowThing address={await params} />;
}
