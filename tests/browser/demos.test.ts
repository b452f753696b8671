/**
 * `dowel publish` on the demo procedures, and the site it writes, in a real browser. What is meant to be broken is held
 * back, and with --allow-findings it carries its findings on top. Outside judges: html-validate, axe-core, Chromium.
 */
import { existsSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { posix, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { publish } from '../../language-server/cli/publish.ts';
import { openBrowser, openPage } from './browser.ts';
import { inaccessibleIn, invalidIn } from './validity.ts';

const FOLDER = resolve(import.meta.dirname, '../../.build/browser/demos');
const DEMOS = 'procedures';
const at = (address: string) => pathToFileURL(`${FOLDER}/${address}`).href;

let browser: Browser;
let code = -1;
beforeAll(async () => {
  rmSync(FOLDER, { recursive: true, force: true });
  code = publish(DEMOS, { out: FOLDER });
  browser = await openBrowser();
}, 120_000);
afterAll(() => browser?.close());

/** Addresses of the pages below a folder of the site. */
function pages(folder: string): string[] {
  return readdirSync(`${FOLDER}/${folder}`, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.html'))
    .map((name) => posix.join(folder, name.split('\\').join('/')))
    .sort();
}

const PHONE = { viewport: { width: 360, height: 740 } };

test('what checks clean is there, what does not is held back', () => {
  expect(code).toBe(1);
  expect(pages('procedures')).toEqual(
    expect.arrayContaining([
      'procedures/quenby-centrifuge/drive-board.html',
      'procedures/skelder-ferry/brake-discs.html',
      'procedures/tarnbrook/overhaul.html',
      'procedures/tarnbrook/valve-plate.html',
      'procedures/ullock-sprayer/make-safe.html',
      'procedures/ullock-sprayer/renew-valves.html',
    ]),
  );
  expect(pages('procedures').filter((address) => address.includes('broken'))).toEqual([]);
  expect(readFileSync(`${FOLDER}/index.html`, 'utf8')).not.toMatch(/with mistakes/);
});

test('every page is valid HTML, and tells no path of this machine', async () => {
  for (const address of [...pages('procedures'), ...pages('machines'), 'index.html']) {
    const text = readFileSync(`${FOLDER}/${address}`, 'utf8');
    expect(await invalidIn(text), address).toEqual([]);
    expect(text.includes(process.cwd()), address).toBe(false);
  }
});

test('every link leads somewhere', () => {
  const lost: string[] = [];
  for (const address of [...pages('procedures'), ...pages('machines'), 'index.html']) {
    const text = readFileSync(`${FOLDER}/${address}`, 'utf8');
    for (const [, href = ''] of text.matchAll(/ href="([^"]*)"/g)) {
      const [path = '', mark] = href.split('#').map(decodeURIComponent);
      const target = path === '' ? address : posix.join(posix.dirname(address), path);
      const there = existsSync(`${FOLDER}/${target}`);
      const marked =
        mark === undefined || (there && readFileSync(`${FOLDER}/${target}`, 'utf8').includes(`id="${mark}"`));
      if (!there || !marked) lost.push(`${address}: ${href}`);
    }
  }
  expect(lost).toEqual([]);
});

test('a procedure leads to the one that it uses', async () => {
  const { page, close } = await openPage(browser, at('procedures/ullock-sprayer/renew-valves.html'));
  await page.locator('a[href$="/make-safe.html"]').first().click();
  expect(await page.title()).toMatch(/^Make the spray circuit safe/);
  await close();
});

test('nothing scrolls sideways at 360 px, and nothing goes wrong', async () => {
  const wide: string[] = [];
  const { page, troubles, close } = await openPage(browser, at('index.html'), PHONE);
  for (const address of [...pages('procedures'), ...pages('machines'), 'index.html']) {
    await page.goto(at(address));
    const width = await page.evaluate('document.documentElement.scrollWidth');
    if (width !== 360) wide.push(`${address}: ${width}`);
  }
  expect(wide).toEqual([]);
  expect(troubles).toEqual([]);
  await close();
});

describe('axe-core finds nothing', () => {
  // At one width; `page.test.ts` has the other looks.
  test('on every page of a demo', async () => {
    const found: string[] = [];
    const { page, close } = await openPage(browser, at('index.html'), PHONE);
    // Of each demo one procedure and its machine: more of the same templates would only take time.
    const first = new Map(
      pages('procedures')
        .toReversed()
        .map((one) => [posix.dirname(one), one]),
    );
    first.set('procedures/tarnbrook', 'procedures/tarnbrook/valve-plate.html');
    for (const address of [...first.values(), ...pages('machines'), 'index.html']) {
      await page.goto(at(address));
      for (const one of await inaccessibleIn(page)) found.push(`${address}: ${one}`);
    }
    expect(found).toEqual([]);
    await close();
  }, 120_000);
});

test('a variant that is chosen takes the bars of the others out of the chart', async () => {
  const { page, close } = await openPage(browser, at('procedures/ullock-sprayer/renew-valves.html'));
  const bar = (thing: string) => page.locator(`.dowel-chart g[data-thing~="${thing}"]`);
  expect([await bar('clutch').isVisible(), await bar('drive-shaft').isVisible()]).toEqual([true, true]);
  await page.getByLabel('engine', { exact: true }).check();
  expect([await bar('clutch').isVisible(), await bar('drive-shaft').isVisible()]).toEqual([true, false]);
  await page.getByLabel('shaft', { exact: true }).check();
  expect([await bar('clutch').isVisible(), await bar('drive-shaft').isVisible()]).toEqual([false, true]);
  // The table behind the fold goes with them.
  await page.locator('.drawing details summary').first().click();
  const row = (thing: string) => page.locator(`.drawn tr[data-thing="${thing}"]`).first();
  expect([await row('clutch').isVisible(), await row('drive-shaft').isVisible()]).toEqual([false, true]);
  await close();
});

test('on paper a map has its words, and no drawing is wider than the sheet (A4 less margins: 180 mm, 680 px)', async () => {
  const { page, close } = await openPage(browser, at('machines/tarnbrook/tarnbrook-t40.html'), {
    viewport: { width: 680, height: 960 },
  });
  expect(await page.locator('.map-words li').first().isVisible()).toBe(false);
  await page.emulateMedia({ media: 'print' });
  expect(await page.locator('.map-words li').first().isVisible()).toBe(true);
  const wide = await page.evaluate(
    `[...document.querySelectorAll('svg')].filter((svg) => svg.getBoundingClientRect().right > innerWidth).length`,
  );
  expect(wide).toBe(0);
  await close();
});

test('every page that shows hazardous work carries the cautions, and every list says when it has nothing', () => {
  for (const address of [...pages('procedures'), ...pages('machines'), 'index.html']) {
    const text = readFileSync(`${FOLDER}/${address}`, 'utf8');
    expect(text, address).toContain(
      'Laws, local codes, permits and the rules of the site come before this text.',
    );
    expect(text, address).toContain('licensed or certified people');
    if (!address.startsWith('procedures/')) continue;
    for (const id of [
      'waste',
      'troubles',
      'waivers',
      'changes',
      'left-at-end',
      'tally',
      'consumables',
      'hazards',
    ])
      expect(text, `${address}: ${id}`).toMatch(
        new RegExp(`<h3 id="${id}">[^<]+</h3>(?:<p class="none">[^<]+</p>|<(?!p class="none")|\\s*<)`),
      );
  }
});

test('ticking a whole job leaves nothing on the bench', async () => {
  for (const address of [
    'procedures/skelder-ferry/brake-discs.html',
    'procedures/tarnbrook/valve-plate.html',
  ]) {
    const { page, close } = await openPage(browser, at(address));
    const most = await page.evaluate(`(() => {
      let most = 0;
      for (const box of document.querySelectorAll('input[data-step]')) {
        // The way of the work when all is found right.
        if (!box.closest('.way')) box.click();
        most = Math.max(most, Number(document.querySelector('.bench .count').textContent));
      }
      return most;
    })()`);
    expect(most).toBeGreaterThan(8);
    expect(await page.locator('#tally-says').textContent(), address).toMatch(/Every step is ticked/);
    await close();
  }
});

test('with --allow-findings every page with findings has them on top', async () => {
  const out = `${FOLDER}-all`;
  rmSync(out, { recursive: true, force: true });
  expect(publish(`${DEMOS}/skelder-ferry`, { out, allowFindings: true })).toBe(0);
  const address = pathToFileURL(`${out}/procedures/broken/brake-discs-broken.html`).href;
  const { page, close } = await openPage(browser, address, PHONE);
  expect(await page.locator('.warned h2').textContent()).toBe('This procedure has findings');
  expect(await page.locator('.warned li').count()).toBeGreaterThan(5);
  const [warned, before] = await Promise.all(
    ['.warned', '#before'].map(async (one) => (await page.locator(one).boundingBox())!.y),
  );
  expect(warned).toBeLessThan(before!);
  await page.locator('.warned a').first().click();
  expect(page.url()).toMatch(/checks\/[a-z-]+\.html$/);
  await close();
});
