import { ask } from '#server/gate/ask';
import { listKeys, listKeysShape } from '#server/keys/list-keys';
import { KeysBody } from '#ui/keys/keys-body';
import { answered } from '../../../view/answered';
import type { SiteAddress } from '../ask-site';
import { handKeyAction } from './actions';

const askKeys = ask(listKeysShape, listKeys);

export const metadata = { title: 'Keys' };

export default async function KeysPage({ params }: { params: Promise<SiteAddress> }) {
  const { site } = await params;
  return <KeysBody page={answered(await askKeys({ site: decodeURIComponent(site) }))} hand={handKeyAction} />;
}
