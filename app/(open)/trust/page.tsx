import { askOpenly } from '#server/gate/open';
import { getTrust, getTrustShape } from '#server/trust/get-trust';
import { Page } from '#ui/frame/page';
import { TrustBody } from '#ui/trust/trust-body';

const askTrust = askOpenly(getTrustShape, getTrust);

export const metadata = { title: 'Trusting this machine' };

export default async function TrustPage() {
  const trust = await askTrust(undefined);
  const told = trust.ok ? trust.value : null;
  return (
    <Page
      title="Trusting this machine"
      lead={
        <p>
          A phone walks rounds without a signal, reads labels and is called only over an encrypted connection. It has to
          be told once, by hand, that this machine is the one you mean.
        </p>
      }
    >
      {told?.authority ? (
        <TrustBody address={told.address} door={told.door} authority={told.authority} />
      ) : (
        <p>
          There is nothing to do: this Holdfast has no authority of its own. Where people come by <code>https</code>,
          its certificate is one that devices know. <code>npm start -- --tls</code> makes an authority for a network of
          your own.
        </p>
      )}
    </Page>
  );
}
