/** Shows a place of a text, with the focus in the text. */
import { Range, Selection, TextEditorRevealType, Uri, ViewColumn, window, workspace } from 'vscode';

export interface Lines {
  start: { line: number; character: number };
  end: { line: number; character: number };
}
export async function goTo(uri: string, place: Lines, keepFocus = false): Promise<void> {
  const document = await workspace.openTextDocument(Uri.parse(uri, true));
  const { start } = document.validateRange(
    new Range(place.start.line, place.start.character, place.end.line, place.end.character),
  );
  // In a column where it is shown already; never over a panel.
  const shown = window.visibleTextEditors.find(
    (one) => one.document.uri.toString() === document.uri.toString(),
  );
  const editor = await window.showTextDocument(document, {
    viewColumn: shown?.viewColumn ?? window.visibleTextEditors[0]?.viewColumn ?? ViewColumn.One,
    preserveFocus: keepFocus,
    preview: false,
  });
  // On the first word of the line, where a step begins.
  const first = document.lineAt(start.line).firstNonWhitespaceCharacterIndex;
  const at = start.with({ character: Math.max(start.character, first) });
  editor.selection = new Selection(at, at);
  editor.revealRange(new Range(at, at), TextEditorRevealType.InCenterIfOutsideViewport);
}
