/**
 * Findings in an editor, pushed and asked for, as the Language Server Protocol 3.17 has them: result ids that stay
 * while nothing changes, files that are not open, files that change on the disk, both ways to count columns.
 */
import { afterEach, expect, test } from 'vitest';
import type {
  DocumentDiagnosticReport,
  FullDocumentDiagnosticReport,
  WorkspaceDiagnosticReport,
} from 'vscode-languageserver/node';
import { Editor, folder } from './editor.ts';

const PRESS = `machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed  held by cover-screws
  fastener cover-screws "cover screws" x4
}
`;
const JOB = `use "press.dowel"

procedure open-up "Open the press" for press ends with cover off {
  remove covr
}
`;

let editor: Editor;
afterEach(() => editor.stop());

const pull = (uri: string, previousResultId?: string): Promise<DocumentDiagnosticReport> =>
  editor.client.sendRequest('textDocument/diagnostic', { textDocument: { uri }, previousResultId });
const codes = (uri: string) => editor.told(uri)?.map(({ code }) => code);

test('answers who asks, and says so when nothing has changed', async () => {
  const there = folder({ 'press.dowel': PRESS, 'job.dowel': JOB });
  editor = new Editor();
  await editor.start([there], { textDocument: { diagnostic: {} } });
  const uri = there.at('job.dowel');
  await editor.open(uri, JOB);
  const first = (await pull(uri)) as FullDocumentDiagnosticReport;
  expect(first.items.map(({ code }) => code)).toEqual(['unknown-name']);
  expect(await pull(uri, first.resultId)).toEqual({ kind: 'unchanged', resultId: first.resultId });
  // A comment behind the last line moves nothing.
  await editor.edit(uri, [4, 1], [4, 1], ' // done');
  expect(await pull(uri, first.resultId)).toMatchObject({ kind: 'unchanged' });
  await editor.edit(uri, [3, 12], [3, 12], 'e');
  const second = (await pull(uri, first.resultId)) as FullDocumentDiagnosticReport;
  expect(second.kind).toBe('full');
  expect(second.resultId).not.toBe(first.resultId);
  // An editor that asks is not told unasked.
  expect(editor.published.filter((one) => one.uri === uri)).toEqual([]);
});

test('checks the files of all folders, open or not, and again when one changes on the disk', async () => {
  const one = folder({ 'press.dowel': PRESS, 'job.dowel': JOB });
  const two = folder({ 'bad.dowel': 'machine {\n}\n' });
  editor = new Editor();
  await editor.start([one, two]);
  await editor.quiet();
  expect(codes(one.at('job.dowel'))).toEqual(['unknown-name']);
  expect(codes(two.at('bad.dowel'))).toEqual(['syntax']);
  const all: WorkspaceDiagnosticReport = await editor.client.sendRequest('workspace/diagnostic', {
    previousResultIds: [],
  });
  expect(all.items.map(({ uri, version }) => [uri, version])).toEqual([
    [one.at('job.dowel'), null],
    [one.at('press.dowel'), null],
    [two.at('bad.dowel'), null],
  ]);
  one.write('press.dowel', PRESS.replaceAll('cover', 'covr'));
  await editor.client.sendNotification('workspace/didChangeWatchedFiles', {
    changes: [{ uri: one.at('press.dowel'), type: 2 }],
  });
  await editor.quiet();
  // Now it is the header that names something else than the machine has.
  const { range, code } = editor.told(one.at('job.dowel'))![0]!;
  expect({ code, line: range.start.line }).toEqual({ code: 'unknown-name', line: 2 });
});

test('an open text wins over the disk, until it is closed', async () => {
  const there = folder({ 'press.dowel': PRESS, 'job.dowel': JOB });
  editor = new Editor();
  await editor.start([there]);
  const uri = there.at('job.dowel');
  await editor.open(uri, JOB.replace('remove covr', 'unbolt cover'));
  await editor.quiet();
  expect(codes(uri)).toEqual([]);
  await editor.client.sendNotification('textDocument/didClose', { textDocument: { uri } });
  await editor.quiet();
  expect(codes(uri)).toEqual(['unknown-name']);
});

test('a finding moves with its text, and what has not changed is not told again', async () => {
  const there = folder({ 'press.dowel': PRESS, 'job.dowel': JOB });
  editor = new Editor();
  await editor.start([there]);
  const uri = there.at('job.dowel');
  await editor.open(uri, JOB);
  await editor.quiet();
  const told = () => editor.published.filter((one) => one.uri === uri);
  expect(told().at(-1)!.diagnostics[0]!.range.start).toEqual({ line: 3, character: 9 });
  const before = told().length;
  await editor.edit(uri, [4, 1], [4, 1], ' // done');
  await editor.quiet();
  expect(told()).toHaveLength(before);
  await editor.edit(uri, [1, 0], [1, 0], '// Screws first.\n');
  await editor.quiet();
  expect(told()).toHaveLength(before + 1);
  expect(told().at(-1)!.diagnostics[0]!.range.start).toEqual({ line: 4, character: 9 });
});

test.each([
  ['utf-8', 13],
  ['utf-16', 12],
])('counts columns in %s', async (encoding, character) => {
  const there = folder({ 'press.dowel': PRESS });
  editor = new Editor();
  await editor.start([there], { general: { positionEncodings: [encoding] } });
  expect(editor.started.capabilities.positionEncoding).toBe(encoding);
  const uri = there.at('job.dowel');
  // “é” is one UTF-16 unit and two bytes in UTF-8 (Unicode Standard, table 3-6).
  await editor.open(uri, JOB.replace('remove covr', 'note "é"  §'));
  await editor.quiet();
  expect(editor.told(uri)!.find(({ code }) => code === 'bad-character')!.range.start).toEqual({
    line: 3,
    character,
  });
  // The sign is taken out by the editor's own count.
  await editor.edit(uri, [3, character], [3, character + (encoding === 'utf-8' ? 2 : 1)], '');
  await editor.quiet();
  expect(codes(uri)).not.toContain('bad-character');
});

test('follows the configuration of the house', async () => {
  const there = folder({
    'press.dowel': PRESS,
    'job.dowel': JOB,
    'dowel.config.json': '{ "severities": { "unknown-name": "hint" } }',
  });
  editor = new Editor();
  await editor.start([there]);
  await editor.quiet();
  expect(editor.told(there.at('job.dowel'))![0]!.severity).toBe(4);
});
