import { handleOpenly } from '#server/gate/open';
import { handOut, handOutShape } from '#server/trust/hand-out';

/** What a device takes to trust this machine: a certificate, and never a key. */
export const GET = handleOpenly(handOutShape, handOut, ({ name, type, content }) => {
  return new Response(content, {
    headers: { 'content-type': type, 'content-disposition': `attachment; filename="${name}"` },
  });
});
