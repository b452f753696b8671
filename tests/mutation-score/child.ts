/** The bundled tests in a process of their own, which is started anew when it hangs or is no longer clean. */
import { type ChildProcess, fork } from 'node:child_process';
import type { Asked, Said } from './run.ts';

export class Child {
  private process: ChildProcess | undefined;
  private readonly path: string;

  constructor(path: string) {
    this.path = path;
  }

  /** `undefined` where no answer came in time; a text where the program could not even be loaded. */
  async ask(asked: Asked, withinMs: number, active?: string): Promise<Said | string | undefined> {
    if (active !== undefined) this.end();
    if (!this.process) {
      const env = { ...process.env, ...(active && { __STRYKER_ACTIVE_MUTANT__: active }) };
      this.process = fork(this.path, { env, execArgv: [], stdio: ['ignore', 'ignore', 'ignore', 'ipc'] });
      const ready = await this.next(withinMs);
      if (ready === undefined || typeof ready === 'string') return ready;
      if (ready.said === 'ready' && ready.failed !== undefined) return ready.failed;
    }
    this.process.send(asked);
    return this.next(withinMs);
  }

  end(): void {
    this.process?.kill('SIGKILL');
    this.process = undefined;
  }

  private next(withinMs: number): Promise<Said | string | undefined> {
    const child = this.process!;
    return new Promise((resolve) => {
      const done = (answer: Said | string | undefined) => {
        clearTimeout(timer);
        child.removeAllListeners();
        if (typeof answer !== 'object') this.end();
        resolve(answer);
      };
      const timer = setTimeout(() => done(undefined), withinMs);
      child.once('message', (said) => done(said as Said));
      child.once('exit', (code) => done(`ended with ${code}`));
    });
  }
}
