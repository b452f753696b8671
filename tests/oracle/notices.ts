/** Whether a notice stands where it is needed and is strong enough, in one case. The chapter on states, "Notices". */
import type { Hazard, Meeting } from './near.ts';
import { coolsWith, hazardsOf, meetings } from './near.ts';
import type { Work } from './needs.ts';
import { systemState } from './needs.ts';
import type { Action } from './shape.ts';

interface Given {
  hazard: string;
  signal: string;
  line: number;
  /** No step has come near since. */
  ahead: boolean;
}

/** A notice that follows its step and, so far, guards nothing else. */
interface Behind {
  hazards: string[];
  line: number;
  idle: boolean;
}

const STRENGTH = ['note', 'notice', 'caution', 'warning', 'danger'];
const NEEDED: Record<string, string> = {
  'will kill': 'danger',
  'can kill': 'warning',
  'can hurt': 'caution',
  'can damage': 'notice',
};
/** The words that the reference has; any other may mean anything. */
const KNOWN = [
  ...['pressure', 'hot', 'cold', 'live', 'stored-energy', 'fuel', 'chemical', 'lifting', 'moving', 'sharp'],
  ...['dust', 'noise', 'light', 'falling'],
];

export class Notices {
  private readonly hazards: readonly Hazard[];
  private scopes: { given: Given[]; behind: Behind[] }[] = [{ given: [], behind: [] }];
  private unnamed = false;
  private noticed = new Set<string>();
  private dealtWith = new Set<string>();
  private cooled = new Set<string>();
  /** Hazards that the last step met with no notice directly before it. */
  private bare = new Set<string>();
  private elsewhere = 0;

  constructor(w: Work, hazards?: readonly Hazard[]) {
    this.hazards = hazards ?? hazardsOf(w.model);
    if (!hazards) this.handOver(w);
  }

  copy(w: Work): Notices {
    const other = new Notices(w, this.hazards);
    other.scopes = this.scopes.map(({ given, behind }) => ({
      given: given.map((one) => ({ ...one })),
      behind: behind.map((one) => ({ ...one })),
    }));
    other.unnamed = this.unnamed;
    other.noticed = new Set(this.noticed);
    other.dealtWith = new Set(this.dealtWith);
    other.cooled = new Set(this.cooled);
    other.bare = new Set(this.bare);
    other.elsewhere = this.elsewhere;
    return other;
  }

  /** Equal keys: nothing that follows can tell the two apart. */
  key(): string {
    return JSON.stringify([
      this.scopes,
      this.unnamed,
      [...this.noticed].toSorted(),
      [...this.dealtWith].toSorted(),
      [...this.cooled].toSorted(),
      [...this.bare].toSorted(),
    ]);
  }

  enter(other: boolean): void {
    if (other) this.elsewhere++;
    this.scopes.push({ given: [], behind: [] });
    this.bare.clear();
  }

  leave(w: Work, other: boolean): void {
    const { behind } = this.scopes.pop()!;
    for (const { idle, line } of behind) if (idle) w.report('caution-late', line);
    this.bare.clear();
    if (!other) return;
    this.elsewhere--;
    this.handOver(w);
  }

  finish(w: Work): void {
    while (this.scopes.length > 0) this.leave(w, false);
  }

  /** What is safe now was made so by somebody else: at the start, or in a procedure that was done. */
  handOver(w: Work): void {
    for (const one of this.hazards) if (this.isSafe(w, one)) this.dealtWith.add(one.id);
  }

  notice(hazards: readonly string[], signal: string, line: number): void {
    const scope = this.scopes.at(-1)!;
    const isOwn = (word: string) =>
      !KNOWN.includes(word) && !this.hazards.some(({ hazard }) => hazard === word);
    if (signal !== 'note' && (hazards.length === 0 || hazards.some(isOwn))) this.unnamed = true;
    for (const hazard of hazards) {
      scope.given.push({ hazard, signal, line, ahead: true });
      if (this.bare.has(hazard) && this.elsewhere === 0)
        scope.behind.push({ hazards: [...hazards], line, idle: true });
      for (const one of this.hazards)
        if (one.hazard === hazard && this.noticed.has(`begun ${one.id}`)) this.noticed.add(one.id);
    }
  }

  before(w: Work, action: Action): void {
    const met = meetings(w, action, this.hazards);
    this.bare.clear();
    const words = new Set(met.map(({ of }) => of.hazard));
    for (const { behind } of this.scopes)
      for (const one of behind) if (one.hazards.some((word) => words.has(word))) one.idle = false;
    for (const meeting of met) this.meet(w, meeting, action.line);
    for (const { given } of this.scopes)
      for (const one of given) if (words.has(one.hazard)) one.ahead = false;
    this.unnamed = false;
  }

  private meet(w: Work, { of, begins, brings }: Meeting, line: number): void {
    const given = this.scopes.flatMap((scope) => scope.given).filter(({ hazard }) => hazard === of.hazard);
    const isDealtWith = this.dealtWith.has(of.id) && !brings;
    const direct = given.filter(({ ahead }) => ahead);
    if (this.elsewhere === 0) {
      const asked = direct.length > 0 ? direct : begins ? [] : given;
      const best = Math.max(...asked.map(({ signal }) => STRENGTH.indexOf(signal)));
      if (asked.length > 0 && best < STRENGTH.indexOf(NEEDED[of.harm]!))
        w.report('signal-word-weak', asked.at(-1)!.line);
      if (direct.length === 0 && !this.unnamed && !this.dealtWith.has(of.id)) this.bare.add(of.hazard);
      if (!begins && given.length === 0 && !this.unnamed && !isDealtWith) w.report('caution-missing', line);
    }
    if (!begins || given.length > 0 || this.unnamed || this.elsewhere > 0) this.noticed.add(of.id);
    else this.noticed.add(`begun ${of.id}`);
  }

  after(w: Work, action: Action): void {
    if (action.verb === 'run') this.cooled.clear();
    if (action.verb === 'let cool') for (const name of coolsWith(w, action)) this.cooled.add(name);
    for (const one of this.hazards) {
      if (this.isSafe(w, one)) {
        if (this.noticed.has(one.id)) this.dealtWith.add(one.id);
      } else if (this.dealtWith.delete(one.id)) {
        this.noticed.delete(one.id);
        this.noticed.delete(`begun ${one.id}`);
      }
    }
  }

  private isSafe(w: Work, { hazard, name, system }: Hazard): boolean {
    if (!system) return hazard === 'hot' && this.cooled.has(name);
    const state = systemState(w, system);
    const wet = ['cold', 'fuel', 'chemical'].includes(hazard);
    if (wet && system.fluid) return state.fill === 'drained';
    if (['pressure', 'stored-energy'].includes(hazard) && system.pressure) return !state.pressurised;
    if (hazard === 'hot' && system.heat) return !state.hot;
    if (hazard === 'live' && system.power) return !state.live;
    const has = system.pressure || system.heat || system.power;
    return has && !state.pressurised && !state.hot && !state.live;
  }
}
