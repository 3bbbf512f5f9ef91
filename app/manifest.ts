import type { MetadataRoute } from 'next';

/** What a browser needs to know to put Holdfast on the home screen of a telephone. */
export default function manifest(): MetadataRoute.Manifest {
  return {
    name: 'Holdfast',
    short_name: 'Holdfast',
    description: 'Rounds, alarms and what to mend first.',
    id: '/',
    start_url: '/',
    scope: '/',
    display: 'standalone',
    icons: [{ src: '/icon.svg', sizes: 'any', type: 'image/svg+xml' }],
  };
}
