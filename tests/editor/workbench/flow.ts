/**
 * What somebody does who works on a procedure with mistakes in it, step after step: reads findings, has one mended,
 * looks at the state, the page, the map and the chart, completes a step, renames across files. At the end the files on
 * the disk are what was typed and chosen, to the letter.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';
import { ROOT, type Workbench } from './workbench.ts';

const demo = (name: string) => readFileSync(join(ROOT, 'procedures/skelder-ferry', name), 'utf8');
export const JOB = 'broken/brake-discs-broken.dowel';
export const MACHINE = 'skelder-winch.dowel';
export const FILES = { [MACHINE]: demo(MACHINE), [JOB]: demo(JOB) };
const TAB = 'brake-discs-broken';

/** Names of pictures begin with it. */
type Step = (bench: Workbench, run: string) => Promise<void>;

const marks: Step = async (bench, run) => {
  await bench.page.waitForSelector('.monaco-editor .squiggly-error');
  await bench.command('View: Focus Problems');
  await bench.problem('The brake cover cannot come off').first().waitFor();
  await bench.status.filter({ hasText: /Dowel:.*9.*\d case/ }).waitFor();
  await bench.shot(`${run}-1-findings`);
};

const hover: Step = async (bench, run) => {
  await bench.goToLine(16, 16);
  const box = bench.page.locator('.monaco-hover:visible', { hasText: 'worked on by' }).first();
  await bench.until(() => bench.command('Show or Focus Hover'), box);
  await bench.shot(`${run}-2-hover`);
  await bench.page.keyboard.press('Escape');
};

const mend: Step = async (bench, run) => {
  const finding = bench.problem('The brake cover cannot come off').first();
  // The first click only shows the place; the text has the focus after the second.
  await bench.until(
    () => finding.dblclick(),
    bench.page.locator('.editor-instance .monaco-editor.focused').first(),
  );
  await bench.at(37);
  const row = bench.page.locator('.action-widget .monaco-list-row', { hasText: 'cover-bolts' }).first();
  await bench.until(() => bench.page.keyboard.press('Control+.'), row);
  await bench.shot(`${run}-3-quick-fix`);
  await expect
    .poll(async () => {
      const focused = (await row.getAttribute('class'))?.includes('focused') ?? false;
      if (!focused) await bench.page.keyboard.press('ArrowDown');
      return focused;
    })
    .toBe(true);
  await bench.page.keyboard.press('Enter');
  await finding.waitFor({ state: 'detached' });
  await bench.line('remove cover-bolts').waitFor();
};

const state: Step = async (bench, run) => {
  await bench.goToLine(40, 5);
  await bench.command('Dowel: Show the State of the Machine at the Cursor');
  const cover = bench.state(/brake cover.*line 38/).first();
  await cover.waitFor();
  await bench.shot(`${run}-4-state`);
  await bench.until(() => cover.click(), bench.page.locator('.statusbar-item', { hasText: /^Ln 38,/ }));
};

const page: Step = async (bench, run) => {
  await bench.command('Dowel: Show the Published Page to the Side');
  const shown = await bench.panel('preview');
  await shown.locator('h1', { hasText: 'Renew discs and seals' }).waitFor();
  await shown.locator('.dowel-here', { hasText: /brake cover/i }).waitFor();
  await shown
    .locator('.step .do', { hasText: /springs/i })
    .last()
    .click();
  await shown.locator('.dowel-here', { hasText: /refit the eight brake springs/i }).waitFor();
  await bench.shot(`${run}-5-page`);
};

const map: Step = async (bench, run) => {
  await bench.show(TAB);
  await bench.goToLine(40, 5);
  await bench.command('Dowel: Show the Map of the Machine');
  const shown = await bench.panel('map');
  await shown.locator('[data-thing="springs"].dowel-here').waitFor();
  await bench.shot(`${run}-6-map`);
  // With the keyboard alone: along the things, then into the text.
  await shown.locator('[data-thing="springs"]').focus();
  await bench.page.keyboard.press('ArrowDown');
  await shown.locator('[data-thing]:focus:not([data-thing="springs"])').waitFor();
  await bench.page.keyboard.press('Enter');
  await bench.tab(MACHINE).waitFor();
};

const chart: Step = async (bench, run) => {
  await bench.show(TAB);
  await bench.goToLine(40, 5);
  await bench.command('Dowel: Show the Chart of Stripping and Rebuilding');
  const shown = await bench.panel('chart');
  await shown.locator('g[data-step][data-thing~="springs"]').first().click();
  await shown.locator('.dowel-here[data-thing~="springs"]').first().waitFor();
  await bench.shot(`${run}-7-chart`);
};

const complete: Step = async (bench, run) => {
  await bench.show(TAB);
  await bench.goToLine(40, 5);
  await bench.page.keyboard.press('End');
  await bench.page.keyboard.press('Enter');
  await bench.at(41, 5);
  await bench.page.keyboard.type('discon');
  const row = bench.page.locator('.suggest-widget .monaco-list-row', { hasText: 'disconnect' }).first();
  await bench.until(() => bench.page.keyboard.press('Control+Space'), row);
  await bench.shot(`${run}-8-completion`);
  await bench.page.keyboard.press('Enter');
  await row.waitFor({ state: 'hidden' });
  await bench.at(41);
  await bench.line('disconnect').waitFor();
  // And away again, the whole line.
  await bench.page.keyboard.press('Escape');
  await bench.page.keyboard.press('Control+Shift+K');
  await bench.at(41);
};

const rename: Step = async (bench) => {
  await bench.goToLine(40, 14);
  const input = bench.page.locator('.rename-box input.rename-input');
  await bench.until(() => bench.page.keyboard.press('F2'), input);
  await input.fill('brake-springs-set');
  await bench.page.keyboard.press('Enter');
  await bench.line('remove brake-springs-set').waitFor();
  await bench.command('File: Save All Files');
};

export const STEPS = { marks, hover, mend, state, page, map, chart, complete, rename } as const;

/** What the files must hold after all steps. */
export function expected(): { job: string; machine: string } {
  const renamed = (text: string) =>
    text.replace(/^( *(?:part|remove|refit|under brake-cover,)) springs\b/gm, '$1 brake-springs-set');
  const mended = FILES[JOB].replace(/^( *)(remove brake-cover)/m, '$1remove cover-bolts\n$1$2');
  return { job: renamed(mended), machine: renamed(FILES[MACHINE]) };
}
