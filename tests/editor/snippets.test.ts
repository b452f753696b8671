/** Snippets and the texts of the walkthrough: filled in as they come, they are right Dowel. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkProject } from '../../language-server/checks/check-project.ts';
import { memoryHost } from '../../language-server/project/project.ts';

const FOLDER = resolve(import.meta.dirname, '../../extension');
interface Snippet {
  prefix: string | string[];
  description: string;
  body: string[];
}
const SNIPPETS: Record<string, Snippet> = JSON.parse(readFileSync(join(FOLDER, 'snippets.json'), 'utf8'));

/** The text as the Tab key leaves it, with the usual text in every field. `fields` fills others. */
function filled(name: string, fields: Readonly<Record<string, string>> = {}): string {
  const known: Record<string, string> = { ...fields };
  return SNIPPETS[name]!.body.join('\n').replace(
    /\$\{(\d+):([^}]*)\}|\$(\d+)/g,
    (_, field: string | undefined, usual: string | undefined, bare: string | undefined) => {
      const number = field ?? bare!;
      if (usual !== undefined) known[number] ??= usual;
      return known[number] ?? '';
    },
  );
}

function findings(files: Readonly<Record<string, string>>): string[] {
  return checkProject(memoryHost(files), Object.keys(files)).findings.map(
    ({ file, check, message }) => `${file}: ${check}: ${message}`,
  );
}

const machine = filled('First machine');
const procedure = filled('First procedure');

describe('snippets', () => {
  it('a first machine and a first procedure check clean as they come', () => {
    expect(findings({ 'machine.dowel': machine })).toEqual([]);
    expect(findings({ 'machine.dowel': machine, 'procedure.dowel': procedure })).toEqual([]);
  });

  it('and with every field filled in otherwise', () => {
    const files = {
      'drill.dowel': filled('First machine', {
        '1': 'hand-drill',
        '2': 'Hand drill',
        '3': 'casing',
        '4': 'casing',
        '5': 'cap',
        '6': 'end cap',
        '7': 'cap-screws',
        '8': 'chuck',
        '9': 'chuck',
        '10': 'cap screws',
        '11': '3',
        '12': '2',
        '13': '400',
      }),
      'job.dowel': filled('First procedure', {
        '1': 'drill.dowel',
        '2': 'clean-chuck',
        '3': 'Clean the chuck',
        '4': 'hand-drill',
        '7': 'drill',
        '8': '400',
        '9': 'cap-screws',
        '10': 'cap',
        '11': 'chuck',
        '12': 'The drill runs quietly.',
      }),
    };
    // Nothing of the sample is left in it.
    expect(Object.values(files).join('')).not.toMatch(/fan|guard|blade|housing|230/i);
    expect(findings(files)).toEqual([]);
  });

  it('a step left out is found', () => {
    const without = procedure.replace(/^ *remove guard\n/m, '');
    expect(without).not.toBe(procedure);
    expect(findings({ 'machine.dowel': machine, 'procedure.dowel': without })).not.toEqual([]);
  });

  it.each(Object.keys(SNIPPETS))('the Tab key goes down the text of %s', (name) => {
    const fields = [...SNIPPETS[name]!.body.join('\n').matchAll(/\$\{(\d+):/g)].map(([, number]) =>
      Number(number),
    );
    const first = [...new Set(fields)];
    expect(first).toEqual(first.map((_, at) => at + 1));
  });

  it('every step left out that keeps somebody alive is found', () => {
    const safe = procedure.slice(procedure.indexOf('task make-safe'), procedure.indexOf('task work'));
    const steps = safe.split('\n').filter((line) => /^ {4}\w/.test(line));
    expect(steps.length).toBe(6);
    const found = (text: string) =>
      findings({ 'machine.dowel': machine, 'procedure.dowel': text }).map((one) => one.split(': ')[1]);
    expect(
      steps.map((step) => [step.trim().split(' ')[0], ...found(procedure.replace(`${step}\n`, ''))]),
    ).toEqual([
      ['danger', 'caution-missing'],
      ['isolate', 'isolated-out-of-order'],
      ['lock', 'tool-unused', 'refitted-before-removed'],
      ['check', 'tester-not-proved'],
      ['prove', 'not-proved-safe'],
      ['check', 'tester-not-proved'],
    ]);
  });

  it.each(['Task', 'Lockout', 'Inspection', 'Variant'])('%s is read without a problem', (name) => {
    const text = `use "machine.dowel"\n\nprocedure p "P" for bench-fan {\n${filled(name)}\n}\n`;
    const syntax = checkProject(
      memoryHost({
        'machine.dowel': `${machine.replace('{', '{\n  variant variant: value, other')}`,
        'p.dowel': text,
      }),
      ['p.dowel'],
    ).findings.filter(({ check }) =>
      ['syntax', 'unknown-verb', 'brace-missing', 'bad-character'].includes(check),
    );
    expect(syntax).toEqual([]);
  });

  it('each says what it is for', () => {
    for (const { prefix, description } of Object.values(SNIPPETS)) {
      expect(prefix.length).toBeGreaterThan(0);
      expect(description).toMatch(/^[A-Z].{10,}/);
    }
  });
});

describe('the walkthrough', () => {
  it('shows Dowel that checks clean', () => {
    const blocks = readdirSync(join(FOLDER, 'walkthrough'))
      .sort()
      .flatMap((name) =>
        [...readFileSync(join(FOLDER, 'walkthrough', name), 'utf8').matchAll(/```dowel\n([\s\S]*?)```/g)].map(
          ([, text]) => [`${name.replace('.md', '.dowel')}`, text!] as const,
        ),
      );
    expect(blocks.map(([name]) => name)).toEqual(['machine.dowel', 'procedure.dowel']);
    expect(findings(Object.fromEntries(blocks))).toEqual([]);
  });

  it('quotes the finding as it is', () => {
    const page = readFileSync(join(FOLDER, 'walkthrough/findings.md'), 'utf8');
    const quoted = /^> (.+)$/m.exec(page)![1]!;
    const job = readFileSync(join(FOLDER, 'walkthrough/procedure.md'), 'utf8');
    const text = /```dowel\n([\s\S]*?)```/.exec(job)![1]!.replace(/^ *remove guard\n/m, '');
    const first = /```dowel\n([\s\S]*?)```/.exec(
      readFileSync(join(FOLDER, 'walkthrough/machine.md'), 'utf8'),
    )![1]!;
    expect(findings({ 'machine.dowel': first, 'procedure.dowel': text }).join('\n')).toContain(quoted);
  });
});
