/** Names that a procedure declares for itself (tasks, choices, values, loop variables), and where names are used. */
import type { Place } from '../report/finding.ts';
import type { Fact } from './facts.ts';
import type { Thing } from './model.ts';

/** A name in use and what it stands for. */
export interface Use {
  at: Place;
  thing?: Thing;
  local?: Local;
}

export interface Local {
  name: string;
  what: 'task' | 'choice' | 'value' | 'measured value' | 'loop variable';
  at: Place;
  values?: readonly string[];
}

export interface ProcedureNames {
  uses: Use[];
  locals: Local[];
  facts: Fact[];
}

/** Names of the procedure itself, by what was looked for. */
export class Scope extends Map<string, Local> {
  readonly asked = new Set<string>();
  wide = false;

  override get(name: string): Local | undefined {
    this.asked.add(name);
    return super.get(name);
  }

  override has(name: string): boolean {
    this.asked.add(name);
    return super.has(name);
  }

  override values(): MapIterator<Local> {
    this.wide = true;
    return super.values();
  }
}
