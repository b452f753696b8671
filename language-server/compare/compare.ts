/**
 * What is different in meaning between two states of a project: machines and procedures by name, findings that came and
 * went, how the machine stands at the end. Other layout, other order of declarations and comments are no difference;
 * other words for the reader are told apart from other work. Pure: texts in, plain data out.
 */
import { parse } from '../../grammar/parser/parse.ts';
import type { Machine, Procedure } from '../../grammar/syntax/tree.ts';
import { checkProject } from '../checks/check-project.ts';
import { stateAt } from '../features/state-at.ts';
import { writeOut } from '../features/write-out.ts';
import { type LoadedFile, Loader } from '../model/names.ts';
import type { SourceHost } from '../project/project.ts';
import type { Finding } from '../report/finding.ts';
import { type Change, type Comparison, type Section, titleChanges } from './change.ts';
import { type ItemsOf, itemChanges } from './machines.ts';
import { typed } from './meaning.ts';
import { procedureChanges, stepMeanings } from './procedures.ts';

/** One state of a project: its texts, and which of them are compared. */
export interface State {
  host: SourceHost;
  paths: readonly string[];
  /** A path as it is called in both states; without it, the path itself. */
  nameOf?(path: string): string;
}

export function compareProjects(old: State, now: State): Comparison {
  const before = contentsOf(old);
  const after = contentsOf(now);
  const sections: Section[] = [
    ...pairs(before.machines, after.machines).map(([a, b]) => machineSection(a, b)),
    ...pairs(before.shared, after.shared).map(([a, b]) => sharedSection(a, b)),
    ...pairs(before.procedures, after.procedures).map(([a, b]) => procedureSection(a, old, b, now)),
    findingsSection(old, now, before, after),
  ].filter(({ changes }) => changes.length > 0);
  return { sections, meaning: sections.some(({ changes }) => changes.some(({ meaning }) => meaning)) };
}

type Named<T> = Map<string, { node: T; file: LoadedFile }>;

interface Contents {
  machines: Named<Machine>;
  procedures: Named<Procedure>;
  shared: Named<LoadedFile['shared']>;
}

function contentsOf({ host, paths, nameOf = (path) => path }: State): Contents {
  const loader = new Loader(host);
  const contents: Contents = { machines: new Map(), procedures: new Map(), shared: new Map() };
  for (const path of paths) {
    const file = loader.load(path);
    if (!file) continue;
    for (const node of file.machines) contents.machines.set(node.name?.text ?? '', { node, file });
    for (const node of file.procedures) contents.procedures.set(node.name?.text ?? '', { node, file });
    if (file.shared.length > 0) contents.shared.set(nameOf(path), { node: file.shared, file });
  }
  return contents;
}

type One<T> = { name: string; node: T; file: LoadedFile } | undefined;

/** What has one name in both states; where one is left over on each side, those two: twins, or one that was renamed. */
function pairs<T>(old: Named<T>, now: Named<T>): [One<T>, One<T>][] {
  const result: [One<T>, One<T>][] = [];
  const one = (name: string, { node, file }: { node: T; file: LoadedFile }) => ({ name, node, file });
  const left = [...old].filter(([name]) => !now.has(name));
  const right = [...now].filter(([name]) => !old.has(name));
  for (const [name, here] of now) {
    const there = old.get(name);
    if (there) result.push([one(name, there), one(name, here)]);
  }
  if (left.length === 1 && right.length === 1) return [...result, [one(...left[0]!), one(...right[0]!)]];
  return [
    ...result,
    ...left.map(([name, a]): [One<T>, One<T>] => [one(name, a), undefined]),
    ...right.map(([name, b]): [One<T>, One<T>] => [undefined, one(name, b)]),
  ];
}

function itemsOf(one: NonNullable<One<Machine>>): ItemsOf {
  return { file: one.file.path, source: one.file.text, items: one.node.items };
}

function machineSection(a: One<Machine>, b: One<Machine>): Section {
  const changes = a && b ? itemChanges(itemsOf(a), itemsOf(b)) : [whole('machine', a, b)];
  if (a && b) {
    const [before, after] = [a.node, b.node].map((one) => one.extends?.text ?? '');
    if (before !== after)
      changes.unshift({
        kind: 'changed',
        what: 'machine',
        message: `It extends ${after || 'nothing'}, not ${before || 'nothing'} any more.`,
        meaning: true,
      });
    changes.unshift(...titleChanges(a.node, b.node));
  }
  return { ...headOf('machine', a, b), changes };
}

function sharedSection(a: One<LoadedFile['shared']>, b: One<LoadedFile['shared']>): Section {
  const of = (one: One<LoadedFile['shared']>): ItemsOf => ({
    file: one?.file.path ?? '',
    source: one?.file.text ?? '',
    items: one?.node ?? [],
  });
  const { name, file } = (b ?? a)!;
  return { subject: 'shared', name, title: file.path, changes: itemChanges(of(a), of(b)) };
}

function procedureSection(a: One<Procedure>, old: State, b: One<Procedure>, now: State): Section {
  const head = headOf('procedure', a, b);
  if (!a || !b) return { ...head, changes: [whole('procedure', a, b)] };
  const of = ({ node, file }: NonNullable<One<Procedure>>) => ({
    file: file.path,
    source: file.text,
    procedure: node,
  });
  const changes = procedureChanges(of(a), of(b));
  const steps = changes.filter(({ what, meaning }) => meaning && STEPWISE.has(what));
  if (steps.length > 0 && sameWrittenOut(a, old, b, now)) {
    for (const change of steps) change.meaning = false;
    changes.push({
      kind: 'reworded',
      what: 'steps',
      message: 'The steps are written in another form; written out they are the same.',
      meaning: false,
    });
  } else if (steps.length > 0) changes.push(...endChanges(a, old, b, now));
  return { ...head, changes };
}

