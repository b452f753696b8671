/**
 * When files are checked and what the editor is told. One file at a time, the edited one first; between two of them
 * the editor's messages are taken in, so that nothing is found out about a text that is no longer there. What is
 * found is told only where it is other than before. Findings that were told move with the text until new ones are
 * there, since they are kept by the places of their lines.
 */
import type { Connection, Diagnostic } from 'vscode-languageserver/node';
import type { Engine } from '../engine/engine.ts';
import type { Finding } from '../report/finding.ts';
import { diagnosticOf, type Ranges } from './convert.ts';

/** ms: a check that took longer than this is announced by what the text itself shows. */
const SLOW = 60;

export interface Told {
  /** Changes whenever the diagnostics do. */
  id: string;
  diagnostics: Diagnostic[];
}

interface State {
  findings: readonly Finding[];
  /** The change of texts after which they were found. */
  change: number;
  told: Told;
  json: string;
  took: number;
}

interface Deps {
  connection: Connection;
  engine: Engine;
  ranges: Ranges;
  /** The version of an open text. */
  version(uri: string): number | undefined;
  /** Findings that come from elsewhere, such as those about a configuration file. */
  more(uri: string): readonly Finding[] | undefined;
}

export class Diagnosing {
  /** The editor asks for diagnostics of open texts itself. */
  pulls = false;
  private readonly states = new Map<string, State>();
  private readonly published = new Map<string, string>();
  private readonly waiting = new Set<string>();
  private readonly deps: Deps;
  private change = 0;
  private count = 0;
  private running = false;
  private readonly idle: (() => void)[] = [];

  constructor(deps: Deps) {
    this.deps = deps;
  }

  /** Texts changed: these files are to be checked, the most urgent first. */
  changed(uris: readonly string[]): void {
    this.change++;
    // What was waiting waits behind what the author is looking at.
    const later = [...this.waiting];
    this.waiting.clear();
    for (const uri of [...uris, ...later]) this.waiting.add(uri);
    this.start();
  }

  /** Resolves when nothing is waiting. */
  async settled(): Promise<void> {
    if (this.running) await new Promise<void>((done) => this.idle.push(done));
  }

  /** What is found in the text as it is, by places of lines; checks what has changed since. */
  now(uri: string): readonly Finding[] {
    this.of(uri);
    return this.findings(uri);
  }

  /** What was found last, by places of lines. */
  private findings(uri: string): readonly Finding[] {
    return this.states.get(uri)?.findings ?? [];
  }

  /** Forgets a file that is gone, and takes back what was told of it. */
  gone(uri: string): void {
    this.waiting.delete(uri);
    this.states.delete(uri);
    this.publish(uri, []);
  }

  /** What is wrong in a file now. */
  of(uri: string): Told {
    const known = this.states.get(uri);
    if (known?.change === this.change) return known.told;
    const began = performance.now();
    const findings = this.deps.more(uri) ?? this.deps.engine.check(uri).filter(({ file }) => file === uri);
    const diagnostics = this.diagnostics(findings);
    const json = JSON.stringify(diagnostics);
    const told = known?.json === json ? known.told : { id: `${++this.count}`, diagnostics };
    this.states.set(uri, { findings, change: this.change, told, json, took: performance.now() - began });
    return told;
  }

  private diagnostics(findings: readonly Finding[]): Diagnostic[] {
    return findings.map((finding) => diagnosticOf(finding, this.deps.ranges));
  }

  private start(): void {
    if (this.running) return;
    this.running = true;
    setImmediate(() => this.next());
  }

  private next(): void {
    const [uri] = this.waiting;
    if (uri === undefined) {
      this.running = false;
      for (const done of this.idle.splice(0)) done();
      return;
    }
    // An editor that asks gets its answer when it asks, about files that are not open too.
    if (this.pulls && !this.deps.more(uri)) this.waiting.delete(uri);
    else if ((this.states.get(uri)?.took ?? 0) > SLOW && !this.announced.has(uri)) {
      this.announced.add(uri);
      this.announce(uri);
    } else {
      this.announced.delete(uri);
      this.waiting.delete(uri);
      this.publish(uri, this.of(uri).diagnostics);
    }
    setImmediate(() => this.next());
  }

  private readonly announced = new Set<string>();

  /** What the text itself shows at once, and what was known of its meaning where it stands now. */
  private announce(uri: string): void {
    const meaning = this.findings(uri).filter(({ check }) => !TEXT.has(check));
    this.publish(uri, this.diagnostics([...this.deps.engine.readingFaults(uri), ...meaning]));
  }

  private publish(uri: string, diagnostics: Diagnostic[]): void {
    const json = JSON.stringify(diagnostics);
    const version = this.deps.version(uri);
    // Of a text that was opened it is told that nothing is wrong; of others nothing is what everybody assumes.
    const before = this.published.get(uri) ?? (version === undefined ? '[]' : undefined);
    if (before === json) return;
    if (json === '[]' && version === undefined) this.published.delete(uri);
    else this.published.set(uri, json);
    void this.deps.connection.sendDiagnostics({
      uri,
      ...(version === undefined ? {} : { version }),
      diagnostics,
    });
  }
}

/** Checks that reading alone answers. */
const TEXT: ReadonlySet<string> = new Set([
  'syntax',
  'brace-missing',
  'text-not-closed',
  'unknown-verb',
  'bad-character',
  'nested-too-deep',
  'clause-misplaced',
  'decimal-comma',
  'unit-missing',
]);
