/**
 * Where the author is: the Dowel editor used last and its cursor. Panels beside the text follow it, also while the
 * focus is in the panel itself.
 */
import { type Disposable, EventEmitter, type TextEditor, window, workspace } from 'vscode';

/** ms. Long enough for a held arrow key, short enough to seem at once. */
const PAUSE = 150;

export class Cursor implements Disposable {
  private readonly moves = new EventEmitter<void>();
  private readonly changes = new EventEmitter<void>();
  /** The cursor went to another line or another file. */
  readonly onMove = this.moves.event;
  /** A Dowel text changed, or another one is looked at. */
  readonly onChange = this.changes.event;
  private readonly subscriptions: Disposable[];
  private last: TextEditor | undefined;
  private line = -1;
  private timer: NodeJS.Timeout | undefined;
  private changed = false;

  constructor() {
    this.take(window.activeTextEditor);
    this.subscriptions = [
      window.onDidChangeActiveTextEditor((editor) => this.take(editor)),
      window.onDidChangeTextEditorSelection(({ textEditor }) => {
        // A panel that has the focus moves the cursor of a text that has not.
        if (!window.activeTextEditor || textEditor === window.activeTextEditor) this.take(textEditor);
      }),
      workspace.onDidChangeTextDocument(({ document }) => {
        if (document.languageId === 'dowel') this.soon(true);
      }),
    ];
  }

  get editor(): TextEditor | undefined {
    return this.last;
  }

  /** What the server is asked with. */
  get place(): { uri: string; position: { line: number; character: number } } | undefined {
    if (!this.last) return undefined;
    const { line, character } = this.last.selection.active;
    return { uri: this.last.document.uri.toString(), position: { line, character } };
  }

  private take(editor: TextEditor | undefined): void {
    if (editor?.document.languageId !== 'dowel') return;
    const { line } = editor.selection.active;
    const other = editor.document !== this.last?.document;
    this.last = editor;
    if (!other && line === this.line) return;
    this.line = line;
    this.soon(other);
  }

  private soon(changed: boolean): void {
    this.changed ||= changed;
    clearTimeout(this.timer);
    this.timer = setTimeout(() => {
      if (this.changed) this.changes.fire();
      else this.moves.fire();
      this.changed = false;
    }, PAUSE);
  }

  dispose(): void {
    clearTimeout(this.timer);
    for (const one of [...this.subscriptions, this.moves, this.changes]) one.dispose();
  }
}
