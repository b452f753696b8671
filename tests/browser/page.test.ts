/**
 * The page of a procedure, seen in a real browser: valid, accessible, readable from 360 px on, on paper, without a
 * network and without scripts; ticks that stay, variants that switch, the bench that follows.
 *
 * Outside judges: html-validate, axe-core (WCAG 2.2), Chromium itself.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { procedurePage } from '../../language-server/publish/page/page.ts';
import { openBrowser, openPage } from './browser.ts';
import { sampleDocument } from './sample-document.ts';
import { inaccessibleIn, invalidIn } from './validity.ts';

const FOLDER = resolve(import.meta.dirname, '../../.build/browser');
/** The smallest PNG there is: one grey pixel. */
const PIXEL = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNoAAAAggCBd81ytgAAAABJRU5ErkJggg==',
  'base64',
);
const LINKS = { procedure: () => undefined, machine: () => undefined, check: () => undefined };

const { text, refused } = procedurePage(sampleDocument(), {
  pictures: () => ({ bytes: PIXEL }),
  links: { home: '../index.html', ...LINKS },
});
const file = `${FOLDER}/sample.html`;
const address = pathToFileURL(file).href;

let browser: Browser;
beforeAll(async () => {
  mkdirSync(FOLDER, { recursive: true });
  writeFileSync(file, text);
  browser = await openBrowser();
}, 120_000);
afterAll(() => browser?.close());

const PHONE = { viewport: { width: 360, height: 740 }, hasTouch: true };
const DESK = { viewport: { width: 1280, height: 900 } };

test('it is valid HTML and takes its picture', async () => {
  expect(await invalidIn(text)).toEqual([]);
  expect(refused).toEqual([]);
});

describe('axe-core finds nothing', () => {
  test.each([
    ['phone', PHONE],
    ['desk, dark', { ...DESK, colorScheme: 'dark' as const }],
    ['desk, more contrast', { ...DESK, contrast: 'more' as const }],
  ])('%s', async (_, options) => {
    const { page, troubles, close } = await openPage(browser, address, options);
    expect(await inaccessibleIn(page)).toEqual([]);
    expect(troubles).toEqual([]);
    await close();
  });
});

test('nothing scrolls sideways at 360 px, plain and large', async () => {
  const { page, close } = await openPage(browser, address, PHONE);
  const wide = () => page.evaluate('document.documentElement.scrollWidth');
  expect(await wide()).toBe(360);
  await page.locator('.bench summary').click();
  await page.getByRole('button', { name: 'Large' }).click();
  expect(await wide()).toBe(360);
  await close();
});

test('every box to tick is large enough for a finger (24 px: WCAG 2.2, 2.5.8; 44 px: 2.5.5)', async () => {
  const { page, close } = await openPage(browser, address, PHONE);
  const sizes = (await page.evaluate(
    `[...document.querySelectorAll('.tick, .axis label, button')].map((one) => one.getBoundingClientRect().height)`,
  )) as number[];
  expect(sizes.length).toBeGreaterThan(10);
  expect(Math.min(...sizes)).toBeGreaterThanOrEqual(44);
  await close();
});

test('ticks and entries are there again after a reload, and only for this issue', async () => {
  const { page, troubles, close } = await openPage(browser, address, DESK);
  await page.getByLabel('Step 2.1 done').check();
  await page.getByLabel('end float', { exact: true }).fill('0.2');
  await page.getByLabel('three-phase').check();
  await page.reload();
  expect(await page.getByLabel('Step 2.1 done').isChecked()).toBe(true);
  expect(await page.getByLabel('end float', { exact: true }).inputValue()).toBe('0.2');
  expect(await page.getByLabel('three-phase').isChecked()).toBe(true);
  writeFileSync(
    `${FOLDER}/next.html`,
    procedurePage(
      { ...sampleDocument(), issue: '4' },
      {
        pictures: () => ({ bytes: PIXEL }),
        links: LINKS,
      },
    ).text,
  );
  await page.goto(pathToFileURL(`${FOLDER}/next.html`).href);
  expect(await page.getByLabel('Step 2.1 done').isChecked()).toBe(false);
  expect(troubles).toEqual([]);
  await close();
});

test('a browser that keeps nothing is told so, and the page works', async () => {
  const { page, troubles, close } = await openPage(browser, 'about:blank', DESK);
  await page.addInitScript(
    `Object.defineProperty(window, 'localStorage', { get() { throw new Error('denied'); } })`,
  );
  await page.goto(address);
  await page.getByLabel('Step 1.1 done').check();
  expect(await page.locator('.kept').textContent()).toMatch(/keeps nothing/);
  expect(await page.locator('.bench .progress').textContent()).toBe('1 of 8 steps ticked');
  expect(troubles).toEqual([]);
  await close();
});

test('the bench follows the ticks, and the last count says what is left', async () => {
  const { page, close } = await openPage(browser, address, DESK);
  const bench = () => page.locator('.bench li').allTextContents();
  const says = () => page.locator('#tally-says').textContent();
  expect(await bench()).toEqual(['Nothing.']);
  await page.getByLabel('Step 2.1 done').check();
  expect(await bench()).toEqual(['belt guard off', '6 × guard screws off']);
  await page.getByLabel('Step 2.2 done').check();
  expect((await bench())[2]).toMatch(/drive belt thrown away/);
  expect(await page.locator('.gaps').textContent()).toMatch(/: 1\.1$/);
  await page.getByLabel('Step 2.5.1 done').check();
  expect(await bench()).toHaveLength(2);
  await page.getByLabel('Step 2.5.2 done').check();
  expect(await bench()).toEqual(['Nothing.']);
  await page.evaluate(
    `for (const box of document.querySelectorAll('input[data-step]')) if (!box.checked) box.click()`,
  );
  expect(await says()).toMatch(/^Every step is ticked, and nothing is left on the bench\. Not filled in yet/);
  for (const field of await page.locator('input[data-record]').all()) await field.fill('0.3');
  expect(await says()).toBe('Every step is ticked, and nothing is left on the bench.');
  await page.getByLabel('Step 2.5.2 done').uncheck();
  expect(await says()).toMatch(/1 steps? (is|are) not ticked/);
  await close();
});

