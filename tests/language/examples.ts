/**
 * The examples of the language reference, taken out of its Markdown. The words after ```` ```dowel ```` say what
 * a block is; they are not shown to readers:
 *
 *     dowel                      a whole file
 *     dowel file=pump.dowel      a whole file that others may use
 *     dowel machine              items of a machine
 *     dowel steps                statements of a procedure
 *     dowel steps after=cover-off   the same, with the steps of that name (surroundings.ts) done before
 *     finds=still-held,left-off  what the checker finds in it; without this it finds nothing
 */
import { readFileSync } from 'node:fs';

export const REFERENCE = 'grammar/LANGUAGE.md';
export const CHAPTER = 'grammar/STATE.md';

export type Form = 'file' | 'machine' | 'steps';

export interface Example {
  form: Form;
  /** The name under which other files use it. */
  path?: string;
  after?: string;
  finds: string[];
  text: string;
  /** Line of the fence in the reference, from 1. */
  line: number;
}

/** A file of the project, by its path from the top. */
export function textOf(path: string): string {
  return readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');
}

export function examplesIn(markdown: string): Example[] {
  const examples: Example[] = [];
  const lines = markdown.split('\n');
  for (let at = 0; at < lines.length; at++) {
    const info = /^```dowel\b(.*)$/.exec(lines[at]!)?.[1];
    if (info === undefined) continue;
    const end = lines.indexOf('```', at + 1);
    examples.push({ ...read(info.trim().split(/\s+/)), text: body(lines.slice(at + 1, end)), line: at + 1 });
    at = end;
  }
  return examples;
}

function body(lines: readonly string[]): string {
  return `${lines.join('\n')}\n`;
}

function read(words: readonly string[]): Omit<Example, 'text' | 'line'> {
  const example: Omit<Example, 'text' | 'line'> = { form: 'file', finds: [] };
  for (const word of words) {
    const [key, value] = word.split('=');
    if (key === 'machine' || key === 'steps') example.form = key;
    else if (key === 'file' && value) example.path = value;
    else if (key === 'after' && value) example.after = value;
    else if (key === 'finds' && value) example.finds = value.split(',');
    else if (word !== '') throw new Error(`“${word}” says nothing about an example.`);
  }
  return example;
}
