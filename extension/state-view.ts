/**
 * The view "Machine at the Cursor": what is off, loose, open, drained, locked … before the step where the cursor
 * stands, as a tree. A thing leads to the step that made it so.
 */
import {
  commands,
  type Disposable,
  EventEmitter,
  l10n,
  MarkdownString,
  ThemeIcon,
  type TreeDataProvider,
  TreeItem,
  TreeItemCollapsibleState,
  window,
} from 'vscode';
import type { LanguageClient } from 'vscode-languageclient/node';
import type { StateTree } from '../language-server/server/handlers/state.ts';
import type { Cursor } from './cursor.ts';

type StateGroup = StateTree['groups'][number];
type Node = { group: StateGroup } | { thing: StateGroup['things'][number]; state: string };

const ICONS: Readonly<Record<string, string>> = {
  isolated: 'debug-disconnect',
  disconnected: 'debug-disconnect',
  locked: 'lock',
  'proved safe': 'verified',
  off: 'circle-slash',
  'thrown away': 'trash',
  out: 'circle-slash',
  new: 'sparkle',
  open: 'unlock',
  drained: 'beaker-stop',
};

export class StateView implements TreeDataProvider<Node>, Disposable {
  private readonly changed = new EventEmitter<void>();
  readonly onDidChangeTreeData = this.changed.event;
  private readonly view = window.createTreeView<Node>('dowel.state', { treeDataProvider: this });
  private readonly subscriptions: Disposable[];
  private readonly client: LanguageClient;
  private readonly cursor: Cursor;
  private answer: StateTree | undefined;

  constructor(client: LanguageClient, cursor: Cursor) {
    this.client = client;
    this.cursor = cursor;
    const refresh = () => void this.refresh();
    this.subscriptions = [
      cursor.onMove(refresh),
      cursor.onChange(refresh),
      this.view.onDidChangeVisibility(refresh),
    ];
  }

  async refresh(): Promise<void> {
    const { place } = this.cursor;
    if (!this.view.visible || !place || !this.client.isRunning()) return;
    try {
      this.answer = (await this.client.sendRequest<StateTree | null>('dowel/state', place)) ?? undefined;
    } catch {
      // The server is on its way out; it tells of itself, and what was shown stays until it is back.
      return;
    }
    this.view.description = this.answer?.title ?? '';
    // To the editor `undefined` says that there is no message; its types leave that out.
    this.view.message = this.words() as string;
    this.changed.fire();
  }

  private words(): string | undefined {
    if (!this.answer) return l10n.t('Put the cursor on a step of a procedure.');
    return this.answer.groups.length > 0 ? undefined : l10n.t('Everything is as it was at the start.');
  }

  getChildren(node?: Node): Node[] {
    if (!node) return this.answer?.groups.map((group) => ({ group })) ?? [];
    if ('thing' in node) return [];
    return node.group.things.map((thing) => ({ thing, state: node.group.state }));
  }

  getTreeItem(node: Node): TreeItem {
    if ('group' in node) {
      const { state, things } = node.group;
      const item = new TreeItem(state, TreeItemCollapsibleState.Expanded);
      item.id = state;
      item.description = String(things.length);
      item.iconPath = new ThemeIcon(ICONS[state] ?? 'circle-outline');
      return item;
    }
    const { thing, state } = node;
    const { title, positions, since } = thing;
    const item = new TreeItem(title);
    const details = [
      positions?.join(', '),
      thing.case && l10n.t('when {0}', thing.case),
      since && l10n.t('line {0}', since.range.start.line + 1),
    ];
    item.description = details.filter(Boolean).join(' · ');
    const made = since ? l10n.t('Made so by: {0}', since.text) : l10n.t('So from the start');
    item.tooltip = new MarkdownString(`**${state}**: ${title}\n\n${made}`);
    item.accessibilityInformation = { label: `${title}, ${state}. ${item.description}. ${made}` };
    if (since)
      item.command = {
        command: 'dowel.goTo',
        title: made,
        arguments: [since.uri, since.range],
      };
    return item;
  }

  async show(): Promise<void> {
    await commands.executeCommand('dowel.state.focus');
    await this.refresh();
  }

  dispose(): void {
    for (const one of [...this.subscriptions, this.view, this.changed]) one.dispose();
  }
}
