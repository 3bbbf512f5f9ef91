import { instantSaid } from '../words/instant';
import style from './sources.module.css';
import type { BrokerView } from './sources-view';

/** How the connection to a broker stands: in words, with a shape, and in colour only where it does not. */
export function ConnectionMark({ broker, zone }: { broker: BrokerView; zone: string }) {
  const { connected, failed, isHeld, isEncrypted } = broker;
  if (!connected)
    return (
      <p className={style.broken}>
        <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true" focusable="false">
          <path d="M8 1.25 15.25 14.5H.75Z" />
        </svg>
        <span>Not connected. {failed ? `${failed.why} (${instantSaid(failed.at, zone)})` : waiting(isHeld)}</span>
      </p>
    );
  return (
    <>
      <p>
        Connected since {instantSaid(connected.since, zone)}, by MQTT {connected.version},{' '}
        {isEncrypted ? 'encrypted' : 'not encrypted'}.
      </p>
      {failed ? <p className={style.broken}>{failed.why}</p> : null}
    </>
  );
}

function waiting(isHeld: boolean): string {
  return isHeld ? 'It is being tried.' : 'No worker has it in hand.';
}
