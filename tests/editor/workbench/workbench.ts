/**
 * A real editor for tests: VS Code's workbench, served on loopback with the packed extension installed, and shown in a
 * headless browser. Nothing is fetched: every request to another host is refused.
 */
import { type ChildProcess, spawn } from 'node:child_process';
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
import { VSCODE } from './install.mjs';

export const ROOT = resolve(import.meta.dirname, '../../..');
const VSIX = join(ROOT, '.build/dowel.vsix');
export const SHOTS = join(ROOT, '.build/editor');

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
};

export interface Options {
  /** The folder that is opened, by path. */
  files: Readonly<Record<string, string>>;
  settings?: Readonly<Record<string, unknown>>;
}

export async function startWorkbench({ files, settings = {} }: Options): Promise<Workbench> {
  if (!existsSync(VSIX)) throw new Error('The extension is not packed. Run: npm run package');
  // A short path: the server makes sockets below it.
  const root = mkdtempSync(join(tmpdir(), 'wb-'));
  const folder = join(root, 'ws');
  mkdirSync(folder);
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), text);
  }
  // In both places, or an installed extension stays off.
  for (const place of ['Machine', 'User']) {
    mkdirSync(join(root, 'd/data', place), { recursive: true });
    writeFileSync(join(root, 'd/data', place, 'settings.json'), JSON.stringify({ ...SETTINGS, ...settings }));
  }
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
    const context = await browser.newContext({ viewport: { width: 1360, height: 900 } });
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
    await page.waitForSelector('.monaco-workbench', { timeout: 90_000 });
    await page.waitForSelector('.explorer-folders-view', { timeout: 90_000 });
    return new Workbench(page, folder, root, refused, close);
  } catch (error) {
    await close();
    throw new Error(`${(error as Error).message}\n${server.output}`);
  }
}

/** The server's process and what it said. */
class Server {
  output = '';
  private running: ChildProcess | undefined;
  private readonly root: string;

  constructor(root: string) {
    this.root = root;
  }

  private run(...given: string[]): ChildProcess {
    const started = spawn(
      process.execPath,
      [
        join(VSCODE, 'out/server-main.js'),
        '--accept-server-license-terms',
        '--telemetry-level',
        'off',
        '--server-data-dir',
        join(this.root, 'd'),
        '--extensions-dir',
        join(this.root, 'x'),
        ...given,
      ],
      {
        stdio: ['ignore', 'pipe', 'pipe'],
        env: { ...process.env, XDG_RUNTIME_DIR: this.root, EXTENSIONS_GALLERY: '{}' },
      },
    );
    started.stdout!.on('data', (data) => {
      this.output += data;
    });
    started.stderr!.on('data', (data) => {
      this.output += data;
    });
    return started;
  }

  async install(vsix: string): Promise<void> {
    const code = await new Promise((done) => this.run('--install-extension', vsix).once('exit', done));
    if (code !== 0) throw new Error('The extension could not be installed.');
  }

  /** Answers the port. */
  listen(): Promise<string> {
    const started = this.run('--host', '127.0.0.1', '--port', '0', '--without-connection-token');
    this.running = started;
    return new Promise((done, fail) => {
      const timer = setInterval(() => {
        const port = /Extension host agent listening on (\d+)/.exec(this.output)?.[1];
        if (port === undefined) return;
        clearInterval(timer);
        done(port);
      }, 50);
      started.once('exit', (code) => {
        clearInterval(timer);
        fail(new Error(`The workbench's server ended with ${code}.`));
      });
    });
  }

  async stop(): Promise<void> {
    const { running } = this;
    if (!running || running.exitCode !== null || running.signalCode !== null) return;
    const gone = new Promise((done) => running.once('exit', done));
    running.kill('SIGTERM');
    const timer = setTimeout(() => running.kill('SIGKILL'), 5_000);
    await gone;
    clearTimeout(timer);
  }
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

  constructor(
    page: Page,
    folder: string,
    root: string,
    refused: readonly string[],
    close: () => Promise<void>,
  ) {
    this.page = page;
    this.folder = folder;
    this.root = root;
    this.refused = refused;
    this.close = close;
  }

  /** Opens a file from the list of files; folders on the way are unfolded. */
  async open(name: string): Promise<void> {
    const parts = name.split('/');
    for (const [at, part] of parts.entries()) {
      const row = this.page
        .locator('.explorer-folders-view .monaco-list-row', { hasText: new RegExp(`^${part}$`) })
        .first();
      if (at === parts.length - 1) await row.dblclick();
      else if ((await row.getAttribute('aria-expanded')) !== 'true') await row.click();
    }
    await this.page.locator('.tab.active', { hasText: parts.at(-1)! }).waitFor();
    await this.page.waitForSelector('.editor-instance .view-line');
  }

  /** Runs a command by its title in the command palette, as somebody without a mouse does. */
  async command(title: string): Promise<void> {
    await this.page.keyboard.press('F1');
    const input = this.page.locator('.quick-input-widget input.input');
    await input.waitFor();
    await input.fill(`>${title}`);
    const row = this.page.locator('.quick-input-list .monaco-list-row', { hasText: title }).first();
    await row.waitFor({ timeout: 60_000 });
    await this.page.keyboard.press('Enter');
  }

  /** Puts the cursor on a line (from 1) of the active editor. */
  async goToLine(line: number, column = 1): Promise<void> {
    await this.page.keyboard.press('Control+G');
    const input = this.page.locator('.quick-input-widget input.input');
    await input.waitFor();
    await input.fill(`:${line}:${column}`);
    await this.page.keyboard.press('Enter');
    await this.page
      .locator('.statusbar-item', { hasText: new RegExp(`^Ln ${line}, Col ${column}( |$)`) })
      .waitFor();
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
    for (let end = Date.now() + 60_000; Date.now() < end; ) {
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

  async shot(name: string): Promise<void> {
    mkdirSync(SHOTS, { recursive: true });
    await this.page.screenshot({ path: join(SHOTS, `${name}.png`) });
  }
}
