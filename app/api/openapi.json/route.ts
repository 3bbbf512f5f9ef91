import { openApi } from '#shape/api/open-api';

// Generated from the shapes alone, so it is written once, at the build.
export const dynamic = 'force-static';

/** What machines may ask and send, as OpenAPI 3.1. */
export function GET(): Response {
  return Response.json(openApi());
}
