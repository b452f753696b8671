/** The panels beside the text: preview, map and chart. One of each at the most; each follows the cursor. */
import type { Disposable, ExtensionContext } from 'vscode';
import type { LanguageClient } from 'vscode-languageclient/node';
import type { Cursor } from './cursor.ts';
import { type Kind, Panel } from './panel.ts';

export class Panels implements Disposable {
  private readonly open = new Map<Kind, Panel>();
  private readonly context: ExtensionContext;
  private readonly client: LanguageClient;
  private readonly cursor: Cursor;

  constructor(context: ExtensionContext, client: LanguageClient, cursor: Cursor) {
    this.context = context;
    this.client = client;
    this.cursor = cursor;
  }

  show(kind: Kind): void {
    const known = this.open.get(kind);
    if (known) {
      known.reveal();
      return;
    }
    const panel = new Panel(kind, this.context, this.client, this.cursor);
    this.open.set(kind, panel);
    panel.onDispose(() => this.open.delete(kind));
  }

  refresh(): void {
    for (const panel of this.open.values()) void panel.refresh();
  }

  dispose(): void {
    for (const panel of [...this.open.values()]) panel.dispose();
  }
}
