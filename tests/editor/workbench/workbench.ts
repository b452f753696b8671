/**
 * A real editor for tests: VS Code's workbench, served on loopback with the packed extension installed, and shown in a
 * headless browser. Nothing is fetched: every request to another host is refused.
 */
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import type { Browser, Frame, Locator, Page } from 'playwright-core';
import { openBrowser } from '../../browser/browser.ts';
import { Server } from './server.ts';

export const ROOT = resolve(import.meta.dirname, '../../..');
const VSIX = join(ROOT, '.build/dowel.vsix');
export const SHOTS = join(ROOT, '.build/editor');
/**
 * ms. How long one thing may take where other work has the machine: nothing here waits for a time, only for things.
 * Who writes a test is told sooner with DOWEL_WAIT (s).
 */
export const LONG = Number(process.env.DOWEL_WAIT ?? 240) * 1000;
/** ms. After this long an action that seems to have gone unheard is done again. */
const AGAIN = 10_000;

const SETTINGS = {
  'security.workspace.trust.enabled': false,
  'workbench.startupEditor': 'none',
  'workbench.tips.enabled': false,
  'telemetry.telemetryLevel': 'off',
  'extensions.autoUpdate': false,
  'extensions.autoCheckUpdates': false,
  'extensions.ignoreRecommendations': true,
  'update.mode': 'none',
  'git.enabled': false,
  'chat.commandCenter.enabled': false,
  'editor.minimap.enabled': false,
  'files.simpleDialog.enable': true,
  // In a browser texts are else saved by themselves.
  'files.autoSave': 'off',
};

export interface Options {
  /** The folder that is opened, by path. */
  files: Readonly<Record<string, string>>;
  settings?: Readonly<Record<string, unknown>>;
  size?: { width: number; height: number };
}

export async function startWorkbench({ files, settings = {}, size }: Options): Promise<Workbench> {
  if (!existsSync(VSIX)) throw new Error('The extension is not packed. Run: npm run package');
  // A short path: the server makes sockets below it.
  const root = mkdtempSync(join(tmpdir(), 'wb-'));
  const folder = join(root, 'ws');
  mkdirSync(folder);
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), text);
  }
  writeSettings(root, settings);
  const server = new Server(root);
  let browser: Browser | undefined;
  const close = async (): Promise<void> => {
    await browser?.close();
    await server.stop();
    rmSync(root, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
  };
  try {
    await server.install(VSIX);
    const port = await server.listen();
    browser = await openBrowser();
    const context = await browser.newContext({ viewport: size ?? { width: 1360, height: 900 } });
    context.setDefaultTimeout(LONG);
    const refused: string[] = [];
    await context.route(
      ({ hostname }) => hostname !== '127.0.0.1',
      (route) => {
        refused.push(route.request().url());
        return route.abort();
      },
    );
    const page = await context.newPage();
    await page.goto(`http://127.0.0.1:${port}/?folder=${encodeURIComponent(folder)}`);
    await page.waitForSelector('.explorer-folders-view');
    return new Workbench({ page, folder, root, chosen: settings, refused, close });
  } catch (error) {
    await close();
    throw new Error(`${(error as Error).message}\n${server.output}`);
  }
}

/** In both places, or an installed extension stays off. */
function writeSettings(root: string, settings: Readonly<Record<string, unknown>>): void {
  for (const place of ['Machine', 'User']) {
    mkdirSync(join(root, 'd/data', place), { recursive: true });
    writeFileSync(join(root, 'd/data', place, 'settings.json'), JSON.stringify({ ...SETTINGS, ...settings }));
  }
}

interface Parts {
  page: Page;
  folder: string;
  root: string;
  chosen: Readonly<Record<string, unknown>>;
  refused: readonly string[];
  close(): Promise<void>;
}

/** What a person does in the editor. */
export class Workbench {
  readonly page: Page;
  /** The opened folder. */
  readonly folder: string;
  /** Requests that would have left this machine. */
  readonly refused: readonly string[];
  readonly close: () => Promise<void>;
  private readonly root: string;
  private readonly chosen: Readonly<Record<string, unknown>>;

  constructor({ page, folder, root, chosen, refused, close }: Parts) {
    this.page = page;
    this.folder = folder;
    this.root = root;
    this.chosen = chosen;
    this.refused = refused;
    this.close = close;
  }

  /** Does something until it shows, for a busy editor may not hear a key. Twice must do what once does. */
  async until(act: () => Promise<void>, sign: Locator): Promise<void> {
    for (const end = Date.now() + LONG; ; ) {
      await act();
      const seen = await sign.waitFor({ timeout: AGAIN }).then(
        () => true,
        () => false,
      );
      if (seen) return;
      if (Date.now() > end) throw new Error(`This did not come: ${sign}`);
    }
  }