test('what depends on a machine that is not chosen, or on what is found, is not asked for', async () => {
  const { page, close } = await openPage(browser, address, DESK);
  const progress = () => page.locator('.bench .progress').textContent();
  const before = Number((await progress())!.split(' ')[2]);
  const choice = page.locator('.choose input[type=radio]').nth(1);
  await choice.check();
  const after = Number((await progress())!.split(' ')[2]);
  expect([before, after]).toEqual([8, 9]);
  await close();
});

test('a reading shows in which row it falls', async () => {
  const { page, close } = await openPage(browser, address, DESK);
  const here = () => page.locator('tr.here th').allTextContents();
  const field = page.getByLabel('end float', { exact: true });
  const falls: [string, string[]][] = [
    ['0.25', ['up to 0.25 mm']],
    ['0,26', ['over 0.25 mm']],
    ['a', []],
    ['', []],
  ];
  for (const [typed, row] of falls) {
    await field.fill(typed);
    expect(await here()).toEqual(row);
  }
  await close();
});

test('variants switch, with and without scripts', async () => {
  for (const javaScriptEnabled of [true, false]) {
    const { page, close } = await openPage(browser, address, { ...DESK, javaScriptEnabled });
    const seen = async () => [
      await page.getByLabel('Step 1.2 done').isVisible(),
      await page.getByLabel('Step 1.3 done').isVisible(),
    ];
    expect(await seen()).toEqual([true, true]);
    await page.getByLabel('three-phase').check();
    expect(await seen()).toEqual([true, false]);
    await page.getByLabel('single-phase').check();
    expect(await seen()).toEqual([false, true]);
    await close();
  }
});

test('without scripts all of it is there, and no control that does nothing', async () => {
  const { page, close } = await openPage(browser, address, { ...DESK, javaScriptEnabled: false });
  expect(await page.locator('button').count()).toBe(0);
  expect(await page.locator('#work').isVisible()).toBe(false);
  await page.getByLabel('Step 1.1 done').check();
  expect(await page.getByRole('heading', { name: 'Hazards at a glance' }).isVisible()).toBe(true);
  await close();
});

test('by keyboard alone: to the job, tick, write, choose', async () => {
  const { page, close } = await openPage(browser, address, DESK);
  await page.keyboard.press('Tab');
  expect(await page.evaluate('document.activeElement.className')).toBe('skip');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Tab');
  expect(await page.evaluate('document.activeElement.dataset.step')).toBe('safe/isolate');
  await page.keyboard.press('Space');
  expect(await page.getByLabel('Step 1.1 done').isChecked()).toBe(true);
  // Every control is reached once, and each shows that it is.
  const reached = new Set<string>();
  for (let at = 0; at < 60; at++) {
    await page.keyboard.press('Tab');
    const here = (await page.evaluate(
      `(() => { const one = document.activeElement; return [one.id || one.textContent, getComputedStyle(one).outlineStyle, one.tagName]; })()`,
    )) as string[];
    if (here[2] === 'BODY') break;
    expect(here[1], here[0]).not.toBe('none');
    if (reached.has(here[0]!)) break;
    reached.add(here[0]!);
  }
  expect([...reached].join()).toMatch(/Print/);
  await close();
});

test('on paper: boxes to tick, everything, no panel', async () => {
  const { page, close } = await openPage(browser, address, DESK);
  await page.emulateMedia({ media: 'print' });
  expect(await page.locator('#work').isVisible()).toBe(false);
  const box = await page.getByLabel('Step 1.1 done').boundingBox();
  expect(box!.width).toBeGreaterThan(14);
  const pdf = await page.pdf({ preferCSSPageSize: true, path: `${FOLDER}/sample.pdf` });
  expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
  await close();
});

test('in forced colours the signal words keep theirs', async () => {
  const { page, close } = await openPage(browser, address, { ...DESK, forcedColors: 'active' });
  const ground = await page.evaluate(
    `getComputedStyle(document.querySelector('.sig-danger .signal')).backgroundColor`,
  );
  expect(ground).toBe('rgb(163, 10, 27)');
  await close();
});

test('the policy lets nothing in', async () => {
  const { page, troubles, close } = await openPage(browser, address, DESK);
  const ran = await page.evaluate(`new Promise((done) => {
    window.ran = [];
    const script = document.createElement('script');
    script.textContent = 'window.ran.push("inline")';
    document.body.append(script);
    const image = document.createElement('img');
    image.onerror = () => done(window.ran);
    image.src = 'https://example.invalid/x.png';
    document.body.append(image);
  })`);
  expect(ran).toEqual([]);
  expect(troubles.filter((one) => /Content Security Policy/.test(one)).length).toBeGreaterThanOrEqual(2);
  expect(troubles.filter((one) => one.startsWith('request'))).toEqual([]);
  await close();
});

test('the file names nothing outside itself', () => {
  const written = readFileSync(file, 'utf8');
  expect(written.match(/(?:src|href|action|url)\s*[=(]\s*["']?(?:https?:|\/\/)/gi)).toBeNull();
});
