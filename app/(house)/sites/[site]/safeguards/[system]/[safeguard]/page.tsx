import type { Metadata } from 'next';
import { cache } from 'react';
import { ask } from '#server/gate/ask';
import { getSafeguard, getSafeguardShape } from '#server/safeguards/get-safeguard';
import { SafeguardBody } from '#ui/safeguards/safeguard-body';
import { answered } from '../../../../../view/answered';
import { putBackAction, recordTestAction, takeOffAction, withdrawTestAction } from './actions';

interface Address {
  params: Promise<{ site: string; system: string; safeguard: string }>;
}

const asked = ask(getSafeguardShape, getSafeguard);
const once = cache((site: string, system: string, safeguard: string) => asked({ site, system, safeguard }));

/** The safeguard by its address, asked for once a request. */
async function askSafeguard({ params }: Address) {
  const { site, system, safeguard } = await params;
  return await once(decodeURIComponent(site), decodeURIComponent(system), decodeURIComponent(safeguard));
}

export async function generateMetadata(address: Address): Promise<Metadata> {
  const answer = await askSafeguard(address);
  return { title: answer.ok ? answer.value.line.name : 'No such safeguard' };
}

export default async function SafeguardPage(address: Address) {
  const page = answered(await askSafeguard(address));
  return (
    <SafeguardBody
      page={page}
      record={recordTestAction}
      withdraw={withdrawTestAction}
      off={takeOffAction}
      back={putBackAction}
    />
  );
}
