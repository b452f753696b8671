/**
 * A first machine and a first procedure: a new file in the folder, ready to be filled in. A procedure is written from
 * the machine that is there, where its author likes; a sample is about that machine.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import {
  commands,
  type ExtensionContext,
  l10n,
  type QuickPickItem,
  QuickPickItemKind,
  SnippetString,
  Uri,
  window,
  workspace,
} from 'vscode';
import type { LanguageClient } from 'vscode-languageclient/node';
import type { MachineParts, RebuildAnswer } from '../language-server/server/handlers/new-procedure.ts';
import { withField } from './sample.ts';

export async function newMachine(context: ExtensionContext): Promise<void> {
  const folder = await folderToWriteIn();
  if (!folder) return;
  const uri = await nameOf('machine.dowel', l10n.t('A name for the machine file, as in pump.dowel'), folder);
  if (!uri) return;
  await create(uri, '', new SnippetString(sample(context, 'First machine')));
  await done('dowel.machineMade');
}

export async function newProcedure(context: ExtensionContext, client: LanguageClient): Promise<void> {
  const folder = await folderToWriteIn();
  if (!folder) return;
  const machines = client.isRunning() ? await client.sendRequest<MachineParts[]>('dowel/parts') : [];
  const chosen = await workOn(machines);
  if (!chosen) return;
  const { machine, part } = chosen;
  const uri = await nameOf(
    part ? `renew-${part}.dowel` : 'procedure.dowel',
    l10n.t('A name for the procedure file, as in renew-seal.dowel'),
    folder,
  );
  if (!uri) return;
  if (!machine || !part) {
    await create(uri, '', new SnippetString(about(sample(context, 'First procedure'), machine, uri)));
    await done('dowel.procedureMade');
    return;
  }
  const answer = await client.sendRequest<RebuildAnswer>('dowel/rebuild', {
    uri: machine.uri,
    machine: machine.machine,
    part,
    target: uri.toString(),
  });
  if (answer.text !== undefined) {
    await create(uri, answer.text);
    await done('dowel.procedureMade');
  } else if (answer.reason) void window.showWarningMessage(answer.reason);
}

/**
 * Ticks a step of the walkthrough off, once the file is there: the walkthrough takes the focus when a step is done, and
 * a name that is still being asked for must keep it.
 */
async function done(step: string): Promise<void> {
  await commands.executeCommand('setContext', step, true);
}

async function folderToWriteIn(): Promise<Uri | undefined> {
  const [folder] = workspace.workspaceFolders ?? [];
  if (folder) return folder.uri;
  const open = l10n.t('Open Folder');
  const chosen = await window.showInformationMessage(
    l10n.t('A procedure finds its machine in the same folder. Open a folder first; it may be empty.'),
    open,
  );
  if (chosen === open) await commands.executeCommand('workbench.action.files.openFolder');
  return undefined;
}

interface Choice extends QuickPickItem {
  machine?: MachineParts;
  part?: string;
}

/** What the procedure is about; undefined where nothing was chosen. Without a machine nobody is asked. */
async function workOn(
  machines: readonly MachineParts[],
): Promise<Pick<Choice, 'machine' | 'part'> | undefined> {
  const [only] = machines;
  if (!only) return {};
  const items: Choice[] = machines.flatMap((machine) => [
    { label: machine.title, kind: QuickPickItemKind.Separator },
    ...machine.parts.map(({ name, title }) => ({
      label: title,
      description: l10n.t('take it off and put it back'),
      machine,
      part: name,
    })),
    { label: l10n.t('Something else'), description: l10n.t('a sample to fill in'), machine },
  ]);
  return window.showQuickPick(items, {
    title: l10n.t('New procedure'),
    placeHolder: l10n.t('What is the work on? Its steps are written from the machine file.'),
    matchOnDescription: true,
    // The walkthrough takes the focus back while it loads.
    ignoreFocusOut: true,
  });
}

function sample(context: ExtensionContext, name: string): string {
  const all = JSON.parse(readFileSync(join(context.extensionPath, 'snippets.json'), 'utf8'));
  return all[name].body.join('\n');
}

/** The sample with the file and the name of the machine that is there. */
function about(text: string, machine: MachineParts | undefined, target: Uri): string {
  if (!machine) return text;
  const from = Uri.joinPath(target, '..').path;
  const { path } = Uri.parse(machine.uri, true);
  const file = path.startsWith(`${from}/`) ? path.slice(from.length + 1) : 'machine.dowel';
  return withField(withField(text, 1, file), 4, machine.machine);
}

async function nameOf(usual: string, prompt: string, folder: Uri): Promise<Uri | undefined> {
  const stem = usual.slice(0, -'.dowel'.length);
  const given = await window.showInputBox({
    prompt,
    value: usual,
    valueSelection: [0, stem.length],
    ignoreFocusOut: true,
    validateInput: async (value) => (await problemWith(value, folder)) ?? null,
  });
  return given === undefined ? undefined : Uri.joinPath(folder, withEnding(given));
}

async function create(uri: Uri, text: string, snippet?: SnippetString): Promise<void> {
  await workspace.fs.writeFile(uri, new TextEncoder().encode(text));
  const editor = await window.showTextDocument(uri);
  if (snippet) await editor.insertSnippet(snippet);
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
