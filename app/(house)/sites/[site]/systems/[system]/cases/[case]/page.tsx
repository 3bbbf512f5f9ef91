import type { Metadata } from 'next';
import { CasePageBody } from '#ui/case/case-page';
import { answered } from '../../../../../../view/answered';
import { chosenView } from '../../../../../../view/chosen-view';
import { askCase, type CaseAddress } from './ask-case';

interface Address {
  params: Promise<CaseAddress>;
}

export async function generateMetadata({ params }: Address): Promise<Metadata> {
  const answer = await askCase(await params);
  return { title: answer.ok ? `${answer.value.case.title}, ${answer.value.system.name}` : 'No such fault case' };
}

export default async function CasePage({ params }: Address) {
  const page = answered(await askCase(await params));
  const { units } = await chosenView();
  return <CasePageBody page={page} units={units} />;
}
