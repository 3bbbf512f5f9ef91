import { Section } from '../frame/section';
import { QrCode } from '../marks/qr-code';
import { DeviceSteps } from './device-steps';
import devices from './devices.json';
import style from './trust.module.css';

/** An authority that a device may come to trust. */
export interface AuthorityShown {
  /** What it is called in the list of a phone. */
  title: string;
  /** Of SHA-256 and of SHA-1: pairs of hexadecimal digits. */
  fingerprint: string;
  shortFingerprint: string;
  /** Day its time is over. */
  until: string;
}

/**
 * Leads a phone or a desk through trusting this machine, says what that means, and how to take it back.
 * @param address where people reach Holdfast
 * @param door where this page stands in the clear
 */
export function TrustBody({ address, door, authority }: { address: string; door: string; authority: AuthorityShown }) {
  return (
    <>
      <Section id="phone" title="With a phone" note="In the same network as this machine.">
        <QrCode text={door} said={`QR code of ${door}`} />
        <p className={style.under}>
          Point the camera of the phone here, or type <code className={style.long}>{door}</code>
        </p>
      </Section>
      <Section id="fingerprint" title="What to compare">
        <p>
          Look at this page on the machine itself, or at what <code>npm start</code> printed, and compare it with what
          your device shows. If they differ, take nothing: somebody else is answering.
        </p>
        <dl className={style.facts}>
          <dt>Name</dt>
          <dd>{authority.title}</dd>
          <dt>Fingerprint (SHA-256)</dt>
          <dd className={style.digits}>{authority.fingerprint}</dd>
          <dt>Shorter one (SHA-1)</dt>
          <dd className={style.digits}>{authority.shortFingerprint}</dd>
          <dt>Good until</dt>
          <dd>{authority.until}</dd>
        </dl>
      </Section>
      <Section
        id="devices"
        title="Step by step"
        note="The words of the settings are from memory and change with their versions."
      >
        {devices.map((device) => (
          <DeviceSteps key={device.id} {...device} />
        ))}
        <p>
          Then come by{' '}
          <a href={address} className={style.long}>
            {address}
          </a>
        </p>
      </Section>
      <Section id="meaning" title="What trusting means">
        <p>
          Your device will believe whatever this authority signs. Its key lies on the machine that runs Holdfast, is
          sent to nobody, and stands in no backup. Whoever took it could pretend to be that machine, or another one of a
          private network, and nobody else: the certificate itself limits it to the names of this machine and to private
          addresses.
        </p>
        <p>
          Trust it on devices you use for the work, and on no others. Where a site has an authority of its own, give
          Holdfast a certificate of that one instead, and leave this page alone. Take it off a device that leaves.
        </p>
      </Section>
    </>
  );
}
