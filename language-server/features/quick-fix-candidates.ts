/** What might be done about a finding, before it is tried: changes to the file that it stands in. */
import { nearUnits, printSource, unitByText, unitNamed } from '../../grammar/quantity/index.ts';
import type { Action, Header, Procedure, Ref, Tail } from '../../grammar/syntax/tree.ts';
import { declared } from '../model/fastening-declared.ts';
import type { LoadedFile } from '../model/names.ts';
import type { Finding } from '../report/finding.ts';
import { noticeSentence } from './notice-words.ts';
import { statementAt } from './statement-at.ts';
import { relative, type View } from './view.ts';
import type { Edit } from './write-out-edits.ts';

export interface Candidate {
  title: string;
  edits: Edit[];
}

interface Case {
  view: View;
  file: LoadedFile;
  finding: Finding;
  procedure: Procedure | undefined;
  action: Action | undefined;
  /** The text of the finding. */
  typed: string;
  words: Readonly<Record<string, string>>;
}

export function candidatesFor(view: View, file: LoadedFile, finding: Finding): Candidate[] {
  const statement = statementAt(file.parsed.tree, finding);
  const one: Case = {
    view,
    file,
    finding,
    procedure: file.procedures.find(({ start, end }) => start <= finding.start && finding.start <= end),
    action: statement?.kind === 'action' ? statement : undefined,
    typed: file.text.slice(finding.start, finding.end),
    words: finding.about?.words ?? {},
  };
  return [...(BY_CHECK[finding.about?.check ?? finding.check]?.(one) ?? []), ...asTold(one)];
}

const replace = ({ finding: { start, end } }: Case, text: string, title = `Write ${text}`): Candidate => ({
  title,
  edits: [{ start, end, text }],
});

/** Takes something out of its line, with the blank before it. */
function cut({ file }: Case, span: { start: number; end: number }, title: string): Candidate {
  const start = file.text[span.start - 1] === ' ' ? span.start - 1 : span.start;
  return { title, edits: [{ start, end: span.end, text: '' }] };
}

function tailAround({ action, finding }: Case): Tail | undefined {
  return action?.tails.find(({ start, end }) => start <= finding.start && finding.end <= end);
}

const BY_CHECK: Readonly<Record<string, (one: Case) => Candidate[]>> = {
  'torque-differs': (one) => [...secondUnit(one), ...declaredTorque(one), ...withoutTail(one)],
  'quantity-differs': (one) => (one.words.holds ? [replace(one, one.words.holds)] : []),
  'fluid-differs': (one) => (one.words.name ? [replace(one, one.words.name)] : []),
  'second-unit-differs': secondUnit,
  'unit-wrong-kind': otherUnits,
  'unit-missing': missingUnits,
  'unit-ambiguous': ambiguous,
  'order-not-across': rightOrder,
  'order-not-from-centre': rightOrder,
  'order-differs': withoutTail,
  'order-incomplete': withoutTail,
  'tool-unlisted': (one) => listed(one, 'tools', one.finding.about?.things[0]),
  'tool-unused': unlisted,
  'caution-missing': notice,
  'people-short': people,
  'heavy-lift': hoist,
  'lubricant-missing': withTail,
  'machine-missing': machine,
  'file-missing': file,
  'unused-name': unused,
  'waiver-unused': (one) => line(one, 'Take the `allow` away'),
};

function declaredTorque(one: Case): Candidate[] {
  const found = one.procedure && one.view.machineOf(one.procedure, one.file);
  const names = one.action?.objects.map(({ name }) => name.text) ?? [];
  return names.flatMap((name) => {
    const thing = found?.model.byName.get(name);
    const torques = thing && found ? declared(found.model, thing).torques : [];
    return torques.map((torque) => {
      const text = printSource(torque);
      return replace(one, text, `Write ${text}, as declared`);
    });
  });
}

function withoutTail(one: Case): Candidate[] {
  const tail = tailAround(one);
  return tail ? [cut(one, tail, 'Leave it out: it comes from the machine')] : [];
}

