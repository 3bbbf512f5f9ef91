import type { Remedy } from '../remedy';

/** min of silence after which it calls. Common practice, no source. */
const AFTER_MIN = 10;

/** A watch outside the site. */
export const remedy: Remedy = {
  id: 'outside-watch',
  changes: 'people',
  places: ({ site, monitors }) =>
    monitors.length > 0 && (site.watchdog === undefined || site.watchdog.answeredBy === 'nobody')
      ? [{ key: site.key, title: 'A watch outside the site' }]
      : [],
  apply: (facility) => ({
    ...facility,
    site: { ...facility.site, watchdog: { afterMin: AFTER_MIN, answeredBy: 'rota' } },
  }),
};
