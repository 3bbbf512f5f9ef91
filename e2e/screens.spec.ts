import AxeBuilder from '@axe-core/playwright';
import { expect as expectSoon, type Page, test } from '@playwright/test';
import { toIncident, toWorstSystem } from './_support/ways';

/** A page may take its time on a machine that computes reviews beside it. */
const expect = expectSoon.configure({ timeout: 20_000 });
// After first-run: the demo is loaded and some reviews are there.
/** Widths that nothing may run over; what is light or dark takes the same room. */
const WIDTHS = [
  { device: 'desk', width: 1280 },
  { device: 'phone', width: 360 },
  { device: 'narrowest', width: 320 },
] as const;
/** One of each device and each light is judged: the same page stands in all of them. */
const JUDGED = [
  { device: 'desk', width: 1280, light: 'light' },
  { device: 'phone', width: 360, light: 'dark' },
] as const;
const STANDARDS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
const SERIOUS = new Set<string | null | undefined>(['serious', 'critical']);

/** Every screen by name; those of a system are found as a person finds them, from the first row of the table. */
const SCREENS: Record<string, (page: Page) => Promise<void>> = {
  systems: async (page) => void (await page.goto('/')),
  system: toWorstSystem,
  'review-document': async (page) => {
    await toWorstSystem(page);
    await page.getByRole('link', { name: 'The whole review as a document' }).click();
    await expect(page.getByRole('heading', { level: 1, name: /^Review of/ })).toBeVisible();
  },
  // After plans: two reviews of this system are kept.
  'review-difference': async (page) => {
    await page.goto('/sites/quay-street/systems/puffers/review/difference');
    await expect(page.getByRole('heading', { level: 1, name: /^Two reviews of/ })).toBeVisible();
  },
  'fault-case': async (page) => {
    await toWorstSystem(page);
    await page.getByRole('main').getByRole('link', { name: /:/ }).first().click();
    await expect(page).toHaveURL(/\/cases\//);
  },
  'master-alarm-list': async (page) => {
    await page.goto('/sites/harbour/systems/reef/alarms');
    await expect(page.getByRole('heading', { level: 1, name: /^Master alarm list of/ })).toBeVisible();
  },
  calibration: async (page) => {
    await page.goto('/sites/mill-lane/systems/koi-vat/calibration');
    await expect(page.getByRole('heading', { name: 'Heat loss' })).toBeVisible();
  },
  import: async (page) => {
    await page.goto('/import');
    await page.getByRole('textbox', { name: 'or paste it here' }).fill('format: holdfast.facility/1\nsite: {}\n');
    await page.getByRole('button', { name: 'Check the file' }).click();
    await expect(page.getByRole('heading', { name: /things are wrong/ })).toBeVisible();
  },
  safeguards: async (page) => {
    await toWorstSystem(page);
    await page.getByRole('link', { name: 'Safeguards', exact: true }).click();
    await expect(page.getByRole('heading', { level: 1, name: 'Safeguards' })).toBeVisible();
  },
  safeguard: async (page) => {
    await SCREENS.safeguards?.(page);
    await page.getByRole('main').getByRole('table').getByRole('link').first().click();
    await expect(page.getByRole('heading', { name: 'Record a test' })).toBeVisible();
  },
  'rota-week': async (page) => void (await page.goto('/sites/harbour/rota/week')),
  'leave-and-swaps': async (page) => void (await page.goto('/sites/harbour/rota/changes')),
  rota: async (page) => {
    await page.goto('/sites/harbour/rota');
    await expect(page.getByRole('heading', { name: 'Hours with nobody' })).toBeVisible();
  },
  // With a question that is answered, and a part of it that nothing can be made of.
  cover: async (page) => {
    await page.goto('/sites/quay-street/rota/cover?check=02:00&person=nobody');
    await expect(page.getByRole('heading', { name: 'The weakest hours' })).toBeVisible();
    const tables = page.getByText('The chart as tables').first();
    if (await tables.isVisible()) await tables.click();
  },
  states: async (page) => void (await page.goto('/sites/harbour/states')),
  // Where a label leads: nothing is begun by opening it.
  'state-form': async (page) => {
    await page.goto('/sites/harbour/states/reef/treatment');
    await expect(page.getByRole('heading', { name: 'The oxygen without it' })).toBeVisible();
  },
  handover: async (page) => {
    await page.goto('/sites/harbour/handover');
    await expect(page.getByRole('heading', { name: 'Who holds the phone' })).toBeVisible();
  },
  'system-states': async (page) => {
    await page.goto('/sites/harbour/states');
    await page.getByRole('main').getByRole('listitem').getByRole('link').first().click();
    await expect(page.getByRole('heading', { name: 'Begin a state' })).toBeVisible();
    await page.getByText('Water change, usually').click();
  },
  alarms: async (page) => void (await page.goto('/sites/lighthouse/alarms')),
  'call-outs': async (page) => void (await page.goto('/sites/lighthouse/call-outs')),
  keys: async (page) => void (await page.goto('/sites/lighthouse/keys')),
  trust: async (page) => void (await page.goto('/trust')),
  'alarms-suppressed': async (page) => void (await page.goto('/sites/lighthouse/alarms/suppressed')),
  calls: async (page) => {
    await page.goto('/sites/lighthouse/alarms/calls');
    await page.getByText('How to reach a telephone').click();
  },
  performance: async (page) => void (await page.goto('/sites/lighthouse/alarms/performance')),
  readings: async (page) => void (await page.goto('/sites/mill-lane/readings')),
  // After logger-file: a small file was taken in.
  'sensor-readings': async (page) => {
    await page.goto('/sites/mill-lane/readings/koi-vat/t-vat?span=day&until=2024-03-05');
    await expect(page.getByRole('img', { name: /Koi vat temperature/ })).toBeVisible();
  },
  'logger-file': async (page) => {
    await page.goto('/sites/mill-lane/readings/take-in');
    const rows = Array.from({ length: 9 }, (_, i) => `0${i + 1}.02.2024 00:00;${i % 2},5;ok`);
    const buffer = Buffer.from(['Deck logger', 'Date;Temp (°C);Flag', ...rows].join('\n'));
    await page.getByLabel('File of a logger').setInputFiles({ name: 'log.csv', mimeType: 'text/csv', buffer });
    await expect(page.getByRole('heading', { name: 'log.csv: 9 rows' })).toBeVisible();
  },
  // With a broker that is not there, and says so.
  sources: async (page) => {
    await page.goto('/sites/mill-lane/readings/sources');
    const broker = page.getByRole('heading', { name: 'Broker in the shed' });
    if ((await broker.count()) === 0) {
      await page.getByLabel('What it is called here').fill('Broker in the shed');
      await page.getByLabel('Address, such as').fill('mqtt://127.0.0.1:1');
      await page.getByRole('button', { name: 'Connect to it' }).click();
    }
    await expect(broker).toBeVisible();
    await page.getByLabel('What comes there').selectOption('field');
  },
  record: async (page) => void (await page.goto('/sites/lighthouse/record?times=utc')),
  people: async (page) => void (await page.goto('/sites/lighthouse/people')),
  description: async (page) => {
    await page.goto('/sites/lighthouse/describe');
    await expect(page.getByRole('link', { name: 'Old heater' })).toBeVisible();
  },
  'thing-with-faults': async (page) => {
    await page.goto('/sites/lighthouse/describe/new/equipment/lobby-tank');
    await page.getByRole('combobox', { name: 'Type' }).selectOption('heater');
    await page.getByRole('combobox', { name: 'Regulation' }).selectOption('thermostat');
    await page.getByRole('button', { name: 'See what it changes' }).click();
    await expect(page.getByRole('alert').filter({ hasText: 'things are wrong' })).toBeVisible();
  },
  plans: async (page) => void (await page.goto('/sites/lighthouse/plans')),
  rounds: async (page) => void (await page.goto('/sites/harbour/rounds')),
  'rounds-labels': async (page) => void (await page.goto('/sites/harbour/rounds/labels')),
  'walk-rounds': async (page) => {
    await page.goto('/walk#/harbour');
    await expect(page.getByRole('heading', { name: 'To be walked' })).toBeVisible();
  },
  'place-of-a-round': async (page) => {
    await page.goto('/sites/harbour/rounds');
    await page.getByRole('button', { name: 'Walk it now' }).click();
    await expect(page.getByText(/^Place 1 of \d+/)).toBeVisible();
    await page.getByRole('link', { name: 'Next place' }).click();
    await page.getByRole('button', { name: 'Not as usual…' }).first().click();
    await page.getByRole('button', { name: 'Not done, because…' }).nth(1).click();
    await expect(page.getByRole('button', { name: 'No time' })).toBeVisible();
  },
  round: async (page) => {
    await SCREENS['place-of-a-round']?.(page);
    await page.getByRole('link', { name: 'All places, and sign' }).click();
    await expect(page.getByRole('heading', { name: 'Sign', exact: true })).toBeVisible();
  },
  'round-sheets': async (page) => {
    await page.goto('/sites/harbour/rounds/sheets');
    const draft = page.getByRole('link', { name: /animals, first and last thing$/ }).first();
    if (!(await draft.isVisible())) await page.getByRole('button', { name: 'Draft its sheets' }).click();
    await expect(draft).toBeVisible();
  },
  'round-sheet': async (page) => {
    await SCREENS['round-sheets']?.(page);
    await page
      .getByRole('link', { name: /animals, first and last thing$/ })
      .first()
      .click();
    await expect(page.getByRole('button', { name: 'Put into force' })).toBeVisible();
  },
  'begin-system': async (page) => void (await page.goto('/sites/lighthouse/systems/new')),
  anchors: async (page) => void (await page.goto('/sites/lighthouse/record/anchors')),
  'new-incident': async (page) => void (await page.goto('/sites/lighthouse/incidents/new')),
  incident: toIncident,
  'incident-timeline': async (page) => await toIncident(page, 'Timeline'),
  'incident-investigation': async (page) => await toIncident(page, 'Investigation'),
  'incident-report': async (page) => await toIncident(page, 'Print the report'),
  incidents: async (page) => void (await page.goto('/sites/lighthouse/incidents')),
  machine: async (page) => void (await page.goto('/machine')),
  account: async (page) => void (await page.goto('/account')),
  'sign-in': async (page) => {
    await page.goto('/sign-in');
    await page.getByLabel('E-mail address').fill('nobody@holdfast.example');
    await page.getByLabel('Password').fill('nothing that lets anybody in');
    await page.getByRole('button', { name: 'Sign in', exact: true }).click();
    await expect(page.getByRole('status').filter({ hasText: /let you in|wait/ })).toBeVisible();
    await expect(page.getByText('Demonstration', { exact: true })).toBeVisible();
  },
  how: async (page) => void (await page.goto('/how')),
  'almanac-table': async (page) => {
    await page.goto('/almanac');
    await page.getByRole('link', { name: 'Un-ionised part of ammonia' }).click();
    await expect(page.getByRole('table').first()).toBeVisible();
  },
  'not-found': async (page) => {
    await page.goto('/nowhere');
    await expect(page.getByText('Demonstration', { exact: true })).toBeVisible();
  },
};

for (const [name, open] of Object.entries(SCREENS)) {
  test.describe(name, () => {
    // A screen is opened once and then looked at in every size and light: nothing of it is made for one of them alone.
    let page: Page;

    test.beforeAll(async ({ browser }) => {
      const context = await browser.newContext();
      page = await context.newPage();
      await open(page);
    });

    test.afterAll(async () => page.context().close());

    for (const { device, width } of WIDTHS) {
      test(`${device} width: nothing runs over the edge, folded or open`, async () => {
        await show(page, { width, light: 'light' });
        await setFolds(page, 'folded');
        expect(await page.evaluate(overhang)).toBe(0);
        await setFolds(page, 'open');
        expect(await page.evaluate(overhang)).toBe(0);
      });
    }

    for (const { device, width, light } of JUDGED) {
      test(`${device} width, ${light}: no serious barrier, with everything opened`, async ({
        browserName: _,
      }, info) => {
        await show(page, { width, light });
        await setFolds(page, 'folded');
        await page.screenshot({ path: info.outputPath(`${name}-${device}-${light}.png`), fullPage: true });
        await setFolds(page, 'open');
        const { violations } = await new AxeBuilder({ page }).withTags(STANDARDS).analyze();
        expect(violations.filter(({ impact }) => SERIOUS.has(impact)).map(said)).toEqual([]);
      });
    }
  });
}

async function show(page: Page, { width, light }: { width: number; light: 'light' | 'dark' }): Promise<void> {
  await page.setViewportSize({ width, height: 800 });
  await page.emulateMedia({ colorScheme: light });
}

/** Px by which the page is wider than its window. */
function overhang(): number {
  return document.documentElement.scrollWidth - document.documentElement.clientWidth;
}

test('a keyboard reaches the content at once, and what has the focus is seen', async ({ page }) => {
  await page.goto('/');
  await page.keyboard.press('Tab');
  const skip = page.getByRole('link', { name: 'To the content' });
  await expect(skip).toBeFocused();
  await expect(skip).toBeInViewport();
  await page.keyboard.press('Enter');
  await expect(page).toHaveURL(/#content$/);
  await page.keyboard.press('Tab');
  expect(await page.evaluate(() => getComputedStyle(document.activeElement ?? document.body).outlineStyle)).toBe(
    'solid',
  );
});

test('on paper everything folded is read, and what only a screen needs is gone', async ({ page }) => {
  await page.emulateMedia({ media: 'print' });
  await page.goto('/how');
  await expect(page.getByText('Heater welded on').first()).toBeVisible();
  await expect(page.getByRole('navigation', { name: 'Pages' })).toBeHidden();
  await expect(page.getByText('Holdfast switches nothing and is not a protective device.').first()).toBeVisible();
});

/** Folds everything that can be folded, or opens it: what is folded is judged as well. */
async function setFolds(page: Page, how: 'folded' | 'open'): Promise<void> {
  await page.locator('main details').evaluateAll((folds, isOpen) => {
    for (const fold of folds) fold.toggleAttribute('open', isOpen);
  }, how === 'open');
}

function said({ id, nodes }: { id: string; nodes: { target: unknown }[] }): string {
  return `${id} at ${nodes.map(({ target }) => String(target)).join(', ')}`;
}
