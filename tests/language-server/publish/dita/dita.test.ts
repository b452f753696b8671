/** DITA topics and maps: well-formed for a strict XML parser (xml2js), content models of content-models.ts. */
import { describe, expect, test } from 'vitest';
import { ditaFiles } from '../../../../language-server/publish/dita/dita.ts';
import { plainText } from '../../../../language-server/publish/document/types.ts';
import { DOCUMENTS, documentsIn, stepsOf } from '../documents.ts';
import { type Element, elementsOf, readSvg } from '../drawings/demos.ts';
import { faultsIn } from './content-models.ts';

const files = ditaFiles(DOCUMENTS);

function textOf(element: Element): string {
  return elementsOf(element)
    .map((one) => one._ ?? '')
    .join(' ');
}

describe.each([...files])('%s', (path, text) => {
  test('is well-formed and follows the content models', async () => {
    expect(faultsIn(await readSvg(text))).toEqual([]);
    expect(text).toMatch(
      /^<\?xml version="1\.0" encoding="UTF-8"\?>\n<!DOCTYPE (task|map) PUBLIC "-\/\/OASIS\/\//,
    );
  });

  test('ids are there once, targets exist', async () => {
    const elements = elementsOf(await readSvg(text));
    const ids = elements.flatMap((one) => one.$?.id ?? []);
    expect(new Set(ids).size).toBe(ids.length);
    for (const one of elements) if (one.$?.href) expect(files.has(one.$.href)).toBe(true);
    if (path.endsWith('.ditamap')) expect(elements.some((one) => one['#name'] === 'topicref')).toBe(true);
  });
});

test('every step and every notice of every demo is in its topics', async () => {
  for (const document of DOCUMENTS) {
    const texts = [...ditaFiles([document]).values()];
    const said = (await Promise.all(texts.map(async (text) => textOf(await readSvg(text))))).join(' ');
    for (const step of stepsOf(document.flow)) {
      expect(said).toContain(plainText(step.heading));
      for (const notice of step.notices)
        for (const part of notice.avoidance ? [notice.avoidance] : [plainText(notice.text)])
          expect(said).toContain(part);
    }
  }
});

const MACHINE = `machine m "M" {
  system mains live 400 V isolated at breaker
  isolator breaker in mains
  part frame fixed
  part cover "cover <&>" on frame
}
`;

test.each([
  ['a bare job', 'remove cover\nrefit cover'],
  ['a note at the end', 'remove cover\nrefit cover\nnote "That is all."'],
  [
    'a branch in a branch',
    'if "wet" { if "oily" { clean cover } otherwise { clean frame } } otherwise { clean cover }',
  ],
  [
    'a repeat with a branch',
    'repeat until "clean" at most 3 times { clean cover\nif "worn" { stop "Order one." } } otherwise { stop "Ask." }',
  ],
  [
    'readings in a step block',
    'step "Look" { measure gap of cover { up to 1 mm { clean cover } over 1 mm { stop "Scrap." } } }',
  ],
  ['a hold', 'hold "Keep the strap on." { clean cover\nclean frame }'],
  [
    'a notice',
    'task t "T" { danger live "400 V kills. Lock the breaker out."\nisolate mains\nrestore mains }',
  ],
  ['nothing', ''],
])('%s', async (_, steps) => {
  const documents = documentsIn(`${MACHINE}procedure job "Job" for m {\n${steps}\n}\n`);
  expect(documents).toHaveLength(1);
  for (const text of ditaFiles(documents).values()) expect(faultsIn(await readSvg(text))).toEqual([]);
});

describe('the checker of content models finds', () => {
  test.each([
    [
      'two commands',
      '<task id="a"><title>t</title><taskbody><steps><step><cmd>a</cmd><cmd>b</cmd></step></steps></taskbody></task>',
    ],
    [
      'a note behind the command',
      '<task id="a"><title>t</title><taskbody><steps><step><cmd>a</cmd><note type="note">b</note></step></steps></taskbody></task>',
    ],
    ['safety before spares', '<prelreqs><safety><nosafety/></safety><spares><nospares/></spares></prelreqs>'],
    ['a hazard without how to avoid it', '<messagepanel><typeofhazard>a</typeofhazard></messagepanel>'],
    ['none and some', '<reqconds><noconds/><reqcond>a</reqcond></reqconds>'],
    [
      'a wrong type',
      '<hazardstatement type="note"><messagepanel><typeofhazard>a</typeofhazard><howtoavoid>b</howtoavoid></messagepanel></hazardstatement>',
    ],
    ['text between steps', '<steps>text<step><cmd>a</cmd></step></steps>'],
    ['an unknown element', '<steps><stage/></steps>'],
  ])('%s', async (_, text) => {
    expect(faultsIn(await readSvg(text))).not.toEqual([]);
  });
});
