import { Page } from '../frame/page';
import { siteAddress } from '../frame/site-address';
import { QrCode } from '../marks/qr-code';
import { roundsAddress } from '../rounds/round-view';
import { walkAddress } from '../walk/where';
import style from './labels.module.css';

interface LabelsBodyProps {
  page: {
    site: { key: string; name: string };
    origin: string;
    labels: { system: string; tank: string; code: string }[];
  };
}

/** Labels to print and put on tanks: a telephone that scans one opens the checks of that tank, and so does its code when typed. */
export function LabelsBody({ page: { site, origin, labels } }: LabelsBodyProps) {
  return (
    <Page
      title="Labels of the tanks"
      over={[
        { href: '/', name: 'Systems' },
        { href: siteAddress(site.key), name: site.name },
        { href: roundsAddress(site.key), name: 'Rounds' },
      ]}
      lead={
        <p className={style.screen}>
          Printed in black and white, each 44 mm wide. They lead to {origin}: print them again when Holdfast is found
          elsewhere. A code stays as long as the keys of its system and tank do.
        </p>
      }
    >
      {labels.length === 0 ? <p>No tank that animals live in is described yet.</p> : null}
      <ul className={style.sheet}>
        {labels.map(({ system, tank, code }) => (
          <li key={`${system} ${tank} ${code}`} className={style.label}>
            <QrCode text={origin + walkAddress(site.key, code)} said={`Label of ${tank}, ${system}`} />
            <strong>{tank}</strong>
            <span>{system}</span>
            <span className={style.code}>{code}</span>
          </li>
        ))}
      </ul>
    </Page>
  );
}
