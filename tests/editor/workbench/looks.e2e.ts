/**
 * How it looks in the four kinds of themes: pictures to be looked at, and the contrast of text and ground in the panels
 * measured (axe-core, WCAG 2.2, 1.4.3). Every panel is gone through with the keys alone: what has the focus has a ring.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Frame } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { FILES, JOB } from './flow.ts';
import { startWorkbench, type Workbench } from './workbench.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
/** What the editor calls each, and what it writes on itself and on the page in a panel. */
const THEMES = {
  light: ['Default Light Modern', 'vs', 'vscode-light'],
  dark: ['Default Dark Modern', 'vs-dark', 'vscode-dark'],
  'contrast-dark': ['Default High Contrast', 'hc-black', 'vscode-high-contrast'],
  'contrast-light': ['Default High Contrast Light', 'hc-light', 'vscode-high-contrast-light'],
} as const;
const COMMANDS = {
  preview: 'Dowel: Show the Published Page to the Side',
  map: 'Dowel: Show the Map of the Machine',
  chart: 'Dowel: Show the Chart of Stripping and Rebuilding',
} as const;
const TABS = { preview: /^Page: /, map: /^Map: /, chart: /^Chart: / } as const;
const PANELS = ['preview', 'map', 'chart'] as const;
type Kind = (typeof PANELS)[number];

describe('looks', () => {
  let bench: Workbench;
  beforeAll(async () => {
    bench = await startWorkbench({ files: FILES });
    await bench.open(JOB);
    await bench.page.waitForSelector('.monaco-editor .squiggly-error');
    await bench.command('View: Focus Problems');
    await bench.problem('The brake cover cannot come off').first().waitFor();
    await bench.command('Dowel: Show the State of the Machine at the Cursor');
  });
  afterEach(({ task }) => (task.result?.state === 'fail' ? bench?.shot('failed-looks') : undefined));
  afterAll(() => bench?.close());

  async function show(kind: Kind): Promise<Frame> {
    await bench.show('brake-discs-broken');
    await bench.goToLine(38, 5);
    await bench.command(COMMANDS[kind]);
    const frame = await bench.panel(kind);
    await bench.tab(TABS[kind]).waitFor();
    await frame.locator('.dowel-here').first().waitFor();
    return frame;
  }

  /** What axe finds of a panel as it is shown. */
  async function tooFaint(frame: Frame): Promise<string[]> {
    await frame.evaluate(AXE);
    return (await frame.evaluate(
      `axe.run(document, { runOnly: ['color-contrast'] }).then(({ violations }) =>
        violations.flatMap(({ nodes }) => nodes.map(({ html, any }) => html.slice(0, 80) + ' ' + any[0]?.message)))`,
    )) as string[];
  }

  for (const [name, [theme, outside, inside]] of Object.entries(THEMES))
    it(`in ${name}`, async () => {
      bench.settings({ 'workbench.colorTheme': theme });
      await bench.page.locator(`.monaco-workbench.${outside}`).waitFor();
      for (const kind of PANELS) {
        const frame = await show(kind);
        await frame.locator(`body.${inside}`).waitFor();
        await bench.shot(`looks-${name}-${kind}`);
        expect(await tooFaint(frame), `${kind} in ${name}`).toEqual([]);
      }
    });

  it('shows a ring around what has the focus, in every panel', async () => {
    for (const kind of PANELS) {
      const frame = await show(kind);
      await frame.locator('.dowel-place[tabindex="0"]').focus();
      const seen = new Set<string>();
      for (let key = 0; key < 4; key++) {
        await bench.page.keyboard.press('ArrowDown');
        const focused = frame.locator('.dowel-place:focus');
        await focused.waitFor();
        const [style, width] = (
          (await focused.evaluate(
            'getComputedStyle(document.activeElement).outlineStyle + " " + getComputedStyle(document.activeElement).outlineWidth',
          )) as string
        ).split(' ');
        expect([kind, style, Number.parseFloat(width!) >= 2]).toEqual([kind, 'solid', true]);
        seen.add((await focused.textContent()) ?? '');
      }
      expect(seen.size).toBeGreaterThan(1);
      await bench.shot(`looks-focus-${kind}`);
    }
  });

  it('shows the whole of a drawing, by a key, and larger by a button', async () => {
    for (const kind of ['map', 'chart'] as const) {
      const frame = await show(kind);
      const width = () =>
        frame.evaluate<number>('document.querySelector("svg.dowel-drawing").getBoundingClientRect().width');
      const natural = await width();
      await frame.locator('.dowel-place[tabindex="0"]').focus();
      await bench.page.keyboard.press('0');
      const room = await frame.evaluate<number>('innerWidth');
      await expect.poll(width).toBeLessThan(room);
      await bench.shot(`looks-whole-${kind}`);
      const small = await width();
      await frame.locator('#zoom button', { hasText: '+' }).click();
      await expect.poll(width).toBeGreaterThan(small);
      await frame.locator('#zoom button', { hasText: '1:1' }).click();
      await expect.poll(width).toBe(natural);
    }
  });
});
