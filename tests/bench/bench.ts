/**
 * `npm run bench`: how long checking takes and how much memory, against programs that check the same content
 * in other notations. Prints a table and writes it to `.build/bench.md`. Ratios, because seconds on somebody
 * else's machine say little; measured in turn, because machines are busy.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Ajv } from 'ajv';
import { buildSync } from 'esbuild';
import { checkProject } from '../../language-server/checks/check-project.ts';
import { memoryHost } from '../../language-server/project/project.ts';
import { contentOf } from './content.ts';
import { inDowel } from './in-dowel.ts';
import { inJson, JSON_SCHEMA } from './in-json.ts';
import { inXml, SCHEMATRON, XML_SCHEMA } from './in-xml.ts';
import { lex } from './lex.ts';
import {
  growth,
  hasProgram,
  interleaved,
  type Measured,
  PEAK_HOOK,
  peakMemory,
  runProgram,
} from './measure.ts';

const ROOT = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const FOLDER = join(ROOT, '.build/bench');
const DOWEL = join(ROOT, '.build/dowel.cjs');
const SIZES = [50, 500, 5_000, 20_000];
/** Schematron's time grows with the square of the content: it is left out where it would take minutes. */
const SCHEMATRON_MOST = 5_000;

interface Row {
  steps: number;
  parts: number;
  lines: number;
  whole: Partial<Record<Program, Measured>>;
  warm: Record<'lex' | 'dowel' | 'ajv', Measured>;
  memory: number;
}

type Program = 'node' | 'dowel' | 'ajv' | 'xsd' | 'schematron';

mkdirSync(FOLDER, { recursive: true });
const xmllint = hasProgram('xmllint');
const rows = SIZES.map(measure);
const report = table(rows);
writeFileSync(join(ROOT, '.build/bench.md'), report);
process.stdout.write(report);

function measure(steps: number): Row {
  const content = contentOf({ steps });
  const dowel = inDowel(content);
  const json = inJson(content);
  const at = (name: string, text?: string) => {
    const path = join(FOLDER, name);
    if (text !== undefined) writeFileSync(path, text);
    return path;
  };
  const files = {
    dowel: at(`${steps}.dowel`, dowel),
    json: at(`${steps}.json`, json),
    xml: at(`${steps}.xml`, inXml(content)),
    jsonSchema: at('schema.json', JSON.stringify(JSON_SCHEMA)),
    xmlSchema: at('schema.xsd', XML_SCHEMA),
    schematron: at('rules.sch', SCHEMATRON),
    ajv: at('ajv.cjs'),
  };
  // Bundled, as Dowel is, so that the search for modules is not what is compared.
  buildSync({
    entryPoints: [join(ROOT, 'tests/bench/ajv-program.ts')],
    outfile: files.ajv,
    bundle: true,
    platform: 'node',
    minify: true,
  });
  process.stderr.write(`${steps} steps …\n`);

  const node = process.execPath;
  const programs: [Program, () => void][] = [
    ['node', () => runProgram(node, ['-e', '0'])],
    ['dowel', () => runProgram(node, [DOWEL, 'check', files.dowel])],
    ['ajv', () => runProgram(node, [files.ajv, files.jsonSchema, files.json])],
  ];
  if (xmllint) {
    const check = (...schema: string[]) => runProgram('xmllint', ['--noout', ...schema, files.xml]);
    programs.push(['xsd', () => check('--schema', files.xmlSchema)]);
    if (steps <= SCHEMATRON_MOST)
      programs.push(['schematron', () => check('--schematron', files.schematron)]);
  }
  const whole = interleaved(programs, { rounds: steps > 1000 ? 7 : 15, warmUp: 1 });

  const host = memoryHost({ 'bench.dowel': dowel });
  const warm = interleaved(
    [
      ['lex', () => void lex(dowel)],
      ['dowel', () => void checkProject(host, ['bench.dowel'])],
      ['ajv', () => void new Ajv({ allErrors: true }).compile(JSON_SCHEMA)(JSON.parse(json))],
    ],
    { rounds: steps > 1000 ? 9 : 25, warmUp: steps > 1000 ? 4 : 20 },
  );
  return {
    steps: content.steps,
    parts: content.parts.length,
    lines: dowel.split('\n').length,
    whole,
    warm,
    memory: peakMemory(at('peak.cjs', PEAK_HOOK), [DOWEL, 'check', files.dowel]),
  };
}

function table(all: readonly Row[]): string {
  const against = (base: Program) => (row: Row) => {
    const [dowel, other] = [row.whole.dowel, row.whole[base]];
    return dowel === undefined || other === undefined ? 'left out' : number(dowel.ratio / other.ratio);
  };
  const lines: [string, (row: Row) => string, string][] = [
    ['lines of Dowel', (row) => row.lines.toLocaleString('en'), ''],
    ['parts of the machine', (row) => row.parts.toLocaleString('en'), ''],
    ['whole process, ms', (row) => number(row.whole.dowel!.ms), ''],
    ['against `node -e 0`', (row) => spread(row.whole.dowel!), '50: 1.5; 5,000: 3.5'],
    ['against ajv (bundled; parse, compile, validate)', against('ajv'), '5,000: 1.0'],
    ['against xmllint with the XML Schema', against('xsd'), ''],
    ['against xmllint with Schematron', against('schematron'), '5,000: 0.15'],
    ['peak memory, MB', (row) => number(row.memory), '5,000: 100'],
    ['warm, ms', (row) => number(row.warm.dowel.ms), ''],
    ['warm, lines a second', (row) => per(row.lines, row.warm.dowel.ms), ''],
    ['warm, against lexing alone', (row) => spread(row.warm.dowel), ''],
    ['warm, against ajv', (row) => number(row.warm.dowel.ratio / row.warm.ajv.ratio), ''],
  ];
  const [first, last] = [all.find((row) => row.steps === 500)!, all.at(-1)!];
  const exponent = growth(
    { size: first.lines, ms: first.warm.dowel.ms },
    { size: last.lines, ms: last.warm.dowel.ms },
  );
  const header = ['', ...all.map((row) => `${row.steps.toLocaleString('en')} steps`), 'at most'];
  return [
    `Measured ${new Date().toISOString().slice(0, 10)} with Node ${process.version} on ${cpus().length} cores (shared).`,
    'Medians of runs in turn; quartiles in brackets.',
    '',
    `| ${header.join(' | ')} |`,
    `|${header.map(() => '---').join('|')}|`,
    ...lines.map(([name, value, most]) => `| ${[name, ...all.map(value), most].join(' | ')} |`),
    '',
    `Time grows with the ${number(exponent)}th power of the lines from 500 to 20,000 steps, warm (at most 1.05).`,
    ...(xmllint ? [] : ['xmllint is not installed here: what it would be compared with is left out.']),
    '',
  ].join('\n');
}

function number(value: number): string {
  return value >= 100 ? Math.round(value).toLocaleString('en') : value.toPrecision(value < 0.1 ? 1 : 2);
}

function spread({ ratio, low, high }: Measured): string {
  return `${number(ratio)} (${number(low)} to ${number(high)})`;
}

function per(lines: number, ms: number): string {
  return Math.round((lines / ms) * 1000).toLocaleString('en');
}
