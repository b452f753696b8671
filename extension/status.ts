/** The status line: how many findings the file has, and in how many cases its procedures were followed. */
import {
  DiagnosticSeverity,
  type Disposable,
  l10n,
  languages,
  StatusBarAlignment,
  ThemeColor,
  window,
} from 'vscode';
import { type LanguageClient, State } from 'vscode-languageclient/node';
import type { FollowedCases } from '../language-server/server/handlers/cases.ts';
import type { Cursor } from './cursor.ts';

export class Status implements Disposable {
  private readonly item = window.createStatusBarItem('dowel.status', StatusBarAlignment.Left, 50);
  private readonly subscriptions: Disposable[];
  private readonly client: LanguageClient;
  private readonly cursor: Cursor;
  private cases: FollowedCases[] = [];

  constructor(client: LanguageClient, cursor: Cursor) {
    this.client = client;
    this.cursor = cursor;
    this.item.name = 'Dowel';
    this.subscriptions = [
      cursor.onChange(() => void this.count()),
      languages.onDidChangeDiagnostics(() => this.refresh()),
      window.onDidChangeActiveTextEditor(() => this.refresh()),
    ];
    void this.count();
  }

  /** Asks the server anew: another file, another text, or it runs again. */
  async count(): Promise<void> {
    const uri = this.cursor.place?.uri;
    if (uri && this.client.isRunning()) {
      try {
        this.cases = await this.client.sendRequest<FollowedCases[]>('dowel/cases', { uri });
      } catch {
        // The server is on its way out; the status says so by itself.
      }
    }
    this.refresh();
  }

  refresh(): void {
    const { editor } = this.cursor;
    if (!editor || (window.activeTextEditor && window.activeTextEditor !== editor)) {
      this.item.hide();
      return;
    }
    this.item.show();
    this.item.backgroundColor = undefined;
    if (!this.client.isRunning()) {
      const starting = this.client.state === State.Starting;
      this.item.text = starting
        ? `$(sync~spin) ${l10n.t('Dowel starts')}`
        : `$(debug-disconnect) ${l10n.t('Dowel is off')}`;
      this.item.tooltip = starting
        ? l10n.t('The language server starts.')
        : l10n.t('No findings come until the language server runs again. Choose this to start it.');
      this.item.command = 'dowel.restartServer';
      if (!starting) this.item.backgroundColor = new ThemeColor('statusBarItem.warningBackground');
      this.say();
      return;
    }
    const found = languages.getDiagnostics(editor.document.uri).filter(({ source }) => source === 'dowel');
    const count = (...severities: DiagnosticSeverity[]) =>
      found.filter(({ severity }) => severities.includes(severity)).length;
    const errors = count(DiagnosticSeverity.Error);
    const warnings = count(DiagnosticSeverity.Warning);
    const others = found.length - errors - warnings;
    const parts = [
      ...(errors > 0 ? [`$(error) ${errors}`] : []),
      ...(warnings > 0 ? [`$(warning) ${warnings}`] : []),
      ...(others > 0 ? [`$(info) ${others}`] : []),
    ];
    const findings = parts.length > 0 ? parts.join(' ') : `$(check) ${l10n.t('no findings')}`;
    const sum = this.cases.reduce((all, { cases }) => all + cases, 0);
    this.item.text = `Dowel: ${findings}${sum > 0 ? ` · ${casesWords(sum)}` : ''}`;
    const rows = this.cases.map(({ procedure, cases }) => `${procedure}: ${casesWords(cases)}`);
    this.item.tooltip = [
      l10n.t('{0} errors, {1} warnings, {2} others in this file.', errors, warnings, others),
      ...(rows.length > 0 ? [l10n.t('Followed in every variant and outcome:'), ...rows] : []),
    ].join('\n');
    this.item.command = 'workbench.actions.view.problems';
    this.say();
  }

  private say(): void {
    const words = this.item.text.replace(/\$\(([a-z]+)[^)]*\)/g, (_, icon: string) => SPOKEN[icon] ?? '');
    this.item.accessibilityInformation = { label: words, role: 'button' };
  }

  dispose(): void {
    for (const one of [...this.subscriptions, this.item]) one.dispose();
  }
}

/** Icons in words, for who hears them. */
const SPOKEN: Readonly<Record<string, string>> = { error: 'errors:', warning: 'warnings:', info: 'others:' };

/** Above a million nobody counts. */
function casesWords(cases: number): string {
  if (cases === 1) return l10n.t('1 case');
  return cases > 1_000_000 ? l10n.t('over a million cases') : l10n.t('{0} cases', cases);
}
