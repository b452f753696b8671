/**
 * A procedure that is edited, its execution carried on with each edit, and what an execution from scratch gives of the same
 * tree: findings whole, and the whole state, with sets of cases told by trying them.
 */
import { caseWords } from '../../../language-server/checks/speak.ts';
import { ParsedText } from '../../../language-server/engine/parsed-text.ts';
import { ASPECTS } from '../../../language-server/execution/aspects.ts';
import type { CaseSet, Cases } from '../../../language-server/execution/cases.ts';
import { execute } from '../../../language-server/execution/execute.ts';
import { KeptExecution } from '../../../language-server/execution/kept-execution.ts';
import type { Run } from '../../../language-server/execution/run.ts';
import { SharedWork } from '../../../language-server/execution/shared-work.ts';
import { buildModel } from '../../../language-server/model/build.ts';
import type { Fact } from '../../../language-server/model/facts.ts';
import type { Model } from '../../../language-server/model/model.ts';
import { type LoadedFile, loadedFile } from '../../../language-server/model/names.ts';
import type { House } from '../../../language-server/project/project.ts';
import { ruleWatch } from '../../../language-server/rules/watch.ts';
import { applied, type Edit } from './random-edits.ts';

const PATH = 'job.dowel';
/** Cases that a set is tried with. */
const TRIED = 24;

export class EditedJob {
  plain: string;
  private readonly text: ParsedText;
  private readonly model: Model;
  private readonly house: House;
  private kept: KeptExecution;
  private readonly visible: readonly LoadedFile[];

  constructor(plain: string, house: House = {}) {
    this.plain = plain;
    this.house = house;
    this.text = new ParsedText(plain);
    const file = this.file();
    this.visible = [file];
    this.model = buildModel(file.machines[0]!, file, this.visible).model;
    this.kept = this.fromBeginning();
  }

  /** Actions that the latest edit had executed. */
  get executed(): number {
    return this.kept.executed;
  }

  get usable(): boolean {
    return this.kept.usable;
  }

  /** Edits the text; false where the execution could not be carried on, and was begun anew. */
  edit(edit: Edit): boolean {
    this.text.edit(edit.start, edit.end, edit.text);
    this.plain = applied(this.plain, edit);
    const procedure = this.procedure();
    if (!procedure) return false;
    if (this.kept.update(procedure)) return true;
    this.kept = this.fromBeginning();
    return false;
  }

  /** Puts `text` in the place of the only place where `old` stands. */
  put(old: string, text: string): boolean {
    const at = this.plain.indexOf(old);
    if (at < 0 || this.plain.indexOf(old, at + 1) >= 0) throw new Error(`not once: ${old}`);
    const place = (offset: number) => {
      const lines = this.plain.slice(0, offset).split('\n');
      return { line: lines.length - 1, column: lines.at(-1)!.length };
    };
    return this.edit({ start: place(at), end: place(at + old.length), text });
  }

  /** What was found by carrying on, and how things stand at the end. */
  carriedOn(): { facts: string[]; state: string[]; followed: number } {
    const { facts, followed } = this.kept;
    const inside = this.kept as unknown as {
      started: { run: Run };
      moveTo(index: number): void;
      done: unknown[];
    };
    inside.moveTo(inside.done.length);
    const { run } = inside.started;
    return { facts: facts.map((fact) => told(fact, run.cases, this.model)), state: stateOf(run), followed };
  }

  fromScratch(): { facts: string[]; state: string[]; followed: number } {
    const { model, house, visible } = this;
    const procedure = this.procedure()!;
    const shared = new SharedWork();
    const { facts, run } = execute(model, procedure, PATH, visible, house, shared, false, ruleWatch);
    return {
      facts: facts.map((fact) => told(fact, run.cases, model)),
      state: stateOf(run),
      followed: shared.followed,
    };
  }

  private fromBeginning(): KeptExecution {
    const { model, house, visible } = this;
    const procedure = this.procedure()!;
    return new KeptExecution({ model, procedure, file: PATH, visible, house, more: ruleWatch });
  }

  private procedure() {
    return this.file().procedures.at(-1);
  }

  private file(): LoadedFile {
    const { text } = this;
    return loadedFile({ path: PATH, text: this.plain, written: text.space, parsed: text.parsed });
  }
}

/** All that a fact says, with cases in words and by trying. */
function told(fact: Fact, cases: Cases, model: Model): string {
  const { cases: set, every, subject, others, story, ...rest } = fact;
  const thing = (one: Fact['subject']) => one && [one.thing.name, one.items ?? []];
  return JSON.stringify({
    ...rest,
    subject: thing(subject),
    others: others?.map(thing),
    story: story?.map((one) => ({ ...one, thing: one.thing?.name })),
    ...(set === undefined
      ? {}
      : {
          cases: signature(set, cases),
          words: caseWords(set, cases, every ?? model.built),
          said: rest.words,
        }),
  });
}

function stateOf(run: Run): string[] {
  const all: string[] = [];
  const byStart = (since: number) => {
    const step = run.steps.at(since);
    return step ? `${step.action.start} ${step.round} ${step.shown?.start ?? ''}` : since;
  };
  for (const aspect of ASPECTS) {
    for (let item = 0; item < run.model.items; item++) {
      const entries = run
        .entries(aspect, item, run.model.built)
        .map((one) => `${one.value} ${byStart(one.since)} ${one.assumed} ${signature(one.cases, run.cases)}`);
      all.push(`${aspect} ${run.thing(item).name} ${item}: ${entries.sort().join(', ')}`);
    }
  }
  return all;
}

/** Whether the set has each of some cases, in which every axis has a value by its name. */
function signature(set: CaseSet, cases: Cases): string {
  let bits = '';
  for (let tried = 0; tried < TRIED; tried++) {
    const values = cases.axes.map(({ key, phrases }) => hash(`${tried} ${key}`) % phrases.length);
    bits += cases.holds(set, values) ? '1' : '0';
  }
  return bits;
}

function hash(text: string): number {
  let value = 2_166_136_261;
  for (let index = 0; index < text.length; index++)
    value = Math.imul(value ^ text.charCodeAt(index), 16_777_619) >>> 0;
  return (value ^ (value >>> 13)) >>> 0;
}
