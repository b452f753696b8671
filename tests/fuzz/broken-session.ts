/**
 * What must hold in every session of an editor, whatever is typed and asked: every question is answered, none with a
 * fault of the server, nothing is logged as one, and in the end the server has the texts that the editor has. The
 * session is spoken to in the words of the protocol, in this process.
 */
import { type LogMessageParams, MessageType, type Position, ResponseError } from 'vscode-languageserver/node';
import { formatText } from '../../grammar/format/format.ts';
import { type Editor, editor } from '../language-server/server/client.ts';
import { input } from './inputs.ts';
import { Random } from './random.ts';

/** What the protocol says for an answer that the server gives on purpose: `RequestFailed`. */
const ON_PURPOSE = -32803;
const NAMES = ['a.dowel', 'b.dowel', 'c.dowel'];
const MOVES = 14;
/** No answer in this time is none: other work on the machine makes everything slower. */
const PATIENCE_MS = 60_000;

const POSITIONED = [
  ...[
    'hover',
    'definition',
    'references',
    'documentHighlight',
    'completion',
    'signatureHelp',
    'prepareRename',
  ],
  'prepareCallHierarchy',
].map((name) => `textDocument/${name}`);
const WHOLE = ['documentSymbol', 'foldingRange', 'documentLink', 'codeLens', 'formatting', 'diagnostic'].map(
  (name) => `textDocument/${name}`,
);
const PANELS = ['dowel/state', 'dowel/preview', 'dowel/chart', 'dowel/map', 'dowel/cases'];

export async function session(seed: number): Promise<string | undefined> {
  const random = new Random(seed);
  const one = new Session(random, await editor({}));
  const thrown: unknown[] = [];
  const note = (error: unknown) => thrown.push(error);
  process.on('uncaughtException', note);
  try {
    for (let move = 0; move < MOVES; move++) await one.move();
    await one.compare();
    await one.close();
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  } finally {
    process.off('uncaughtException', note);
  }
  if (thrown.length > 0) return `thrown by itself: ${String((thrown[0] as Error).stack)}`;
  return one.logged.length > 0 ? `logged: ${one.logged.join('\n')}` : undefined;
}

class Session {
  readonly logged: string[] = [];
  private readonly random: Random;
  private readonly editor: Editor;
  private readonly texts = new Map<string, string>();
  private versions = 1;

  constructor(random: Random, one: Editor) {
    this.random = random;
    this.editor = one;
    one.client.onNotification('window/logMessage', ({ type, message }: LogMessageParams) => {
      if (type === MessageType.Error) this.logged.push(message);
    });
  }

  async move(): Promise<void> {
    const { random, texts } = this;
    const name = random.of(NAMES);
    const text = texts.get(name);
    if (text === undefined) await this.open(name);
    else if (random.below(12) === 0) await this.drop(name);
    else if (random.below(2) === 0) await this.edit(name, text);
    await this.ask(random.of(NAMES));
  }

  /** The server lays out what the editor sees: only with the same text does the same come out. */
  async compare(): Promise<void> {
    for (const [name, text] of this.texts) {
      const edits = await this.answer<{ newText: string }[]>('textDocument/formatting', {
        textDocument: { uri: this.editor.uri(name) },
        options: { tabSize: 2, insertSpaces: true },
      });
      const laidOut = edits?.[0]?.newText ?? text;
      if (laidOut !== formatText(text))
        throw new Error(`the texts of ${name} differ:\n${laidOut}\n---\n${text}`);
    }
  }

  close(): Promise<void> {
    return this.editor.close();
  }

  private async open(name: string): Promise<void> {
    const { random } = this;
    const uses = random.below(2) === 0 ? `use "${random.of(NAMES)}"\n` : '';
    const text = uses + input(random.below(1_000_000_000)).text;
    this.texts.set(name, text);
    await this.editor.client.sendNotification('textDocument/didOpen', {
      textDocument: { uri: this.editor.uri(name), languageId: 'dowel', version: ++this.versions, text },
    });
  }

  private async drop(name: string): Promise<void> {
    this.texts.delete(name);
    const textDocument = { uri: this.editor.uri(name) };
    await this.editor.client.sendNotification('textDocument/didClose', { textDocument });
  }