  /** Opens a file from the list of files; folders on the way are unfolded. */
  async open(name: string): Promise<void> {
    const parts = name.split('/');
    for (const [at, part] of parts.entries()) {
      const row = this.page
        .locator('.explorer-folders-view .monaco-list-row', { hasText: new RegExp(`^${part}$`) })
        .first();
      if (at === parts.length - 1) await this.until(() => row.dblclick(), this.tab(part));
      else if ((await row.getAttribute('aria-expanded')) !== 'true') await row.click();
    }
    await this.page.waitForSelector('.editor-instance .view-line');
  }

  /** The tab of a file or panel that is looked at. */
  tab(title: string | RegExp): Locator {
    return this.page.locator('.tab.active', { hasText: title });
  }

  /** Goes to a file that is open already. */
  async show(title: string): Promise<void> {
    await this.page.locator('.tab', { hasText: title }).first().click();
    await this.tab(title).first().waitFor();
    // Away from the tab, or its own words come over the text.
    await this.page.mouse.move(300, 16);
  }

  get input(): Locator {
    return this.page.locator('.quick-input-widget input.input');
  }

  /** Runs a command by its title in the command palette, as somebody without a mouse does. */
  async command(title: string): Promise<void> {
    await this.until(() => this.page.keyboard.press('F1'), this.input);
    await this.input.fill(`>${title}`);
    await this.page
      .locator('.quick-input-list .monaco-list-row.focused', { hasText: title.replace(/…$/, '') })
      .waitFor();
    await this.page.keyboard.press('Enter');
    // The box closes, or opens again for what the command asks.
    while ((await this.input.isVisible()) && (await this.typed()) === `>${title}`)
      await this.page.waitForTimeout(50);
  }

  /** What stands in the box for commands; undefined where it is just closing. */
  private typed(): Promise<string | undefined> {
    return this.input.inputValue({ timeout: 1_000 }).catch(() => undefined);
  }

  /** Puts the cursor on a line (from 1) of the active editor. */
  async goToLine(line: number, column = 1): Promise<void> {
    await this.until(() => this.page.keyboard.press('Control+G'), this.input);
    await this.input.fill(`:${line}:${column}`);
    await this.page.keyboard.press('Enter');
    await this.at(line, column);
  }

  /** Waits until the cursor is there. */
  async at(line: number, column?: number): Promise<void> {
    const place = column === undefined ? `^Ln ${line},` : `^Ln ${line}, Col ${column}( |$)`;
    await this.page.locator('.statusbar-item', { hasText: new RegExp(place) }).waitFor();
  }

  /** A line of the text with these words. The editor writes spaces that do not break. */
  line(words: string): Locator {
    const spaced = words.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replaceAll(' ', '\\s');
    return this.page.locator('.editor-instance .view-line', { hasText: new RegExp(spaced) }).first();
  }

  /** The row of the problem list with these words. */
  problem(words: string): Locator {
    return this.page.locator('.markers-panel .monaco-list-row', { hasText: words });
  }

  /** A row of the view "Machine at the Cursor". */
  state(words: string | RegExp): Locator {
    return this.page.locator('[aria-label*="Machine at the Cursor"] .monaco-list-row', { hasText: words });
  }

  get status(): Locator {
    return this.page.locator('#dowel\\.dowel\\.dowel\\.status, [id$="dowel.status"]');
  }

  /** The page inside a panel, once it is there. */
  async panel(kind: 'preview' | 'map' | 'chart'): Promise<Frame> {
    for (const end = Date.now() + LONG; Date.now() < end; ) {
      for (const frame of this.page.frames()) {
        // A frame that goes away while it is asked is not the one.
        const found = await frame.$(`body.dowel-${kind}`).catch(() => null);
        if (found) return frame;
      }
      await this.page.waitForTimeout(200);
    }
    throw new Error(`There is no panel with the ${kind}.`);
  }

  text(name: string): string {
    return readFileSync(join(this.folder, name), 'utf8');
  }

  /** The language server's processes of this editor (Linux: read from /proc). */
  languageServers(): number[] {
    return readdirSync('/proc')
      .filter((name) => /^\d+$/.test(name))
      .filter((name) => {
        try {
          const command = readFileSync(`/proc/${name}/cmdline`, 'utf8');
          return command.includes(join(this.root, 'x')) && command.includes('dist/server.cjs');
        } catch {
          return false;
        }
      })
      .map(Number);
  }

  /** Other settings than at the start, as somebody changes them while the editor runs. */
  settings(changed: Readonly<Record<string, unknown>>): void {
    writeSettings(this.root, { ...this.chosen, ...changed });
  }

  /** Leaves a picture to be looked at. */
  async shot(name: string): Promise<void> {
    mkdirSync(SHOTS, { recursive: true });
    await this.page.screenshot({ path: join(SHOTS, `${name}.png`), animations: 'disabled' });
  }
}
