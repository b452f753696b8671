/**
 * The written-out steps as the flow of a document: numbered, with stable ids, notices in front of the step they guard,
 * what lies on the bench, what is written down. Goes through the steps once, in reading order.
 */
import { checkNamed } from '../../checks/all.ts';
import { and, type Combos, minus } from '../../lists/combos.ts';
import { type Job, whereOf } from '../../lists/job.ts';
import { waitOf } from '../../lists/times.ts';
import type { Written } from '../../lists/written.ts';
import type { LoadedFile } from '../../model/names.ts';
import { linesOf } from '../../report/positions.ts';
import { numberWord } from '../../wording/nouns.ts';
import { type Act, type ActContext, actOf, tailOf } from '../sentences/act.ts';
import { headingOf } from '../sentences/heading.ts';
import { whatIsFound } from '../sentences/heading-finding.ts';
import { sentence, text } from '../sentences/rich.ts';
import { said, saidSentence } from '../sentences/texts.ts';
import type { PublishOptions } from '../words/options.ts';
import { capital, type Words } from '../words/words.ts';
import { clauseOfCondition } from './conditions.ts';
import { linkOf, linkTasks, titleOf } from './flow-links.ts';
import { eachTitle, Ids, procedureNote } from './flow-names.ts';
import { endsInStop, firstStep, GOOD, meaningOf, sentencesIn, shortly } from './flow-words.ts';
import { Ledger } from './ledger.ts';
import { detailOf, moreOf } from './more.ts';
import { noticeOf } from './notices.ts';
import { chosenFrom, outcomeLimits, outcomeText, secondEndsOf } from './readings.ts';
import { recordFieldsOf } from './record-fields.ts';
import {
  type Branch,
  type FlowItem,
  type Group,
  type Measurement,
  type Notice,
  type OutcomeRow,
  type Picture,
  plainText,
  type RecordField,
  type Rich,
  type Step,
  type Trouble,
  type Waiver,
  type Way,
} from './types.ts';

/** Where in the document the steps stand. */
interface Where {
  /** Id of what they stand in; '' at the top. */
  id: string;
  /** `3.` in task 3; '' at the top. */
  prefix: string;
  counter: { next: number };
  set: Combos;
  copyOf?: string;
}

export class FlowBuilder {
  readonly ledger: Ledger;
  readonly records: RecordField[] = [];
  readonly pictures: Picture[] = [];
  readonly troubles: Trouble[] = [];
  readonly waivers: Waiver[] = [];
  /** Where each step is done. */
  readonly sets = new Map<string, Combos>();
  /** In the order they were first named. */
  readonly mentioned = new Set<string>();
  private readonly job: Job;
  private readonly words: Words;
  private readonly options: PublishOptions;
  private readonly ids = new Ids();
  private readonly lines = new Map<LoadedFile, ReturnType<typeof linesOf>>();
  private introduced = new Set<string>();
  private notices: Notice[] = [];
  private allowed: Waiver[] = [];

  constructor(job: Job, words: Words, options: PublishOptions) {
    this.job = job;
    this.words = words;
    this.options = options;
    this.ledger = new Ledger(job);
  }

  all(): FlowItem[] {
    const where = { id: '', prefix: '', counter: { next: 1 }, set: this.job.within };
    const items = this.items(this.job.items, where);
    linkTasks(items, this.words);
    return items;
  }

  private items(written: readonly Written[], where: Where): FlowItem[] {
    const result: FlowItem[] = [];
    for (const one of written) result.push(...this.one(one, where));
    // Nothing follows that they could stand in front of.
    result.push(...this.loose(where));
    return result;
  }

  private loose(where: Where): FlowItem[] {
    const left = this.notices;
    this.notices = [];
    return left.map((notice) => {
      const id = this.ids.of(where.id, 'note');
      this.sets.set(id, where.set);
      return { kind: 'note', id, notice };
    });
  }