/** The author's second unit, in brackets behind the first. */
function secondUnit(one: Case): Candidate[] {
  const { text } = one.file;
  const open = text.lastIndexOf('(', one.finding.start);
  const close = text.indexOf(')', one.finding.end - 1);
  return open >= 0 && close >= 0 && /^\(\s*$/.test(text.slice(open, one.finding.start))
    ? [
        cut(
          one,
          { start: open, end: close + 1 },
          'Leave the second unit out: it is written out for the reader',
        ),
      ]
    : [];
}

const TRIED_UNITS = ['N·m', 'bar', 'kg', 'mm', 'L', 'min', '°C', 'V', '°'];

function missingUnits(one: Case): Candidate[] {
  const end = one.finding.end;
  return TRIED_UNITS.map((unit) => ({
    title: `Write ${one.typed} ${unit}`,
    edits: [{ start: end, end, text: unit === '°' ? unit : ` ${unit}` }],
  }));
}

function otherUnits(one: Case): Candidate[] {
  const found = /^(.*?)\s*([^\d\s.]\S*)$/u.exec(one.typed);
  if (!found) return [];
  const [, number, unit] = found;
  const near = [...nearUnits(unit!).map(({ symbol }) => symbol), ...TRIED_UNITS, 'lbf·ft', 'psi'];
  return [...new Set(near)]
    .filter((symbol) => symbol !== unit && unitNamed(symbol))
    .map((symbol) => replace(one, `${number}${symbol === '°' ? '' : ' '}${symbol}`));
}

function ambiguous(one: Case): Candidate[] {
  const found = unitByText(one.typed);
  return found?.is === 'ambiguous'
    ? found.readings.map((reading) => replace(one, typeof reading === 'string' ? reading : reading.symbol))
    : [];
}

function rightOrder(one: Case): Candidate[] {
  const { right } = one.words;
  return [...(right ? [replace(one, right)] : []), ...withoutTail(one)];
}

function headerOf({ procedure }: Case, word: Header['header']): Header | undefined {
  return procedure?.headers.find(({ header }) => header === word);
}

/** Adds a name to a list in the head of the procedure. */
function listed(one: Case, word: 'tools' | 'supplies', name: string | undefined): Candidate[] {
  const { procedure } = one;
  if (!procedure || name === undefined) return [];
  const header = headerOf(one, word);
  const at = header?.end ?? procedure.headers.at(-1)?.end ?? procedure.title?.end;
  if (at === undefined) return [];
  const text = header ? `, ${name}` : `\n  ${word} ${name}`;
  return [{ title: `List \`${name}\` after \`${word}\``, edits: [{ start: at, end: at, text }] }];
}

/** Takes a name out of its list, with the comma. */
function unlisted(one: Case): Candidate[] {
  const header = headerOf(one, 'tools');
  if (header?.header !== 'tools') return [];
  const index = header.refs.findIndex(({ start }) => start === one.finding.start);
  const ref = header.refs[index];
  if (!ref) return [];
  const other: Ref | undefined = header.refs[index === 0 ? 1 : index - 1];
  const title = `Take \`${ref.name.text}\` off the list`;
  if (!other) return [cut(one, header, title)];
  const span = index === 0 ? { start: ref.start, end: other.start } : { start: other.end, end: ref.end };
  return [{ title, edits: [{ ...span, text: '' }] }];
}

/** The notice before the step, with the hazard filled in. */
function notice(one: Case): Candidate[] {
  const { hazard, signal } = one.words;
  const found = one.procedure && one.view.machineOf(one.procedure, one.file);
  if (!hazard || !signal) return [];
  const named = one.finding.about?.things[0]?.split(' ')[0] ?? '';
  const what = found?.model.byName.get(named)?.title ?? 'machine';
  const sentence = noticeSentence(hazard, what);
  if (!sentence) return [];
  return before(
    one,
    `${signal} ${hazard} "${sentence}"`,
    `Write a ${signal} about ${hazard.replaceAll('-', ' ')} before this step`,
  );
}

/** A line before the statement that the finding is about. */
function before({ file, finding }: Case, text: string, title: string): Candidate[] {
  const statement = statementAt(file.parsed.tree, finding);
  if (!statement) return [];
  const begin = file.text.lastIndexOf('\n', statement.start - 1) + 1;
  const lead = file.text.slice(begin, statement.start);
  const indent = /^[ \t]*/.exec(lead)![0];
  const first = lead.trim() === '' ? '' : `\n${indent}  `;
  return [
    { title, edits: [{ start: statement.start, end: statement.start, text: `${first}${text}\n${indent}` }] },
  ];
}

function people(one: Case): Candidate[] {
  const tail = one.action?.tails.find((other) => other.tail === 'with' && other.people !== undefined);
  const count = tail?.tail === 'with' ? tail.people : undefined;
  const header = headerOf(one, 'people');
  if (count === undefined || !header) return [];
  return [
    {
      title: `Write \`people ${count}\` at the top`,
      edits: [{ start: header.start, end: header.end, text: `people ${count}` }],
    },
  ];
}

/** `Write \`with grease\` at this step`. */
function withTail(one: Case): Candidate[] {
  const tail = /`(with [^`…]+)` at this step/.exec(one.finding.help ?? '')?.[1];
  const at = one.action?.objects.at(-1)?.end;
  if (!tail || at === undefined) return [];
  return [{ title: `Write \`${tail}\` at this step`, edits: [{ start: at, end: at, text: ` ${tail}` }] }];
}

