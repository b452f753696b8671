/**
 * One panel beside the text. The page in it is shut in: its policy lets in nothing but its own style and script, which
 * carry a nonce; there is no network. What is shown comes as a message, so that a change of the text does not begin the
 * page anew. A choice in the panel moves the cursor, the cursor marks its step in the panel.
 */
import { randomBytes } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import {
  type Disposable,
  type ExtensionContext,
  l10n,
  Uri,
  ViewColumn,
  type WebviewPanel,
  window,
  workspace,
} from 'vscode';
import type { LanguageClient } from 'vscode-languageclient/node';
import type { Shown, ShownPlace } from '../language-server/server/handlers/shown.ts';
import type { Cursor } from './cursor.ts';
import { goTo } from './go-to.ts';
import { marksAt } from './marks.ts';
import type { FromPanel, ToPanel } from './webview/messages.ts';

export type Kind = 'preview' | 'map' | 'chart';

export class Panel implements Disposable {
  private readonly kind: Kind;
  private readonly client: LanguageClient;
  private readonly cursor: Cursor;
  private readonly panel: WebviewPanel;
  private readonly subscriptions: Disposable[];
  private places: ShownPlace[] = [];
  private ready = false;
  /** The cursor is where the panel sent it: nothing in the panel need move. */
  private sent = false;
  private asked = 0;

  constructor(kind: Kind, context: ExtensionContext, client: LanguageClient, cursor: Cursor) {
    this.kind = kind;
    this.client = client;
    this.cursor = cursor;
    this.panel = window.createWebviewPanel(
      `dowel.${kind}`,
      titleOf(kind),
      { viewColumn: ViewColumn.Beside, preserveFocus: true },
      { enableScripts: true, enableFindWidget: true, localResourceRoots: [], retainContextWhenHidden: true },
    );
    const icon = (theme: string) => Uri.joinPath(context.extensionUri, 'icons', `file-${theme}.svg`);
    this.panel.iconPath = { light: icon('light'), dark: icon('dark') };
    this.panel.webview.onDidReceiveMessage((message: FromPanel) => this.hear(message));
    this.panel.webview.html = shellOf(
      kind,
      readFileSync(join(context.extensionPath, 'dist', 'panel.js'), 'utf8'),
    );
    this.subscriptions = [cursor.onMove(() => this.mark()), cursor.onChange(() => void this.refresh())];
    this.panel.onDidDispose(() => {
      for (const one of this.subscriptions) one.dispose();
    });
  }

  reveal(): void {
    this.panel.reveal(undefined, true);
    void this.refresh();
  }

  onDispose(told: () => void): void {
    this.panel.onDidDispose(told);
  }

  dispose(): void {
    this.panel.dispose();
  }

  async refresh(): Promise<void> {
    const { place } = this.cursor;
    if (!this.ready || !place || !this.client.isRunning()) return;
    const asked = ++this.asked;
    let shown: Shown | null;
    try {
      shown = await this.client.sendRequest<Shown | null>(`dowel/${this.kind}`, place);
    } catch {
      // The server is on its way out; what is shown stays until it is back.
      return;
    }
    // An answer that was overtaken by the next question is old.
    if (asked !== this.asked) return;
    this.places = shown?.places ?? [];
    this.panel.title = shown ? `${titleOf(this.kind)}: ${shown.title}` : titleOf(this.kind);
    this.post({
      type: 'show',
      html: shown?.html ?? '',
      empty: emptyOf(this.kind),
      elements: this.places.map(({ by, key }) => ({ by, key })),
    });
    this.mark();
  }

  private mark(): void {
    const { editor } = this.cursor;
    if (!editor || !workspace.getConfiguration('dowel').get('followCursor', true)) return;
    const { document, selection } = editor;
    const line = selection.active.line;
    const at = { uri: document.uri.toString(), line, text: document.lineAt(line).text };
    this.post({ type: 'mark', elements: marksAt(this.places, at), reveal: !this.sent });
    this.sent = false;
  }

  private hear(message: FromPanel): void {
    if (message.type === 'ready') {
      this.ready = true;
      void this.refresh();
      return;
    }
    const place = this.places[message.element];
    if (!place) return;
    this.sent = true;
    void goTo(place.uri, place.range, !message.focus);
  }

  private post(message: ToPanel): void {
    void this.panel.webview.postMessage(message);
  }
}

function titleOf(kind: Kind): string {
  if (kind === 'preview') return l10n.t('Page');
  return kind === 'map' ? l10n.t('Map') : l10n.t('Chart');
}

function emptyOf(kind: Kind): string {
  if (kind === 'preview') return l10n.t('There is no procedure in this file: a page is made of one.');
  if (kind === 'map')
    return l10n.t('There is no machine here with things that sit on, cover or hold one another.');
  return l10n.t('There is nothing to draw: hardly anything comes off in this procedure.');
}

function shellOf(kind: Kind, script: string): string {
  const nonce = randomBytes(18).toString('base64url');
  const policy = `default-src 'none'; img-src data:; style-src 'nonce-${nonce}'; script-src 'nonce-${nonce}'; base-uri 'none'; form-action 'none'`;
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${titleOf(kind)}</title>
</head>
<body class="dowel-${kind}">
${kind === 'preview' ? '' : zoomBar()}<p id="empty" role="status" hidden></p>
<div id="shown"></div>
<script nonce="${nonce}">${script}</script>
</body>
</html>`;
}

/** Buttons for the size of a drawing; `value` is the key that does the same. */
function zoomBar(): string {
  const button = (key: string, label: string, words: string) =>
    `<button value="${key}" title="${escaped(`${words} (${key})`)}" aria-label="${escaped(words)}">${label}</button>`;
  const buttons = [
    button('-', '−', l10n.t('Smaller')),
    button('+', '+', l10n.t('Larger')),
    button('1', '1:1', l10n.t('As drawn')),
    button('0', escaped(l10n.t('Whole')), l10n.t('The whole drawing')),
  ];
  return `<div id="zoom" role="toolbar" aria-label="${escaped(l10n.t('Size of the drawing'))}" hidden>${buttons.join('')}</div>\n`;
}

function escaped(text: string): string {
  return text.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`);
}
