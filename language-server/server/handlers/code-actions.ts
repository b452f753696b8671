/**
 * Quick fixes and rewriting. What costs a search is worked out only when an editor asks for that kind, and
 * once for each text.
 */
import {
  type CodeAction,
  CodeActionKind,
  type Command,
  type WorkspaceEdit,
} from 'vscode-languageserver/node';
import { conversionsAt } from '../../features/convert-unit.ts';
import { extractions } from '../../features/extract.ts';
import { mendsFor } from '../../features/mend.ts';
import { fixAll, quickFixes, waiver } from '../../features/quick-fixes.ts';
import { rebuild } from '../../features/rebuild.ts';
import { Trial } from '../../features/trial.ts';
import type { View } from '../../features/view.ts';
import { writeOut } from '../../features/write-out.ts';
import type { Finding, Mend } from '../../report/finding.ts';
import { diagnosticOf } from '../convert.ts';
import { type Handler, offsetOf, type Services, workspaceEdit } from './handler.ts';

const FIX_ALL = `${CodeActionKind.SourceFixAll}.dowel`;

export const codeActions: Handler = {
  capabilities: {
    codeActionProvider: {
      codeActionKinds: [
        CodeActionKind.QuickFix,
        CodeActionKind.RefactorExtract,
        CodeActionKind.RefactorRewrite,
        FIX_ALL,
      ],
      resolveProvider: true,
    },
  },
  register(services) {
    const { connection, findings } = services;
    connection.onCodeAction(({ textDocument: { uri }, range, context }) => {
      const place = {
        start: offsetOf(services, uri, range.start),
        end: offsetOf(services, uri, range.end),
      };
      const wanted = (kind: string) =>
        !context.only || context.only.some((only) => kind === only || kind.startsWith(`${only}.`));
      const here = findings(uri).filter(({ start, end }) => end >= place.start && start <= place.end);
      return [
        ...(wanted(CodeActionKind.QuickFix) ? here.flatMap((one) => fixesOf(services, uri, one)) : []),
        ...(wanted(FIX_ALL) ? all(services, uri) : []),
        // Rewriting is shown when it is asked for, or where something is selected.
        ...(wanted(CodeActionKind.RefactorRewrite) ? rewrites(services, uri, place.start) : []),
        ...(wanted(CodeActionKind.RefactorExtract) && place.end > place.start
          ? extracts(services, uri, place)
          : []),
      ];
    });
    connection.onCodeActionResolve((action) => {
      const data = action.data as Later | undefined;
      if (action.edit || data === undefined) return action;
      const edit = later(services, data);
      return edit ? { ...action, edit } : { ...action, disabled: { reason: 'The text has changed.' } };
    });
  },
};

/**
 * One trial for all questions about a text as it is: much is tried for several of them. An editor may give an answer
 * up that takes it long, and then says that there is none.
 */
const trials = new WeakMap<View, Map<string, Trial>>();

function trialOf(view: View, uri: string): Trial {
  const known = trials.get(view) ?? new Map<string, Trial>();
  trials.set(view, known);
  const trial = known.get(uri) ?? new Trial(view.host, uri);
  known.set(uri, trial);
  return trial;
}

/** Fixes that were worked out for the texts as they are. */
const worked = new WeakMap<View, Map<string, Mend[]>>();

function fixesOf(services: Services, uri: string, finding: Finding): CodeAction[] {
  const view = services.view();
  const known = worked.get(view) ?? new Map<string, Mend[]>();
  worked.set(view, known);
  const key = `${uri} ${finding.check} ${finding.start} ${finding.end} ${finding.message}`;
  let mends = known.get(key);
  if (!mends) {
    mends = mendsOf(services, uri, finding);
    known.set(key, mends);
  }
  const diagnostics = [diagnosticOf(finding, services.lines)];
  const actions = mends.map(
    (mend, index): CodeAction => ({
      title: mend.title,
      kind: CodeActionKind.QuickFix,
      diagnostics,
      ...(index === 0 && !mend.title.startsWith('Hold ') ? { isPreferred: true } : {}),
      edit: workspaceEdit(services, mend.edits),
    }),
  );
  const same = fixAll(view, uri, services.findings(uri), finding.check);
  if (same && services.findings(uri).filter(({ check }) => check === finding.check).length > 1)
    actions.push({
      title: same.title,
      kind: CodeActionKind.QuickFix,
      diagnostics,
      edit: workspaceEdit(services, same.edits),
    });
  return actions;
}

