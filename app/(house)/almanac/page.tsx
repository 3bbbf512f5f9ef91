import { AlmanacIndex } from '#ui/almanac/almanac-index';

export const metadata = { title: 'Almanac' };

export default function AlmanacPage() {
  return <AlmanacIndex />;
}
