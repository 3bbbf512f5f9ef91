import { PAYLOADS, topicTemplate } from '#core/readings/topics';
import { z } from 'zod';
import { sitePlace } from '../reviews/case-place';
import { line, sourcePlace } from './source-requests';

/** Where a broker is: a machine and a port and nothing else, so that no user stands in what everybody may read. */
const address = line(300).superRefine((said, told) => {
  const url = URL.canParse(said) ? new URL(said) : null;
  const wrong = !url || !['mqtt:', 'mqtts:'].includes(url.protocol) || url.hostname === '';
  const message = wrong
    ? 'must be such as mqtts://broker.example:8883, or mqtt://… without encryption'
    : url.username || url.password || !['', '/'].includes(url.pathname) || url.search || url.hash
      ? 'must name machine and port alone; user and password have fields of their own'
      : null;
  if (message) told.addIssue({ code: 'custom', message });
});

const authority = z
  .string()
  .max(20_000, { error: 'must have at most 20000 characters' })
  .refine((pem) => /-----BEGIN CERTIFICATE-----[\s\S]+-----END CERTIFICATE-----/.test(pem), {
    error: 'must be a certificate in PEM, from BEGIN CERTIFICATE to END CERTIFICATE',
  })
  .refine((pem) => !/PRIVATE KEY/.test(pem), { error: 'must hold no private key' });

/** Where a broker is and who Holdfast is there; what is left out is not needed there. */
const broker = {
  address,
  username: line(200).optional(),
  /** Not trimmed: what is typed is what counts. */
  password: z.string().max(1000, { error: 'must have at most 1000 characters' }).optional(),
  authority: authority.optional(),
  rebirth: z.literal('yes').optional(),
};

/** A broker that is to be subscribed to; `gateway` is the key of the one gateway that sends there, if it is described. */
export const newBroker = sitePlace.extend({ name: line(120), gateway: z.string().max(64).optional(), ...broker });

/** Changes a broker. A password left out stays as it is, unless there is to be no user. */
export const brokerChange = sourcePlace.extend(broker);

const FIELD_PATH = /^[^.\s]+(\.[^.\s]+)*$/;
const path = line(120).regex(FIELD_PATH, { error: 'must be names with dots between them, such as data.value' });

/** Something more to subscribe to; `sensor` is the id of the sensor that a single topic is of. */
export const newTopic = sourcePlace
  .extend({
    topic: line(200),
    payload: z.enum(PAYLOADS, { error: 'say what comes there' }),
    field: path.optional(),
    timeField: path.optional(),
    unit: line(40).optional(),
    sensor: z.uuid({ error: 'choose a sensor' }).optional(),
  })
  .superRefine(({ topic, payload, field, sensor }, told) => {
    const fault = (at: string, message: string) => told.addIssue({ code: 'custom', path: [at], message });
    const template = topicTemplate(topic);
    if (!template.ok) fault('topic', template.reason);
    if (payload === 'sparkplug' && !/^spBv1\.0\/|^\+\/|^#$/.test(topic))
      fault('topic', 'must begin with spBv1.0/ where Sparkplug comes');
    if (payload === 'field' && field === undefined) fault('field', 'must say where the value stands in the object');
    if (sensor !== undefined && (/[+#{]/.test(topic) || payload === 'senml' || payload === 'sparkplug'))
      fault('sensor', 'can be said of one topic alone, whose payload has no names of its own');
  });

/** One subscription, by its id. */
export const topicPlace = sitePlace.extend({ topic: z.uuid() });
