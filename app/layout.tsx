import '@fontsource-variable/source-sans-3';
import '@fontsource-variable/source-serif-4';
import './globals.css';
import type { Metadata, Viewport } from 'next';
import { NuqsAdapter } from 'nuqs/adapters/next/app';
import type { ReactNode } from 'react';
import { chosenView } from './(house)/view/chosen-view';

export const metadata: Metadata = {
  title: { default: 'Holdfast', template: '%s · Holdfast' },
  description: 'Which single fault would lose animals before anyone could put it right, and what to mend first.',
};

export const viewport: Viewport = { width: 'device-width', initialScale: 1, colorScheme: 'light dark' };

export default async function Layout({ children }: { children: ReactNode }) {
  const { light } = await chosenView();
  return (
    <html lang="en" data-light={light}>
      <body>
        <NuqsAdapter>{children}</NuqsAdapter>
      </body>
    </html>
  );
}
