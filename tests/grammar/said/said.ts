/** What is said of a text, a line for each problem, with the example and the mend that go with it. */
import { readFileSync } from 'node:fs';
import { parse } from '../../../grammar/parser/parse.ts';

export const RECORD = new URL('./said.txt', import.meta.url);

export function said(text: string): string[] {
  const place = (offset: number) => {
    const lines = text.slice(0, offset).split('\n');
    return `${lines.length}:${lines.at(-1)!.length + 1}`;
  };
  const { problems } = parse(text);
  return problems.map(({ check, start, end, message, example, mend }) =>
    [
      `  ${place(start)}-${place(end)} ${check}: ${message}`,
      ...(example === undefined ? [] : [`for example ${example}`]),
      ...(mend === undefined
        ? []
        : [`${mend.title} ${place(mend.start)}-${place(mend.end)} ${JSON.stringify(mend.text)}`]),
    ].join(' / '),
  );
}

/** The text as one line, and what is said of it. */
export function written(text: string): string {
  const short = text.length > 400 ? `${text.slice(0, 60)}… (${text.length} letters)` : text;
  return [JSON.stringify(short), ...said(text)].join('\n');
}

export const recorded = (): string[] => readFileSync(RECORD, 'utf8').trimEnd().split('\n\n');
