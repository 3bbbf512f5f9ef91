import { MESSAGE_TYPES } from '#core/alarms/message-types';
import { Fold } from '../frame/fold';
import style from './calls.module.css';

/** What a call looks like as it is posted: an invented one. */
const SAMPLE = `POST /calls HTTP/1.1
content-type: application/json
webhook-id: 019ac3f2-7d1c-7b9a-9b0e-5f1f8a0c2d11
webhook-timestamp: 1764122400
webhook-signature: v1,K5oZfzN95Z9UVu1EsfQmfVNQhnkZ2pj9o9NDN/H/pI4=

{
  "type": "alarm.call",
  "timestamp": "2026-11-26T02:00:00.000Z",
  "data": {
    "call": "alarm",
    "to": { "name": "Robin", "why": "on-call", "step": 1 },
    "alarm": { "id": "…", "name": "Too warm", "raisedAt": "…", "returnedAt": null },
    "system": { "key": "reef", "name": "Reef" },
    "site": { "key": "harbour", "name": "Harbour" },
    "say": "Alarm at Harbour: Too warm, Reef. Value: 27.0 °C, called above 26.5 °C",
    "text": "…", "url": "https://…/sites/harbour/alarms/…"
  }
}`;

/** How a service that rings or writes to people takes the calls. */
export function WebhookRecipe() {
  return (
    <Fold title="How to reach a telephone">
      <ol>
        <li>
          Take any service that rings a number and reads a sentence out, or sends a text, when it is asked by HTTP: most
          such services have a form for it. Behind it keep a list of names and numbers.
        </li>
        <li>
          Verify the signature before anything else, as Standard Webhooks says: join <code>webhook-id</code>,{' '}
          <code>webhook-timestamp</code> and the body by full stops, work out HMAC-SHA256 with the secret (base64 after{' '}
          <code>whsec_</code>), and compare <code>v1,</code> and its base64. Refuse what is older than five minutes.
        </li>
        <li>
          Ring the number of <code>data.to.name</code> and read <code>data.say</code>. Let it ring again until somebody
          answers: that is what wakes people. What it is about stands in <code>type</code>:
          <dl className={style.types}>
            {Object.entries(MESSAGE_TYPES).map(([type, about]) => (
              <div key={type}>
                <dt>
                  <code>{type}</code>
                </dt>
                <dd>{about}.</dd>
              </div>
            ))}
          </dl>
        </li>
        <li>
          Answer with a status of 200 to 299 once you have it. Anything else is tried again after 5, 15, 45 and 120
          seconds, then every ten minutes, with the same <code>webhook-id</code>: ring once for each id.
        </li>
        <li>
          Nobody acknowledges by telephone: that is done on the page <code>data.url</code> leads to, and only that ends
          the calling.
        </li>
        <li>Make a test call to yourself, and say that it came. Until then the review counts on none of this.</li>
      </ol>
      <pre className={style.sample}>{SAMPLE}</pre>
    </Fold>
  );
}
