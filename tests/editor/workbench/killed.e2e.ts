/**
 * The same work while the language server is killed: in the middle of typing, with texts that were never saved, and
 * again with panels open. Then one that hangs, and one that dies again and again.
 */
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { expected, FILES, JOB, MACHINE, STEPS } from './flow.ts';
import { startWorkbench, type Workbench } from './workbench.ts';

describe('with the server killed', () => {
  let bench: Workbench;
  beforeAll(async () => {
    bench = await startWorkbench({ files: FILES });
    await bench.open(JOB);
  });
  afterEach(({ task }) => (task.result?.state === 'fail' ? bench?.shot('failed-killed') : undefined));
  afterAll(() => bench?.close());

  /** The one server that is none of these, once it runs. */
  async function another(...before: number[]): Promise<number> {
    await expect
      .poll(() => bench.languageServers().filter((one) => !before.includes(one)), { interval: 50 })
      .toHaveLength(1);
    return bench.languageServers().find((one) => !before.includes(one))!;
  }

  /** Kills the server; `typed` in the same moment, at the end of a line. Answers when another one runs. */
  async function kill(line: number, typed: string): Promise<void> {
    await bench.goToLine(line);
    await bench.page.keyboard.press('End');
    const [server] = bench.languageServers();
    process.kill(server!, 'SIGKILL');
    const killed = Date.now();
    const back = another(server!).then(() => Date.now() - killed);
    await bench.page.keyboard.type(typed);
    console.log(`another server ran ${await back} ms after one was killed`);
    await bench.line(typed.trim()).waitFor();
  }

  it('marks what is wrong', () => STEPS.marks(bench, 'killed'));

  it('comes back at once, says so, and knows what was typed and not saved', async () => {
    await bench.open(MACHINE);
    await bench.page.keyboard.press('Control+Home');
    await bench.page.keyboard.press('End');
    await bench.page.keyboard.type(' Typed before.');
    await bench.show('brake-discs-broken');
    await kill(40, ' with no-such-tool');
    await bench.page
      .locator('.notification-toast', { hasText: 'Nothing you typed is lost' })
      .locator('.monaco-button', { hasText: 'Show Output' })
      .waitFor();
    await bench.problem('no-such-tool').first().waitFor();
    await bench.shot('killed-1-back');
    await bench.page.keyboard.press('Control+End');
    await bench.page.keyboard.type('// Typed after.');
    expect(bench.text(JOB)).toBe(FILES[JOB]);
    expect(bench.text(MACHINE)).toBe(FILES[MACHINE]);
    await bench.goToLine(40, 5);
    await bench.page.keyboard.press('End');
    for (const _ of ' with no-such-tool') await bench.page.keyboard.press('Backspace');
    await bench.problem('no-such-tool').first().waitFor({ state: 'detached' });
    await bench.command('Notifications: Clear All Notifications');
  });

  it('marks, explains and mends as before', async () => {
    await STEPS.marks(bench, 'killed');
    await STEPS.hover(bench, 'killed');
    await STEPS.mend(bench, 'killed');
  });

  it('shows state and page as before', async () => {
    await STEPS.state(bench, 'killed');
    await STEPS.page(bench, 'killed');
  });

  it('goes on in panels that are open when it is killed again', async () => {
    await bench.show('brake-discs-broken');
    await kill(50, ' // Typed once more.');
    await bench.status.filter({ hasText: /Dowel:.*8.*\d case/ }).waitFor();
    await bench.goToLine(38, 5);
    const page = await bench.panel('preview');
    await page.locator('.dowel-here', { hasText: /brake cover/i }).waitFor();
    await bench
      .state(/cover bolts.*line 37/)
      .first()
      .waitFor();
    await bench.command('Notifications: Clear All Notifications');
  });

  it('draws, completes and renames as before; every letter is there', async () => {
    await STEPS.map(bench, 'killed');
    await STEPS.chart(bench, 'killed');
    await STEPS.complete(bench, 'killed');
    await STEPS.rename(bench, 'killed');
    const [first, ...rest] = expected().machine.split('\n');
    await expect.poll(() => bench.text(MACHINE)).toBe([`${first} Typed before.`, ...rest].join('\n'));
    const lines = expected().job.split('\n');
    lines[49] += ' // Typed once more.';
    await expect.poll(() => bench.text(JOB)).toBe(`${lines.join('\n')}// Typed after.`);
  });

  it('ends a server that hangs, when told to restart', async () => {
    const [hanging] = bench.languageServers();
    process.kill(hanging!, 'SIGSTOP');
    await bench.command('Dowel: Restart the Language Server');
    await another(hanging!);
    await expect.poll(() => bench.languageServers()).not.toContain(hanging);
    await bench.status.filter({ hasText: /Dowel:.*8.*\d case/ }).waitFor();
  });

  it('stays off when the server dies again and again, says so, and starts it when asked to', async () => {
    const off = bench.page.locator('.notification-toast', { hasText: 'stopped several times' });
    await expect
      .poll(
        async () => {
          for (const server of bench.languageServers()) process.kill(server, 'SIGKILL');
          return off.isVisible();
        },
        { interval: 500 },
      )
      .toBe(true);
    await bench.status.filter({ hasText: 'Dowel is off' }).waitFor();
    expect(bench.languageServers()).toEqual([]);
    // Nobody is shown what the library calls it.
    expect(await bench.page.locator('.notification-toast', { hasText: 'Pending' }).count()).toBe(0);
    await bench.shot('killed-9-off');
    await off.locator('.monaco-button', { hasText: 'Restart' }).click();
    await bench.status.filter({ hasText: /Dowel:.*8.*\d case/ }).waitFor();
    expect(bench.text(JOB)).toContain('// Typed after.');
  });
});
