/**
 * The first hour: an empty folder, and nothing but the walkthrough and its snippets. At its end there is a machine and
 * a procedure without findings, and a page that opens by itself.
 */
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { startWorkbench, type Workbench } from './workbench.ts';

describe('the first hour', () => {
  let bench: Workbench;
  beforeAll(async () => {
    bench = await startWorkbench({ files: {} });
  });
  afterEach(({ task }) => (task.result?.state === 'fail' ? bench?.shot('failed-first-hour') : undefined));
  afterAll(() => bench?.close());

  /** A file by its command, filled in as it comes. */
  async function make(title: string, name: string): Promise<void> {
    await bench.command(title);
    const input = bench.page.locator('.quick-input-widget input.input');
    await expect.poll(() => input.inputValue(), { timeout: 60_000 }).toBe(name);
    await bench.page.keyboard.press('Enter');
    await bench.page.locator('.tab.active', { hasText: name }).waitFor({ timeout: 60_000 });
    await bench.page
      .locator('.view-line', { hasText: /bench-fan/ })
      .first()
      .waitFor({ timeout: 60_000 });
    await bench.page.keyboard.press('Escape');
    await bench.page.keyboard.press('Control+S');
  }

  it('shows the way from the welcome page', async () => {
    await bench.command('Welcome: Open Walkthrough...');
    const input = bench.page.locator('.quick-input-widget input.input');
    await input.fill('Your first machine');
    await bench.page
      .locator('.quick-input-list .monaco-list-row', { hasText: 'Your first machine and procedure' })
      .first()
      .click({ timeout: 60_000 });
    await bench.page
      .locator('.getting-started-step', { hasText: 'Describe the machine' })
      .first()
      .waitFor({ timeout: 60_000 });
    await bench.shot('first-hour-1-walkthrough');
  });

  it('makes a machine and a procedure that check clean', async () => {
    await make('Dowel: New Machine File', 'machine.dowel');
    await make('Dowel: New Procedure File', 'procedure.dowel');
    await bench.status.filter({ hasText: /no findings/ }).waitFor({ timeout: 60_000 });
    await bench.shot('first-hour-2-clean');
    await expect.poll(() => bench.text('procedure.dowel')).toContain('remove guard-screws');
    expect(bench.text('machine.dowel')).toContain('machine bench-fan');
  });

  it('saves the page', async () => {
    await bench.command('Dowel: Save the Procedure as a Page…');
    const input = bench.page.locator('.quick-input-widget input.input');
    await expect.poll(() => input.inputValue(), { timeout: 60_000 }).toMatch(/procedure\.html$/);
    await bench.page.keyboard.press('Enter');
    await bench.page
      .locator('.notification-toast', { hasText: 'procedure.html' })
      .waitFor({ timeout: 60_000 });
    const page = bench.text('procedure.html');
    expect(page).toMatch(/^<!DOCTYPE html>/);
    expect(page).toContain('Clean the blade wheel');
    expect(page).toContain('230');
  });
});
