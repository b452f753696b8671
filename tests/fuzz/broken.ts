/**
 * What must hold for every text, said in words where it does not: nothing throws, no finding is about the tool, places
 * lie in the text, tokens and gaps are the text, laying out twice is laying out once. Time is watched by the caller.
 */
import { formatText } from '../../grammar/format/format.ts';
import { parse } from '../../grammar/parser/parse.ts';
import { checkTexts } from '../../language-server/checks/check-texts.ts';
import { outline } from '../../language-server/features/outline.ts';
import { stateAt } from '../../language-server/features/state-at.ts';
import { writeOut } from '../../language-server/features/write-out.ts';

/** `all`: the answers for editors too, which cost as much again. */
export function broken(text: string, all: boolean): string | undefined {
  try {
    return (
      tokensAgree(text) ?? layoutHolds(text) ?? findingsHold(text) ?? (all ? featuresHold(text) : undefined)
    );
  } catch (error) {
    return `threw ${error instanceof Error ? error.stack : String(error)}`;
  }
}

function tokensAgree(text: string): string | undefined {
  const { tokens, tree } = parse(text);
  let at = 0;
  for (const { start, end } of tokens) {
    if (start < at || end < start || end > text.length) return `token ${start}..${end} after ${at}`;
    at = end;
  }
  return tree.end === text.length ? undefined : `the tree ends at ${tree.end} of ${text.length}`;
}

function layoutHolds(text: string): string | undefined {
  const once = formatText(text);
  const twice = formatText(once);
  return once === twice ? undefined : `laid out twice differs:\n${once}\n---\n${twice}`;
}

function findingsHold(text: string): string | undefined {
  for (const { check, start, end, message, help } of checkTexts({ 'a.dowel': text }, 'a.dowel').findings) {
    if (check === 'tool-failure') return `${message} ${help ?? ''}`;
    if (start < 0 || end < start || end > text.length) return `${check} at ${start}..${end}`;
    if (/undefined|\[object|NaN/.test(message.replaceAll(/[“`"][^”`"]*[”`"]/g, '')))
      return `${check}: ${message}`;
  }
  return undefined;
}

function featuresHold(text: string): string | undefined {
  const host = { read: (path: string) => (path === 'a.dowel' ? text : undefined), resolve: () => 'none' };
  outline(parse(text).tree);
  stateAt(host, 'a.dowel', Math.floor(text.length / 2));
  writeOut(host, 'a.dowel');
  return undefined;
}