/** Changes that can be no more than another way to write the same steps. Notices stay what they are. */
const STEPWISE: ReadonlySet<string> = new Set(['step', 'condition']);

function sameWrittenOut(
  a: NonNullable<One<Procedure>>,
  old: State,
  b: NonNullable<One<Procedure>>,
  now: State,
): boolean {
  const [before, after] = [writtenOut(a, old), writtenOut(b, now)];
  return before !== undefined && before === after;
}

function writtenOut({ file, node }: NonNullable<One<Procedure>>, { host }: State): string | undefined {
  const source = writeOut(host, file.path);
  if (source === undefined) return undefined;
  const procedure = parse(source).tree.items.find(
    (item): item is Procedure => item.kind === 'procedure' && item.name?.text === node.name?.text,
  );
  return procedure && stepMeanings({ file: file.path, source, procedure }).join('\n');
}

/** How the machine stands at the end, thing by thing. */
function endChanges(
  a: NonNullable<One<Procedure>>,
  old: State,
  b: NonNullable<One<Procedure>>,
  now: State,
): Change[] {
  const [before, after] = [endOf(a, old), endOf(b, now)];
  const changes: Change[] = [];
  for (const name of new Set([...before.keys(), ...after.keys()])) {
    const [from, to] = [before.get(name) ?? 'as at the start', after.get(name) ?? 'as at the start'];
    if (from === to) continue;
    const message = `At the end: ${name} ${to} (before: ${from}).`;
    changes.push({ kind: 'changed', what: 'end', message, before: from, after: to, meaning: true });
  }
  return changes;
}

function endOf({ file, node }: NonNullable<One<Procedure>>, { host }: State): Map<string, string> {
  const result = new Map<string, string>();
  const body = node.body;
  const state = body && stateAt(host, file.path, body.closed ? body.end - 1 : body.end);
  for (const group of state?.groups ?? []) {
    for (const { title, positions, case: named } of group.things) {
      const some = positions ? ` (${positions.map((one) => `#${one}`).join(', ')})` : '';
      const said = `${group.state}${some}${named ? ` when ${named}` : ''}`;
      result.set(title, [result.get(title), said].filter((one) => one !== undefined).join(', '));
    }
  }
  return result;
}

function findingsSection(old: State, now: State, was: Contents, is: Contents): Section {
  const [before, after] = [findingsOf(old), findingsOf(now)];
  const changes: Change[] = [];
  // With a procedure that is gone its findings are gone too: that says nothing.
  const gone = [...was.procedures].flatMap(([name, one]) => (is.procedures.has(name) ? [] : [one]));
  const inside = ({ file, start }: Finding) =>
    gone.some(({ node, file: { path } }) => path === file && node.start <= start && start <= node.end);
  for (const [key, finding] of after) if (!before.has(key)) changes.push(findingChange('added', finding));
  for (const [key, finding] of before)
    if (!after.has(key) && !inside(finding)) changes.push(findingChange('removed', finding));
  return { subject: 'findings', name: '', title: 'Findings', changes };
}

function findingChange(kind: 'added' | 'removed', finding: Finding): Change {
  const { file, start, end, check, message } = finding;
  const place = { file, start, end };
  return {
    kind,
    what: 'finding',
    message: `${kind === 'added' ? 'New' : 'Gone'}: ${check}: ${message}`,
    ...(kind === 'added' ? { new: place } : { old: place }),
    meaning: true,
  };
}

/** Findings by check and marked words: what does not change with lines, layout or wording of titles. */
function findingsOf({ host, paths, nameOf = (path) => path }: State): Map<string, Finding> {
  const counts = new Map<string, number>();
  const result = new Map<string, Finding>();
  for (const finding of checkProject(host, paths).findings) {
    const text = host.read(finding.file) ?? '';
    const words = `${nameOf(finding.file)} ${finding.check} ${typed(finding, text).replace(/"(?:[^"\\]|\\.)*"/g, '""')}`;
    const count = (counts.get(words) ?? 0) + 1;
    counts.set(words, count);
    result.set(`${words} ${count}`, finding);
  }
  return result;
}

function headOf(
  subject: 'machine' | 'procedure',
  a: One<Machine | Procedure>,
  b: One<Machine | Procedure>,
): Omit<Section, 'changes'> {
  const { name, node } = (b ?? a)!;
  return {
    subject,
    name,
    title: node.title?.value ?? name,
    ...(a && b && a.name !== b.name ? { oldName: a.name } : {}),
  };
}

function whole(what: string, a: One<Machine | Procedure>, b: One<Machine | Procedure>): Change {
  const { name, node, file } = (b ?? a)!;
  const place = { file: file.path, start: node.name?.start ?? node.start, end: node.name?.end ?? node.start };
  const [kind, said] = b ? (['added', 'new'] as const) : (['removed', 'gone'] as const);
  return {
    kind,
    what,
    message: `The ${what} ${name} is ${said}.`,
    ...(b ? { new: place } : { old: place }),
    meaning: true,
  };
}
