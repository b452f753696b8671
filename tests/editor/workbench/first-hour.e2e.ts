/**
 * The first hour: an empty folder, and nothing but what the walkthrough and its samples offer. Somebody describes a
 * machine of their own, has a procedure written from it and writes another one from the sample, sees what a mistake
 * brings, and ends with a machine and procedures without findings, and a page that opens by itself.
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

  /** A step of the walkthrough, and its button. */
  async function follow(step: string, button: string): Promise<void> {
    await bench.show('Walkthrough');
    await bench.until(
      () => bench.page.locator('.getting-started-step', { hasText: step }).click(),
      bench.page.locator('.getting-started-step.expanded', { hasText: step }),
    );
    await bench.page.locator('.getting-started-step.expanded .monaco-button', { hasText: button }).click();
  }

  /** Takes the name that is proposed. */
  async function name(proposed: string): Promise<void> {
    await expect.poll(() => bench.input.inputValue()).toBe(proposed);
    // The walkthrough may have taken the focus while it loads: a person clicks into the field then.
    await bench.input.press('Enter');
    await bench.tab(proposed).waitFor();
  }

  /** Fills the fields of a sample, from the first to the last. */
  async function fill(first: string, fields: readonly string[]): Promise<void> {
    await bench.line(first).waitFor();
    for (const field of fields) {
      await bench.page.keyboard.type(field);
      await bench.page.keyboard.press('Tab');
    }
  }

  const clean = () => bench.status.filter({ hasText: /no findings/ }).waitFor();
  const save = async (file: string, part: string) => {
    await bench.page.keyboard.press('Control+S');
    await expect.poll(() => bench.text(file)).toContain(part);
  };

  it('shows the way from the welcome page', async () => {
    await bench.command('Welcome: Open Walkthrough...');
    await bench.input.fill('Your first');
    await bench.page
      .locator('.quick-input-list .monaco-list-row', { hasText: 'Your first procedure' })
      .first()
      .click();
    await bench.page.locator('.getting-started-step.expanded', { hasText: 'Describe the machine' }).waitFor();
    await expect
      .poll(async () => {
        const shown = bench.page
          .frames()
          .map((frame) => frame.locator('body').textContent({ timeout: 1_000 }));
        return (await Promise.allSettled(shown)).some(
          (one) => one.status === 'fulfilled' && one.value?.includes('what must come off first'),
        );
      })
      .toBe(true);
    await bench.shot('first-hour-1-walkthrough');
  });

  it('describes a machine of its own', async () => {
    await follow('Describe the machine', 'New machine file');
    await name('machine.dowel');
    await fill('machine bench-fan', [
      'belt-sander',
      'Belt sander',
      'frame',
      'frame',
      'belt-guard',
      'belt guard',
      'guard-screws',
      'drive-roller',
      'drive roller',
      'guard screws',
      '6',
      '3',
      '400',
    ]);
    await clean();
    await bench.shot('first-hour-2-machine');
    await save('machine.dowel', 'machine belt-sander "Belt sander"');
    expect(bench.text('machine.dowel')).toContain(
      'part drive-roller "drive roller" on frame  under belt-guard',
    );
    expect(bench.text('machine.dowel')).not.toMatch(/fan|blade|housing/);
  });

  it('has a procedure written from the machine', async () => {
    await follow('Write the procedure', 'New procedure file');
    const row = bench.page.locator('.quick-input-list .monaco-list-row', { hasText: 'drive roller' });
    await row.waitFor();
    await bench.shot('first-hour-3-choose');
    await row.click();
    await name('renew-drive-roller.dowel');
    await bench.line('isolate mains').waitFor();
    await clean();
    await bench.shot('first-hour-4-written');
    expect(bench.text('renew-drive-roller.dowel')).toMatch(
      /prove mains safe[\s\S]*unbolt belt-guard[\s\S]*refit drive-roller/,
    );
  });

  it('sees what a step left out brings, and takes it back', async () => {
    const text = bench.text('renew-drive-roller.dowel');
    const line = text.split('\n').findIndex((one) => one.includes('unbolt belt-guard')) + 1;
    await bench.goToLine(line, 5);
    await bench.page.keyboard.press('Control+Shift+K');
    await bench.command('View: Focus Problems');
    await bench
      .problem('The drive roller cannot be reached: the belt guard is in the way.')
      .first()
      .waitFor();
    await bench.shot('first-hour-5-finding');
    await bench.page.locator('.editor-instance .view-line').first().click();
    await bench.page.keyboard.press('Control+Z');
    await clean();
    await save('renew-drive-roller.dowel', 'unbolt belt-guard');
    expect(bench.text('renew-drive-roller.dowel')).toBe(text);
  });

  it('writes another one from the sample, about its own machine', async () => {
    await bench.command('Dowel: New Procedure File');
    await bench.page.locator('.quick-input-list .monaco-list-row', { hasText: 'Something else' }).click();
    await name('procedure.dowel');
    await bench.line('for belt-sander').waitFor();
    await fill('use "machine.dowel"', [
      'machine.dowel',
      'clean-roller',
      'Clean the drive roller',
      'belt-sander',
      'P-001',
      '20',
      'sander',
      '400',
      'guard-screws',
      'belt-guard',
      'drive-roller',
      'The belt runs quietly and stays in the middle.',
    ]);
    await clean();
    await bench.shot('first-hour-6-sample');
    await save('procedure.dowel', 'clean drive-roller');
    expect(bench.text('procedure.dowel')).not.toMatch(/fan|blade|housing|230/);
  });

  it('looks at the machine and at the page, and saves the page', async () => {
    await bench.goToLine(
      bench
        .text('procedure.dowel')
        .split('\n')
        .findIndex((one) => /clean drive/.test(one)) + 1,
      5,
    );
    await bench.command('Dowel: Show the State of the Machine at the Cursor');
    await bench.state('belt guard').first().waitFor();
    await bench.command('Dowel: Show the Published Page to the Side');
    const page = await bench.panel('preview');
    await page.locator('.dowel-here', { hasText: /clean the drive roller/i }).waitFor();
    await bench.shot('first-hour-7-page');
    await bench.show('procedure.dowel');
    await bench.command('Dowel: Save the Procedure as a Page…');
    await expect.poll(() => bench.input.inputValue()).toMatch(/procedure\.html$/);
    await bench.page.keyboard.press('Enter');
    await bench.page.locator('.notification-toast', { hasText: 'procedure.html' }).waitFor();
    const saved = bench.text('procedure.html');
    expect(saved).toMatch(/^<!DOCTYPE html>/);
    expect(saved).toContain('Clean the drive roller');
    expect(saved).toContain('400');
  });
});
