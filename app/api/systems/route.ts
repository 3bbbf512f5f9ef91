import { handle } from '#server/gate/handle';
import { listSystems, listSystemsShape } from '#server/reviews/list-systems';

export const dynamic = 'force-dynamic';

/** Every system one may see, with its verdicts and how it stands now; `?site=…` gives those of one site. */
export const GET = handle(listSystemsShape, listSystems, ({ mayBegin: _, ...list }) => Response.json(list));
