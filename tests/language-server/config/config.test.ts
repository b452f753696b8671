/**
 * What a configuration file says and what is wrong with it. JSON itself is compared with the reader of the platform
 * (`JSON.parse`, RFC 8259) on texts that are cut, changed and made up.
 */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { Ajv } from 'ajv';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkNamed } from '../../../language-server/checks/all.ts';
import { fixedBecause, SETTABLE_CHECKS } from '../../../language-server/checks/settable.ts';
import { defaultConfig, readConfig } from '../../../language-server/config/config.ts';
import { configWrong } from '../../../language-server/config/config-wrong.ts';
import { plainOf, readJson } from '../../../language-server/config/json.ts';
import { schemaText } from '../../../language-server/config/schema.ts';

const ROOT = resolve(import.meta.dirname, '../../..');
const PATH = 'dowel.config.json';

/** Message, what it is shown at, and what to do. */
function problems(text: string): string[] {
  return readConfig(text, PATH).problems.map(
    ({ start, end, message, help }) => `${text.slice(start, end)} | ${message} | ${help}`,
  );
}

describe('a right file', () => {
  test('empty braces are the defaults', () => {
    expect(readConfig('{}', PATH)).toEqual({ config: defaultConfig, problems: [], rulesAt: [] });
  });

  test('every field', () => {
    const text = `{
      "$schema": "x.json",
      "severities": { "unused-name": "off", "not-supported": "info" },
      "convention": "military", "words": "american", "units": "metric", "secondUnit": "always",
      "liftingGuideline": "niosh", "rules": ["house/rules.dowel"], "ignore": ["old/**"],
      "limits": { "perFile": 20 }
    }`;
    expect(readConfig(text, PATH)).toEqual({
      config: {
        severities: { 'unused-name': 'off', 'not-supported': 'information' },
        convention: 'military',
        words: 'american',
        units: 'metric',
        secondUnit: 'always',
        liftingGuideline: 'niosh',
        rules: ['house/rules.dowel'],
        ignore: ['old/**'],
        limits: { findings: defaultConfig.limits.findings, perFile: 20 },
      },
      problems: [],
      rulesAt: [{ file: PATH, start: text.indexOf('"house/'), end: text.indexOf('], "ignore') }],
    });
  });
});

describe('a wrong file is told at its place, with what may stand there', () => {
  test.each([
    [
      '{ "convension": "ansi" }',
      '"convension" | There is no field `convension`; did you mean `convention`? | Write `"convention"`.',
    ],
    [
      '{ "convention": "navy" }',
      '"navy" | `convention` cannot be `"navy"`. | Write one of `"ansi"` and `"military"`.',
    ],
    [
      '{ "words": "britsh" }',
      '"britsh" | `words` cannot be `"britsh"`; did you mean `"british"`? | Write one of `"british"` and `"american"`.',
    ],
    [
      '{ "severities": { "stil-held": "off" } }',
      '"stil-held" | No check is called `stil-held`; did you mean `still-held`? | Write `"still-held"`.',
    ],
    [
      '{ "severities": { "syntax": "off" } }',
      '"syntax" | The severity of `syntax` is fixed: it says that the text could not be read as it stands. | Take the line away.',
    ],
    [
      '{ "severities": { "still-held": "loud" } }',
      '"loud" | `severities.still-held` cannot be `"loud"`. | Write one of `"error"`, `"warning"`, `"info"`, `"hint"` and `"off"`.',
    ],
    [
      '{ "rules": "a.dowel" }',
      '"a.dowel" | `rules` is a list in square brackets, not `"a.dowel"`. | For example `"rules": ["house/rules.dowel"]`.',
    ],
    [
      '{ "rules": ["a.dowel", 3] }',
      '3 | `rules[1]` is a text in quotation marks, not `3`. | Write a path in quotation marks.',
    ],
    ['{ "rules": [""] }', '"" | A path in `rules[0]` is empty. | Write a path, or take the empty text away.'],
    [
      '{ "limits": { "perFile": 0 } }',
      '0 | `limits.perFile` is at least 1, not `0`. | Write a whole number that is at least 1.',
    ],
    [
      '{ "limits": { "perfile": 3 } }',
      '"perfile" | There is no field `perfile` in `limits`; did you mean `perFile`? | Write `"perFile"`.',
    ],
    [
      '{ "words": "british", "words": "american" }',
      '"words" | `words` stands here a second time. | Leave one of the two.',
    ],
    ['[]', '[] | The configuration is a pair of braces with fields, not a list. | '],
  ])('%s', (text, expected) => {
    expect(problems(text)).toEqual([expect.stringContaining(expected)]);
  });

  test('what is right beside it holds all the same', () => {
    const { config, problems: wrong } = readConfig(
      '{ "convention": "military", "unit": "us", "limits": 3 }',
      PATH,
    );
    expect(wrong).toHaveLength(2);
    expect(config).toEqual({ ...defaultConfig, convention: 'military' });
  });

  test('what is no JSON is one problem', () => {
    expect(problems('{ "words": "british", }')).toEqual([
      ', | A comma stands behind the last one. | Take the comma away.',
    ]);
    expect(problems('{ // units\n "words": "british" }')[0]).toContain('JSON has no comments.');
    expect(problems("{ 'words': 1 }")[0]).toContain('The name of a field is expected');
    expect(problems('{ words: 1 }')[0]).toContain('The name of a field is expected');
    expect(problems('{ "words": british }')[0]).toContain('british | `british` means nothing in JSON.');
    expect(problems('{ "words": "british"')[0]).toContain(
      '{ | The } is missing that closes what begins here.',
    );
    expect(problems('')[0]).toContain('The file is empty.');
  });
});