/** A correction of a word is certain by itself; the others are tried. */
function mendsOf({ view, host }: Services, uri: string, finding: Finding): Mend[] {
  if (finding.mends && finding.mends.length > 0) return finding.mends;
  const trial = trialOf(view(), uri);
  const quick = quickFixes(view(), uri, finding, trial);
  const searched = mendsFor(host, uri, finding, trial);
  const titles = new Set(quick.map(({ title }) => title));
  const held = waiver(view(), uri, finding, trial);
  return [...quick, ...searched.filter(({ title }) => !titles.has(title)), ...(held ? [held] : [])];
}

function all(services: Services, uri: string): CodeAction[] {
  const mend = fixAll(services.view(), uri, services.findings(uri));
  if (!mend) return [];
  return [{ title: mend.title, kind: FIX_ALL, edit: workspaceEdit(services, mend.edits) }];
}

/** What is worked out when the author chooses it. */
type Later =
  | { what: 'rebuild'; uri: string; machine: string; part: string }
  | { what: 'write out'; uri: string };

function rewrites(services: Services, uri: string, offset: number): (CodeAction | Command)[] {
  const view = services.view();
  const kind = CodeActionKind.RefactorRewrite;
  const actions: CodeAction[] = conversionsAt(view, uri, offset).map(({ title, edit }) => ({
    title,
    kind,
    edit: workspaceEdit(services, [{ file: uri, ...edit }]),
  }));
  const file = view.file(uri);
  const scene = view.sceneAt(uri, offset);
  if (file && scene?.procedure && /^[ \t]*(reverse|do|for each)\b/m.test(file.text))
    actions.push(
      laterAction(services, 'Write out every `reverse`, `do` and `for each`', { what: 'write out', uri }),
    );
  const machine = scene?.machine;
  const declared = machine?.items.find(
    (item) => item.kind === 'declaration' && item.start <= offset && offset <= item.end,
  );
  if (machine?.name && declared?.kind === 'declaration' && declared.type === 'part' && declared.name) {
    const thing = scene!.model.byName.get(declared.name.text);
    if (thing && !thing.fixed)
      actions.push(
        laterAction(services, `Write the strip-down and rebuild of the ${thing.title}`, {
          what: 'rebuild',
          uri,
          machine: machine.name.text,
          part: thing.name,
        }),
      );
  }
  return actions;
}

function laterAction(services: Services, title: string, data: Later): CodeAction {
  const kind = CodeActionKind.RefactorRewrite;
  const resolves = services.client().textDocument?.codeAction?.resolveSupport?.properties.includes('edit');
  if (resolves) return { title, kind, data };
  const edit = later(services, data);
  return edit ? { title, kind, edit } : { title, kind, disabled: { reason: 'No way was found.' } };
}

function later(services: Services, data: Later): WorkspaceEdit | undefined {
  const view = services.view();
  const file = view.file(data.uri);
  if (!file) return undefined;
  if (data.what === 'write out') {
    const text = writeOut(services.host, data.uri);
    return text === undefined
      ? undefined
      : workspaceEdit(services, [{ file: data.uri, start: 0, end: file.text.length, text }]);
  }
  const machine = file.machines.find(({ name }) => name?.text === data.machine);
  if (!machine) return undefined;
  // The job is written behind the machine: where it shall stand is the author's choice.
  const path = `${data.uri.slice(0, data.uri.lastIndexOf('/') + 1)}renew-${data.part}.dowel`;
  const result = rebuild(view, file, machine, data.part, path);
  if (!result.ok) return undefined;
  const creates = services.client().workspace?.workspaceEdit?.resourceOperations?.includes('create');
  if (!creates) {
    const text = `\n${result.text.replace(/^use .*\n+/, '')}`;
    return workspaceEdit(services, [
      { file: data.uri, start: file.text.length, end: file.text.length, text },
    ]);
  }
  const start = { line: 0, character: 0 };
  return {
    documentChanges: [
      { kind: 'create', uri: path, options: { ignoreIfExists: true } },
      {
        textDocument: { uri: path, version: null },
        edits: [{ range: { start, end: start }, newText: result.text }],
      },
    ],
  };
}

function extracts(services: Services, uri: string, place: { start: number; end: number }): CodeAction[] {
  const view = services.view();
  return extractions(view, uri, place, trialOf(view, uri)).map(({ title, edits }) => ({
    title,
    kind: CodeActionKind.RefactorExtract,
    edit: workspaceEdit(
      services,
      edits.map((edit) => ({ file: uri, ...edit })),
    ),
  }));
}
