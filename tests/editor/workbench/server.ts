/** The part of the workbench that runs without a screen: code-server's, on loopback, with a port that is free. */
import { type ChildProcess, spawn } from 'node:child_process';
import { join } from 'node:path';
import { VSCODE } from './install.mjs';

/** The server's process and what it said. */
export class Server {
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

  /** Installs a packed extension. */
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
