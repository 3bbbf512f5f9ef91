import { type APIResponse, expect, type Page, type Request, test } from '@playwright/test';

// After first-run: a site called Lighthouse Rooms is there.
const SYSTEM = '/sites/lighthouse/systems/lobby-tank';
/** One address of each kind of page. */
const PAGES = [
  '/',
  '/import',
  '/how',
  '/nowhere',
  '/account',
  '/machine',
  '/sign-in',
  '/trust',
  '/reset',
  '/sites/new',
  '/sites/lighthouse',
  '/sites/lighthouse/describe',
  '/sites/lighthouse/plans',
  '/sites/lighthouse/safeguards',
  '/sites/lighthouse/systems/new',
  '/sites/lighthouse/record',
  '/sites/lighthouse/people',
  SYSTEM,
  `${SYSTEM}/cases/heater-on%3Aheater%3Anormal`,
];
/** Handlers: for those who may, for anybody, and what the build made. */
const PRIVATE_HANDLERS = ['/api/facility/lighthouse', '/api/record/lighthouse', '/api/health'];
const PUBLIC_HANDLERS = ['/schema/facility.json', '/icon.svg'];

test('every page and handler keeps its answer to itself', async ({ request }) => {
  const nonces = new Set<string>();
  for (const path of [...PAGES, ...PRIVATE_HANDLERS, ...PUBLIC_HANDLERS]) {
    const answer = await request.get(path);
    const headers = answer.headers();
    const policy = headers['content-security-policy'] ?? '';
    expect(policy, path).toMatch(/script-src 'self' 'nonce-[\w+/=]{22,}' 'strict-dynamic'/);
    for (const part of ["object-src 'none'", "base-uri 'none'", "frame-ancestors 'none'", "style-src 'self'"])
      expect(policy, path).toContain(part);
    nonces.add(/nonce-([^']+)/.exec(policy)?.[1] ?? '');
    expect(headers, path).toMatchObject({
      'x-content-type-options': 'nosniff',
      'referrer-policy': 'same-origin',
      'cross-origin-opener-policy': 'same-origin',
    });
    // Nobody comes by https here, so nothing is promised about it.
    expect(headers, path).not.toHaveProperty('strict-transport-security');
    if (!PUBLIC_HANDLERS.includes(path)) expect(headers['cache-control'], path).toContain('no-store');
  }
  expect(nonces.size).toBe(PAGES.length + PRIVATE_HANDLERS.length + PUBLIC_HANDLERS.length);
});

test('no page asks the browser for anything its policy forbids, and a script put into one does not run', async ({
  page,
}) => {
  const broken = await listen(page);
  for (const path of PAGES) {
    await page.goto(path);
    for (const fold of await page.locator('main details:not([open]) > summary').all())
      if (await fold.isVisible()) await fold.click();
    await expect(page.locator('h1')).toBeVisible();
  }
  expect(broken).toEqual([]);
  await page.evaluate(() => {
    const planted = document.createElement('div');
    planted.innerHTML = '<img src="x:" onerror="document.title = \'planted\'"><p style="color: red">planted</p>';
    document.body.append(planted);
  });
  await expect.poll(() => broken).toEqual(expect.arrayContaining(['script-src-attr', 'style-src-attr']));
  expect(await page.title()).not.toBe('planted');
});

test('a form of a page elsewhere, and a name that is not ours, are turned away', async ({ page, request, baseURL }) => {
  const sent = await caught(page);
  const again = { headers: sent.headers(), data: sent.postDataBuffer() ?? undefined };
  const replay = (headers: Record<string, string>): Promise<APIResponse> =>
    request.post(sent.url(), { ...again, headers: { ...again.headers, ...headers }, maxRedirects: 0 });
  expect((await replay({})).headers()['set-cookie']).toContain('holdfast-light=dark');
  for (const origin of ['https://evil.example', 'null', baseURL?.replace('http:', 'https:') ?? '']) {
    const answer = await replay({ origin });
    expect(answer.status(), origin).toBe(403);
    expect(answer.headers()['set-cookie'], origin).toBeUndefined();
  }
  for (const path of ['/', '/api/facility/lighthouse'])
    expect((await request.get(path, { headers: { host: 'evil.example' } })).status()).toBe(421);
});

// OWASP ASVS 5.0, 3.5.3: what changes something is never asked for by a method that says it changes nothing.
test('what a form does is not done when it is asked for by GET, HEAD or OPTIONS', async ({ page, request }) => {
  const sent = await caught(page);
  for (const method of ['GET', 'HEAD', 'OPTIONS']) {
    const answer = await request.fetch(sent.url(), { method, headers: sent.headers() });
    expect(answer.headers()['set-cookie'], method).toBeUndefined();
  }
});

/** Names of the directives that pages break from now on. */
async function listen(page: Page): Promise<string[]> {
  const broken: string[] = [];
  await page.exposeFunction('tellOfBreach', (directive: string) => void broken.push(directive));
  await page.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', ({ effectiveDirective }) => {
      Reflect.apply(Reflect.get(window, 'tellOfBreach'), window, [effectiveDirective]);
    });
  });
  return broken;
}

/** The request a browser sends when a person chooses dark pages, caught on its way and not let through. */
async function caught(page: Page): Promise<Request> {
  await page.goto('/how');
  await page.route('**/how', (route) => (route.request().method() === 'POST' ? route.abort() : route.continue()));
  await page.getByText('Units and light').click();
  const sending = page.waitForRequest((one) => one.method() === 'POST');
  await page.getByRole('button', { name: 'dark' }).click();
  return await sending;
}
