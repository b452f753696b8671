/**
 * The configuration file of a house: text in, what it says and what is wrong with it out. Looks at no disk. What is
 * wrong is a finding like any other, with its place in the file; the fields that are right hold all the same.
 */
import type { z } from 'zod';
import { checkNamed } from '../checks/all.ts';
import { fixedBecause, SETTABLE_CHECKS } from '../checks/settable.ts';
import { list } from '../model/model.ts';
import { nearest } from '../model/names.ts';
import type { Finding, Place, Severity } from '../report/finding.ts';
import { configFinding } from './config-wrong.ts';
import { defaultConfig, type HouseConfig } from './house.ts';
import { type JsonNode, plainOf, readJson } from './json.ts';
import { configSchema } from './schema.ts';

export { CONFIG_NAME, defaultConfig, type HouseConfig } from './house.ts';

export interface ReadConfig {
  config: HouseConfig;
  /** What is wrong, in reading order; places are offsets in `text`. */
  problems: Finding[];
  /** Where each of `config.rules` stands. */
  rulesAt: Place[];
}

/** `path` names the file in the findings. */
export function readConfig(text: string, path: string): ReadConfig {
  const read = readJson(text);
  if ('problem' in read) {
    const { start, end, message, help } = read.problem;
    const problem = configFinding({ file: path, start, end }, message, help);
    return { config: defaultConfig, problems: [problem], rulesAt: [] };
  }
  const { node } = read;
  const problems = repeated(node, path);
  const plain = plainOf(node);
  const result = configSchema.safeParse(plain);
  if (!result.success) {
    for (const issue of result.error.issues) problems.push(...told(issue, node, path));
    problems.sort((a, b) => a.start - b.start);
  }
  const rules = find(node, ['rules']).node;
  const rulesAt =
    rules.kind === 'array' ? rules.items.map(({ start, end }) => ({ file: path, start, end })) : [];
  return { config: configOf(result.success ? result.data : rightFields(plain)), problems, rulesAt };
}

type Fields = z.infer<typeof configSchema>;

function configOf({ severities, $schema: _, ...rest }: Fields): HouseConfig {
  const named: Record<string, Severity | 'off'> = {};
  for (const [check, word] of Object.entries(severities ?? {}))
    if (word) named[check] = word === 'info' ? 'information' : word;
  return { ...rest, severities: named };
}

/** The fields that are right by themselves; the others keep their defaults. */
function rightFields(plain: unknown): Fields {
  const right: Record<string, unknown> = {};
  if (typeof plain === 'object' && plain !== null && !Array.isArray(plain)) {
    for (const [name, value] of Object.entries(plain))
      if (configSchema.safeParse({ [name]: value }).success) right[name] = value;
  }
  return configSchema.parse(right);
}

