/**
 * The pictures of README.md, from the editor as it is now. They go to `.build/editor`; `npm run pictures` puts them
 * where README shows them. Lossy, for a picture of letters in WebP is a third of a PNG.
 */
import { mkdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FILES, JOB } from './flow.ts';
import { ROOT, SHOTS, startWorkbench, type Workbench } from './workbench.ts';

const FOLDER = process.env.DOWEL_PICTURES ? join(ROOT, process.env.DOWEL_PICTURES) : SHOTS;
/** kB. README is read over slow lines, too. */
const MOST = 80;

describe('pictures', () => {
  let bench: Workbench;
  beforeAll(async () => {
    bench = await startWorkbench({
      files: FILES,
      settings: { 'workbench.activityBar.location': 'hidden', 'breadcrumbs.enabled': false },
      size: { width: 1100, height: 680 },
    });
    await bench.open(JOB);
    await bench.page.waitForSelector('.monaco-editor .squiggly-error');
    await bench.page.locator('.codelens-decoration', { hasText: 'found' }).first().waitFor();
  });
  afterAll(() => bench?.close());

  async function picture(name: string): Promise<void> {
    const session = await bench.page.context().newCDPSession(bench.page);
    const { data } = await session.send('Page.captureScreenshot', { format: 'webp', quality: 55 });
    mkdirSync(FOLDER, { recursive: true });
    const file = join(FOLDER, `${name}.webp`);
    writeFileSync(file, Buffer.from(data, 'base64'));
    expect(statSync(file).size / 1024).toBeLessThan(MOST);
  }

  it('findings in the text and in the problem list', async () => {
    await bench.command('View: Focus Problems');
    await bench.problem('The brake cover cannot come off').first().click();
    await bench.at(37);
    await bench.status.filter({ hasText: /9.*1 case/ }).waitFor();
    await picture('findings');
    await bench.shot('picture-findings');
  });

  it('the page beside the text', async () => {
    await bench.page.keyboard.press('Control+J');
    await bench.page.locator('.markers-panel').waitFor({ state: 'hidden' });
    await bench.show('brake-discs-broken');
    await bench.goToLine(37, 5);
    await bench.command('Dowel: Show the State of the Machine at the Cursor');
    await bench
      .state(/hydraulic motor.*line 33/)
      .first()
      .waitFor();
    await bench.show('brake-discs-broken');
    await bench.command('Dowel: Show the Published Page to the Side');
    const page = await bench.panel('preview');
    await page.locator('.dowel-here', { hasText: /brake cover/i }).waitFor();
    await picture('page');
    await bench.shot('picture-page');
  });
});
