import type { Metadata } from 'next';
import { ask } from '#server/gate/ask';
import { getCover, getCoverShape } from '#server/rota/get-cover';
import { CoverBody } from '#ui/cover/cover-body';
import { answered } from '../../../../view/answered';
import type { SiteAddress } from '../../ask-site';

const askCover = ask(getCoverShape, getCover);

export const metadata: Metadata = { title: 'Cover' };

interface CoverPageProps {
  params: Promise<SiteAddress>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export default async function CoverPage({ params, searchParams }: CoverPageProps) {
  const { site } = await params;
  const page = answered(await askCover({ ...(await searchParams), site: decodeURIComponent(site) }));
  return <CoverBody page={page} />;
}
