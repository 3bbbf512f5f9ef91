import 'server-only';
import type { NodePhase } from '#core/readings/sparkplug/node';
import { pool } from '../pool';
import type { BrokerKey } from './hold';

/** What came of an edge node of Sparkplug since it was last noted. */
export interface NodeNote {
  /** `group/node`. */
  name: string;
  phase: NodePhase;
  /** Gaps in its sequence, and values that were held back, since. */
  gaps: number;
  heldBack: number;
}

/** Notes how edge nodes stand; since when is kept while the phase stays. */
export async function noteNodes({ siteId, sourceId }: BrokerKey, notes: readonly NodeNote[], at: Date): Promise<void> {
  for (const { name, phase, gaps, heldBack } of notes)
    await pool().query(
      `INSERT INTO sparkplug_node AS n (site_id, source_id, name, phase, since, gaps, held_back)
       VALUES ($1, $2, $3, $4, $5, $6, $7)
       ON CONFLICT (site_id, source_id, name) DO UPDATE SET
         since = CASE WHEN n.phase = EXCLUDED.phase THEN n.since ELSE EXCLUDED.since END,
         phase = EXCLUDED.phase, gaps = n.gaps + EXCLUDED.gaps, held_back = n.held_back + EXCLUDED.held_back`,
      [siteId, sourceId, name, phase, at, gaps, heldBack],
    );
}
