/**
 * The packed extension in a real editor, used by somebody who works: reads findings, has them mended, looks at the
 * state, the page and the map, renames. In the second part the language server is killed in the middle.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { ROOT, startWorkbench, type Workbench } from './workbench.ts';

const demo = (name: string) => readFileSync(join(ROOT, 'procedures/skelder-ferry', name), 'utf8');
const JOB = 'broken/brake-discs-broken.dowel';

describe('at work', () => {
  let bench: Workbench;
  beforeAll(async () => {
    bench = await startWorkbench({
      files: { 'skelder-winch.dowel': demo('skelder-winch.dowel'), [JOB]: demo(JOB) },
    });
  });
  afterEach(({ task }) => (task.result?.state === 'fail' ? bench?.shot('failed') : undefined));
  afterAll(() => bench?.close());

  it('marks what is wrong in the text, in the problem list and in the status line', async () => {
    await bench.open(JOB);
    await bench.page.waitForSelector('.monaco-editor .squiggly-error', { timeout: 90_000 });
    await bench.page.keyboard.press('Control+Shift+M');
    await bench.problem('The brake cover cannot come off').first().waitFor();
    await bench.status.filter({ hasText: /Dowel:.*9.*\d case/ }).waitFor();
    await bench.shot('1-findings');
  });

  it('says what a thing is where the pointer rests', async () => {
    const word = bench.page.locator('.view-line span', { hasText: 'pump-isolator' }).first();
    await word.hover();
    await bench.page.locator('.monaco-hover', { hasText: 'pump isolator' }).first().waitFor();
    await bench.shot('2-hover');
    await bench.page.keyboard.press('Escape');
  });

  it('mends a finding by the keyboard, and the finding goes', async () => {
    await bench.problem('The brake cover cannot come off').first().dblclick();
    await bench.page.locator('[class*="codicon-light-bulb"], [class*="lightbulb"]').first().waitFor();
    await bench.page.keyboard.press('Control+.');
    const row = bench.page.locator('.action-widget .monaco-list-row', { hasText: 'cover-bolts' }).first();
    await row.waitFor({ timeout: 60_000 });
    await bench.shot('3-quick-fix');
    for (let key = 0; key < 10 && !(await row.getAttribute('class'))?.includes('focused'); key++)
      await bench.page.keyboard.press('ArrowDown');
    await bench.page.keyboard.press('Enter');
    await bench.problem('The brake cover cannot come off').first().waitFor({ state: 'detached' });
    await bench.page
      .locator('.view-line', { hasText: /remove.cover-bolts/ })
      .first()
      .waitFor();
  });

  it('shows the machine at the cursor, and leads to the step that made it so', async () => {
    await bench.goToLine(40, 5);
    await bench.command('Dowel: Show the State of the Machine at the Cursor');
    await bench
      .state(/brake cover/)
      .first()
      .waitFor();
    await bench.shot('4-state');
    await bench
      .state(/brake cover/)
      .first()
      .click();
    await bench.page.locator('.statusbar-item', { hasText: /^Ln 38,/ }).waitFor();
  });

  it('shows the page beside the text; each follows the other', async () => {
    await bench.command('Dowel: Show the Published Page to the Side');
    const page = await bench.panel('preview');
    await page.locator('h1', { hasText: 'Renew discs and seals' }).waitFor({ timeout: 60_000 });
    await page.locator('.dowel-here', { hasText: /brake cover/i }).waitFor();
    await page
      .locator('.step .do', { hasText: /springs/i })
      .last()
      .click();
    await page.locator('.dowel-here', { hasText: /refit the eight brake springs/i }).waitFor();
    await bench.shot('5-page');
  });

  it('shows the map and the chart, each leading into the text', async () => {
    await bench.page.locator('.tab', { hasText: 'brake-discs-broken' }).click();
    await bench.goToLine(40, 5);
    await bench.command('Dowel: Show the Map of the Machine');
    const map = await bench.panel('map');
    await map.locator('[data-thing="springs"].dowel-here').waitFor({ timeout: 60_000 });
    await bench.shot('6-map');
    // With the keyboard alone: along the things, then into the text.
    await map.locator('[data-thing="springs"]').focus();
    await bench.page.keyboard.press('ArrowDown');
    await bench.page.keyboard.press('Enter');
    await bench.page.locator('.tab.active', { hasText: 'skelder-winch.dowel' }).waitFor();

    await bench.page.locator('.tab', { hasText: 'brake-discs-broken' }).click();
    await bench.command('Dowel: Show the Chart of Stripping and Rebuilding');
    const chart = await bench.panel('chart');
    await chart.locator('g[data-step][data-thing~="springs"]').first().click({ timeout: 60_000 });
    await chart.locator('.dowel-here[data-thing~="springs"]').first().waitFor();
    await bench.shot('7-chart');
  });

  it('completes a step', async () => {
    await bench.page.locator('.tab', { hasText: 'brake-discs-broken' }).click();
    await bench.goToLine(40, 5);
    await bench.page.keyboard.press('End');
    await bench.page.keyboard.press('Enter');
    await bench.page.keyboard.type('discon', { delay: 60 });
    await bench.page
      .locator('.suggest-widget .monaco-list-row', { hasText: 'disconnect' })
      .first()
      .waitFor({ timeout: 60_000 });
    await bench.shot('8-completion');
    await bench.page.keyboard.press('Escape');
    for (let key = 0; key < 'discon'.length; key++) await bench.page.keyboard.press('Backspace');
  });

  it('comes back when the server is killed, with all that was typed', async () => {
    const [before] = bench.languageServers();
    expect(before).toBeDefined();
    process.kill(before!, 'SIGKILL');
    await bench.page.keyboard.type('remove no-such-thing');
    await bench.page
      .locator('.notification-toast', { hasText: 'Nothing you typed is lost' })
      .waitFor({ timeout: 60_000 });
    await bench.problem('no-such-thing').first().waitFor({ timeout: 90_000 });
    await bench.shot('9-server-back');
    expect(bench.languageServers().filter((one) => one !== before)).toHaveLength(1);
    await bench.page.keyboard.press('Control+S');
    await expect.poll(() => bench.text(JOB)).toContain('remove no-such-thing');
    await bench.page.keyboard.press('Control+Shift+K');
    await bench.problem('no-such-thing').first().waitFor({ state: 'detached', timeout: 60_000 });
  });

  it('renames across files', async () => {
    await bench.goToLine(40, 14);
    await bench.page.keyboard.press('F2');
    const input = bench.page.locator('.rename-box input.rename-input');
    await input.waitFor({ timeout: 60_000 });
    await input.fill('brake-springs-set');
    await bench.page.keyboard.press('Enter');
    await bench.page
      .locator('.view-line', { hasText: /remove.brake-springs-set/ })
      .first()
      .waitFor();
    await bench.command('File: Save All Files');
    await expect.poll(() => bench.text('skelder-winch.dowel')).toContain('part brake-springs-set');
    expect(bench.text(JOB)).toContain('refit brake-springs-set');
  });

  it('sends nothing to any other machine', () => {
    // What the workbench itself would ask its maker for is refused; Dowel adds nothing to it.
    expect(bench.refused.filter((url) => /dowel/i.test(url))).toEqual([]);
  });
});