/** What is too heavy for hands. */
function hoist(one: Case): Candidate[] {
  const at = one.action?.objects.at(-1)?.end;
  if (at === undefined) return [];
  return [{ title: 'Write `with hoist`', edits: [{ start: at, end: at, text: ' with hoist' }] }];
}

function machine(one: Case): Candidate[] {
  const at = one.procedure?.title?.end ?? one.procedure?.name?.end;
  if (at === undefined) return [];
  return one.view
    .visible(one.file)
    .flatMap(({ machines }) => machines)
    .flatMap(({ name }) =>
      name
        ? [
            {
              title: `Write \`for ${name.text}\``,
              edits: [{ start: at, end: at, text: `\n  for ${name.text}` }],
            },
          ]
        : [],
    );
}

/** Files of the same name that stand elsewhere. */
function file(one: Case): Candidate[] {
  const wanted = one.typed.replaceAll('"', '').split('/').at(-1);
  return one.view
    .known()
    .filter((path) => path !== one.file.path && path.split('/').at(-1) === wanted)
    .map((path) => replace(one, `"${relative(one.file.path, path)}"`));
}

function unused(one: Case): Candidate[] {
  const tail = one.action?.tails.find(({ tail: word, end }) => word === 'as' && end === one.finding.end);
  if (tail) return [cut(one, tail, `Take \`${one.typed}\` out`)];
  return one.action ? [] : line(one, `Take \`${one.typed}\` out`);
}

/** Takes the whole line of a statement away. */
function line({ file: { text, parsed }, finding }: Case, title: string): Candidate[] {
  const statement = statementAt(parsed.tree, finding);
  if (!statement) return [];
  const start = text.lastIndexOf('\n', statement.start - 1) + 1;
  const newline = text.indexOf('\n', statement.end);
  const alone =
    text.slice(start, statement.start).trim() === '' && text.slice(statement.end, newline).trim() === '';
  return [
    {
      title,
      edits: [
        alone
          ? { start, end: newline + 1, text: '' }
          : { start: statement.start, end: statement.end, text: '' },
      ],
    },
  ];
}

/** `Write \`…\` before this step`: the help of a finding says what to write. */
function asTold(one: Case): Candidate[] {
  const found = /`([^`…]+)` before (?:this step|it)/.exec(one.finding.help ?? '');
  return found ? before(one, found[1]!, `Write \`${found[1]}\` before this step`) : [];
}
