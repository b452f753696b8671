/**
 * Findings as they come: what facts say, with the severities of a house, and failures of the tool. Beside them, how much
 * was gone through for them.
 */
import type { Fact } from '../model/facts.ts';
import type { Model } from '../model/model.ts';
import type { LoadedFile } from '../model/names.ts';
import type { House } from '../project/project.ts';
import type { Finding } from '../report/finding.ts';
import { checkNamed } from './all.ts';
import { findingOf } from './finding-of.ts';
import type { Checked } from './kept.ts';
import { speak } from './speak.ts';
import { toolFailure } from './text/tool-failure.ts';

export class Found {
  findings: Finding[] = [];
  /** Actions executed. */
  statements = 0;
  /** Statements gone through in every round and use, of all machines together. */
  followed = 0;
  private readonly house: House;

  constructor(house: House) {
    this.house = house;
  }

  isOff(check: string): boolean {
    return this.house.severities?.[check] === 'off';
  }

  /** `model`: whose cases the facts speak of. Throws where no check has a fact's name. */
  say(facts: readonly Fact[], model?: Pick<Model, 'cases' | 'built'>): void {
    for (const fact of facts) {
      const check = checkNamed(fact.check);
      if (!check) throw new Error(`No check is called ${fact.check}.`);
      const inner = fact.inner === undefined ? undefined : checkNamed(fact.inner);
      // A fault of a loop, a branch or a used procedure tells the fault itself in that check's own sentence.
      const told = inner ? { ...fact, words: { ...fact.words, inner: inner.says(fact).message } } : fact;
      const asked = this.house.severities?.[check.name];
      const severity = asked === undefined || asked === 'off' ? check.severity : asked;
      this.findings.push(speak(told, check, severity, model?.cases, model?.built ?? 1));
    }
  }

  /** A failure of the tool is reported as such, at the place, and stops nothing else. */
  guard(file: LoadedFile, start: number, work: () => void): void {
    try {
      work();
    } catch (error) {
      const at = { file: file.path, start, end: start + file.written.slice(start, start + 1).length };
      const words = { error: error instanceof Error ? error.message : String(error) };
      this.findings.push(findingOf(toolFailure, at, words));
    }
  }

  /** What some work finds, apart from what was found before it. */
  apart(work: () => void): Checked {
    const { findings, statements, followed } = this;
    Object.assign(this, { findings: [], statements: 0, followed: 0 });
    work();
    const own = { findings: this.findings, statements: this.statements, followed: this.followed };
    Object.assign(this, { findings, statements, followed });
    return own;
  }

  add({ findings, statements, followed }: Checked): void {
    for (const finding of findings) this.findings.push(finding);
    this.statements += statements;
    this.followed += followed;
  }
}
