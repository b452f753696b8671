/**
 * The sentences of steps: a table of every verb with every kind and number of things, which was read through line by
 * line, and slips of English that no sentence may have. Grammar: common practice, no source.
 */
import { describe, expect, test } from 'vitest';
import { parse } from '../../../grammar/parser/parse.ts';
import { memoryHost } from '../../../language-server/project/project.ts';
import { buildDocument } from '../../../language-server/publish/document/build.ts';
import { stepsIn } from '../../../language-server/publish/document/rest.ts';
import { plainText, type Step } from '../../../language-server/publish/document/types.ts';
import { everyVerb } from './every-verb.ts';
import { slipsIn } from './slips.ts';

function sentencesOf(step: Step): string[] {
  const turned = step.detail.fastening.flatMap((one) => [
    ...(one.stages.length > 1 ? one.stages.map(({ sentence }) => sentence) : []),
    ...(one.order ? [one.order.sentence] : []),
    ...one.wrenches.flatMap(({ sentence, because }) =>
      [sentence, because ?? ''].filter((line) => line !== ''),
    ),
  ]);
  return [plainText(step.heading), ...turned, ...[...step.more, ...step.said, ...step.expect].map(plainText)];
}

const tables = new Map<string, { what: string; sentences: string[] }[]>();

/** Made once for each spelling. */
function table(words: 'british' | 'american'): { what: string; sentences: string[] }[] {
  const known = tables.get(words) ?? made(words);
  tables.set(words, known);
  return known;
}

function made(words: 'british' | 'american'): { what: string; sentences: string[] }[] {
  const { text, rows } = everyVerb();
  const document = buildDocument(memoryHost({ 'all.dowel': text }), 'all.dowel', 'all', {
    findings: false,
    words,
  });
  const steps = stepsIn(document!.flow);
  expect(steps).toHaveLength(rows.length);
  return steps.map((step, index) => ({
    what: `${rows[index]!.what} · ${rows[index]!.line}`,
    sentences: sentencesOf(step),
  }));
}

describe.each(['british', 'american'] as const)('every verb, %s words', (words) => {
  test('the job can be read', () => {
    expect(parse(everyVerb().text).problems).toEqual([]);
  });

  test('the table is as it was read through', async () => {
    const lines = table(words).map(({ what, sentences }) => `${what}\n    ${sentences.join(' ')}`);
    await expect(`${lines.join('\n')}\n`).toMatchFileSnapshot(`./sentences-${words}.txt`);
  });

  test('no slip of English', () => {
    const found = table(words).flatMap(({ what, sentences }) =>
      sentences.flatMap((sentence) => slipsIn(sentence).map((slip) => `${slip}: ${what}: ${sentence}`)),
    );
    expect(found).toEqual([]);
  });
});

describe('the slips are seen', () => {
  test.each([
    ['remove the cover.', 'lower case'],
    ['Remove the cover', 'no full stop'],
    ['Remove the  cover.', 'two spaces'],
    ['Remove the the cover.', 'word twice'],
    ['Remove the one bolts.', 'one of many'],
    ['Fit a O-ring.', 'article'],
    ['Fit an cover.', 'article'],
    ['Remove the four bolt.', 'many of one'],
    ['Remove the .', 'nothing there'],
    ['Fit new the bolt.', 'article behind new'],
    ['Remove {objects}.', 'place not filled'],
    ['Clean the cover with  .', 'nothing there'],
  ])('%s', (sentence, slip) => {
    expect(slipsIn(sentence)).toContain(slip);
  });

  test.each([
    'Remove the cover.',
    'Fit an O-ring (M8×1.25).',
    'Fit two new V-belts.',
    'Remove the four cover bolts.',
    'Wait for 1 h.',
  ])('silent: %s', (sentence) => {
    expect(slipsIn(sentence)).toEqual([]);
  });
});
