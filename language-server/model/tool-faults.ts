/**
 * The tools and people that a procedure lists against those that its steps use. Facts `tool-unlisted`, `tool-unused`,
 * `people-short`. Where no tools are listed, none is missed; where no number of people is said, none is too few.
 */
import type { Action, Procedure, Ref, Statement } from '../../grammar/syntax/tree.ts';
import type { Fact } from './facts.ts';
import { isTorqueTool } from './fastening-tools.ts';
import type { Model, Thing } from './model.ts';
import { findProcedure, type LoadedFile } from './names.ts';
import { namesAfterDo } from './row.ts';
import type { Survey, Surveys } from './survey.ts';

export function toolFaults(
  model: Model,
  survey: Survey,
  file: LoadedFile,
  visible: readonly LoadedFile[],
  surveys: Surveys,
): Fact[] {
  const { procedure } = survey;
  const facts: Fact[] = [...peopleFaults(survey, file)];
  const header = procedure.headers.find((one) => one.header === 'tools');
  if (header?.header !== 'tools' || header.refs.length === 0) return facts;
  const listed = header.refs.flatMap((ref) => tool(model, ref) ?? []);
  const told = new Set<Thing>();
  const named = survey.each('tools named', [model], (one) =>
    refsIn(one).filter((ref) => tool(model, ref) !== undefined),
  );
  for (const ref of named) {
    const thing = tool(model, ref);
    if (!thing || listed.includes(thing) || told.has(thing)) continue;
    told.add(thing);
    facts.push({
      check: 'tool-unlisted',
      at: { file: file.path, start: ref.start, end: ref.end },
      subject: { thing },
      story: [{ at: { file: file.path, start: header.word.start, end: header.word.end }, what: 'declared' }],
    });
  }
  const use = new Use(
    model,
    [procedure, ...usedProcedures(procedure, visible)].map((one) => surveys.of(one)),
  );
  for (const ref of header.refs) {
    const thing = tool(model, ref);
    if (!thing || use.uses(thing)) continue;
    facts.push({
      check: 'tool-unused',
      at: { file: file.path, start: ref.start, end: ref.end },
      subject: { thing },
    });
  }
  return facts;
}

function peopleFaults(survey: Survey, file: LoadedFile): Fact[] {
  const header = survey.procedure.headers.find((one) => one.header === 'people');
  const stated = header?.header === 'people' ? header.count : undefined;
  if (!header || stated === undefined) return [];
  return survey.each('people', [header], (statement): Fact[] => {
    if (statement.kind !== 'action') return [];
    const tail = statement.tails.find((one) => one.tail === 'with' && one.people !== undefined);
    if (tail?.tail !== 'with' || tail.people === undefined || tail.people <= stated) return [];
    return [
      {
        check: 'people-short',
        at: { file: file.path, start: tail.start, end: tail.end },
        words: { needs: String(tail.people), people: String(stated) },
        story: [{ at: { file: file.path, start: header.start, end: header.end }, what: 'declared' }],
      },
    ];
  });
}

/** Procedures that the steps use, through others too. */
function usedProcedures(procedure: Procedure, visible: readonly LoadedFile[]): Procedure[] {
  const result: Procedure[] = [];
  const work = [procedure];
  for (const one of work) {
    for (const name of namesAfterDo(one)) {
      const found = findProcedure(visible, name)?.procedure;
      if (!found || result.includes(found)) continue;
      result.push(found);
      work.push(found);
    }
  }
  return result;
}

function tool(model: Model, ref: Ref): Thing | undefined {
  const thing = model.byName.get(ref.name.text);
  return thing?.type === 'tool' ? thing : undefined;
}

/** Every reference that a step makes to what it is done with. */
function refsIn(statement: Statement): Ref[] {
  if (statement.kind !== 'action') return [];
  return [...statement.objects, ...statement.tails.flatMap(refsOfTail)];
}

function refsOfTail(tail: Action['tails'][number]): Ref[] {
  if (tail.tail === 'holding') return [...tail.refs, ...tail.with];
  return 'refs' in tail ? tail.refs : [];
}

const TIGHTENS: ReadonlySet<string> = new Set([
  ...['tighten', 'fit', 'refit', 'bolt up', 'connect', 'check', 'back off', 'loosen'],
]);
const LOOKS: ReadonlySet<string> = new Set([
  'measure',
  'check',
  'inspect',
  'prove',
  'record',
  'adjust',
  'align',
]);
const MEASURES =
  /gauge|gage|meter|caliper|feeler|scale|indicator|tester|edge|rule|level|light|torch|mirror|thermo|tacho|scope|probe|micro/i;