  private one(one: Written, where: Where): FlowItem[] {
    const { job, words } = this;
    const { bound, file } = one.scene;
    switch (one.kind) {
      case 'action':
        return [this.step(one, where)];
      case 'notice':
        this.notices.push(noticeOf(one.notice, job.model, words, job.measures, this.options, bound));
        return [];
      case 'allow': {
        const check = one.allow.check?.text ?? '';
        this.allowed.push({
          check,
          title: checkNamed(check)?.title ?? check,
          reason: one.allow.reason?.value ?? '',
        });
        return [];
      }
      case 'task': {
        const id = this.ids.of(where.id, one.task.name?.text ?? 'task');
        const number = this.number(where);
        this.introduced = new Set();
        const items = this.items(one.items, { ...where, id, prefix: `${number}.`, counter: { next: 1 } });
        return [{ kind: 'task', id, number, title: titleOf(one.task.title, one.task.name?.text), items }];
      }
      case 'step': {
        if (!one.step.title) return this.items(one.items, where);
        const title = plainText(said(one.step.title, job.model, job.measures, bound)).replace(/\.$/, '');
        return [this.group(where, 'step', title, { kind: 'step' }, [], one.items)];
      }
      case 'do task': {
        const title = titleOf(one.task.title, one.name);
        return [
          this.group(
            { ...where, copyOf: one.name },
            one.name,
            title,
            { kind: 'task', task: one.name },
            [],
            one.items,
          ),
        ];
      }
      case 'reverse': {
        const turned = one.task ? titleOf(one.task.title, one.name) : one.name;
        const title = words.say('group.reverse.title', { title: turned });
        const origin = { kind: 'reverse', task: one.name } as const;
        return [
          this.group({ ...where, copyOf: one.name }, `${one.name}-reverse`, title, origin, [], one.items),
        ];
      }
      case 'do procedure': {
        const link = linkOf(one.procedure, one.file.path, one.name);
        const note = procedureNote(link, words);
        return [this.group(where, one.name, link.title, { kind: 'procedure', link }, note, one.items)];
      }
      case 'do unknown': {
        const link = { id: one.name, title: one.name.replaceAll('-', ' '), file: file.path };
        const note = text(words.say('group.unknown', { name: link.title }));
        return [this.group(where, one.name, link.title, { kind: 'procedure', link }, note, [])];
      }
      case 'each': {
        const origin = { kind: 'each', value: one.value } as const;
        return [this.group(where, one.value, eachTitle(one, job.model), origin, [], one.items)];
      }
      case 'branch':
        return this.branch(one, where);
      case 'repeat':
        return [this.repeat(one, where)];
      case 'hold': {
        const id = this.ids.of(where.id, 'hold');
        const held = saidSentence(one.hold.text, job.model, job.measures, bound);
        return [{ kind: 'hold', id, text: held, items: this.items(one.items, where) }];
      }
      case 'choice': {
        const axis = one.choice.name?.text ?? '';
        const values = one.choice.values.map((value) => value.text).join(words.say('when.or'));
        const line = words.say('choice.decide', { axis: axis.replaceAll('-', ' '), values });
        return [{ kind: 'choice', id: this.ids.of(where.id, `choose-${axis}`), axis, sentence: line }];
      }
      case 'stop': {
        const after = saidSentence(one.stop.text, job.model, job.measures, bound);
        const line: Rich = [...text(words.say('stop')), ...(after.length > 0 ? text(' ') : []), ...after];
        return [...this.loose(where), { kind: 'stop', id: this.ids.of(where.id, 'stop'), text: line }];
      }
      case 'value':
        return [];
    }
  }

  // ------------------------------------------------------------ one step

  private step(one: Extract<Written, { kind: 'action' }>, where: Where): Step {
    const { job, words } = this;
    const { bound, file } = one.scene;
    const { action } = one;
    const context: ActContext = {
      model: job.model,
      words,
      measures: job.measures,
      bound,
      introduce: (id) => {
        const first = !this.introduced.has(id);
        this.introduced.add(id);
        return first;
      },
    };
    const act = actOf(context, action);
    const [object] = action.objects;
    const id = this.ids.of(
      where.id,
      [action.verb, action.topic?.text, object?.name.text].filter(Boolean).join('-'),
    );
    const number = this.number(where);
    const set = whereOf(job, one, where.set);
    const when = job.combinations.when(set, where.set);
    this.sets.set(id, set);
    const notices = this.notices;
    const waivers = this.allowed.map((waiver) => ({ ...waiver, step: id }));
    this.notices = [];
    this.allowed = [];
    this.waivers.push(...waivers);
    for (const name of namesIn(act)) this.mentioned.add(name);
    const heading = headingOf(context, act);
    const changes = this.ledger.book(act, set);
    const pictures = action.tails.flatMap((tail) =>
      tail.tail === 'picture' && tail.file
        ? [{ file: tail.file.value, alt: tail.shows?.value || plainText(heading), step: id }]
        : [],
    );
    this.pictures.push(...pictures);
    const records = this.recordsOf(context, act, id, when);
    const waits = waitOf(job, action);
    const bench = this.ledger.entries(set);
    const measurement = this.measurement(context, act, one, {
      ...where,
      id,
      prefix: `${number}.`,
      counter: { next: 1 },
      set,
    });
    return {
      kind: 'step',
      id,
      ...(when ? { when } : {}),
      number,
      notices,
      heading,
      more: moreOf(context, act),
      said: action.text ? [saidSentence(action.text, job.model, job.measures, bound)] : [],
      expect: action.tails.flatMap((tail) =>
        tail.tail === 'expect' && tail.text ? [saidSentence(tail.text, job.model, job.measures, bound)] : [],
      ),
      detail: detailOf(context, act),
      ...(measurement ? { measurement } : {}),
      pictures,
      changes,
      bench,
      records,
      waivers,
      ...(waits ? { waits } : {}),
      ...(act.people === undefined ? {} : { people: act.people }),
      source: { file: file.path, line: this.lineOf(file, action.start) },
      ...(where.copyOf === undefined ? {} : { copyOf: where.copyOf }),
    };
  }

