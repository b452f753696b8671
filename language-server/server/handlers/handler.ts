/**
 * One feature of the protocol: what it tells the editor it can do, and how it answers. A handler turns
 * positions into offsets and plain data into the protocol's shapes; what is answered comes from
 * ../../features/.
 */
import type {
  ClientCapabilities,
  Connection,
  Position,
  ServerCapabilities,
  TextEdit,
  WorkspaceEdit,
} from 'vscode-languageserver/node';
import type { View } from '../../features/view.ts';
import type { SourceHost } from '../../project/project.ts';
import type { Finding, Place } from '../../report/finding.ts';
import type { LinesCache } from '../convert.ts';
import type { Settings } from '../settings.ts';

/** What a session gives to its handlers. */
export interface Services {
  readonly connection: Connection;
  readonly host: SourceHost;
  readonly lines: LinesCache;
  /** The texts as they are now. */
  view(): View;
  /** Every file of the project that is known: open ones, those of the workspace, and what they use. */
  paths(): string[];
  /** What is wrong in a file as it is now, also where the editor has not asked for that yet. */
  findings(uri: string): readonly Finding[];
  /** The version of an open text; undefined where it is not open. */
  version(uri: string): number | undefined;
  settings(): Settings;
  client(): ClientCapabilities;
}

export interface Handler {
  capabilities: ServerCapabilities;
  register(services: Services): void;
}

export function offsetOf({ lines }: Services, uri: string, position: Position): number {
  return lines.offset(uri, position);
}

/** Edits of one or more files as the protocol has them. */
export function workspaceEdit(
  { lines }: Services,
  edits: readonly (Place & { text: string })[],
): WorkspaceEdit {
  const changes: Record<string, TextEdit[]> = {};
  for (const edit of edits) {
    changes[edit.file] ??= [];
    changes[edit.file]!.push(lines.edit(edit.file, edit, edit.text));
  }
  return { changes };
}
