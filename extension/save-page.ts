/** Saves the procedure at the cursor as one page: a file for any browser, without a network, and for paper. */
import { env, l10n, Uri, window, workspace } from 'vscode';
import type { LanguageClient } from 'vscode-languageclient/node';
import type { Shown } from '../language-server/server/handlers/shown.ts';
import type { Cursor } from './cursor.ts';

export async function savePage(client: LanguageClient, cursor: Cursor): Promise<void> {
  const { place, editor } = cursor;
  if (!place || !editor) return;
  const page = await client.sendRequest<Shown | null>('dowel/preview', place);
  if (!page) {
    void window.showInformationMessage(l10n.t('There is no procedure in this file: a page is made of one.'));
    return;
  }
  const target = await window.showSaveDialog({
    defaultUri: editor.document.uri.with({ path: editor.document.uri.path.replace(/(\.dowel)?$/, '.html') }),
    filters: { [l10n.t('Page')]: ['html'] },
  });
  if (!target) return;
  await workspace.fs.writeFile(target, new TextEncoder().encode(page.html));
  const open = l10n.t('Open in Browser');
  const chosen = await window.showInformationMessage(
    l10n.t('Saved “{0}” as {1}.', page.title, workspace.asRelativePath(target)),
    ...(target.scheme === 'file' ? [open] : []),
  );
  if (chosen === open) await env.openExternal(Uri.file(target.fsPath));
}
