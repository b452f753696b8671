/** The packed extension in a real editor, used by somebody who works. */
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { expected, FILES, JOB, MACHINE, STEPS } from './flow.ts';
import { startWorkbench, type Workbench } from './workbench.ts';

describe('at work', () => {
  let bench: Workbench;
  beforeAll(async () => {
    bench = await startWorkbench({ files: { ...FILES, 'notes.txt': 'Oil is in the red can.\n' } });
  });
  afterEach(({ task }) => (task.result?.state === 'fail' ? bench?.shot('failed-work') : undefined));
  afterAll(() => bench?.close());

  it('does nothing before a Dowel file is opened', async () => {
    await bench.open('notes.txt');
    await bench.line('Oil is in the red can.').waitFor();
    // Other extensions have been started by now; this one may not.
    await bench.command('Developer: Show Running Extensions');
    await bench.tab('Running Extensions').waitFor();
    await bench.page.locator('.runtime-extensions-editor .monaco-list-row').first().waitFor();
    await expect(
      bench.page.locator('.runtime-extensions-editor', { hasText: 'Dowel' }).count(),
    ).resolves.toBe(0);
    expect(bench.languageServers()).toEqual([]);
    await bench.open(JOB);
    await expect.poll(() => bench.languageServers()).toHaveLength(1);
  });

  it('marks what is wrong in the text, in the problem list and in the status line', () =>
    STEPS.marks(bench, 'work'));
  it('says what a thing is', () => STEPS.hover(bench, 'work'));
  it('mends a finding by the keyboard, and the finding goes', () => STEPS.mend(bench, 'work'));
  it('shows the machine at the cursor, and leads to the step that made it so', () =>
    STEPS.state(bench, 'work'));
  it('shows the page beside the text; each follows the other', () => STEPS.page(bench, 'work'));
  it('shows the map, which leads into the text', () => STEPS.map(bench, 'work'));
  it('shows the chart, which leads into the text', () => STEPS.chart(bench, 'work'));
  it('completes a step', () => STEPS.complete(bench, 'work'));

  it('renames across files', async () => {
    await STEPS.rename(bench, 'work');
    await expect.poll(() => bench.text(MACHINE)).toBe(expected().machine);
    await expect.poll(() => bench.text(JOB)).toBe(expected().job);
  });

  it('follows the settings at once', async () => {
    await bench.show('brake-discs-broken');
    await bench.goToLine(30, 5);
    const count = bench.line('remove motor-bolts').getByText('×4', { exact: true });
    const lens = bench.page.locator('.codelens-decoration', { hasText: 'off or open' }).first();
    await count.waitFor();
    // Above a line that may be out of sight.
    await lens.waitFor({ state: 'attached' });
    bench.settings({ 'dowel.inlayHints.count': false, 'dowel.codeLens': false });
    await count.waitFor({ state: 'detached' });
    await lens.waitFor({ state: 'detached' });
    bench.settings({});
    await count.waitFor();
    await lens.waitFor({ state: 'attached' });
  });

  it('sends nothing to any other machine', () => {
    // What the workbench itself would ask its maker for is refused; Dowel adds nothing to it.
    expect(bench.refused.filter((url) => /dowel/i.test(url))).toEqual([]);
  });
});