  private recordsOf(context: ActContext, act: Act, id: string, when: Step['when']): string[] {
    const fields = recordFieldsOf(context, act, this.job, this.options);
    return fields.map((field, index) => {
      const record = {
        ...field,
        id: `${id}.record${index === 0 ? '' : `-${index + 1}`}`,
        step: id,
        ...(when ? { when } : {}),
      };
      this.records.push(record);
      return record.id;
    });
  }

  private measurement(
    context: ActContext,
    act: Act,
    one: Extract<Written, { kind: 'action' }>,
    inside: Where,
  ): Measurement | undefined {
    const { words, job } = this;
    const { action } = act;
    const by = tailOf(action, 'by')?.refs[0]?.name.text ?? '';
    const from = tailOf(action, 'from')?.refs[0]?.name.text ?? by;
    const table = action.verb === 'choose' ? job.model.tables.get(from) : undefined;
    if (!FINDING_OUT.has(action.verb) || (one.outcomes.length === 0 && action.verb !== 'measure' && !table))
      return undefined;
    const what = plainText(whatIsFound(context, act));
    const start = this.ledger.mark;
    const ends: (typeof start)[] = [];
    const anyRight = one.outcomes.some(
      ({ outcome, items }) => items.length === 0 || GOOD.has(outcome.word?.text ?? ''),
    );
    const shared = secondEndsOf(
      one.outcomes.map(({ outcome }) => outcome),
      job,
    );
    const rows = one.outcomes.map(({ outcome, items: written }): OutcomeRow => {
      this.ledger.backTo(start);
      const word = outcome.word?.text;
      const reading = outcomeText(outcome, job, words, shared);
      const id = this.ids.of(inside.id, word ?? reading);
      const items = this.items(written, { ...inside, id });
      const stops = endsInStop(items);
      if (!stops) ends.push(this.ledger.mark);
      const meaning = meaningOf(items, stops, word, anyRight);
      if (meaning === 'not right' || meaning === 'stop')
        this.trouble(inside, words.say('trouble.reading', { what, reading }), items, stops);
      return {
        id,
        reading,
        ...outcomeLimits(outcome, job),
        meaning,
        meaningText: words.say(`outcome.${meaning}`),
        action: items.length === 0 ? words.say('outcome.go on') : shortly(items),
        items,
      };
    });
    this.ledger.join(ends.length > 0 ? ends : [start]);
    const value = this.records.find(({ step, kind }) => step === inside.id && kind === 'value');
    return {
      what,
      with: act.tools.map(({ title }) => title),
      ...(value ? { record: value.id } : {}),
      kind: action.verb as Measurement['kind'],
      rows,
      ...(table ? { table: chosenFrom(table, by.replaceAll('-', ' '), job, words) } : {}),
    };
  }

  private trouble(at: Where, sign: string, items: readonly FlowItem[], stops: boolean): void {
    const when = this.job.combinations.when(at.set, this.job.within);
    this.troubles.push({
      step: at.id,
      number: at.prefix.replace(/\.$/, ''),
      sign: capital(sign),
      remedy: sentencesIn(items),
      stops,
      ...(when ? { when } : {}),
    });
  }

  // ------------------------------------------------------------ groups, branches, repeats

  private group(
    where: Where,
    name: string,
    title: string,
    origin: Group['origin'],
    note: Rich,
    written: readonly Written[],
  ): Group {
    const id = this.ids.of(where.id, name);
    const number = this.number(where);
    const items = this.items(written, { ...where, id, prefix: `${number}.`, counter: { next: 1 } });
    return { kind: 'group', id, number, title, origin, note, items };
  }

