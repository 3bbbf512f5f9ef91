import { facilityJsonSchema } from '#shape/facility/json-schema';
import { writeFacility } from '#shape/facility/write-facility';
import { beforeAll, describe, expect, test } from 'vitest';
import { GET as getFacility } from '../../../app/api/facility/[site]/route';
import { GET as getSchema } from '../../../app/schema/facility.json/route';
import { facility } from '../../_support/build-facility';
import { freshDatabase } from '../../_support/database';
import { anAccount, headersOf } from '../../_support/signed-in';
import { keep } from '../../_support/stored';

freshDatabase();

let headers: Headers;

beforeAll(async () => {
  await keep(facility());
  headers = await headersOf(await anAccount({ everywhere: 'viewer' }));
});

function ask(site: string, query = ''): Promise<Response> {
  const request = new Request(`http://localhost/api/facility/${site}${query}`, { headers });
  return getFacility(request, { params: Promise.resolve({ site }) });
}

describe('the address of a facility file', () => {
  test.each([
    ['', 'json', 'application/json; charset=utf-8'],
    ['?format=yaml', 'yaml', 'application/yaml; charset=utf-8'],
  ] as const)('gives the file under its name, with "%s" as %s', async (query, format, type) => {
    const response = await ask('harbour', query);
    expect(response.headers.get('content-type')).toBe(type);
    expect(response.headers.get('content-disposition')).toBe(`attachment; filename="harbour.${format}"`);
    expect(await response.text()).toBe(writeFacility(facility(), { format }));
  });

  test('says what is wrong with what was asked', async () => {
    expect((await ask('harbour', '?format=xml')).status).toBe(422);
    expect((await ask('Not A Key')).status).toBe(422);
    expect((await ask('elsewhere')).status).toBe(404);
  });
});

test('the address of the schema gives the schema that the command prints', async () => {
  expect(await getSchema().json()).toEqual(facilityJsonSchema());
});
