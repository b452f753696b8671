/** Every feature of the protocol, asked as an editor asks. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type {
  CallHierarchyIncomingCall,
  CallHierarchyItem,
  CallHierarchyOutgoingCall,
  CompletionItem,
  DocumentLink,
  FoldingRange,
  Hover,
  SelectionRange,
  SemanticTokens,
  SemanticTokensDelta,
  SymbolInformation,
  WorkspaceEdit,
} from 'vscode-languageserver/node';
import { PRESS } from '../features/cursor.ts';
import { changed, type Editor, editor } from './client.ts';

const STRIP = `use "press.dowel"
use "more.dowel"

// Two lines
// of comment.
procedure strip "Strip the press"
  for press
  tools wrench
  ends with cover, cover-screws, lever, feed-hose off
{
  remove lever picture "lever.png" "The lever."
  disconnect feed-hose
  note "Play: {play}."
  loosen cover-screws
  remove cover-screws
  remove cover
}

procedure whole "All of it"
  for press
{
  do strip
}
`;
const MORE = 'fluid soap "soap"\n';

let press: Editor;
const doc = (name: string) => ({ textDocument: { uri: press.uri(name) } });
const here = (piece: string, offset = 0, name = 'strip.dowel') => ({
  ...doc(name),
  position: press.at(name, piece, offset),
});

beforeAll(async () => {
  press = await editor(
    { 'press.dowel': PRESS, 'more.dowel': MORE, 'strip.dowel': STRIP },
    { textDocument: { completion: { completionItem: { snippetSupport: true } } } },
  );
});
afterAll(() => press.close());

describe('completion', () => {
  it('gives snippets to an editor that takes them, with what they mean', async () => {
    const items = await press.ask<CompletionItem[]>('textDocument/completion', here('  remove lever', 2));
    const task = items.find(({ label }) => label === 'task')!;
    expect(task.insertTextFormat).toBe(2);
    expect((task.textEdit as { newText: string }).newText).toMatch(
      /^task \$\{1:name\} "\$\{2:title\}" \{\n {2}\$0\n\}$/,
    );
    const remove = items.find(({ label }) => label === 'remove')!;
    expect(remove.documentation).toMatchObject({
      kind: 'markdown',
      value: expect.stringContaining('Undone by: `refit`'),
    });
  });

  it('orders what can be done before what cannot yet', async () => {
    const items = await press.ask<CompletionItem[]>('textDocument/completion', here('remove lever', 7));
    const sort = (label: string) => items.find((item) => item.label === label)!.sortText!;
    expect(sort('lever') < sort('cover')).toBe(true);
    expect((items.find(({ label }) => label === 'lever')!.textEdit as { range: unknown }).range).toEqual({
      start: press.at('strip.dowel', 'lever picture'),
      end: press.at('strip.dowel', 'lever picture', 5),
    });
  });

  it('writes plain text for an editor without snippets', async () => {
    const plain = await editor({ 'a.dowel': '' });
    const items = await plain.ask<CompletionItem[]>('textDocument/completion', {
      textDocument: { uri: plain.uri('a.dowel') },
      position: { line: 0, character: 0 },
    });
    for (const { textEdit, insertTextFormat } of items) {
      expect(insertTextFormat).toBeUndefined();
      expect((textEdit as { newText: string }).newText).not.toMatch(/[$‹›]/);
    }
    await plain.close();
  });
});

describe('renaming', () => {
  it('says what can be renamed, and renames it in all files', async () => {
    const found = await press.ask<{ placeholder: string }>('textDocument/prepareRename', here('lever'));
    expect(found.placeholder).toBe('lever');
    const edit = await press.ask<WorkspaceEdit>('textDocument/rename', { ...here('lever'), newName: 'arm' });
    const texts = changed(press, edit);
    expect(texts['press.dowel']).toContain('part arm "lever" on cover');
    expect(texts['strip.dowel']).toContain('remove arm picture');
    expect(texts['strip.dowel']).not.toContain('remove lever');
  });

  it('refuses with a reason', async () => {
    await expect(press.ask('textDocument/prepareRename', here('remove'))).rejects.toThrow('Only names');
    const taken = press.ask('textDocument/rename', { ...here('lever'), newName: 'cover' });
    await expect(taken).rejects.toThrow('another thing already');
  });

  it('lets uses follow a moved file', async () => {
    const edit = await press.ask<WorkspaceEdit>('workspace/willRenameFiles', {
      files: [{ oldUri: press.uri('press.dowel'), newUri: press.uri('machines/press.dowel') }],
    });
    expect(changed(press, edit)['strip.dowel']).toContain('use "machines/press.dowel"');
  });
});

describe('colouring', () => {
  it('is the same in full, as a range and as changes', async () => {
    const full = await press.ask<SemanticTokens>('textDocument/semanticTokens/full', doc('strip.dowel'));
    expect(full.data.length % 5).toBe(0);
    const all = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };
    const range = await press.ask<SemanticTokens>('textDocument/semanticTokens/range', {
      ...doc('strip.dowel'),
      range: all,
    });
    expect(range.data).toEqual(full.data);
    await press.change('strip.dowel', STRIP.replace('  remove lever', '  remove lever, guides'));
    const delta = await press.ask<SemanticTokensDelta>('textDocument/semanticTokens/full/delta', {
      ...doc('strip.dowel'),
      previousResultId: full.resultId,
    });
    const data = [...full.data];
    for (const { start, deleteCount, data: more = [] } of [...delta.edits].reverse())
      data.splice(start, deleteCount, ...more);
    const anew = await press.ask<SemanticTokens>('textDocument/semanticTokens/full', doc('strip.dowel'));
    expect(data).toEqual(anew.data);
    await press.change('strip.dowel', STRIP);
  });
});

describe('finding one’s way', () => {
  it('folds blocks, comments and uses', async () => {
    const folds = await press.ask<FoldingRange[]>('textDocument/foldingRange', doc('strip.dowel'));
    expect(folds).toContainEqual({ startLine: 0, endLine: 1, kind: 'imports' });
    expect(folds).toContainEqual({ startLine: 3, endLine: 4, kind: 'comment' });
    expect(folds).toContainEqual({ startLine: 5, endLine: 15 });
  });

  it('widens a selection step by step', async () => {
    const [range] = await press.ask<SelectionRange[]>('textDocument/selectionRange', {
      ...doc('strip.dowel'),
      positions: [press.at('strip.dowel', 'lever picture', 2)],
    });
    const pieces: string[] = [];
    const lines = STRIP.split('\n');
    for (let one: SelectionRange | undefined = range; one; one = one.parent)
      pieces.push(
        one.range.start.line === one.range.end.line
          ? lines[one.range.start.line]!.slice(one.range.start.character, one.range.end.character)
          : `${one.range.end.line - one.range.start.line}`,
      );
    expect(pieces).toEqual(['lever', 'remove lever picture "lever.png" "The lever."', '7', '7', '11', '23']);
  });

  it('links what is used and shown', async () => {
    const links = await press.ask<DocumentLink[]>('textDocument/documentLink', doc('strip.dowel'));
    expect(links.map(({ target }) => target)).toEqual(
      ['press.dowel', 'more.dowel', 'lever.png'].map(press.uri),
    );
  });

  it('finds a thing by some letters of its name', async () => {
    const found = await press.ask<SymbolInformation[]>('workspace/symbol', { query: 'cvscr' });
    expect(found.map(({ name, containerName }) => `${name} in ${containerName}`)).toEqual([
      'cover-screws in press',
    ]);
  });

  it('tells who carries out a procedure, and what it carries out', async () => {
    const [item] = await press.ask<CallHierarchyItem[]>(
      'textDocument/prepareCallHierarchy',
      here('strip "Strip'),
    );
    expect(item!.name).toBe('Strip the press');
    const incoming = await press.ask<CallHierarchyIncomingCall[]>('callHierarchy/incomingCalls', { item });
    expect(incoming.map(({ from }) => from.detail)).toEqual(['whole']);
    const outgoing = await press.ask<CallHierarchyOutgoingCall[]>('callHierarchy/outgoingCalls', {
      item: incoming[0]!.from,
    });
    expect(outgoing.map(({ to }) => to.detail)).toEqual(['strip']);
    expect(outgoing[0]!.fromRanges).toEqual([
      { start: press.at('strip.dowel', 'do strip', 3), end: press.at('strip.dowel', 'do strip', 8) },
    ]);
  });

  it('shows what a thing is', async () => {
    const hover = await press.ask<Hover>('textDocument/hover', here('cover-screws\n  remove'));
    expect(hover.contents).toMatchObject({ value: expect.stringContaining('cover screws') });
  });
});
