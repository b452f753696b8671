/**
 * One real browser for all tests of a file, with nothing between page and test: what a page logs, asks of the network
 * or opens is noted and told.
 */
import sparticuz from '@sparticuz/chromium';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';

export async function openBrowser(): Promise<Browser> {
  const executablePath = process.env.CHROME_PATH ?? (await sparticuz.executablePath());
  // In one process, closing one page would end them all.
  const args = sparticuz.args.filter((arg) => arg !== '--single-process');
  return chromium.launch({ executablePath, args, headless: true });
}

export interface Watched {
  page: Page;
  /** Errors, refused loads, dialogs, windows, requests to anything but files. */
  troubles: string[];
  close(): Promise<void>;
}

export async function openPage(
  browser: Browser,
  address: string,
  options: BrowserContextOptions = {},
): Promise<Watched> {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  const troubles: string[] = [];
  page.on('pageerror', (error) => troubles.push(`error: ${error.message}`));
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') troubles.push(`log: ${message.text()}`);
  });
  page.on('dialog', (dialog) => {
    troubles.push(`dialog: ${dialog.message()}`);
    void dialog.dismiss();
  });
  const asked = (url: string, how: string) => {
    if (!/^(file|data):/.test(url)) troubles.push(`request: ${url} ${how}`);
  };
  page.on('requestfinished', (request) => asked(request.url(), 'answered'));
  page.on('requestfailed', (request) => {
    const how = request.failure()?.errorText ?? '';
    // What the page's own policy stops never leaves the browser.
    if (how !== 'csp') asked(request.url(), how);
  });
  context.on('page', () => troubles.push('a window was opened'));
  await page.goto(address);
  return { page, troubles, close: () => context.close() };
}