test('its examples: the wrong one is found, the right one is not', () => {
  expect(readConfig(configWrong.bad, PATH).problems.map(({ check }) => check)).toEqual(['config-wrong']);
  expect(readConfig(configWrong.good, PATH).problems).toEqual([]);
});

test('which findings may be set: every check but those about what was not read, and about waivers', () => {
  expect(SETTABLE_CHECKS.filter((name) => checkNamed(name) === undefined || fixedBecause(name))).toEqual([]);
  expect(
    ['syntax', 'bad-character', 'file-missing', 'undecided'].filter((name) => !fixedBecause(name)),
  ).toEqual([]);
  expect(SETTABLE_CHECKS).toContain('still-held');
});

describe('the JSON Schema', () => {
  const file = resolve(ROOT, 'extension/schemas/dowel.config.schema.json');

  test('stands in the extension as it is generated (npm run -s reference writes it)', () => {
    expect(readFileSync(file, 'utf8')).toBe(schemaText());
  });

  test('the editor is told to use it for this file', () => {
    const manifest = JSON.parse(readFileSync(resolve(ROOT, 'extension/package.json'), 'utf8'));
    expect(manifest.contributes.jsonValidation).toEqual([
      { fileMatch: 'dowel.config.json', url: './schemas/dowel.config.schema.json' },
    ]);
  });

  // Ajv is an implementation of JSON Schema that is not part of this project.
  test.each([
    ['{}', true],
    ['{ "$schema": "a", "convention": "military", "severities": { "still-held": "info" } }', true],
    ['{ "limits": { "perFile": 3 }, "rules": ["a.dowel"] }', true],
    ['{ "convention": "navy" }', false],
    ['{ "unknown": 1 }', false],
    ['{ "severities": { "stil-held": "off" } }', false],
    ['{ "severities": { "syntax": "off" } }', false],
    ['{ "limits": { "perFile": 0 } }', false],
    ['{ "rules": [""] }', false],
  ])('an outside validator and the reader agree on %s', (text, right) => {
    const validate = new Ajv({ strict: false }).compile(JSON.parse(schemaText()));
    expect(validate(JSON.parse(text))).toBe(right);
    expect(readConfig(text, PATH).problems.length === 0).toBe(right);
  });
});

describe('JSON with places reads what the platform reads', () => {
  const verdict = (text: string): unknown => {
    try {
      return { value: JSON.parse(text) };
    } catch {
      return 'no JSON';
    }
  };
  const ours = (text: string): unknown => {
    const read = readJson(text);
    return 'node' in read ? { value: plainOf(read.node) } : 'no JSON';
  };

  test('on any JSON', () => {
    fc.assert(
      fc.property(fc.json({ noUnicodeString: false, maxDepth: 5 }), (text) => {
        expect(ours(text)).toEqual(verdict(text));
      }),
      { seed: 71, numRuns: 500 },
    );
  });

  test('on JSON with a character taken out, put in or exchanged', () => {
    const slip = fc.tuple(
      fc.json(),
      fc.nat(),
      fc.constantFrom('', ',', '"', '{', ']', '\\', '0', '-', '.', 'e', '\t'),
    );
    fc.assert(
      fc.property(slip, fc.boolean(), ([text, where, put], take) => {
        const at = where % (text.length + 1);
        const changed = text.slice(0, at) + put + text.slice(take ? at + 1 : at);
        expect(ours(changed)).toEqual(verdict(changed));
      }),
      { seed: 72, numRuns: 2_000 },
    );
  });

  test('deep nesting is said, not suffered', () => {
    expect(problems('['.repeat(100_000))[0]).toContain('nested deeper');
  });

  test('the place of every value', () => {
    const text = '{ "a": [10, "é", { "b": null }] }';
    const read = readJson(text);
    if (!('node' in read) || read.node.kind !== 'object') throw new Error('not read');
    const { key, value } = read.node.members[0]!;
    expect(text.slice(key.start, key.end)).toBe('"a"');
    if (value.kind !== 'array') throw new Error('no list');
    expect(value.items.map(({ start, end }) => text.slice(start, end))).toEqual([
      '10',
      '"é"',
      '{ "b": null }',
    ]);
  });
});
