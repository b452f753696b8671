/** The manifest and what it names belong together: commands, sentences, files, the pattern of the command line's text. */
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { Deaths } from '../../extension/deaths.ts';
import { marksAt } from '../../extension/marks.ts';
import { withField } from '../../extension/sample.ts';
import { styleAsThemed } from '../../extension/webview/style.ts';
import type { ShownPlace } from '../../language-server/server/handlers/shown.ts';
import { settingsFrom, USUAL } from '../../language-server/server/settings.ts';
import { dowel } from '../language-server/cli/dowel.ts';
import { sentencesOf } from './l10n.ts';

const FOLDER = resolve(import.meta.dirname, '../../extension');
const read = (name: string) => readFileSync(join(FOLDER, name), 'utf8');
const manifest = JSON.parse(read('package.json'));
const words: Record<string, string> = JSON.parse(read('package.nls.json'));
const { contributes } = manifest;

describe('the manifest', () => {
  it('has words for every key, and no key that nobody uses', () => {
    const used = [...read('package.json').matchAll(/"%([\w.]+)%"/g)].map(([, key]) => key!);
    expect([...new Set(used)].sort()).toEqual(Object.keys(words).sort());
  });

  it('names files that are there', () => {
    const named = [
      ...contributes.languages.flatMap(
        (one: { configuration: string; icon: { light: string; dark: string } }) => [
          one.configuration,
          one.icon.light,
          one.icon.dark,
        ],
      ),
      ...contributes.snippets.map((one: { path: string }) => one.path),
      ...contributes.jsonValidation.map((one: { url: string }) => one.url),
      ...contributes.walkthroughs[0].steps.map((one: { media: { markdown: string } }) => one.media.markdown),
    ];
    expect(named.filter((name) => !existsSync(join(FOLDER, name)))).toEqual([]);
  });

  it('names commands that the client registers, and all of them', () => {
    const declared: string[] = contributes.commands.map((one: { command: string }) => one.command);
    const registered = [...read('extension.ts').matchAll(/command\('(\w+)'/g)].map(
      ([, name]) => `dowel.${name}`,
    );
    expect(registered.sort()).toEqual([...declared].sort());
    const linked = [...read('package.nls.json').matchAll(/command:(dowel\.\w+)/g)].map(([, name]) => name!);
    expect(linked.filter((name) => !declared.includes(name))).toEqual([]);
    expect(linked.length).toBeGreaterThan(3);
  });

  it('has the settings that the server reads, with the same usual values', () => {
    const properties: Record<string, { default: unknown; markdownDescription: string }> =
      contributes.configuration.properties;
    const usual: Record<string, Record<string, unknown>> = {};
    for (const [name, { default: value }] of Object.entries(properties)) {
      const [, group, inner] = name.split('.');
      usual[group!] = inner ? { ...usual[group!], [inner]: value } : (value as Record<string, unknown>);
    }
    expect(settingsFrom(usual)).toEqual(USUAL);
    expect(Object.keys(usual.inlayHints!).sort()).toEqual(Object.keys(USUAL.inlayHints).sort());
  });

  it('starts for Dowel files only', () => {
    expect(manifest.activationEvents).toEqual([]);
    expect(contributes.languages.map((one: { extensions: string[] }) => one.extensions)).toEqual([
      ['.dowel'],
    ]);
  });

  it('takes a name with its hyphens, in any script, as one word', () => {
    // Without the flag `u` an editor reads `\p{L}` as four letters, finds no word and offers no completion.
    const { pattern, flags } = JSON.parse(read('language-configuration.json')).wordPattern;
    const words = 'remove brake-cover, Prüf-öse2 #3'.match(new RegExp(pattern, flags));
    expect(words).toEqual(['remove', 'brake-cover', 'Prüf-öse2']);
  });

  it('is ready for translation', () => {
    expect(Object.keys(JSON.parse(read('l10n/bundle.l10n.json'))).sort()).toEqual(sentencesOf(FOLDER));
  });
});

describe('the pictures of README', () => {
  it('are there, each below 80 kB, and no others', () => {
    const shown = [
      ...readFileSync(join(FOLDER, '../README.md'), 'utf8').matchAll(/\]\(extension\/pictures\/([^)]+)\)/g),
    ];
    const names = readdirSync(join(FOLDER, 'pictures'));
    expect(names.sort()).toEqual(shown.map(([, name]) => name!).sort());
    for (const name of names) expect(statSync(join(FOLDER, 'pictures', name)).size).toBeLessThan(80 * 1024);
  });
});

