import { handle } from '#server/gate/handle';
import { handleSent } from '#server/gate/handle-sent';
import { packWalk, packWalkShape } from '#server/rounds/sync/pack-walk';
import { sync, syncShape } from '#server/rounds/sync/sync';

export const dynamic = 'force-dynamic';

/** What a telephone takes along to walk the rounds of a site out of reach. */
export const GET = handle(packWalkShape, packWalk);

/** What was entered out of reach. */
export const POST = handleSent(syncShape, sync);
