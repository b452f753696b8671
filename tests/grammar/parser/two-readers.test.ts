/**
 * The parser against a second reader of the language (tests/oracle), written from the reference alone and without the
 * parser: names, titles, clauses, references, words of actions and texts of all right files are the same for both.
 */
import { describe, expect, it } from 'vitest';
import { parse } from '../../../grammar/parser/parse.ts';
import type * as Tree from '../../../grammar/syntax/tree.ts';
import { FILES } from '../../mutation/right.ts';
import { readFile } from '../../oracle/reader.ts';
import type * as Oracle from '../../oracle/shape.ts';

type Told = (string | number | boolean | undefined)[];

const FLOW: ReadonlySet<string> = new Set(['task', 'step', 'hold', 'when', 'if', 'repeat', 'for each']);

// ------------------------------------------------------------ the parser's tree

const refText = ({ name, positions, count }: Tree.Ref): string =>
  [
    name.text,
    ...positions.map(({ from, to }) => `#${to === undefined ? from : `${from}..${to}`}`),
    ...(count === undefined ? [] : [`x${count}`]),
  ].join(' ');

function toldOfMachine(machine: Tree.Machine): Told[] {
  return [
    ['machine', machine.name?.text, machine.extends?.text],
    ...machine.items.flatMap((item): Told[] => {
      if (item.kind === 'declaration')
        return [[item.type, item.name?.text, item.title?.value, ...item.clauses.map(({ clause }) => clause)]];
      if (item.kind === 'variant')
        return [['variant', item.name?.text, ...item.values.map(({ text }) => text)]];
      return [];
    }),
  ];
}

function toldOfBlock(block: Tree.Block | undefined): Told[] {
  return (block?.statements ?? []).flatMap((one): Told[] => {
    switch (one.kind) {
      case 'action': {
        const tail = (kind: string) => one.tails.some((each) => each.tail === kind);
        // For the other reader what stands behind `between` is no object.
        const together = one.together && !tail('between');
        const own: Told = [one.verb, one.fresh, together, tail('by hand'), tail('and discard')];
        const texts = [one.text, ...one.tails.map((each) => ('text' in each ? each.text : undefined))];
        return [
          [...own, ...one.objects.map(refText), ...texts.flatMap((each) => each?.value ?? []).sort()],
          ...one.outcomes.flatMap(({ body }) => toldOfBlock(body)),
        ];
      }
      case 'notice':
        return [[one.signal, ...one.hazards.map(({ text }) => text), one.text?.value]];
      case 'task':
        return [['task', one.name?.text], ...toldOfBlock(one.body)];
      case 'choice':
        return [['choice', one.name?.text, ...one.values.map(({ text }) => text)]];
      case 'reverse':
        return [['reverse', one.task?.text, ...one.except.map(refText)]];
      case 'do':
        return [['do', one.ref?.text]];
      case 'step':
      case 'hold':
      case 'for each':
        return [[one.kind], ...toldOfBlock(one.body)];
      case 'when':
      case 'if':
      case 'repeat':
        return [[one.kind], ...toldOfBlock(one.body), ...toldOfBlock(one.otherwise)];
      default:
        return [];
    }
  });
}

function told(text: string): Told[] {
  return parse(text).tree.items.flatMap((item): Told[] => {
    if (item.kind === 'machine') return toldOfMachine(item);
    if (item.kind === 'procedure') return [['procedure', item.name?.text], ...toldOfBlock(item.body)];
    return [];
  });
}

// ------------------------------------------------------------ the other reader

const otherRef = ({ name, positions, count }: Oracle.Ref): string =>
  [name, ...positions.map((one) => `#${one}`), ...(count === undefined ? [] : [`x${count}`])].join(' ');

function otherBlock(block: Oracle.Block | undefined): Told[] {
  return (block?.statements ?? []).flatMap((one): Told[] => {
    switch (one.kind) {
      case 'action':
        return [
          [
            ...[one.verb, one.fresh, one.together, one.byHand, one.discard],
            ...[...one.objects, ...one.between].map(otherRef),
            ...one.texts.toSorted(),
          ],
          ...one.outcomes.flatMap(otherBlock),
        ];
      case 'notice':
        return [[one.signal, ...one.hazards, one.text]];
      case 'task':
        return [['task', one.name], ...otherBlock(one.body)];
      case 'choice':
        return [['choice', one.name, ...one.values]];
      case 'reverse':
        return [['reverse', one.task, ...one.except.map(otherRef)]];
      case 'do':
        return [['do', one.name]];
      default:
        if (!FLOW.has(one.kind) || !('body' in one)) return [];
        return [
          [one.kind],
          ...otherBlock(one.body),
          ...('otherwise' in one ? otherBlock(one.otherwise) : []),
        ];
    }
  });
}

function otherTold(text: string): Told[] {
  const { machines, procedures } = readFile(text);
  return [
    ...machines.flatMap((machine): Told[] => [
      ['machine', machine.name, machine.extends],
      ...machine.declarations.map(
        ({ kind, name, title, clauses }): Told => [kind, name, title, ...clauses.map(({ clause }) => clause)],
      ),
      ...machine.variants.map(({ name, values }): Told => ['variant', name, ...values]),
    ]),
    ...procedures.flatMap(({ name, body }): Told[] => [['procedure', name], ...otherBlock(body)]),
  ];
}

const lines = (all: Told[]) => all.map((one) => one.map((word) => word ?? '–').join(' | ')).sort();

describe('both readers read the same', () => {
  it.each(Object.keys(FILES))('%s', (path) => {
    expect(lines(told(FILES[path]!))).toEqual(lines(otherTold(FILES[path]!)));
  });
});

/** Every text in quotation marks that the tree holds. */
function textsIn(node: unknown): string[] {
  if (Array.isArray(node)) return node.flatMap(textsIn);
  if (typeof node !== 'object' || node === null) return [];
  const own = 'holes' in node && 'value' in node ? [String(node.value)] : [];
  return [...own, ...Object.values(node).flatMap(textsIn)];
}

describe('no text is lost', () => {
  it.each(Object.keys(FILES))('%s', (path) => {
    const text = FILES[path]!.replaceAll(/^\s*\/\/.*$/gm, '');
    const written = [...text.matchAll(/"((?:[^"\\]|\\.)*)"/g)].map((match) =>
      match[1]!.replaceAll(/\\(.)/g, '$1'),
    );
    const { items } = parse(text).tree;
    const kept = textsIn(items);
    expect(written.filter((one) => !kept.some((other) => other.includes(one)))).toEqual([]);
    const titles = [...text.matchAll(/^procedure \S+ "([^"]*)"/gm)].map((match) => match[1]);
    expect(items.flatMap((item) => (item.kind === 'procedure' ? [item.title?.value] : []))).toEqual(titles);
  });
});
