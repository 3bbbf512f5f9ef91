import { MOST_RECORDS } from '#core/readings/arrived';
import { z } from 'zod';
import { readingsAnswer, readingsRefusal } from '../readings/answer';
import { senmlRecord } from '../readings/parse-senml';
import { facilityShape } from '../facility/facility';
import { health } from './health';

type Media = Record<string, { schema: Record<string, unknown> }>;

const json = (shape: z.ZodType, io: 'input' | 'output' = 'output'): Media => ({
  'application/json': { schema: schemaOf(shape, io) },
});
const answer = (description: string, content?: Media) => ({ description, ...(content ? { content } : {}) });
const refused = (description: string) => answer(description, json(readingsRefusal));
/** The key of a site stands in the address. */
const SITE = { name: 'site', in: 'path', required: true, schema: { type: 'string' }, description: 'Key of the site.' };
const BY_SESSION = [{ session: [] }];

/** An OpenAPI 3.1 description of what machines may ask of Holdfast and send to it, generated from the shapes that read it. */
export function openApi(): Record<string, unknown> {
  return {
    openapi: '3.1.0',
    info: { title: 'Holdfast', version: '1' },
    paths: paths(),
    components: {
      securitySchemes: {
        source: { type: 'http', scheme: 'bearer', description: 'Token of a source of readings.' },
        session: { type: 'apiKey', in: 'cookie', name: 'holdfast-session' },
      },
    },
  };
}

function paths(): Record<string, unknown> {
  return {
    '/api/readings': { post: sendReadings() },
    '/api/health': {
      get: {
        summary: 'Whether the parts of Holdfast are there',
        parameters: [
          query('of', { type: 'string', enum: ['alarms'] }, 'alarms: 503 as well while they are not being judged.'),
        ],
        responses: { 200: answer('The database answers.', json(health)), 503: answer('It does not.', json(health)) },
      },
    },
    '/api/systems': {
      get: {
        summary: 'Every system one may see, with its verdicts and how it stands now',
        security: BY_SESSION,
        parameters: [query('site', { type: 'string' }, 'Systems of the site with this key alone.')],
        responses: { 200: answer('The systems.', ANY_OBJECT), 401: answer('Not signed in.') },
      },
    },
    '/api/sites/{site}/systems/{system}/review.pdf': {
      get: {
        summary: 'The review of a system as a document to print (PDF)',
        security: BY_SESSION,
        parameters: [SITE, { name: 'system', in: 'path', required: true, schema: { type: 'string' } }],
        responses: {
          200: answer('The document.', { 'application/pdf': { schema: { type: 'string' } } }),
          ...NOT_FOR_YOU,
        },
      },
    },
    '/api/rota/{token}': {
      get: {
        summary: 'The rota as a calendar (RFC 5545), for whoever has the address',
        parameters: [{ name: 'token', in: 'path', required: true, schema: { type: 'string' } }],
        responses: {
          200: answer('The calendar.', { 'text/calendar': { schema: { type: 'string' } } }),
          404: answer('No such calendar, or no longer.'),
        },
      },
    },
    ...siteFiles(),
  };
}

const ANY_OBJECT: Media = { 'application/json': { schema: { type: 'object' } } };
const NOT_FOR_YOU = { 401: answer('Not signed in.'), 403: answer('Not allowed.'), 404: answer('No such site.') };

/** What a site is and what was recorded at it, as files. */
function siteFiles(): Record<string, unknown> {
  return {
    '/api/facility/{site}': {
      get: {
        summary: 'The facility file of a site',
        security: BY_SESSION,
        parameters: [SITE, query('format', { enum: ['json', 'yaml'], default: 'json' }, 'Form of the file.')],
        responses: { 200: answer('The file.', json(facilityShape, 'input')), ...NOT_FOR_YOU },
      },
    },
    '/api/record/{site}': {
      get: {
        summary: 'The record of a site as a table',
        security: BY_SESSION,
        parameters: [
          SITE,
          query('kind', { type: 'string' }, 'Entries of this kind alone.'),
          query('by', { type: 'string' }, 'Entries of this account alone.'),
        ],
        responses: { 200: answer('The table.', { 'text/csv': { schema: { type: 'string' } } }), ...NOT_FOR_YOU },
      },
    },
    '/api/readings/{site}/{system}/{sensor}': {
      get: {
        summary: 'The readings of a sensor as a table',
        security: BY_SESSION,
        parameters: [
          SITE,
          { ...SITE, name: 'system', description: 'Key of the system.' },
          { ...SITE, name: 'sensor', description: 'Key of the sensor.' },
          query('span', { type: 'string' }, 'How long a stretch.'),
          query('until', { type: 'string', format: 'date' }, 'Its last day.'),
        ],
        responses: { 200: answer('The table.', { 'text/csv': { schema: { type: 'string' } } }), ...NOT_FOR_YOU },
      },
    },
  };
}

function sendReadings(): Record<string, unknown> {
  const pack = schemaOf(z.array(senmlRecord).min(1).max(MOST_RECORDS), 'input');
  return {
    summary: 'Send readings',
    description:
      'Sending a body again is safe: what is there already is a repeat. At most 4 MB and 20,000 records, not compressed.',
    security: [{ source: [] }],
    parameters: [query('correct', { enum: ['1'] }, 'The values supersede those that are there.')],
    requestBody: {
      required: true,
      content: {
        'application/senml+json': { schema: pack },
        'application/json': { schema: pack },
        'text/csv': {
          schema: {
            type: 'string',
            description: 'First line name,time,value or name,time,value,unit; times by RFC 3339.',
          },
        },
      },
    },
    responses: {
      200: answer('All were dealt with.', json(readingsAnswer)),
      400: refused('The body cannot be understood; nothing was stored.'),
      401: refused('The token is none.'),
      413: refused('Too much at once.'),
      415: refused('Another type, character set or a packed body.'),
      429: refused('Too often; Retry-After says when.'),
      503: refused('No room, too much at once or no database; Retry-After says when.'),
    },
  };
}

function query(name: string, schema: Record<string, unknown>, description: string): Record<string, unknown> {
  return { name, in: 'query', required: false, schema, description };
}

function schemaOf(shape: z.ZodType, io: 'input' | 'output'): Record<string, unknown> {
  const { $schema: _, ...schema } = z.toJSONSchema(shape, { io, target: 'draft-2020-12' });
  return schema;
}
