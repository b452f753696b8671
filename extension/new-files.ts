/** A first machine and a first procedure: a new file in the folder with its snippet, ready to be filled in. */
import { commands, l10n, Uri, window, workspace } from 'vscode';

export const newMachine = () =>
  create('machine.dowel', 'First machine', l10n.t('A name for the machine file, as in pump.dowel'));
export const newProcedure = () =>
  create(
    'procedure.dowel',
    'First procedure',
    l10n.t('A name for the procedure file, as in renew-seal.dowel'),
  );

async function create(usual: string, snippet: string, prompt: string): Promise<void> {
  const [folder] = workspace.workspaceFolders ?? [];
  if (!folder) {
    const open = l10n.t('Open Folder');
    const chosen = await window.showInformationMessage(
      l10n.t('A procedure finds its machine in the same folder. Open a folder first; it may be empty.'),
      open,
    );
    if (chosen === open) await commands.executeCommand('workbench.action.files.openFolder');
    return;
  }
  const stem = usual.slice(0, -'.dowel'.length);
  const given = await window.showInputBox({
    prompt,
    value: usual,
    valueSelection: [0, stem.length],
    validateInput: async (value) => (await problemWith(value, folder.uri)) ?? null,
  });
  if (given === undefined) return;
  const uri = Uri.joinPath(folder.uri, withEnding(given));
  await workspace.fs.writeFile(uri, new Uint8Array());
  await window.showTextDocument(uri);
  await commands.executeCommand('editor.action.insertSnippet', { langId: 'dowel', name: snippet });
}

function withEnding(name: string): string {
  return name.trim().endsWith('.dowel') ? name.trim() : `${name.trim()}.dowel`;
}

async function problemWith(name: string, folder: Uri): Promise<string | undefined> {
  if (!/^[^\\/:*?"<>|\s.][^\\/:*?"<>|]*$/.test(name.trim()))
    return l10n.t('Letters, digits and hyphens make a name that every system can store.');
  try {
    await workspace.fs.stat(Uri.joinPath(folder, withEnding(name)));
    return l10n.t('{0} is there already. Take another name.', withEnding(name));
  } catch {
    return undefined;
  }
}