/** How the steps of some procedures use tools, said or not. Where it cannot be told, a tool counts as used. */
class Use {
  private readonly named = new Set<Thing>();
  private readonly verbs = new Set<string>();
  /** Some looking or measuring says not what with. */
  private looksSomehow = false;
  /** Something is turned by an angle. */
  private angles = false;
  private readonly words: Set<string>;
  private readonly model: Model;

  constructor(model: Model, surveys: readonly Survey[]) {
    this.model = model;
    const words: string[] = [];
    for (const survey of surveys) {
      for (const thing of survey.distinct('things named', [model], (one) =>
        refsIn(one).flatMap(({ name }) => model.byName.get(name.text) ?? []),
      ))
        this.named.add(thing);
      for (const verb of survey.distinct('verbs', [], (one) => (one.kind === 'action' ? [one.verb] : [])))
        this.verbs.add(verb);
      words.push(...survey.distinct('words', [], (one) => textsOf(one).flatMap(wordsOf)));
      this.looksSomehow ||= survey.distinct('looks', [], (one) => (looks(one) ? [true] : [])).length > 0;
      this.angles ||=
        survey.distinct('angles', [model], (one) => (byAngle(one, model) ? [true] : [])).length > 0;
    }
    this.words = new Set(words);
    // What locks or proves something is used where that is locked or proved.
    for (const thing of model.things) {
      for (const clause of thing.declaration.clauses) {
        if (clause.clause !== 'proved with' || !this.verbs.has('prove')) continue;
        for (const ref of clause.refs) {
          const by = model.byName.get(ref.name.text);
          if (by) this.named.add(by);
        }
      }
    }
  }

  uses(thing: Thing): boolean {
    const called = `${thing.name.replaceAll('-', ' ')} ${thing.title}`;
    if (this.named.has(thing)) return true;
    if (ANGLE_TOOL.test(called)) return this.angles;
    const turning = [...TIGHTENS].some((verb) => this.verbs.has(verb));
    if (turning && (isTorqueTool(this.model, thing) || TURNS.test(called))) return true;
    if (this.model.locks[thing.first]!.length > 0 && (this.verbs.has('lock') || this.verbs.has('turn')))
      return true;
    if (/lock|tag\b/i.test(called) && this.verbs.has('lock out')) return true;
    if (this.looksSomehow && MEASURES.test(called)) return true;
    return wordsOf(called).some((word) => this.words.has(word));
  }
}

function textsOf(statement: Statement): string[] {
  const texts: string[] = [];
  if ('title' in statement && statement.title) texts.push(statement.title.value);
  if ('text' in statement && statement.text) texts.push(statement.text.value);
  if (statement.kind === 'action')
    for (const tail of statement.tails) if ('text' in tail && tail.text) texts.push(tail.text.value);
  return texts;
}

/** It looks or measures, and does not say what with. */
function looks(statement: Statement): boolean {
  if (statement.kind !== 'action' || !LOOKS.has(statement.verb)) return false;
  return !statement.tails.some((tail) => tail.tail === 'with' && tail.refs.length > 0);
}

/** It turns something whose plan has an angle, or speaks of one. */
function byAngle(statement: Statement, model: Model): boolean {
  if (textsOf(statement).some((text) => /°|degree/i.test(text))) return true;
  if (statement.kind !== 'action' || !TIGHTENS.has(statement.verb)) return false;
  const things = statement.objects.flatMap(({ name }) => model.byName.get(name.text) ?? []);
  const held = things.flatMap(({ first, positions }) =>
    Array.from({ length: Math.max(1, positions.length) }, (_, at) => model.heldBy[first + at] ?? []).flat(),
  );
  const turned = [...things, ...held.flatMap((item) => model.thingOf[item] ?? [])];
  return turned.some(({ stages }) => stages.some(({ kind }) => kind === 'angle'));
}

/** Tools for turning fasteners, which no step has to name. */
const TURNS = /spanner|wrench|socket|ratchet|driver|key|extension|hand tools|tool ?kit|tool ?set/i;

/** What shows how far something is turned, and nothing else. */
const ANGLE_TOOL = /\bangle (?:gauge|gage|meter|disc|dial|indicator)\b/i;

const SMALL: ReadonlySet<string> = new Set([
  'the',
  'and',
  'for',
  'with',
  'from',
  'off',
  'out',
  'all',
  'one',
  'two',
  'set',
  'new',
  'old',
]);

/** The words of a text, in lower case, without their plural. */
function wordsOf(text: string): string[] {
  return (text.toLowerCase().match(/[a-z]{3,}/g) ?? [])
    .filter((word) => !SMALL.has(word))
    .map((word) => word.replace(/s$/, ''));
}