  /** Some places replaced one after the other, or now and then all of the text. */
  private async edit(name: string, before: string): Promise<void> {
    const { random } = this;
    let text = before;
    const contentChanges: object[] = [];
    if (random.below(8) === 0) {
      text = input(random.below(1_000_000_000)).text;
      contentChanges.push({ text });
    } else
      for (let times = 1 + random.below(3); times > 0; times--) {
        const start = random.below(text.length + 1);
        const end = Math.min(text.length, start + random.below(40));
        const put =
          random.below(2) === 0 ? '' : input(random.below(1_000_000_000)).text.slice(0, random.below(30));
        // The protocol has no place between the two characters of one line end or within one sign of two halves.
        const range = { start: placeOf(text, start), end: placeOf(text, end) };
        if (offsetOf(text, range.start) !== start || offsetOf(text, range.end) !== end) continue;
        text = text.slice(0, start) + put + text.slice(end);
        contentChanges.push({ range, text: put });
      }
    this.texts.set(name, text);
    await this.editor.client.sendNotification('textDocument/didChange', {
      textDocument: { uri: this.editor.uri(name), version: ++this.versions },
      contentChanges,
    });
  }

  private async ask(name: string): Promise<void> {
    const { random } = this;
    const uri = this.editor.uri(name);
    const textDocument = { uri };
    const position = this.place(name);
    const range = { start: position, end: this.place(name) };
    switch (random.below(8)) {
      case 0:
        await this.answer(random.of(WHOLE), { textDocument, options: { tabSize: 2, insertSpaces: true } });
        return;
      case 1:
        await this.answer(random.of(PANELS), { uri, position });
        return;
      case 2:
        await this.answer('textDocument/rename', {
          textDocument,
          position,
          newName: random.of(['cover', 'a b', '']),
        });
        return;
      case 3: {
        const only = random.below(2) === 0 ? { only: ['quickfix', 'refactor'] } : {};
        const context = { diagnostics: [], ...only };
        const actions = await this.answer<object[]>('textDocument/codeAction', {
          textDocument,
          range,
          context,
        });
        if (actions && actions.length > 0) await this.answer('codeAction/resolve', random.of(actions));
        return;
      }
      case 4:
        await this.answer('textDocument/inlayHint', { textDocument, range });
        await this.answer('textDocument/selectionRange', { textDocument, positions: [position, range.end] });
        return;
      case 5:
        await this.answer('textDocument/semanticTokens/full', { textDocument });
        await this.answer('workspace/symbol', { query: random.of(['', 'cover', '(']) });
        return;
      default:
        await this.answer(random.of(POSITIONED), {
          textDocument,
          position,
          context: { includeDeclaration: true },
        });
    }
  }

  /** Mostly a place in the text, now and then one far outside. */
  private place(name: string): Position {
    const { random } = this;
    const text = this.texts.get(name) ?? '';
    if (random.below(10) === 0) return { line: random.below(400), character: random.below(4000) };
    return placeOf(text, random.below(text.length + 1));
  }

  private async answer<Answer>(method: string, params: unknown): Promise<Answer | undefined> {
    let timer: NodeJS.Timeout | undefined;
    const late = new Promise<never>((_, refuse) => {
      timer = setTimeout(() => refuse(new Error(`${method} is not answered`)), PATIENCE_MS);
    });
    try {
      return await Promise.race([this.editor.ask<Answer>(method, params), late]);
    } catch (error) {
      if (error instanceof ResponseError && error.code === ON_PURPOSE) return undefined;
      throw new Error(`${method} ${JSON.stringify(params)}: ${String(error)}`);
    } finally {
      clearTimeout(timer);
    }
  }
}

/** Lines end as the protocol says: at a line feed, a carriage return, or both. */
const LINE_END = /\r\n|\n|\r/g;

function placeOf(text: string, offset: number): Position {
  const before = text.slice(0, offset).split(LINE_END);
  return { line: before.length - 1, character: before.at(-1)!.length };
}

function offsetOf(text: string, { line, character }: Position): number {
  const ends = [...text.matchAll(LINE_END)].slice(0, line);
  const start =
    line === 0 ? 0 : ends.length < line ? text.length : ends.at(-1)!.index + ends.at(-1)![0].length;
  return start + character;
}
