/** @type {import('next').NextConfig} */
const config = {
  // Node loads these itself: they look for files of their own at run time, which a bundle would lose.
  serverExternalPackages: ['pg', '@node-rs/argon2', '@prisma/adapter-pg', '@prisma/client', 'graphile-worker'],
  // `npm test` checks types, over more than the pages; a start on somebody's machine does not check them again.
  typescript: { ignoreBuildErrors: true },
  poweredByHeader: false,
  // The file of a logger of 20 MB, the longest that is read, may come by a form.
  experimental: { serverActions: { bodySizeLimit: '22mb' } },
};

export default config;
