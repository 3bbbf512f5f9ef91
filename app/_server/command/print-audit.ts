import 'server-only';
import type { Audit, BrokenAnchor, SiteAudit } from '#server/record/audit-records';
import { counted } from './said';

/** Whether nothing in an audit is broken. */
export function isWhole({ sites, broken }: Audit): boolean {
  return broken.length === 0 && sites.every(({ verdict }) => verdict.isWhole);
}

/**
 * What an audit found, a line each, and what it cannot find.
 *
 * @param audit      what was found
 * @param anchored   number of anchors it was held to
 */
export function auditWords(audit: Audit, anchored: number): string {
  const sites = audit.sites.flatMap((site) => [siteLine(site, anchored > 0), dailyLine(site)]);
  const lines = [...sites, ...audit.broken.map(anchorLine)];
  if (audit.sites.length === 0) lines.push('No site is stored; there is nothing to verify.');
  return [...lines, '', ...limitsOf(anchored)].join('\n').concat('\n');
}

function siteLine({ key, name, verdict, held }: SiteAudit, isAnchored: boolean): string {
  const anchors = isAnchored ? `, ${held === 0 ? 'no anchor' : counted(held, 'anchor')} held` : '';
  return verdict.isWhole
    ? `${name} (${key}): whole, ${counted(verdict.links, 'link')}${anchors}`
    : `${name} (${key}): BROKEN at link ${verdict.seq}, ${verdict.wrong}${anchors}`;
}

function dailyLine({ daily }: SiteAudit): string {
  if (!daily) return '  no daily anchor yet';
  const places = daily.sent.map(({ place, target, sentAt }) => `${place} ${target} at ${sentAt.toISOString()}`);
  const went = places.length === 0 ? 'went nowhere outside' : `went to ${places.join(', ')}`;
  return `  the anchor of ${daily.day} for link ${daily.seq} ${went}`;
}

function anchorLine({ anchor, wrong }: BrokenAnchor): string {
  const { site, seq, at } = anchor;
  return `BROKEN: the anchor of ${at} for link ${seq} of site ${site} finds ${wrong}`;
}

function limitsOf(anchored: number): string[] {
  if (anchored > 0)
    return [
      'What was added since the last anchor is guarded by the chain alone, and what was never recorded by nothing.',
    ];
  return [
    'Without an anchor kept elsewhere, this cannot tell a record that somebody with every right to the database rewrote',
    'and sealed anew from some link on, or cut short together with its head. Keep anchors: --anchor-to FILE writes them,',
    '--against FILE verifies against them. HOLDFAST_ANCHOR_FILE, HOLDFAST_ANCHOR_MAIL and HOLDFAST_ANCHOR_WEBHOOK name',
    'places to which Holdfast sends one a day by itself.',
  ];
}
