import Link from '#ui/frame/link';
import { Footer } from '#ui/frame/footer';
import { Masthead } from '#ui/frame/masthead';
import { Page } from '#ui/frame/page';
import { askDemo } from './(open)/ask-demo';

export const metadata = { title: 'Not found' };

export default async function NotFound() {
  const demo = await askDemo(undefined);
  return (
    <>
      <Masthead isDemo={demo.ok && demo.value.isDemo} />
      <Page title="There is no such page">
        <p>
          What stood here may have been renamed or taken out of its facility file. <Link href="/">To the systems</Link>
        </p>
      </Page>
      <Footer />
    </>
  );
}
