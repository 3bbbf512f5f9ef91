import Ajv2020 from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { openApi } from '#shape/api/open-api';
import { listFiles } from '../../house/inspect/files';

interface Operation {
  summary: string;
  responses: Record<string, { description: string }>;
  requestBody?: { content: Record<string, { schema: object }> };
}

const described = openApi() as { openapi: string; paths: Record<string, Record<string, Operation>> };

describe('the description for machines', () => {
  test('names every entry for machines that the tree has, but those of signing in, of live pages, and of what a browser fetches for itself', () => {
    const handlers = listFiles(['app/api'], /route\.ts$/).map((path) => path.slice('app'.length, -'/route.ts'.length));
    const named = handlers
      .filter((path) => !/auth|live|openapi|calendar|rounds|trust/.test(path))
      .map((path) => path.replaceAll('[', '{').replaceAll(']', '}'));
    expect(Object.keys(described.paths).sort()).toEqual(named.sort());
  });

  // The dialect of OpenAPI 3.1 is JSON Schema 2020-12; the vectors are those of RFC 8428, 5.1.
  test('says of a body what is taken for one', () => {
    const schema = described.paths['/api/readings']?.post?.requestBody?.content['application/senml+json']?.schema ?? {};
    const validate = new Ajv2020({ strict: false }).compile(schema);
    expect(validate([{ n: 'urn:dev:ow:10e2073a01080063', u: 'Cel', v: 23.1 }])).toBe(true);
    expect(validate([{ bn: 'a:', bt: 1.276020076001e9, bu: 'A', bver: 5, n: 'voltage', u: 'V', v: 120.1 }])).toBe(true);
    expect(validate([{ n: 'a', v: '23.1' }])).toBe(false);
    expect(validate([])).toBe(false);
  });

  test('is whole: every answer has its words, and nothing refers elsewhere', () => {
    for (const path of Object.values(described.paths))
      for (const { summary, responses } of Object.values(path)) {
        expect(summary).toMatch(/\w/);
        for (const { description } of Object.values(responses)) expect(description).toMatch(/\w/);
      }
    const text = JSON.stringify(described.paths['/api/readings']);
    expect(text).not.toContain('$ref');
    expect(described.openapi).toBe('3.1.0');
  });
});