function told(issue: z.core.$ZodIssue, root: JsonNode, path: string): Finding[] {
  const { node, name } = find(root, issue.path);
  const at = { file: path, start: node.start, end: node.end };
  const what = name === '' ? 'The configuration' : `\`${name}\``;
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys.map((key) =>
        name === 'severities' ? unknownCheck(key, node, path) : unknownField(key, node, name, path),
      );
    case 'invalid_value': {
      const allowed = issue.values.map(String);
      const written = node.kind === 'plain' ? String(node.value) : undefined;
      const near = written === undefined ? undefined : nearest(written, allowed);
      return [
        configFinding(
          at,
          `${what} cannot be ${shown(node)}${near ? `; did you mean \`"${near}"\`?` : '.'}`,
          `Write one of ${list(allowed.map((word) => `\`"${word}"\``))}.`,
        ),
      ];
    }
    case 'invalid_type':
      return [
        configFinding(
          at,
          `${what} is ${A[issue.expected] ?? issue.expected}, not ${shown(node)}.`,
          formHelp(name),
        ),
      ];
    case 'too_small':
    case 'too_big': {
      if (node.kind === 'plain' && node.value === '')
        return [
          configFinding(at, `A path in ${what} is empty.`, 'Write a path, or take the empty text away.'),
        ];
      const bound = issue.code === 'too_small' ? `at least ${issue.minimum}` : `at most ${issue.maximum}`;
      return [
        configFinding(
          at,
          `${what} is ${bound}, not ${shown(node)}.`,
          `Write a whole number that is ${bound}.`,
        ),
      ];
    }
    default:
      return [configFinding(at, `${what} is not what is expected here: ${issue.message}.`, formHelp(name))];
  }
}

/** How a value of this JSON type is spoken of. */
const A: Readonly<Record<string, string>> = {
  object: 'a pair of braces with fields',
  record: 'a pair of braces with fields',
  array: 'a list in square brackets',
  string: 'a text in quotation marks',
  number: 'a number',
  int: 'a whole number',
};

function formHelp(name: string): string {
  if (name === 'rules' || name === 'ignore') return `For example \`"${name}": ["house/rules.dowel"]\`.`;
  if (name.startsWith('rules') || name.startsWith('ignore')) return 'Write a path in quotation marks.';
  if (name === 'severities') return 'For example `"severities": { "not-supported": "warning" }`.';
  if (name.startsWith('limits')) return 'For example `"limits": { "perFile": 50 }`.';
  return `The fields are ${list(FIELDS)}.`;
}

const FIELDS: readonly string[] = Object.keys(configSchema.shape).filter((name) => name !== '$schema');

function unknownField(key: string, node: JsonNode, within: string, path: string): Finding {
  const known = within === 'limits' ? ['findings', 'perFile'] : FIELDS;
  const near = nearest(key, known) ?? known.find((one) => one.toLowerCase() === key.toLowerCase());
  const place = keyOf(node, key);
  return configFinding(
    { file: path, start: place.start, end: place.end },
    `There is no field \`${key}\`${within === '' ? '' : ` in \`${within}\``}${near ? `; did you mean \`${near}\`?` : '.'}`,
    near ? `Write \`"${near}"\`.` : `The fields are ${list(known)}.`,
  );
}

function unknownCheck(name: string, node: JsonNode, path: string): Finding {
  const place = keyOf(node, name);
  const at = { file: path, start: place.start, end: place.end };
  if (checkNamed(name))
    return configFinding(
      at,
      `The severity of \`${name}\` is fixed: ${fixedBecause(name)}.`,
      'Take the line away.',
    );
  const near = nearest(name, SETTABLE_CHECKS);
  return configFinding(
    at,
    `No check is called \`${name}\`${near ? `; did you mean \`${near}\`?` : '.'}`,
    near ? `Write \`"${near}"\`.` : '`dowel explain` lists them all.',
  );
}

function keyOf(node: JsonNode, name: string): { start: number; end: number } {
  if (node.kind !== 'object') return node;
  return node.members.findLast(({ key }) => key.name === name)?.key ?? node;
}

/** The value at a path of keys and numbers, with the field's name as a person says it. */
function find(root: JsonNode, path: readonly PropertyKey[]): { node: JsonNode; name: string } {
  let node = root;
  let name = '';
  for (const step of path) {
    const inner =
      node.kind === 'object'
        ? node.members.findLast(({ key }) => key.name === step)?.value
        : node.kind === 'array'
          ? node.items[Number(step)]
          : undefined;
    if (!inner) break;
    name =
      typeof step === 'number' ? `${name}[${step}]` : name === '' ? String(step) : `${name}.${String(step)}`;
    node = inner;
  }
  return { node, name };
}

function shown(node: JsonNode): string {
  if (node.kind === 'object') return 'a pair of braces';
  if (node.kind === 'array') return 'a list';
  return `\`${JSON.stringify(node.value)}\``;
}

/** A field that stands twice: which one counts is a matter of luck. */
function repeated(node: JsonNode, path: string): Finding[] {
  if (node.kind === 'plain') return [];
  if (node.kind === 'array') return node.items.flatMap((item) => repeated(item, path));
  return node.members.flatMap(({ key, value }, index) => {
    const first = node.members.findIndex((other) => other.key.name === key.name);
    const inner = repeated(value, path);
    if (first === index) return inner;
    const at = { file: path, start: key.start, end: key.end };
    return [
      configFinding(at, `\`${key.name}\` stands here a second time.`, 'Leave one of the two.'),
      ...inner,
    ];
  });
}
