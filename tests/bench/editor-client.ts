/**
 * A client that speaks to any language server over stdio and times it: no library, so that what is measured is the
 * server. Positions are UTF-16.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';

interface Message {
  id?: number | string;
  method?: string;
  params?: { uri?: string; items?: { section?: string }[]; diagnostics?: unknown[] };
  result?: unknown;
  error?: unknown;
}

export interface Place {
  line: number;
  character: number;
}

export class EditorClient {
  readonly server: ChildProcess;
  private data: Buffer = Buffer.alloc(0);
  private id = 0;
  private readonly answers = new Map<number, (result: unknown) => void>();
  private published: ((diagnostics: number) => void) | undefined;
  private readonly settings: Readonly<Record<string, unknown>>;

  constructor(command: readonly string[], settings: Readonly<Record<string, unknown>>) {
    this.settings = settings;
    this.server = spawn(command[0]!, command.slice(1), { stdio: ['pipe', 'pipe', 'ignore'] });
    this.server.stdout!.on('data', (data: Buffer) => this.take(data));
  }

  async start(root: string, pull: boolean, initializationOptions: unknown): Promise<void> {
    await this.request('initialize', {
      processId: process.pid,
      rootUri: root,
      initializationOptions,
      capabilities: {
        workspace: { configuration: true },
        textDocument: {
          synchronization: {},
          publishDiagnostics: { versionSupport: true },
          ...(pull ? { diagnostic: {} } : {}),
        },
      },
    });
    this.notify('initialized', {});
    this.notify('workspace/didChangeConfiguration', { settings: this.settings });
  }

  request(method: string, params: unknown): Promise<unknown> {
    const id = ++this.id;
    return new Promise((resolve) => {
      this.answers.set(id, resolve);
      this.send({ id, method, params });
    });
  }

  notify(method: string, params: unknown): void {
    this.send({ method, params });
  }

  /** The next diagnostics that the server publishes: how many. */
  nextPublished(): Promise<number> {
    return new Promise((resolve) => {
      this.published = resolve;
    });
  }

  /** MB: the most memory that the process had. */
  get memory(): number {
    const status = readFileSync(`/proc/${this.server.pid}/status`, 'utf8');
    return Number(/VmHWM:\s+(\d+)/.exec(status)![1]) / 1024;
  }

  stop(): void {
    this.server.kill();
  }

  private send(message: object): void {
    const body = Buffer.from(JSON.stringify({ jsonrpc: '2.0', ...message }));
    this.server.stdin!.write(`Content-Length: ${body.length}\r\n\r\n`);
    this.server.stdin!.write(body);
  }

  private take(data: Buffer): void {
    this.data = Buffer.concat([this.data, data]);
    for (;;) {
      const end = this.data.indexOf('\r\n\r\n');
      if (end < 0) return;
      const length = Number(/Content-Length: *(\d+)/i.exec(this.data.toString('latin1', 0, end))![1]);
      if (this.data.length < end + 4 + length) return;
      const message = JSON.parse(this.data.toString('utf8', end + 4, end + 4 + length)) as Message;
      this.data = this.data.subarray(end + 4 + length);
      this.receive(message);
    }
  }

  private receive({ id, method, params, result }: Message): void {
    if (method && id !== undefined) {
      const answer =
        method === 'workspace/configuration'
          ? (params?.items ?? []).map(({ section }) => this.settings[section ?? ''] ?? null)
          : null;
      this.send({ id, result: answer });
    } else if (method === 'textDocument/publishDiagnostics') {
      const told = this.published;
      this.published = undefined;
      told?.(params?.diagnostics?.length ?? 0);
    } else if (typeof id === 'number') {
      this.answers.get(id)?.(result);
      this.answers.delete(id);
    }
  }
}