describe('the problem matcher', () => {
  const [{ pattern }] = contributes.problemMatchers;
  const rules: { regexp: string; [group: string]: unknown }[] = pattern;

  it('reads every finding of the text report', () => {
    const folder = 'procedures/skelder-ferry/broken';
    const lines = dowel(['check', folder]).out.split('\n');
    const found = lines.flatMap((_, at) => {
      const hits = rules.map((rule, index) => new RegExp(rule.regexp).exec(lines[at + index] ?? ''));
      if (hits.some((hit) => !hit)) return [];
      const value = (name: string) => {
        const index = rules.findIndex((rule) => name in rule);
        return hits[index]![rules[index]![name] as number]!;
      };
      return [
        {
          check: value('code'),
          severity: value('severity'),
          message: value('message'),
          place: `${value('file')}:${value('line')}:${value('column')}`,
        },
      ];
    });
    const json = JSON.parse(dowel(['check', '--format', 'json', folder]).out);
    expect(found.map(({ check, message }) => [check, message])).toEqual(
      json.findings.map(({ check, message }: { check: string; message: string }) => [check, message]),
    );
    expect(found.length).toBeGreaterThan(5);
    for (const { place } of found) expect(place).toMatch(/^procedures\/skelder-ferry\/.*\.dowel:\d+:\d+$/);
  });
});

describe('small parts of the client', () => {
  it('starts the server again four times in three minutes, then not', () => {
    const deaths = new Deaths();
    expect([0, 1, 2, 3, 4].map((second) => deaths.mayRestart(second * 1000))).toEqual([
      true,
      true,
      true,
      true,
      false,
    ]);
    expect(deaths.mayRestart(6_000)).toBe(true);
    const slow = new Deaths();
    expect([0, 1, 2, 3, 4, 5].every((minute) => slow.mayRestart(minute * 60_000))).toBe(true);
  });

  it('fills a field of a sample in all its places, and nothing else', () => {
    const field = (number: number, text: string) => `$\{${number}:${text}}`;
    const sample = `for ${field(1, 'bench-fan')} and ${field(1, 'bench-fan')}, ${field(11, 'other')}, $1`;
    expect(withField(sample, 1, 'sander')).toBe(sample.replaceAll('bench-fan', 'sander'));
    expect(withField(sample, 11, 'a}$b\\c')).toBe(sample.replace('other', 'abc'));
  });

  it('marks the step of the line, else the one before, and the things that a line names', () => {
    const at = (line: number) => ({ start: { line, character: 0 }, end: { line, character: 0 } });
    const steps: ShownPlace[] = [3, 5, 5, 9].map((line, index) => ({
      by: 'id',
      key: `s${index}`,
      uri: 'file:///a%20b.dowel',
      range: at(line),
    }));
    const here = (line: number) => marksAt(steps, { uri: 'file:///a b.dowel', line, text: '' });
    expect([here(3), here(4), here(5), here(8), here(2)]).toEqual([[0], [0], [1, 2], [1, 2], []]);
    expect(marksAt(steps, { uri: 'file:///other.dowel', line: 3, text: '' })).toEqual([]);
    const things: ShownPlace[] = ['cover', 'cover-screws'].map((key) => ({
      by: 'thing',
      key,
      uri: 'file:///m.dowel',
      range: at(1),
    }));
    const named = (text: string) => marksAt(things, { uri: 'file:///a b.dowel', line: 3, text });
    expect(named('remove cover-screws // cover')).toEqual([1]);
    expect(named('remove cover, cover-screws')).toEqual([0, 1]);
    expect(named('wait 3 min')).toEqual([]);
  });

  it('answers what a page asks the system with the theme', () => {
    const page = 'a{}@media (prefers-color-scheme: dark) {b{}}@media (prefers-contrast: more) {c{}}';
    expect(styleAsThemed(page, { dark: true, contrast: false })).toBe(
      'a{}@media (min-width: 0px) {b{}}@media (max-width: 0px) {c{}}',
    );
    expect(styleAsThemed(page, { dark: false, contrast: true })).toBe(
      'a{}@media (max-width: 0px) {b{}}@media (min-width: 0px) {c{}}',
    );
  });
});
