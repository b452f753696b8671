/**
 * What is looked at beside the states, in one case: notices, compounds, lifting. Only where it is asked for (`judge`): the
 * comparison of states does without.
 */
import { Compounds } from './compounds.ts';
import { lifted } from './lifting.ts';
import type { Work } from './needs.ts';
import { Notices } from './notices.ts';
import type { Action } from './shape.ts';

export class Watch {
  readonly notices: Notices;
  private readonly compounds: Compounds;
  private readonly people: number | undefined;
  private elsewhere = 0;

  constructor(w: Work, people: number | undefined, from?: Watch) {
    this.people = people;
    this.notices = from ? from.notices.copy(w) : new Notices(w);
    this.compounds = from ? from.compounds.copy(w) : new Compounds(w);
    this.elsewhere = from?.elsewhere ?? 0;
  }

  copy(w: Work): Watch {
    return new Watch(w, this.people, this);
  }

  key(): string {
    return `${this.notices.key()} ${this.compounds.key()}`;
  }

  enter(other: boolean): void {
    if (other) this.elsewhere++;
    this.notices.enter(other);
  }

  leave(w: Work, other: boolean): void {
    if (other) this.elsewhere--;
    this.notices.leave(w, other);
  }

  before(w: Work, action: Action): void {
    w.line = action.line;
    this.notices.before(w, action);
    this.compounds.before(w, action);
    if (this.elsewhere === 0) lifted(w, action, this.people);
  }

  after(w: Work, action: Action): void {
    this.notices.after(w, action);
    this.compounds.after(w, action);
  }

  finish(w: Work): void {
    this.notices.finish(w);
    this.compounds.finish(w);
  }
}
