/** Renaming, and what follows a file that is moved: the `use` lines that name it. */
import { LSPErrorCodes, ResponseError } from 'vscode-languageserver/node';
import { movedUses } from '../../features/moved-files.ts';
import { renameableAt, rename as renamed } from '../../features/rename.ts';
import { type Handler, offsetOf, workspaceEdit } from './handler.ts';

const DOWEL_FILES = { filters: [{ pattern: { glob: '**/*.dowel' } }] };

export const rename: Handler = {
  capabilities: {
    renameProvider: { prepareProvider: true },
    workspace: { fileOperations: { willRename: DOWEL_FILES } },
  },
  register(services) {
    const { connection, lines, view, paths } = services;
    connection.onPrepareRename(({ textDocument: { uri }, position }) => {
      const found = renameableAt(view(), uri, offsetOf(services, uri, position));
      if (!found.ok) throw new ResponseError(LSPErrorCodes.RequestFailed, found.reason);
      return { range: lines.range(uri, found.at), placeholder: found.name };
    });
    connection.onRenameRequest(({ textDocument: { uri }, position, newName }) => {
      const result = renamed(view(), uri, offsetOf(services, uri, position), newName, paths());
      if (!result.ok) throw new ResponseError(LSPErrorCodes.RequestFailed, result.reason);
      return workspaceEdit(services, result.edits);
    });
    connection.workspace.onWillRenameFiles(({ files }) => {
      const moved = files.map(({ oldUri, newUri }) => ({ from: oldUri, to: newUri }));
      return workspaceEdit(services, movedUses(view(), moved, paths()));
    });
  },
};
