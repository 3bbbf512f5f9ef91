import type { Metadata } from 'next';
import { askThing, type ThingAddress } from '../../../ask-thing';
import { ShowThing } from '../../../show-thing';

interface Address {
  params: Promise<ThingAddress>;
}

export async function generateMetadata({ params }: Address): Promise<Metadata> {
  const answer = await askThing(await params);
  return { title: answer.ok ? `${answer.value.name}, as described` : 'No such thing' };
}

export default async function ThingPage({ params }: Address) {
  return <ShowThing address={await params} />;
}
