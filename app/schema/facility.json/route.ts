import { facilityJsonSchema } from '#shape/facility/json-schema';

// Generated from the shapes alone, so it is written once, at the build.
export const dynamic = 'force-static';

/** The JSON Schema of the facility file. */
export function GET(): Response {
  return new Response(`${JSON.stringify(facilityJsonSchema(), null, 2)}\n`, {
    headers: { 'content-type': 'application/schema+json; charset=utf-8' },
  });
}