  private branch(one: Extract<Written, { kind: 'branch' }>, where: Where): FlowItem[] {
    const { job, words } = this;
    const { condition } = one.statement;
    const { bound } = one.scene;
    const set = job.combinations.where(condition);
    const clause = clauseOfCondition(condition, job, words, bound);
    // A notice in front of a condition is for every reader, whatever way he takes.
    const before = this.loose(where);
    const id = this.ids.of(where.id, set ? 'when' : 'if');
    const start = this.ledger.mark;
    const ends: (typeof start)[] = [];
    const way = (name: string, label: string, written: readonly Written[], inside: Combos): Way => {
      if (!set) this.ledger.backTo(start);
      const wayId = `${id}.${name}`;
      const items = this.items(written, {
        ...where,
        id: wayId,
        set: inside,
      });
      const stops = endsInStop(items);
      if (!stops) ends.push(this.ledger.mark);
      if (!set && stops) {
        const at = {
          ...where,
          id: firstStep(items)?.id ?? id,
          prefix: firstStep(items)?.number ?? where.prefix,
        };
        this.trouble(at, words.say('trouble.seen', { what: plainText(clause) }), items, true);
      }
      const when = set ? job.combinations.when(inside, where.set) : undefined;
      return { id: wayId, label, ...(when ? { when } : {}), items, goOn: items.length === 0 };
    };
    const yes = set ? and(where.set, set) : where.set;
    const no = set ? minus(where.set, set) : where.set;
    const label = words.say('if.seen', { what: plainText(clause) });
    const ways = [way('yes', label, one.body, yes)];
    if (one.otherwise)
      ways.push(way('no', words.say(set ? 'if.otherwise' : 'if.seen.not'), one.otherwise, no));
    else if (!set) {
      ends.push(start);
      ways.push({ id: `${id}.no`, label: words.say('if.seen.not'), items: [], goOn: true });
    }
    if (!set) this.ledger.join(ends.length > 0 ? ends : [start]);
    const by = byOf(condition, job);
    const question =
      by === 'variant'
        ? words.say('question.variant')
        : by === 'choice'
          ? words.say('question.choice')
          : words.say('question.seen', { what: plainText(clause) });
    const branch: Branch = { kind: 'branch', id, by, question, ways };
    return [...before, branch];
  }

  private repeat(one: Extract<Written, { kind: 'repeat' }>, where: Where): FlowItem {
    const { job, words } = this;
    const { until, atMost } = one.repeat;
    const { bound } = one.scene;
    const clause = clauseOfCondition(until, job, words, bound);
    const what = plainText(clause);
    const id = this.ids.of(where.id, 'repeat');
    const number = this.number(where);
    const inside = { ...where, id, prefix: `${number}.`, counter: { next: 1 } };
    const count = atMost ?? 2;
    const values = { what, count, number: numberWord(count) };
    const items = this.items(one.items, inside);
    const line =
      atMost === undefined ? words.say('repeat.until', { what }) : words.say('repeat.at most', values);
    const after = this.ledger.mark;
    const other = one.otherwise && this.items(one.otherwise, { ...inside, id: `${id}.otherwise` });
    if (other) {
      const stops = endsInStop(other);
      this.ledger.join(stops ? [after] : [after, this.ledger.mark]);
      const sign = words.say(atMost === undefined ? 'trouble.repeat.bare' : 'trouble.repeat', values);
      this.trouble(inside, sign, other, stops);
    }
    return {
      kind: 'repeat',
      id,
      number,
      sentence: plainText(sentence(text(line))),
      until: clause,
      ...(atMost === undefined ? {} : { atMost }),
      items,
      ...(other
        ? {
            otherwise: {
              sentence: words.say(
                atMost === undefined ? 'repeat.otherwise.bare' : 'repeat.otherwise',
                values,
              ),
              items: other,
            },
          }
        : {}),
    };
  }

  // ------------------------------------------------------------ names and numbers

  /** Counted from 1. */
  private lineOf(file: LoadedFile, offset: number): number {
    const lines = this.lines.get(file) ?? linesOf(file.text);
    this.lines.set(file, lines);
    return lines.at(offset).line + 1;
  }

  private number({ prefix, counter }: Where): string {
    const number = `${prefix}${counter.next}`;
    counter.next += 1;
    return number;
  }
}

const FINDING_OUT: ReadonlySet<string> = new Set(['measure', 'inspect', 'check', 'record', 'choose']);

function byOf(condition: Parameters<typeof clauseOfCondition>[0], job: Job): Branch['by'] {
  if (!condition) return 'seen';
  if (condition.kind === 'and') {
    const kinds = condition.parts.map((part) => byOf(part, job));
    return kinds.find((kind) => kind !== 'variant') ?? 'variant';
  }
  if (condition.kind === 'axis') return job.model.variants.has(condition.axis.text) ? 'variant' : 'choice';
  return condition.kind;
}

function namesIn(act: Act): string[] {
  return [...act.objects, ...act.held.flat()]
    .flatMap(({ noun }) => [noun.id])
    .concat(act.tools.map(({ id }) => id));
}
