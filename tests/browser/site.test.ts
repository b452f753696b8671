/**
 * The site around the pages: index with its search, machines, checks. Built from the demo machines and every check
 * there is. Outside judges: html-validate, axe-core, Chromium.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, posix, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ALL_CHECKS } from '../../language-server/checks/all.ts';
import { buildModel } from '../../language-server/model/build.ts';
import { Loader } from '../../language-server/model/names.ts';
import { memoryHost } from '../../language-server/project/project.ts';
import { machineSheet } from '../../language-server/publish/site/machine-facts.ts';
import { siteOf } from '../../language-server/publish/site/site.ts';
import { pageWords } from '../../language-server/publish/words/page-words.ts';
import { openBrowser, openPage } from './browser.ts';
import { sampleDocument } from './sample-document.ts';
import { inaccessibleIn, invalidIn } from './validity.ts';

const ROOT = resolve(import.meta.dirname, '../..');
const FOLDER = `${ROOT}/.build/browser/site`;
const MACHINE = 'procedures/tarnbrook/tarnbrook-t40.dowel';

function machine() {
  const loader = new Loader(memoryHost({ [MACHINE]: readFileSync(`${ROOT}/${MACHINE}`, 'utf8') }));
  const file = loader.load(MACHINE)!;
  const { model } = buildModel(file.machines[0], file, loader.visible(file));
  return { sheet: machineSheet(model, pageWords('en-GB').kinds), file: 'tarnbrook/tarnbrook-t40.dowel' };
}

const { files, refused } = siteOf({
  language: 'en-GB',
  procedures: [{ document: sampleDocument(), file: 'mill/renew-belt.dowel' }],
  machines: [machine()],
  checks: ALL_CHECKS,
  pictures: () => ({ refused: 'is not there' }),
});
const addressOf = (page: string) => pathToFileURL(`${FOLDER}/${page}`).href;

let browser: Browser;
beforeAll(async () => {
  for (const [address, text] of files) {
    mkdirSync(dirname(`${FOLDER}/${address}`), { recursive: true });
    writeFileSync(`${FOLDER}/${address}`, text);
  }
  browser = await openBrowser();
}, 120_000);
afterAll(() => browser?.close());

const PHONE = { viewport: { width: 360, height: 740 } };
const KINDS = [
  'index.html',
  'checks/index.html',
  'checks/still-held.html',
  'machines/tarnbrook/tarnbrook-t40.html',
];

test('every page is there at its stable address', () => {
  expect([...files.keys()]).toEqual(
    expect.arrayContaining([...KINDS, 'procedures/mill/renew-belt.html', '.dowel-site']),
  );
  expect(files.size).toBe(ALL_CHECKS.length + 5);
  expect(refused).toMatchObject([{ file: 'belt.png' }]);
});

test('every page is valid HTML', async () => {
  const wrong: string[] = [];
  for (const [address, text] of files) {
    if (!address.endsWith('.html')) continue;
    // The style is the same on all pages: read on some of them, it is left out on the others.
    const read = KINDS.includes(address) ? text : text.replace(/(<style>)[^<]*/g, '$1');
    wrong.push(...(await invalidIn(read)).map((one) => `${address} ${one}`));
  }
  expect(wrong).toEqual([]);
});

test('every link leads to a page and a mark that are there', () => {
  const lost: string[] = [];
  let links = 0;
  for (const [address, text] of files)
    for (const [, href = ''] of text.matchAll(/ href="([^"]*)"/g)) {
      const [path = '', mark] = href.split('#').map(decodeURIComponent);
      const target = path === '' ? address : posix.join(posix.dirname(address), path);
      const found = files.get(target);
      links += 1;
      if (found === undefined || (mark !== undefined && !found.includes(` id="${mark}"`)))
        lost.push(`${address}: ${href}`);
    }
  expect(lost).toEqual([]);
  expect(links).toBeGreaterThan(400);
});

describe('in the browser', () => {
  test.each(KINDS)('%s: axe-core finds nothing, nothing scrolls sideways', async (address) => {
    const { page, troubles, close } = await openPage(browser, addressOf(address), PHONE);
    expect(await inaccessibleIn(page)).toEqual([]);
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(360);
    expect(troubles).toEqual([]);
    await close();
  });

  test('the search narrows down, by parts and by tools, and says so', async () => {
    const { page, close } = await openPage(browser, addressOf('index.html'), PHONE);
    const field = page.getByLabel('Search', { exact: true });
    const shown = () => page.locator('[data-words]:visible a').allTextContents();
    expect(await shown()).toHaveLength(2);
    const asked: [string, RegExp, RegExp][] = [
      ['ml-7', /^Renew the belt of the mill$/, /Found: 1/],
      ['GRAIN mi', /^Renew the belt of the mill$/, /Found: 1/],
      ['valve plate', /^Tarnbrook/, /Found: 1/],
      ['flux capacitor', /^$/, /Nothing found/],
    ];
    for (const [typed, found, says] of asked) {
      await field.fill(typed);
      expect((await shown()).join()).toMatch(found);
      expect(await page.locator('#search-says').textContent()).toMatch(says);
    }
    await field.fill('');
    expect(await shown()).toHaveLength(2);
    await close();
  });

  test('from the index to a procedure and back', async () => {
    const { page, close } = await openPage(browser, addressOf('index.html'), PHONE);
    await page.getByRole('link', { name: 'Renew the belt of the mill' }).click();
    expect(await page.title()).toMatch(/^Renew the belt of the mill · grain mill · ML-7$/);
    await page.getByRole('link', { name: 'All procedures' }).click();
    expect(await page.title()).toBe('Repair procedures');
    await close();
  });
});
